import type { Span } from "../measures/span.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { readLength } from "../vehicle/units/length.ts";
import { Ended, Exit } from "./exit.ts";

/** The length given to an option, mm; bare numbers are in `unit`. Ends the command when it is none. */
export function lengthOf(option: string, text: string, unit: LengthUnit): number {
  const read = readLength(text, unit);
  if ("complaint" in read) throw new Ended(Exit.badInput, `${option} "${text}" is ${read.complaint}.`);
  return read.mm;
}

/** What a table's rows were asked to be, as typed. */
export interface SpanOptions {
  readonly from?: string;
  readonly to?: string;
  readonly step?: string;
}

/** More rows than anyone reads or any plot shows. */
const MOST_ROWS = 10_001;

/**
 * The rows asked for, mm: what is not said is as in `usual`. Both ends are included and rows are evenly spaced, so a
 * step that does not divide the range is made a little smaller; `note` hears of it.
 */
export function spanOf(options: SpanOptions, usual: Span, unit: LengthUnit, note: (words: string) => void): Span {
  const from = options.from === undefined ? usual.from : lengthOf("--from", options.from, unit);
  const to = options.to === undefined ? usual.to : lengthOf("--to", options.to, unit);
  const range = Math.abs(to - from);
  if (range === 0) return { from, to, rows: 1 };
  if (options.step === undefined) return { from, to, rows: usual.rows };
  const step = lengthOf("--step", options.step, unit);
  if (!(step > 0)) {
    throw new Ended(Exit.badInput, `--step "${options.step}" is no step from row to row: give a length above 0.`);
  }
  // A range that was typed in fractions or another unit may be a hair over a whole number of steps.
  const steps = Math.max(1, Math.ceil(range / step - 1e-9));
  if (steps >= MOST_ROWS) {
    throw new Ended(
      Exit.badInput,
      `--step "${options.step}" makes ${steps + 1} rows, more than ${MOST_ROWS}: give a larger step.`,
    );
  }
  if (Math.abs(steps * step - range) > 1e-9 * range) {
    note(`note: ${options.step} does not divide the range; its ${steps + 1} rows are evenly spaced, a little closer.`);
  }
  return { from, to, rows: steps + 1 };
}
