import { firstOf } from "./bash.ts";
import type { CommandRow, Offer, Table } from "./table.ts";

/** A script that completes the command line in zsh, as a file _rackwright of its fpath or read by source. */
export function zshScript({ program, commands }: Table): string {
  const names = commands.map(({ name }) => name);
  return `#compdef rackwright
# Completes rackwright in zsh. Printed by: rackwright completion zsh
_rackwright_offer() {
  local files=$1
  shift
  local -a words=("$@")
  local found=1
  if (( $#words )); then compadd -a words && found=0; fi
  if [[ $files == 1 ]]; then _files && found=0; fi
  return found
}
_rackwright() {
  local command= word
  for word in "\${(@)words[2,CURRENT-1]}"; do
    case $word in
    ${names.join("|")})
      command=$word
      break
      ;;
    esac
  done
  case $command in
${commands.map((each) => `  ${each.name})\n${specs(each, each.argument, `1:command:(${each.name})`)}    ;;`).join("\n")}
  *)
${specs(program, firstOf(program, names))}    ;;
  esac
}
if [[ $funcstack[1] == _rackwright ]]; then _rackwright "$@"; else compdef _rackwright rackwright; fi
`;
}

function specs({ options }: CommandRow, argument: Offer | null, first = ""): string {
  const each = options.flatMap(({ flags, about, value }) =>
    flags.map((flag) => {
      const takes = value === null ? "" : `:value:${action(value)}`;
      return `'${flag}${value !== null && flag.startsWith("--") ? "=" : ""}[${escaped(about)}]${takes}'`;
    }),
  );
  const rest = argument === null ? [] : [`'*:file:${action(argument)}'`];
  const lines = [...(first === "" ? [] : [`'${first}'`]), ...each, ...rest];
  return `    _arguments \\\n${lines.map((line) => `      ${line}`).join(" \\\n")}\n`;
}

/** With a blank before it, since _arguments puts words of its own behind the name of a function that has none. */
function action({ words, files }: Offer): string {
  return words.length === 0 && !files ? " " : ` _rackwright_offer ${[files ? "1" : "0", ...words].join(" ")}`;
}

function escaped(about: string): string {
  return about.replace(/[[\]:\\]/g, "\\$&").replaceAll("'", "'\\''");
}
