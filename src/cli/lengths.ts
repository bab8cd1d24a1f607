import type { InputKind } from "../measures/front.ts";
import { type Span, steppedSpan } from "../measures/span.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { readAngle } from "../vehicle/units/angle.ts";
import { readLength } from "../vehicle/units/length.ts";
import { readNumber } from "../vehicle/units/number.ts";
import { Ended, Exit } from "./exit.ts";

/** The length given to an option, mm; bare numbers are in `unit`. Ends the command when it is none. */
export function lengthOf(option: string, text: string, unit: LengthUnit): number {
  const read = readLength(text, unit);
  if ("complaint" in read) throw new Ended(Exit.badInput, `${option} "${text}" is ${read.complaint}.`);
  return read.mm;
}

/** The angle given to an option, rad; bare numbers are degrees. Ends the command when it is none. */
export function angleOf(option: string, text: string): number {
  const read = readAngle(text);
  if ("complaint" in read) throw new Ended(Exit.badInput, `${option} "${text}" is ${read.complaint}.`);
  return read.rad;
}

/** The plain number given to an option. Ends the command when it is none. */
export function numberOf(option: string, text: string): number {
  const read = readNumber(text);
  if ("complaint" in read) throw new Ended(Exit.badInput, `${option} "${text}" is ${read.complaint}.`);
  return read.number;
}

/** How an option's text is read: to mm or rad. */
export type Reader = (option: string, text: string) => number;

export function lengthReader(unit: LengthUnit): Reader {
  return (option, text) => lengthOf(option, text, unit);
}

/** A reader of what steers the car: places of its rack, or angles of its column. */
export function inputReader(kind: InputKind, unit: LengthUnit): Reader {
  return kind === "rack" ? lengthReader(unit) : angleOf;
}

/** Where the steering was asked to be. */
export interface InputOptions {
  readonly rack?: string;
  readonly column?: string;
}

/** The input asked for, mm of rack or rad of column; 0 where none is. Ends the command when the car has the other kind. */
export function inputOf(options: InputOptions, kind: InputKind, unit: LengthUnit): number {
  const other = kind === "rack" ? "column" : "rack";
  if (options[other] !== undefined) {
    const right = kind === "rack" ? "by a rack: give --rack, a length" : "by its column: give --column, in degrees";
    throw new Ended(Exit.badInput, `--${other} does not fit this car, which is steered ${right}.`);
  }
  const text = options[kind];
  return text === undefined ? 0 : inputReader(kind, unit)(`--${kind}`, text);
}

/** What a table's rows were asked to be, as typed. */
export interface SpanOptions {
  readonly from?: string;
  readonly to?: string;
  readonly step?: string;
}

/** More rows than anyone reads or any plot shows. */
const MOST_ROWS = 10_001;

/** The rows asked for, both ends among them; what is not said is as in `usual`. Ends the command when the step is none. */
export function spanOf(options: SpanOptions, usual: Span, read: Reader): Span {
  const from = options.from === undefined ? usual.from : read("--from", options.from);
  const to = options.to === undefined ? usual.to : read("--to", options.to);
  const range = Math.abs(to - from);
  if (range === 0) return { from, to, rows: 1 };
  if (options.step === undefined) return { from, to, rows: usual.rows };
  const step = read("--step", options.step);
  if (!(step > 0)) {
    throw new Ended(Exit.badInput, `--step "${options.step}" is no step from row to row: it must be above 0.`);
  }
  // A range that was typed in fractions or another unit may be a hair off a whole number of steps.
  const steps = Math.round(range / step);
  const divides = steps > 0 && Math.abs(steps * step - range) <= 1e-9 * range;
  const span = divides ? { from, to, rows: steps + 1 } : steppedSpan(from, to, step);
  if (span.rows > MOST_ROWS) {
    throw new Ended(
      Exit.badInput,
      `--step "${options.step}" makes ${span.rows} rows, more than ${MOST_ROWS}: give a larger step.`,
    );
  }
  return span;
}

/** Which of the two usual tolerances of a tape holds where: one line of help, of both commands that read one. */
export const tapeGoodTo = "Tape: 1/16 in (1 mm) along one part, 1/8 in (3 mm) between centres in space.";
