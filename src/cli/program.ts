import { Command, CommanderError } from "commander";
import { version } from "../../package.json";
import { nearest } from "../vehicle/nearest.ts";
import { safe } from "../vehicle/shown.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { isCar } from "./car.ts";
import { commandNames } from "./commandNames.ts";
import { adjustersCommand } from "./commands/adjusters.ts";
import { bumpCommand } from "./commands/bump.ts";
import { carAction } from "./commands/car.ts";
import { checkCommand } from "./commands/check.ts";
import { compareCommand } from "./commands/compare.ts";
import { completionCommand } from "./commands/completion.ts";
import { findCommand } from "./commands/find.ts";
import { locksCommand } from "./commands/locks.ts";
import { manCommand } from "./commands/man.ts";
import { matchCommand } from "./commands/match.ts";
import { newCommand } from "./commands/new.ts";
import { poseCommand } from "./commands/pose.ts";
import { presetsCommand } from "./commands/presets.ts";
import { schemaCommand } from "./commands/schema.ts";
import { sensitivityCommand } from "./commands/sensitivity.ts";
import { sheetCommand } from "./commands/sheet.ts";
import { steerCommand } from "./commands/steer.ts";
import { tapeCommand } from "./commands/tape.ts";
import { templateCommand } from "./commands/template.ts";
import { toleranceCommand } from "./commands/tolerance.ts";
import { uprightCommand } from "./commands/upright.ts";
import { widenCommand } from "./commands/widen.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";
import { complained, fullName } from "./usage.ts";

/** Every command, in the order of the help. A new one is one file and one line here. */
const commands = [
  steerCommand,
  locksCommand,
  bumpCommand,
  adjustersCommand,
  widenCommand,
  sensitivityCommand,
  toleranceCommand,
  poseCommand,
  checkCommand,
  matchCommand,
  compareCommand,
  sheetCommand,
  templateCommand,
  findCommand,
  uprightCommand,
  tapeCommand,
  presetsCommand,
  newCommand,
  schemaCommand,
  completionCommand,
  manCommand,
];

/** Reads what was typed and runs it; what it says and ends with is left at the desk. */
export async function runProgram(argv: readonly string[], desk: Desk): Promise<void> {
  refuseMisspelt(argv);
  refuseHelpless(argv);
  if (argv.some(mayHoldProducts)) await prepareProducts();
  const program = carAction(new Command("rackwright"), desk).version(version, "-V, --version", "print the version");
  program.helpCommand("help [COMMAND]", "print the help of a command");
  for (const command of commands) program.addCommand(command(desk));
  for (const each of [program, ...program.commands]) prepare(each, desk);
  try {
    await program.parseAsync(argv, { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (error.exitCode !== 0) desk.exit = Exit.badInput;
  }
}

/** Words after help that are no command. */
function refuseHelpless([first, of = "-"]: readonly string[]): void {
  if (first !== "help" || of.startsWith("-") || commandNames.includes(of)) return;
  throw new Ended(Exit.badInput, `help "${safe(of)}": there is no such command. ${commandMeant(of)}`);
}

function commandMeant(word: string): string {
  const meant = nearest(word, commandNames);
  return meant === null ? `The commands are ${commandNames.join(", ")}.` : `Did you mean "${meant}"?`;
}

/** More words after one that is no command, car or preset: most likely a command misspelt. */
function refuseMisspelt([first = "-", ...more]: readonly string[]): void {
  if (first.startsWith("-") || more.length === 0 || commandNames.includes(first) || isCar(first)) return;
  throw new Ended(Exit.badInput, `"${safe(first)}" is no command, no file and no preset. ${commandMeant(first)}`);
}

function prepare(command: Command, desk: Desk): void {
  command
    .enablePositionalOptions()
    .exitOverride()
    .helpOption("-h, --help", "print this help")
    .configureOutput({
      writeOut: (text) => desk.print(text),
      writeErr: (text) => desk.note(text),
      outputError: (text, write) => write(`rackwright: ${complained(command, text.replace(/^error: /, ""))}`),
      getOutHelpWidth: () => 80,
      getErrHelpWidth: () => 80,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .showHelpAfterError(`Try: ${fullName(command)} --help`);
}
