import type { Argument, Command, Option } from "commander";
import { presetNames } from "../../files/presets.ts";
import { sheetNames } from "../../files/sheets.ts";
import { toAscii } from "../../output/printable.ts";

/** What may stand in a place of the command line: some words, a file, both, or what nobody can foresee. */
export interface Offer {
  readonly words: readonly string[];
  readonly files: boolean;
}

export interface OptionRow {
  /** With their dashes. */
  readonly flags: readonly string[];
  readonly about: string;
  /** What may follow; null where nothing does. */
  readonly value: Offer | null;
}

export interface CommandRow {
  readonly name: string;
  readonly about: string;
  readonly options: readonly OptionRow[];
  /** What its arguments may be, any of them: the words of all are offered in each place. */
  readonly argument: Offer | null;
}

/** The command line as the program knows it, in the plain words that a shell is told. */
export interface Table {
  readonly program: CommandRow;
  readonly commands: readonly CommandRow[];
}

/** The table of commands that help is printed from, read once more. */
export function tableOf(program: Command): Table {
  const commands = program.createHelp().visibleCommands(program);
  const names = commands.map((each) => each.name());
  return { program: rowOf(program, names), commands: commands.map((each) => rowOf(each, names)) };
}

function rowOf(command: Command, names: readonly string[]): CommandRow {
  const offers = command.registeredArguments.map((each) => offerOf(each, names));
  return {
    name: command.name(),
    about: gist(command.description()),
    options: command.createHelp().visibleOptions(command).map(optionOf),
    argument: offers.length === 0 ? null : together(offers),
  };
}

function together(offers: readonly Offer[]): Offer {
  return {
    words: [...new Set(offers.flatMap(({ words }) => words))],
    files: offers.some(({ files }) => files),
  };
}

/** What an argument's name in the help stands for. */
function offerOf(argument: Argument, commands: readonly string[]): Offer {
  if (argument.argChoices !== undefined) return { words: argument.argChoices, files: false };
  return offerNamed(argument.name(), commands);
}

/** What a name in capitals stands for in the help. */
function offerNamed(name: string, commands: readonly string[] = []): Offer {
  switch (name) {
    case "READINGS":
      return { words: sheetNames("readings"), files: true };
    case "SHEET":
      return { words: sheetNames("sheets"), files: true };
    case "NAME":
      return { words: [...presetNames(), ...sheetNames("sheets"), ...sheetNames("readings")], files: false };
    case "COMMAND":
      return { words: commands, files: false };
    default:
      return { words: presetNames(), files: true };
  }
}

function optionOf({ short, long, description, argChoices, flags }: Option): OptionRow {
  const takes = /[<[]([^>\]]+)[>\]]/.exec(flags)?.[1];
  return {
    flags: [short, long].filter((each) => each !== undefined),
    about: gist(description),
    value: takes === undefined ? null : followOf(takes, argChoices),
  };
}

/** What may follow an option: a FILE or a FOLDER may be a new one, other names in capitals stand for what arguments do. */
function followOf(name: string, choices: readonly string[] = []): Offer {
  if (name === "FILE" || name === "FOLDER") return { words: [], files: true };
  return /^[A-Z]+$/.test(name) ? offerNamed(name) : { words: choices, files: false };
}

/** The first sentence, in characters that every shell and every terminal has. */
function gist(words: string): string {
  const [first = ""] = words.split(/(?<=\.) |\n/);
  return toAscii(first).replace(/\.$/, "");
}
