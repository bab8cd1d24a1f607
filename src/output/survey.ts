import type { NextReading } from "../solve/survey/next.ts";
import type { Surveyed, SurveyedPoint, SurveyedReading } from "../solve/survey/survey.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import type { SurveyReading } from "../vehicle/survey/readings.ts";
import { formatLength, type LengthStyle } from "../vehicle/units/format.ts";
import type { Json } from "./json.ts";
import { inUnits } from "./numbers.ts";
import {
  blunderWords,
  facingWords,
  isAngle,
  nextWords,
  scatterWords,
  unreadPoints,
  unsettledWords,
} from "./surveyWords.ts";
import { type Cells, table, WIDTH, wrap } from "./table.ts";
import { cautions, degrees, type Length } from "./words.ts";

/** A sheet of readings settled, and what to read next. */
export interface SurveyReport {
  readonly surveyed: Surveyed;
  readonly next: readonly NextReading[];
}

/** So many standard deviations either way hold the truth 19 times of 20 (normal distribution). */
export const nineteenOfTwenty = 1.96;

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

/** From this width on points have their names in full in a table. */
const fullNames = 62;

function pointTable(surveyed: Surveyed, unit: LengthUnit, width: number): readonly string[] {
  const style: LengthStyle = unit === "in" ? { unit, decimals: 2 } : { unit };
  const rows = surveyed.points.map((each): Cells => {
    const values = [each.place[0], outOf(surveyed, each), each.place[2]];
    const { name } = surveyed.survey.points[each.point];
    const short = width < fullNames ? name.replace(/^left /, "L ").replace(/^right /, "R ") : name;
    return [
      `${short}${each.mirrored ? " (mirrored)" : ""}`,
      ...values.flatMap((value, axis) => [formatLength(value, style), deviationText(each.deviations[axis], style)]),
    ];
  });
  return table([["point", "ahead", "+-", "out", "+-", "up", "+-"]], rows, [0]);
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

/** What a sheet of readings comes to, in lines of so many columns: what does not fit, what is not settled, every point. */
export function surveyVerdict(
  { surveyed, next }: SurveyReport,
  unit: LengthUnit,
  length: Length,
  width: number,
): readonly string[] {
  const { survey, readings, blunders, points, free } = surveyed;
  const unchecked = readings.filter(({ check }) => check !== null && !check.checked).length;
  const unsettled = unsettledWords(surveyed);
  const unread = unreadPoints(surveyed);
  const said = (words: string) => wrap(words, width, "  ");
  const forward = nextWords(next, unread.length, length);
  return [
    ...wrap(survey.title ?? "Readings with a tape", width),
    ...wrap(`${readings.length} readings of ${points.length} points, ${scatterWords(surveyed, length)}.`, width),
    "",
    ...(blunders.length === 0
      ? ["NO READING STANDS OUT against the others."]
      : [
          ...wrap(
            blunders.length === 1
              ? "ONE READING DOES NOT FIT: set aside, the points are those of all the others"
              : `${blunders.length} READINGS DO NOT FIT: set aside, the points are those of all the others`,
            width,
          ),
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
    ...wrap(`POINTS, ${unit}: out on their own side; each within its +- 19 times of 20`, width),
    ...pointTable(surveyed, unit, width),
  ];
}

/** A sheet of readings settled, as text. `all` for every reading; else those that fit worst. */
export function surveyText(report: SurveyReport, unit: LengthUnit, length: Length, all: boolean): readonly string[] {
  const { readings } = report.surveyed;
  const shown = all ? readings : [...readings].sort((a, b) => misfit(b) - misfit(a)).slice(0, worstShown);
  return [
    ...surveyVerdict(report, unit, length, WIDTH),
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
