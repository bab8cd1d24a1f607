import type { NextReading } from "../solve/survey/next.ts";
import type { Surveyed, SurveyedPoint, SurveyedReading } from "../solve/survey/survey.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import type { SurveyReading } from "../vehicle/survey/readings.ts";
import { formatLength, type LengthStyle } from "../vehicle/units/format.ts";
import type { Json } from "./json.ts";
import { inUnits } from "./numbers.ts";
import { type Cells, table, WIDTH, wrap } from "./table.ts";
import { cautions, degrees, type Length } from "./words.ts";

/** A sheet of readings settled, and what to read next. */
export interface SurveyReport {
  readonly surveyed: Surveyed;
  readonly next: readonly NextReading[];
}

/** So many standard deviations either way hold the truth 19 times of 20 (normal distribution). */
export const nineteenOfTwenty = 1.96;

/** How a reading of each kind is off: too much, too little. */
const ways: Readonly<Record<SurveyReading["kind"], readonly [more: string, less: string]>> = {
  distance: ["long", "short"],
  plumb: ["long", "short"],
  line: ["long", "short"],
  height: ["high", "low"],
  out: ["too far out", "too far in"],
  ahead: ["too far ahead", "too far back"],
  angle: ["too steep", "too flat"],
};

const isAngle = ({ kind }: Pick<SurveyReading, "kind">) => kind === "angle";

function say(reading: SurveyReading, value: number, length: Length): string {
  return isAngle(reading) ? degrees(value, 2) : length(value);
}

/** "3/4 in long": by how much and which way a reading is off, positive too much. */
function offBy(reading: SurveyReading, by: number, length: Length): string {
  const [more, less] = ways[reading.kind];
  return `${say(reading, Math.abs(by), length)} ${by > 0 ? more : less}`;
}

function withLine({ name, line }: SurveyReading): string {
  return line === null ? name : `${name} (line ${line})`;
}

/** The readings that do not fit, each in a sentence or two. */
export function blunderWords({ blunders, readings }: Surveyed, length: Length): readonly string[] {
  return blunders.map(({ reading: at, or }) => {
    const { reading, computed } = readings[at];
    const off = offBy(reading, reading.value - computed, length);
    const beside = `read ${say(reading, reading.value, length)}, they make it ${say(reading, computed, length)}`;
    const others = or.map((each) => withLine(readings[each].reading));
    const which =
      others.length === 0
        ? "Measure it again."
        : `Or another is wrong in its stead, and the sheet cannot tell which: measure again this one and ${others.slice(0, 3).join("; ")}.`;
    return `${withLine(reading)} reads ${off} against all the others: ${beside}. ${which}`;
  });
}

const axes = ["ahead", "out", "up"] as const;

/** What of each point is not settled: "left eye: ahead, up". */
export function unsettledWords({ points, survey }: Surveyed): readonly string[] {
  return points.flatMap(({ point, deviations }) => {
    const loose = axes.filter((_, axis) => deviations[axis] === "undetermined");
    return loose.length === 0 ? [] : [`${survey.points[point].name}: ${loose.join(", ")}`];
  });
}

/** Which points no reading names: they stand in a car as assumed. */
export function unreadPoints({ points, survey }: Surveyed): readonly string[] {
  const read = new Set(points.map(({ point }) => point));
  return survey.points.filter((_, i) => !read.has(i)).map(({ name }) => name);
}

/** What is to be known where nothing tells ahead from behind, in a sentence; none where something does. */
export function facingWords({ facesRead }: Surveyed): readonly string[] {
  return facesRead
    ? []
    : [
        "Nothing on the sheet tells ahead from behind: the mirror image fits as well, and the one that is more like a front end mostly is was taken. Read how far ahead one point is of another.",
      ];
}

/**
 * What to read next, in a sentence or two; null where nothing more can be read. Points that no reading names come first: what
 * settles the others settles none of them.
 */
