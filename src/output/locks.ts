import { carFigures } from "../measures/carFigures.ts";
import type { FigureKind } from "../measures/figure.ts";
import type { LockShare, LockShares } from "../measures/lockShares.ts";
import type { Study } from "../measures/study.ts";
import type { Remedies } from "../solve/remedies/remedies.ts";
import type { NoRemedy } from "../solve/remedies/remedy.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { roundedToSum } from "./apportion.ts";
import type { Json } from "./json.ts";
import { causeWords, stopWords, threadWords } from "./lockWords.ts";
import { inUnits, unitName, unitsOf, written } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { deadPoint, degrees, fixed, inputOffMiddle, type Length, lockSaid, outOfReach } from "./words.ts";

/** What a report on a car's locks is made from. */
export interface LockReport {
  readonly study: Study;
  readonly shares: LockShares;
  readonly remedies: Remedies;
}

const keys = ["inner", "outer", "turnRadius"] as const;
type Key = (typeof keys)[number];

const kinds: Readonly<Record<Key, FigureKind>> = { inner: "angle", outer: "angle", turnRadius: "length" };

function decimals(key: Key, unit: LengthUnit): number {
  return key === "turnRadius" ? (unit === "in" ? 1 : 0) : 2;
}

/** What the shares can be told of. */
export const sharedBy = ["inner", "outer", "turnRadius"] as const satisfies readonly Key[];

const sharedNames = { inner: "Inner locks", outer: "Outer locks", turnRadius: "Turning radius" } as const;

/** The shares of one difference in one sentence: "Inner locks, left less right -2.1°: ...". */
export function shareSentence(
  { study, shares }: Omit<LockReport, "remedies">,
  length: Length,
  key: Key = "inner",
  unit: LengthUnit = study.car.form.units,
): string {
  const told = shares.shares.map((share) => share[key]).filter((value): value is number => value !== null);
  if (shares.difference[key] === null || told.length < shares.shares.length)
    return "Why the locks differ cannot be told: an end of the steering is out of reach";
  const digits = key === "turnRadius" ? decimals(key, unit) : 1;
  const rounded = roundedToSum(
    told.map((value) => inUnits(value, kinds[key], unit)),
    digits,
  );
  const say = (value: number) => `${fixed(value, digits)}${key === "turnRadius" ? ` ${unit}` : "°"}`;
  const parts = shares.shares.map((share, i) => `${causeWords(study, share, length)} ${say(rounded[i] ?? 0)}`);
  const total = rounded.reduce((sum, value) => sum + value, 0);
  return `${sharedNames[key]}, left less right ${say(total)}: ${parts.join("; ")}`;
}

/** One column of shares in the reader's units, rounded so that it adds up; dashes where it cannot be told. */
function column(shares: readonly LockShare[], key: Key, unit: LengthUnit): readonly string[] {
  const values = shares.map((share) => share[key]);
  const told = values.filter((value): value is number => value !== null);
  if (told.length < values.length) return [...values.map(() => "-"), "-"];
  const rounded = roundedToSum(
    told.map((value) => inUnits(value, kinds[key], unit)),
    decimals(key, unit),
  );
  const total = rounded.reduce((sum, value) => sum + value, 0);
  return [...rounded, total].map((value) => fixed(value, decimals(key, unit)));
}

/** The shares as a table, left lock less right, with their sum below. */
export function shareTable(
  { study, shares }: Omit<LockReport, "remedies">,
  unit: LengthUnit,
  length: Length,
): string[] {
  const columns = keys.map((key) => column(shares.shares, key, unit));
  const names = [...shares.shares.map((share) => causeWords(study, share, length)), "left lock less right lock"];
  const rows = names.map((name, i) => [name, ...columns.map((cells) => cells[i] ?? "-")]);
  return table(
    [
      ["", "inner", "outer", "turn radius"],
      ["share of", "deg", "deg", unitName("length", unit)],
    ],
    rows,
    [0],
  );
}

/** What a remedy is judged by, in a row: the heading's lines, the figure, and the decimals that it is worth. */
export const judged: readonly (readonly [head: readonly [string, string], id: string])[] = [
  [["inner", "L"], "leftLockInner"],
  [["", "R"], "rightLockInner"],
  [["radius", "L"], "leftLockTurnRadius"],
  [["", "R"], "rightLockTurnRadius"],
  [["Acker", "L"], "leftLockAckermann"],
  [["-mann", "R"], "rightLockAckermann"],
  [["bounce", "steer"], "worstBounceSteer"],
  [["dead", "pt L"], "leastRodAngleLeft"],
  [["", "R"], "leastRodAngleRight"],
];

export function judgedCell(study: Study, id: string, unit: LengthUnit): string {
  const figure = carFigures.find((each) => each.id === id);
  const value = figure?.read(study) ?? null;
  if (figure === undefined || value === null) return "-";
  return fixed(inUnits(value, figure.kind, unit), figure.kind === "angle" ? 1 : 0);
}

