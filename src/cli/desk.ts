import { Exit, type ExitCode } from "./exit.ts";
import { type Streams, write } from "./streams.ts";

/** Opens the screen on a car file or a preset, until the builder leaves it; gives the exit code. */
export type OpenScreen = (asked: {
  readonly file?: string;
  readonly preset?: string;
  readonly ascii?: boolean;
  readonly plain?: boolean;
}) => Promise<number>;

/** What a command works with: what it says is kept until it has ended, so that a failure prints no half report. */
export class Desk {
  readonly streams: Streams;
  readonly openScreen: OpenScreen;
  /** What the command ends with, unless it ends by a complaint. */
  exit: ExitCode | number = Exit.done;
  readonly #data: string[] = [];
  readonly #notes: string[] = [];

  constructor(streams: Streams, openScreen: OpenScreen) {
    this.streams = streams;
    this.openScreen = openScreen;
  }

  /** Data, for stdout, with its newlines. */
  print(text: string): void {
    this.#data.push(text);
  }

  /** Anything else, for stderr, without its last newline. */
  note(text: string): void {
    this.#notes.push(`${text.trimEnd()}\n`);
  }

  /** Writes what was said, notes first: a warning is read before the table that it is about. */
  async flush(): Promise<void> {
    await write(this.streams.stderr, this.#notes.splice(0).join(""));
    await write(this.streams.stdout, this.#data.splice(0).join(""));
  }
}
