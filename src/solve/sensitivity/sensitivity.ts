import { type Study, studyOf } from "../../measures/study.ts";
import type { Car, LengthUnit } from "../../vehicle/car.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity, QuantityKind } from "../../vehicle/quantity.ts";
import { startingValues } from "../../vehicle/starting/marks.ts";
import { inch } from "../../vehicle/units/length.ts";
import { degree } from "../../vehicle/value.ts";
import { triedOut } from "../adjusters/rebuilt.ts";
import { type Job, jobOf, type Piece } from "../job.ts";
import { type Allowed, allowedBy, type Reading, readings } from "./readings.ts";

/** Which way a quantity was changed: more of it, or less. */
export type Way = "more" | "less";

const ways: readonly Way[] = ["more", "less"];

/** The worse of both ways: the change of larger size. */
export interface Worse {
  readonly way: Way;
  readonly change: number;
  /** Of what the target allows, where 1 is all of it; null for a figure that no target judges. */
  readonly share: number | null;
  /** The travel at which a worst value then is, mm. */
  readonly travel: number | null;
}

/**
 * What a step of a quantity does to one figure, each way: the figure with it less the figure as it is (for a worst value
 * their sizes), mm, rad, percent or rad/mm; null where one of the two cannot be told.
 */
export interface Change extends Readonly<Record<Way, number | null>> {
  readonly reading: Reading;
  readonly allowed: Allowed | null;
  readonly worse: Worse | null;
}

/**
 * How tightly a quantity has to be held: "tight" where a step takes a quarter or more of what a target allows, "free" where
 * it takes less than a twentieth. These shares are common practice, no source.
 */
export type Hold = "tight" | "watch" | "free";

const tight = 1 / 4;
const watch = 1 / 20;

/** What one step of one quantity does to every figure. */
export interface SensitivityRow {
  readonly quantity: Quantity;
  /** mm, rad or a bare number. */
  readonly step: number;
  /** True for a value that nobody has measured. */
  readonly assumed: boolean;
  /** Every figure, in the order of the list of outputs. */
  readonly changes: readonly Change[];
  /** The ways in which the front end no longer goes together, or no longer reaches what a target judges. */
  readonly breaks: readonly Way[];
  /** Of the figures that a target judges the one that changes by the largest share; null where none of them changes. */
  readonly chief: Change | null;
  readonly hold: Hold;
}

/** The step that a builder works to: 1/16 in or 1 mm, a quarter of a degree, half of a bare number. */
export function builderStep(kind: QuantityKind, unit: LengthUnit): number {
  if (kind === "angle") return degree / 4;
  if (kind === "ratio") return 0.5;
  return unit === "in" ? inch / 16 : 1;
}

function isRod({ pair }: Quantity): boolean {
  return pair === "tie-rod.length";
}

/** The quantities of a car that can be a step more or less: what a file leaves out as not known is none of them. */
function sensitiveOf({ form, numbers }: Car): readonly Quantity[] {
  const isGiven = (each: Quantity) => each.absent !== 0 || each.low < 0 || numbers[each.index] !== 0;
  return quantitiesOf(form).filter((each) => isRod(each) || isGiven(each));
}

/** The car with one quantity changed by so much; null where it is no car then. A rod's length changes with both as cut. */
function studyWith({ car, rodLengths }: Study, quantity: Quantity, by: number): Study | null {
  const { id, index, low, high, wheel } = quantity;
  const isCut = isRod(quantity) && wheel !== null;
  const value = (isCut ? rodLengths[wheel] : car.numbers[index]) + by;
  if (value < low || value > high) return null;
  const study = studyOf(
    isCut
      ? triedOut(car, { values: {}, rods: { ...rodLengths, [wheel]: value } })
      : triedOut(car, { values: { [id]: value }, rods: "as they are" }),
  );
  return "refused" in study ? null : study;
}

/** A car with one quantity changed, null where it is no car then; and what is read of it. */
interface Tried {
  readonly study: Study | null;
  readonly values: readonly (number | null)[];
}

