import { printableText } from "../output/printable.ts";
import { Exit, type ExitCode } from "./exit.ts";
import { type Streams, write } from "./streams.ts";

/** Opens the screen on a car, or on a sheet of readings, until the builder leaves it; gives the exit code. */
export type OpenScreen = (asked: {
  readonly file?: string;
  readonly preset?: string;
  readonly sheet?: string;
  readonly ascii?: boolean;
  readonly plain?: boolean;
}) => Promise<number>;

/** What a command works with: what it says is kept until it has ended, so that a failure prints no half report. */
export class Desk {
  readonly streams: Streams;
  readonly openScreen: OpenScreen;
  /** What the command ends with, unless it ends by a complaint. */
  exit: ExitCode | number = Exit.done;
  #data: (string | Uint8Array)[] = [];
  readonly #notes: string[] = [];

  constructor(streams: Streams, openScreen: OpenScreen) {
    this.streams = streams;
    this.openScreen = openScreen;
  }

  /** Data, for stdout: text with its newlines, or the bytes of a document. */
  print(data: string | Uint8Array): void {
    this.#data.push(data);
  }

  /** Anything else, for stderr, without its last newline. What of it would act on a terminal is written out. */
  note(text: string): void {
    this.#notes.push(`${printableText(text.trimEnd())}\n`);
  }

  /** Whether data waits to be written. */
  get hasData(): boolean {
    return this.#data.length > 0;
  }

  /** Takes what was said and was not yet written, for a report in text that is shown as a whole. */
  taken(): { readonly notes: string; readonly data: string } {
    return { notes: this.#notes.splice(0).join(""), data: this.#data.splice(0).map(String).join("") };
  }

  /** Writes what was said, notes first: a warning is read before the table that it is about. */
  async flush(): Promise<void> {
    await write(this.streams.stderr, this.#notes.splice(0).join(""));
    const [first, ...more] = this.#data;
    this.#data = [];
    if (first instanceof Uint8Array) await write(this.streams.stdout, first);
    else await write(this.streams.stdout, [first ?? "", ...more].join(""));
  }
}
