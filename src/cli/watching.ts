import { basename } from "node:path";
import { type Command, Option } from "commander";
import { nextStamp, stampOf } from "../files/stamp.ts";
import { printable } from "../output/printable.ts";
import { findCar } from "./car.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit, type ExitCode } from "./exit.ts";
import { write } from "./streams.ts";

/** The option of a command that can print its report anew whenever the car file is saved. */
export interface WatchOptions {
  readonly watch?: boolean;
}

/** Adds the option; what other programs read is printed once. */
export function watching(command: Command): Command {
  const forms = command.options.map((each) => each.attributeName());
  const once = ["json", "csv", "markdown", "html", "pdf"].filter((form) => forms.includes(form));
  return command.addOption(
    new Option("--watch", "print it anew whenever the car file is saved, until Ctrl-C").conflicts(once),
  );
}

/**
 * Prints a report once, or, where that is asked for, anew with every save of its car files until someone at the keyboard
 * ends it. A save that is no car prints its complaint, and the next save is waited for.
 */
export async function printOrWatch(
  desk: Desk,
  { watch = false }: WatchOptions,
  names: readonly string[],
  print: () => Promise<void>,
): Promise<void> {
  if (!watch) return print();
  const files = filesOf(names);
  const stop = new AbortController();
  let exit: ExitCode = Exit.interrupted;
  const end = () => stop.abort();
  const readerHasGone = () => {
    exit = Exit.done;
    end();
  };
  const { stdout } = desk.streams;
  process.once("SIGINT", end);
  stdout.once("close", readerHasGone);
  try {
    let stamp: string | null = stampOf(files);
    for (let isFirst = true; stamp !== null && !stop.signal.aborted; isFirst = false) {
      await printWhole(desk, print, isFirst);
      await show(desk, files, isFirst);
      stamp = await nextStamp(files, stamp, stop.signal);
    }
  } finally {
    process.off("SIGINT", end);
    stdout.off("close", readerHasGone);
  }
  desk.exit = exit;
}

/** The files among the named cars; the first is the one that is worked on. */
function filesOf(names: readonly string[]): readonly string[] {
  const found = names.map(findCar);
  const [first] = found;
  if (first !== undefined && "file" in first) return found.flatMap((each) => ("file" in each ? [each.file] : []));
  const name = first?.preset ?? "";
  throw new Ended(
    Exit.badInput,
    `--watch waits for saves of a car file, and "${name}" is a preset, which nobody saves. rackwright new my-car --from ${name} makes a file of it.`,
  );
}

/** What a save cures is said in the report's place; what was typed wrong on the command line ends the watch at once. */
async function printWhole(desk: Desk, print: () => Promise<void>, isFirst: boolean): Promise<void> {
  try {
    await print();
  } catch (error) {
    if (!(error instanceof Ended) || (isFirst && !error.inFile)) throw error;
    desk.note(error.said);
  }
}

const rule = `\n${"-".repeat(78)}\n\n`;
const home = "\x1b[H";
const restOfLine = "\x1b[K";
const restOfScreen = "\x1b[J";
/** What is between these is shown at once by terminals that know them (private mode 2026); others pass over them. */
const [begin, shown] = ["\x1b[?2026h", "\x1b[?2026l"];

/**
 * On a terminal what was said takes the place of what stood there, over it and not after wiping it, so that nothing
 * flickers; what was on the screen before the first is scrolled away and kept. Elsewhere reports follow each other.
 */
async function show(desk: Desk, files: readonly string[], isFirst: boolean): Promise<void> {
  const { stdout, env } = desk.streams;
  if (stdout.isTTY !== true || env.TERM === "dumb") {
    if (!isFirst && desk.hasData) await write(stdout, rule);
    return desk.flush();
  }
  const names = files.map((file) => printable(basename(file))).join(" and ");
  const { notes, data } = desk.taken();
  const text = `${notes}${data}\nWatching ${names}, read at ${clock()}. Ctrl-C ends.\n`;
  const lines = text.replaceAll("\n", `${restOfLine}\n`);
  const away = isFirst ? "\n".repeat(stdout.rows ?? 24) : "";
  await write(stdout, `${away}${begin}${home}${lines}${restOfScreen}${shown}`);
}

function clock(): string {
  return new Date().toTimeString().slice(0, 8);
}