function tried(study: Study, quantity: Quantity, by: number): Tried {
  const after = studyWith(study, quantity, by);
  return { study: after, values: readings.map(({ read }) => (after === null ? null : read(after))) };
}

function differenceOf(bySize: boolean, before: number | null, after: number | null): number | null {
  if (before === null || after === null) return null;
  return bySize ? Math.abs(after) - Math.abs(before) : after - before;
}

/** Of two changes the one of larger size. */
function larger({ more, less }: Readonly<Record<Way, number | null>>): Pick<Worse, "way" | "change"> | null {
  if (more !== null && (less === null || Math.abs(more) >= Math.abs(less))) return { way: "more", change: more };
  return less === null ? null : { way: "less", change: less };
}

/** Where all rows begin: what is read of the car as it is, and what of it nobody has measured. */
interface Before {
  readonly car: Car;
  readonly values: readonly (number | null)[];
  readonly assumed: ReadonlySet<string>;
}

function changeOf(
  reading: Reading,
  allowed: Allowed | null,
  both: Readonly<Record<Way, number | null>>,
  after: Readonly<Record<Way, Tried>>,
): Change {
  const worse = larger(both);
  if (worse === null) return { ...both, reading, allowed, worse };
  const { study } = after[worse.way];
  const share = allowed === null ? null : Math.abs(worse.change) / allowed.half;
  const travel = reading.travel === null || study === null ? null : reading.travel(study);
  return { ...both, reading, allowed, worse: { ...worse, share, travel } };
}

function shareOf(change: Change | null): number {
  return change?.worse?.share ?? 0;
}

function rowOf(
  { car, values, assumed }: Before,
  quantity: Quantity,
  step: number,
  after: Readonly<Record<Way, Tried>>,
) {
  const changes = readings.map((reading, i) => {
    const difference = (way: Way) => differenceOf(reading.bySize, values[i], after[way].values[i]);
    const both = { more: difference("more"), less: difference("less") };
    return changeOf(reading, allowedBy(car.sections.targets, reading.id), both, after);
  });
  const breaks = ways.filter((way) =>
    changes.some((each, i) => each.allowed && values[i] !== null && each[way] === null),
  );
  const chief = changes.reduce<Change | null>((most, each) => (shareOf(each) > shareOf(most) ? each : most), null);
  const share = breaks.length > 0 ? Number.POSITIVE_INFINITY : shareOf(chief);
  const hold: Hold = share >= tight ? "tight" : share >= watch ? "watch" : "free";
  return { row: { quantity, step, assumed: assumed.has(quantity.id), changes, breaks, chief, hold }, share };
}

function* rows(study: Study, unit: LengthUnit): Iterator<Piece<readonly SensitivityRow[]>, void> {
  const { car } = study;
  const before: Before = { car, values: readings.map(({ read }) => read(study)), assumed: startingValues(car) };
  const all = sensitiveOf(car);
  const done: { readonly row: SensitivityRow; readonly share: number }[] = [];
  for (const [at, quantity] of all.entries()) {
    const best = done.map(({ row }) => row);
    const step = builderStep(quantity.kind, unit);
    const more = tried(study, quantity, step);
    yield { progress: (at + 0.5) / all.length, best };
    done.push(rowOf(before, quantity, step, { more, less: tried(study, quantity, -step) }));
    done.sort((a, b) => (a.share === b.share ? 0 : b.share - a.share));
    yield { progress: (at + 1) / all.length, best: done.map(({ row }) => row) };
  }
}

/**
 * What a builder's step of each quantity does to each figure, both ways, what must be held most tightly first; alike ones
 * keep the order of the list of inputs. A piece of the job is one way of one quantity. Tie rods that are cut to fit are cut
 * anew to each change; those that are as cut stay so.
 */
export function sensitivityJob(study: Study, unit: LengthUnit): Job<readonly SensitivityRow[]> {
  return jobOf([], rows(study, unit));
}
