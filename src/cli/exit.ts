/** What the program's exit code says. */
export const Exit = {
  done: 0,
  /** A limit that the car file sets is broken. */
  limitBroken: 1,
  /** Bad usage or a bad file; a car that does not close at rack 0, travel 0 is a bad file. */
  badInput: 2,
  /** The linkage closes at rack 0, travel 0, but not where it was asked to. */
  doesNotClose: 3,
  /** Broken off at the keyboard: 128 and the number of the signal, as shells have it. */
  interrupted: 130,
  /** A fault of the program itself (EX_SOFTWARE of BSD's sysexits). */
  fault: 70,
} as const;

export type ExitCode = (typeof Exit)[keyof typeof Exit];

/** What each says, to who reads the manual page. */
export const exitWords: Readonly<Record<ExitCode, string>> = {
  0: "Done.",
  1: "A limit is broken (check), or a must is missed or a limit broken by the first answer (find).",
  2: "Bad usage, a bad file, or output that cannot be written; also a car that does not go together with the steering in its middle at ride height.",
  3: "The car goes together there, but not where it was asked to; tables still print the rows that do.",
  70: "A fault in the program: please report it.",
  130: "Broken off at the keyboard.",
};

/**
 * Ends a command: a message for the builder and an exit code. Lines that begin with a place in a file stand alone, so
 * that editors can jump there; the others begin with the program's name.
 */
export class Ended extends Error {
  readonly exit: ExitCode;
  readonly inFile: boolean;

  constructor(exit: ExitCode, message: string, inFile = false) {
    super(message);
    this.exit = exit;
    this.inFile = inFile;
  }

  /** What is said on stderr. */
  get said(): string {
    return this.inFile ? this.message : `rackwright: ${this.message}`;
  }
}