/** Now and after each remedy, a row each. */
export function remedyTable({ study, remedies }: LockReport, unit: LengthUnit): string[] {
  const row = (name: string, of: Study) => [name, ...judged.map(([, id]) => judgedCell(of, id, unit))];
  return table(
    [
      ["", ...judged.map(([head]) => head[0])],
      ["deg, %", ...judged.map(([head]) => head[1])],
      [unitName("length", unit), ...judged.map(() => "")],
    ],
    [row("as it is", study), ...remedies.offered.map((each, i) => row(`${i + 1} ${each.key}`, each.after))],
    [0],
  );
}

function lockLine(study: Study, wheel: "left" | "right", length: Length): string {
  const row = study.locks[wheel];
  const name = wheel === "left" ? "Left lock   " : "Right lock  ";
  if (row === null) return `${name}not known: the wheels do not turn`;
  if (row.blame !== null) return `${name}${outOfReach(study, row.blame, length)}`;
  return `${name}${lockSaid(study, row, wheel)}; ended by ${stopWords(study, wheel)}`;
}

/** What this car cannot have or does not need, those of one reason together: "An extender on one end of the rack: ...". */
export function reasonsNot(not: readonly NoRemedy[]): readonly string[] {
  const reasons = [...new Set(not.map(({ why }) => why))];
  const names = (why: string) => not.filter((each) => each.why === why).map(({ name }) => name);
  return reasons.map((why) => `${names(why).join("; ")}: ${why}.`);
}

function notHere(not: readonly NoRemedy[]): string[] {
  const reasons = reasonsNot(not);
  return reasons.length === 0 ? [] : ["Not here", ...reasons.flatMap((words) => wrap(words, WIDTH, "  ", 4))];
}

/** True where neither the locks of either wheel nor the circles differ by anything that could be measured. */
export function nothingDiffers({ locks: { difference } }: Study): boolean {
  const { inner, outer, turnRadius } = difference;
  const isNothing = (angle: number | null) => angle !== null && degrees(Math.abs(angle)) === degrees(0);
  return isNothing(inner) && isNothing(outer) && turnRadius !== null && Math.abs(turnRadius) < 1;
}

/** Why a car's locks are unequal and what would help, for reading. */
export function locksText(report: LockReport, unit: LengthUnit, length: Length, fine: Length): string[] {
  const { study, remedies } = report;
  const rods = (of: Study) => `rods ${fine(of.rodLengths.left)} left, ${fine(of.rodLengths.right)} right`;
  return [
    ...wrap(study.car.title, WIDTH),
    "",
    lockLine(study, "left", length),
    lockLine(study, "right", length),
    ...wrap(inputOffMiddle(study, length), WIDTH, "            "),
    "",
    "Why they differ: each cause's share of left lock less right lock",
    "",
    ...shareTable(report, unit, length),
    "",
    ...wrap(
      "A cause's share is the mean of what its going changes, over every order in which the causes can be taken away: so the shares add up. Degrees; minus: the left lock is smaller.",
      WIDTH,
    ),
    "",
    remedies.offered.length === 0 ? "What would help: nothing has to" : "What would help, best first",
    "",
    ...remedies.offered.flatMap((each, i) => [
      ...wrap(`${each.title(fine)}.`, WIDTH, `${i + 1} ${each.key}: `, 4),
      ...[deadPoint(each.after), each.caution].flatMap((words) => (words === null ? [] : wrap(words, WIDTH, "    "))),
      ...wrap(each.tradeOff, WIDTH, "    "),
      ...wrap(`${rods(each.after)}.`, WIDTH, "    "),
      ...wrap(threadWords(each.after, length) ?? "", WIDTH, "    ").filter((line) => line.trim() !== ""),
    ]),
    ...(remedies.offered.length === 0 ? [] : ["", ...remedyTable(report, unit), ""]),
    ...notHere(remedies.not),
  ];
}

/** The same as JSON, numbers not rounded. */
export function locksJson({ study, shares, remedies }: LockReport, unit: LengthUnit): Json {
  const say: Length = (mm) => `${written(mm, "length", unit)} ${unit}`;
  const part = (of: { readonly [K in Key]: number | null }) =>
    Object.fromEntries(
      keys.map((key) => {
        const value = of[key];
        return [key, value === null ? null : inUnits(value, kinds[key], unit)];
      }),
    );
  const figures = (of: Study) =>
    Object.fromEntries(
      carFigures.map(({ id, kind, read }) => {
        const value = read(of);
        return [id, value === null ? null : inUnits(value, kind, unit)];
      }),
    );
  return {
    units: unitsOf(unit),
    difference: part(shares.difference),
    endedBy: { left: stopWords(study, "left"), right: stopWords(study, "right") },
    shares: shares.shares.map((share) => ({ cause: share.cause, ...part(share) })),
    now: figures(study),
    remedies: remedies.offered.map((each) => ({
      key: each.key,
      what: each.title(say),
      tradeOff: each.tradeOff,
      caution: each.caution,
      threads: threadWords(each.after, say),
      needs: each.needs,
      figures: figures(each.after),
      text: each.text,
    })),
    not: remedies.not.map(({ key, name, why }) => ({ key, name, why })),
  };
}
