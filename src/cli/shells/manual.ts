import type { Command } from "commander";
import { toAscii } from "../../output/printable.ts";
import { type ExitCode, exitWords } from "../exit.ts";

/**
 * The program's help as a manual page, in the macros of man(7): name, synopsis, options, then every command with what
 * its own help says. Plain ASCII, so that no reader of pages needs to know an encoding.
 */
export function manual(program: Command): string {
  const commands = program.createHelp().visibleCommands(program);
  const [name, version] = [program.name(), program.version() ?? ""];
  const [about = "", ...more] = program.description().split("\n\n");
  return [
    `.TH ${name.toUpperCase()} 1 "" "${name} ${version}" "User Commands"`,
    ".SH NAME",
    `${name} \\- ${prose(about).replace(/\.$/, "")}`,
    ".SH SYNOPSIS",
    ...program
      .usage()
      .split("\n")
      .flatMap((usage, i) => [...(i > 0 ? [".br"] : []), synopsis(name, usage)]),
    ".SH DESCRIPTION",
    ...more.map(prose),
    ".SH OPTIONS",
    ...optionLines(program),
    ".SH COMMANDS",
    ...commands.flatMap(commandLines),
    ".SH EXIT STATUS",
    ...Object.entries(exitWords).flatMap(([code, words]: [string, (typeof exitWords)[ExitCode]]) => [
      ".TP",
      code,
      prose(words),
    ]),
    ".SH EXAMPLES",
    ...asTyped(afterHelp(program)),
    "",
  ].join("\n");
}

function synopsis(name: string, usage: string): string {
  return `.B ${name}\n${prose(usage.trim().replace(new RegExp(`^${name} `), ""))}`;
}

function commandLines(command: Command): readonly string[] {
  const help = command.createHelp();
  const after = asTyped(afterHelp(command));
  return [
    `.SS ${prose(help.subcommandTerm(command))}`,
    ...command.description().split("\n\n").map(prose),
    ...command.registeredArguments
      .filter(({ description }) => description !== "")
      .flatMap((each) => [".TP", `.I ${prose(each.name())}`, prose(help.argumentDescription(each))]),
    ...optionLines(command),
    ...(after.length > 0 ? [".PP", ...after] : []),
  ];
}

function optionLines(command: Command): readonly string[] {
  const help = command.createHelp();
  return help
    .visibleOptions(command)
    .flatMap((each) => [".TP", `.B ${prose(help.optionTerm(each))}`, prose(help.optionDescription(each))]);
}

/** What stands below a command's options in its help: lists and examples. */
function afterHelp(command: Command): string {
  let said = "";
  const before = command.configureOutput();
  command.configureOutput({
    ...before,
    writeOut: (text) => {
      said += text;
    },
  });
  command.outputHelp();
  command.configureOutput(before);
  return said.slice(command.helpInformation().length).trim();
}

/** Lines that stay as they are. */
function asTyped(text: string): readonly string[] {
  return text === ""
    ? []
    : [".nf", ...text.split("\n").map((line) => (line.trim() === "" ? ".sp" : prose(line))), ".fi"];
}

/** Text that no character of is taken for a request: backslashes, dashes as they are typed, a dot or quote that begins a line. */
function prose(text: string): string {
  return toAscii(text)
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replaceAll("\n", " ")
    .replace(/^(?=[.'])/, "\\&");
}
