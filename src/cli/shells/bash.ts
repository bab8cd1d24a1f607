import type { CommandRow, Offer, OptionRow, Table } from "./table.ts";

/** A script that completes the command line in bash 3.2 and newer. */
export function bashScript({ program, commands }: Table): string {
  const names = commands.map(({ name }) => name);
  return `# Completes rackwright in bash. Printed by: rackwright completion bash
_rackwright() {
  local cur=\${COMP_WORDS[COMP_CWORD]} prev=\${COMP_WORDS[COMP_CWORD - 1]} word command= options= words= files= i
  # Bash parts words at = signs too.
  if [[ $cur == = ]]; then cur=; elif [[ $prev == = ]]; then prev=\${COMP_WORDS[COMP_CWORD - 2]}; fi
  for ((i = 1; i < COMP_CWORD; i++)); do
    case \${COMP_WORDS[i]} in
    ${names.join("|")})
      command=\${COMP_WORDS[i]}
      break
      ;;
    esac
  done
  case $command in
${commands.map((each) => `  ${each.name})\n${rowLines(each)}    ;;`).join("\n")}
  *)
${rowLines({ ...program, argument: firstOf(program, names) })}    ;;
  esac
  if [[ $cur == -* ]]; then words=$options files=; fi
  COMPREPLY=()
  while IFS= read -r word; do COMPREPLY+=("$word"); done < <(
    compgen -W "$words" -- "$cur"
    if [[ $files ]]; then compgen -f -- "$cur"; fi
  )
}
complete -o filenames -F _rackwright rackwright
`;
}

/** What the first word may be: a command, or what the program itself takes. */
export function firstOf({ argument }: CommandRow, names: readonly string[]): Offer {
  return { words: [...names, ...(argument?.words ?? [])], files: argument?.files ?? false };
}

function rowLines({ options, argument }: CommandRow): string {
  const flags = options.flatMap((each) => each.flags);
  const taking = options.filter(({ value }) => value !== null);
  const values = taking.map((each) => `    ${each.flags.join("|")}) ${offered(each.value)} ;;\n`).join("");
  return `    options='${flags.join(" ")}' ${offered(argument)}
    case $prev in
${values}    esac
`;
}

function offered(offer: OptionRow["value"]): string {
  return `words='${offer?.words.join(" ") ?? ""}' files=${offer?.files ? "1" : ""}`;
}
