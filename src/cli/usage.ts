import type { Command } from "commander";
import { safe } from "../vehicle/shown.ts";
import { isCar } from "./car.ts";

/** "rackwright compare". */
export function fullName(command: Command): string {
  return command.parent === null ? command.name() : `${fullName(command.parent)} ${command.name()}`;
}

/** What is wrong with the words after a command, said by what it takes; any other complaint as it stands. */
export function complained(command: Command, text: string): string {
  const takes = command.registeredArguments;
  if (text.startsWith("missing required argument")) {
    const missing = takes.slice(command.args.length).filter(({ required }) => required);
    const names = missing.map((each) => `${each.name()}, ${each.description}`);
    return `${command.name()} lacks ${names.join("; and ")}.\n`;
  }
  if (text.startsWith("too many arguments")) {
    const [first = "", ...more] = command.args.slice(takes.length);
    const left = more.length === 0 ? `"${safe(first)}" is` : `"${safe(first)}" and ${more.length} more are`;
    const names = takes.map((each) => each.name());
    const what = names.length === 0 ? "no file or name" : `only ${names.join(" and ")}`;
    return `${command.name()} takes ${what}: ${left} left over. ${advice(command, first)}\n`;
  }
  return text.replace(
    /^command-argument value '(.*)' is invalid for argument '(.*)'\. Allowed choices are /,
    '$2 cannot be "$1": it is one of ',
  );
}

function advice(command: Command, left: string): string {
  const asked = command.args.slice(0, command.registeredArguments.length);
  return asked.length === 1 && isCar(asked[0] ?? "") && isCar(left)
    ? `Two cars beside each other: rackwright compare ${asked[0]} ${left}`
    : "A name with spaces in it goes between quotes.";
}
