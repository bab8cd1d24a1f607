import type { FigureWords } from "../measures/figure.ts";
import type { Count } from "../solve/tolerance/chance.ts";
import type { Held } from "../solve/tolerance/held.ts";
import type { Judge } from "../solve/tolerance/judged.ts";
import type { Carrier, Tolerance } from "../solve/tolerance/result.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import type { QuantityKind } from "../vehicle/quantity.ts";
import { sayLength } from "../vehicle/units/format.ts";
import { degrees, fixed, type Length, straightAheadWords } from "./words.ts";

/** A tolerance for a reader: "1/16 in", "1/64 in", "0.5 mm", "0.25°"; nothing is "exactly". */
export function toleranceWords(tolerance: number, kind: QuantityKind, unit: LengthUnit): string {
  if (tolerance === 0) return "exactly";
  if (kind === "angle") return degrees(tolerance, 2);
  return sayLength(tolerance, unit === "in" ? { unit, exact: true } : { unit }).replace(".0 ", " ");
}

/** "46", "under 1", "over 99": how many of 100; a chance is never told as certain that is not. */
export function ofHundred({ met, of }: Count): string {
  if (of === 0) return "-";
  const share = (100 * met) / of;
  if (met > 0 && share < 0.5) return "under 1";
  if (met < of && share >= 99.5) return "over 99";
  return fixed(share, 0);
}

const short: Readonly<Partial<Record<Judge["id"], string>>> = {
  range: "Goes together everywhere",
  "ackermann-least": "Ackermann, lesser lock",
  "ackermann-most": "Ackermann, greater lock",
};

/** A limit's or a target's name as a table has room for it. */
export function judgeName({ id, label }: Judge): string {
  return short[id] ?? label;
}

/** A value of a limit or a target for a reader, unit included. */
export function judgedValue({ kind }: Judge, value: number | null, length: Length): string {
  if (value === null) return "-";
  if (kind === "length") return value < 0 ? `-${length(-value)}` : length(value);
  if (kind === "angle") return degrees(value);
  return kind === "percent" ? `${fixed(value, 0)} %` : fixed(value, 2);
}

/** "max 1.0°", "min 20.0°"; nothing for what is either so or not. */
export function endWords(judge: Judge, end: number, length: Length): string {
  if (judge.id === "range") return "";
  return `${judge.bad === "under" ? "min" : "max"} ${judgedValue(judge, end, length)}`;
}

/** "Tie-rod tab, ahead, each side". */
export function carrierName({ label, sides }: Pick<Carrier, "label" | "sides">): string {
  return sides === null ? label : `${label}, ${sides === "both" ? "each side" : sides}`;
}

/** "62 %": how much of a spread is carried. */
export function carriedWords({ share }: Pick<Carrier, "share">): string {
  return `${fixed(100 * share, 0)} %`;
}

/** Less than this of a spread is not worth a jig. */
const WORTH = 0.02;

/** The sizes that carry most of a spread, three at most: "Rack, straight ahead 62 %; ...". */
export function carrierWords(carriers: readonly Carrier[]): string {
  const worth = carriers.slice(0, 3).filter(({ share }) => share >= WORTH);
  if (worth.length === 0) return "no size alone";
  return worth.map((each) => `${carrierName(each)} ${carriedWords(each)}`).join("; ");
}

/** How a part is held more closely than a tape holds it; common practice, no source. The first that begins or ends so. */
const ways: readonly (readonly [pattern: RegExp, how: string])[] = [
  [/straight-ahead$/, straightAheadWords],
  [
    /^(rack|steering-plate|relay)\./,
    "bolt it up on a dummy mount and measure it from the centreline before it is welded",
  ],
  [/^(tie-rod|wheel|king-pin)\.|\.joint\.|^strut\.bottom/, "weld both uprights in one fixture"],
  [/\.(front|rear|pivot|brace|top)\./, "locate both sides' brackets on the frame with one plate or bar"],
];