export function nextWords(next: readonly NextReading[], unread: number, length: Length): string | null {
  const [first, ...more] = next;
  const points = unread === 1 ? "the point that is" : `the ${unread} points that are`;
  const missing =
    unread === 0
      ? null
      : `First ${points} not read at all, unless what is assumed of ${unread === 1 ? "it" : "them"} will do.`;
  if (first === undefined) return missing;
  if (first.settles) {
    const names = more.map(({ name }) => name).join("; ");
    const words =
      more.length === 0
        ? `One more reading settles it: ${first.name}.`
        : `What settles most: ${first.name}; then ${names}.`;
    const others = `Of the others ${first.name} settles most${more.length === 0 ? "" : `; then ${names}`}.`;
    return missing === null ? words : `${missing} ${others}`;
  }
  const { before = 0, after = 0 } = first.spread ?? {};
  const gain = (1 - after / before) * 100;
  const settled = `verything is settled. Of one more reading ${first.name} would gain most: the points, ${length(before)} off on average, come ${gain.toFixed(0)} % nearer.`;
  return missing === null ? `E${settled}` : `${missing} Of the others e${settled}`;
}

/** More scatter than that is hardly chance: the readings are not as good as the sheet says, or a part moved meanwhile. */
const hardly = 0.01;

function scatterWords({ scatter, chance, survey }: Surveyed, length: Length): string {
  const each = `each to ${length(survey.tolerance)} unless the sheet says otherwise, 19 of 20 nearer than that`;
  if (scatter === null) return `${each}. No reading checks another: a wrong one would not show`;
  const size = scatter.toFixed(2);
  const verdict =
    chance !== null && chance < hardly
      ? "more than chance explains: they are coarser than the sheet says, or something moved between two of them"
      : scatter < 0.5
        ? "they are better than the sheet says"
        : "as the sheet says";
  return `${each}. Those that fit scatter ${size} times as much: ${verdict}`;
}

function deviationText(deviation: number | "undetermined", style: LengthStyle): string {
  return deviation === "undetermined" ? "?" : formatLength(nineteenOfTwenty * deviation, style);
}

/** A place as a car file has it: out on the point's own side; of a point in the middle to the driver's left. */
export function outOf(
  { survey }: Pick<Surveyed, "survey">,
  { point, place }: Pick<SurveyedPoint, "point" | "place">,
): number {
  return survey.points[point].wheel === "right" ? -place[1] : place[1];
}

function pointRows(surveyed: Surveyed, unit: LengthUnit): readonly Cells[] {
  const style: LengthStyle = unit === "in" ? { unit, decimals: 2 } : { unit };
  return surveyed.points.map((each) => {
    const values = [each.place[0], outOf(surveyed, each), each.place[2]];
    const { name } = surveyed.survey.points[each.point];
    return [
      `${name}${each.mirrored ? " (mirrored)" : ""}`,
      ...values.flatMap((value, axis) => [formatLength(value, style), deviationText(each.deviations[axis], style)]),
    ];
  });
}

function readingCells({ reading, computed, check }: SurveyedReading, unit: LengthUnit): Cells {
  const style: LengthStyle = unit === "in" ? { unit, decimals: 2 } : { unit };
  const cell = (value: number) => (isAngle(reading) ? degrees(value, 2) : formatLength(value, style));
  const line = reading.line === null ? "" : String(reading.line);
  const remark = check === null ? "X" : check.checked ? "" : "?";
  return [remark, line, reading.name, cell(reading.value), cell(computed), cell(reading.value - computed)];
}

/** How many readings are shown unless all are asked for. */
const worstShown = 6;

/** How badly a reading fits, in its own standard deviations. */
function misfit({ reading, computed }: SurveyedReading): number {
  return Math.abs(reading.value - computed) / reading.sigma;
}

