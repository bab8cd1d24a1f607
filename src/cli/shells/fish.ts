import { firstOf } from "./bash.ts";
import type { OptionRow, Table } from "./table.ts";

/** A script that completes the command line in fish. */
export function fishScript({ program, commands }: Table): string {
  const names = commands.map(({ name }) => name);
  const none = `not __fish_seen_subcommand_from ${names.join(" ")}`;
  const first = firstOf(program, []);
  const lines = [
    "# Completes rackwright in fish. Printed by: rackwright completion fish",
    "complete -c rackwright -f",
    ...commands.map(({ name, about }) => `complete -c rackwright -n '${none}' -a ${name} -d ${quoted(about)}`),
    line(none, `${first.files ? "-F " : ""}-a '${first.words.join(" ")}'`),
    ...program.options.map((each) => line(none, optionWords(each))),
    ...commands.flatMap(({ name, options, argument }) => {
      const seen = `__fish_seen_subcommand_from ${name}`;
      return [
        ...(argument === null ? [] : [line(seen, `${argument.files ? "-F " : ""}-a '${argument.words.join(" ")}'`)]),
        ...options.map((each) => line(seen, optionWords(each))),
      ];
    }),
  ];
  return `${lines.join("\n")}\n`;
}

function line(when: string, what: string): string {
  return `complete -c rackwright -n '${when}' ${what}`;
}

function optionWords({ flags, about, value }: OptionRow): string {
  const named = flags.map((flag) => (flag.startsWith("--") ? `-l ${flag.slice(2)}` : `-s ${flag.slice(1)}`));
  const takes =
    value === null
      ? []
      : [value.files ? "-r -F" : "-x", ...(value.words.length > 0 ? [`-a '${value.words.join(" ")}'`] : [])];
  return [...named, ...takes, `-d ${quoted(about)}`].join(" ");
}

function quoted(text: string): string {
  return `'${text.replace(/[\\']/g, "\\$&")}'`;
}
