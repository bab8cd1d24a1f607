/** What the program's exit code says. */
export const Exit = {
  done: 0,
  /** A limit that the car file sets is broken. */
  limitBroken: 1,
  /** Bad usage or a bad file; a car that does not close at rack 0, travel 0 is a bad file. */
  badInput: 2,
  /** The linkage closes at rack 0, travel 0, but not where it was asked to. */
  doesNotClose: 3,
} as const;

export type ExitCode = (typeof Exit)[keyof typeof Exit];

/** Ends a command: a message for the builder, already whole, and an exit code. */
export class Ended extends Error {
  readonly exit: ExitCode;

  constructor(exit: ExitCode, message: string) {
    super(message);
    this.exit = exit;
  }
}