/** A sheet of readings settled, as text. `all` for every reading; else those that fit worst. */
export function surveyText(
  { surveyed, next }: SurveyReport,
  unit: LengthUnit,
  length: Length,
  all: boolean,
): readonly string[] {
  const { survey, readings, blunders, points, free } = surveyed;
  const shown = all ? readings : [...readings].sort((a, b) => misfit(b) - misfit(a)).slice(0, worstShown);
  const unchecked = readings.filter(({ check }) => check !== null && !check.checked).length;
  const unsettled = unsettledWords(surveyed);
  const unread = unreadPoints(surveyed);
  const said = (words: string) => wrap(words, WIDTH, "  ");
  const forward = nextWords(next, unread.length, length);
  return [
    survey.title ?? "Readings with a tape",
    ...wrap(`${readings.length} readings of ${points.length} points, ${scatterWords(surveyed, length)}.`, WIDTH),
    "",
    ...(blunders.length === 0
      ? ["NO READING STANDS OUT against the others."]
      : [
          blunders.length === 1
            ? "ONE READING DOES NOT FIT: set aside, the points are those of all the others"
            : `${blunders.length} READINGS DO NOT FIT: set aside, the points are those of all the others`,
          ...blunderWords(surveyed, length).flatMap(said),
        ]),
    ...(unchecked === 0
      ? []
      : said(
          `${unchecked} ${unchecked === 1 ? "reading is" : "readings are"} checked by no other: a mistake there would not show.`,
        )),
    "",
    ...(unsettled.length === 0 ? [] : ["NOT SETTLED by these readings", ...unsettled.flatMap(said)]),
    ...(free.length === 0
      ? []
      : said(`Where the whole stands is not settled ${free.join(", ")}: it is put as a front end mostly stands.`)),
    ...facingWords(surveyed).flatMap(said),
    ...(unread.length === 0 ? [] : said(`Not read at all, and assumed in a car: ${unread.join(", ")}.`)),
    ...(forward === null ? [] : ["NEXT", ...said(forward)]),
    "",
    `POINTS, ${unit}: out on their own side; each within its +- 19 times of 20`,
    ...table([["point", "ahead", "+-", "out", "+-", "up", "+-"]], pointRows(surveyed, unit), [0]),
    "",
    all ? `READINGS, ${unit}` : `THE ${shown.length} READINGS THAT FIT WORST, ${unit} (--readings shows all)`,
    ...table(
      [["", "line", "reading", "read", "made", "off"]],
      shown.map((each) => readingCells(each, unit)),
      [0, 2],
    ),
    "X set aside   ? checked by no other   made: what the points make of it",
    "off: read less made, too much is positive",
    "",
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

/** The same for other programs: lengths in the reader's units, angles in degrees, deviations one standard deviation. */
export function surveyJson({ surveyed, next }: SurveyReport, unit: LengthUnit): Json {
  const { survey, points, readings, blunders, free, scatter, chance, confidence } = surveyed;
  const told = (value: number) => inUnits(value, "length", unit);
  const toldOf = (reading: SurveyReading, value: number) => inUnits(value, isAngle(reading) ? "angle" : "length", unit);
  const deviation = (each: number | "undetermined") => (each === "undetermined" ? null : told(each));
  return {
    units: { length: unit, angle: "deg" },
    title: survey.title,
    linkage: survey.form.linkage,
    mechanism: survey.form.mechanism,
    tolerance: told(survey.tolerance),
    points: points.map((each) => ({
      name: survey.points[each.point].name,
      ahead: told(each.place[0]),
      out: told(outOf(surveyed, each)),
      up: told(each.place[2]),
      deviations: {
        ahead: deviation(each.deviations[0]),
        out: deviation(each.deviations[1]),
        up: deviation(each.deviations[2]),
      },
      mirrored: each.mirrored,
    })),
    readings: readings.map(({ reading, computed, check }) => ({
      kind: reading.kind,
      name: reading.name,
      line: reading.line,
      read: toldOf(reading, reading.value),
      made: toldOf(reading, computed),
      off: toldOf(reading, reading.value - computed),
      sigma: toldOf(reading, reading.sigma),
      redundancy: check?.redundancy ?? null,
      normalised: check?.checked === true ? check.normalised : null,
      setAside: check === null,
    })),
    blunders: blunders.map(({ reading, or }) => ({
      name: readings[reading].reading.name,
      line: readings[reading].reading.line,
      off: toldOf(readings[reading].reading, readings[reading].reading.value - readings[reading].computed),
      or: or.map((each) => readings[each].reading.name),
    })),
    notSettled: unsettledWords(surveyed),
    free: [...free],
    facesRead: surveyed.facesRead,
    notRead: unreadPoints(surveyed),
    next: next.map(({ kind, name, settles }) => ({ kind, name, settles })),
    scatter,
    chance,
    freedom: confidence.freedom,
  };
}