/** What to do about a size: "Rack, straight ahead: within 1/32 in instead of 1/16 in (…)". */
export function jigWords(carrier: Carrier, unit: LengthUnit): string {
  const { pair, kind, tolerance } = carrier;
  const said = (of: number) => toleranceWords(of, kind, unit);
  const how = ways.find(([pattern]) => pattern.test(pair))?.[1];
  return `${carrierName(carrier)}: hold it within ${said(tolerance / 2)} instead of ${said(tolerance)}${how === undefined ? "" : `: ${how}`}.`;
}

/** What is set again in every build. */
export function setAgainWords({
  setAgain: { arms, rodsWereCut },
  study,
}: Pick<Tolerance, "setAgain" | "study">): string {
  const rods = rodsWereCut
    ? "the tie rods, as cut now, are set to the drawn toe with the steering where the wheels are straight now"
    : "the tie rods are cut and set to the drawn toe";
  const welded = study.car.sections.tolerances?.arms === "welded";
  const why = welded ? "the file says that the arms are welded" : "this linkage has nothing to set them by";
  return arms === null
    ? `Set again in every build: ${rods}. Camber and caster stay as they come out: ${why}.`
    : `Set again in every build: ${rods}; ${arms.what} as drawn by ${arms.by}.`;
}

/** "lengths 1/16 in, angles 0.25° (common practice, no source); from the file: Tie-rod tab, ahead 1/32 in". */
export function heldWords(held: readonly Held[], unit: LengthUnit): string {
  const of = (each: Held) => toleranceWords(each.tolerance, each.quantity.kind, unit);
  const usual = (kind: QuantityKind) =>
    held.find((each) => each.from === "common practice" && each.quantity.kind === kind);
  const [length, angle] = [usual("length"), usual("angle")];
  const common = [
    ...(length === undefined ? [] : [`lengths ${of(length)}`]),
    ...(angle === undefined ? [] : [`angles ${of(angle)}`]),
  ];
  const own = new Map(held.filter(({ from }) => from === "file").map((each) => [each.quantity.pair, each]));
  const byText = new Map<string, string[]>();
  for (const each of own.values()) byText.set(of(each), [...(byText.get(of(each)) ?? []), each.quantity.label]);
  const file = [...byText].map(([text, labels]) =>
    labels.length > 4 ? `${text} for ${labels.length} sizes` : `${text} for ${labels.join(", ")}`,
  );
  return [
    ...(common.length === 0 ? [] : [`${common.join(", ")} (common practice, no source)`]),
    ...(file.length === 0 ? [] : [`from the file: ${file.join("; ")}`]),
  ].join("; ");
}

/** Shorter words for what a table has no room for. */
const shorter: readonly (readonly [RegExp, string])[] = [
  [/^(L|R)(?:eft|ight) (lock|wheel), /, "$1 $2, "],
  [/^(L|R)(?:eft|ight) tie rod, /, "$1 rod, "],
  [/, (l|r)(?:eft|ight) wheel$/, ", $1"],
  [/inner short of ideal/, "short of ideal"],
  [/(inner|outer) wheel$/, "$1"],
  [/share of ideal inner turn/, "of ideal inner"],
  [/worst toe across the tyre/, "toe across tyre"],
  [/turning radius$/, "radius"],
  [/worst toe change/, "worst toe"],
  [/ off the middle| off its middle/, " off middle"],
  [/Bump steer here/, "Bump steer"],
  [/King-pin inclination/, "King-pin incl."],
  [/least rod-to-arm angle/, "rod-to-arm"],
  [/ over the front tyres|, straight ahead/, ""],
  [/, left less right/, ", L less R"],
];

/** A figure's label as a table has room for it: "L lock, inner", "Caster, r". */
export function briefLabel({ label }: FigureWords): string {
  return shorter.reduce((text, [from, to]) => text.replace(from, to), label);
}
