import { nineteenOfTwenty } from "../output/survey.ts";
import { isAngle, nextWords, offBy, sayReading, unreadPoints, unsettledWords } from "../output/surveyWords.ts";
import { degrees } from "../output/words.ts";
import type { SettledSheet } from "../solve/survey/settled.ts";
import { formatLength } from "../vehicle/units/format.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import { sheetLength, sheetStyle } from "./lengths.ts";
import type { SheetOnBench } from "./model.ts";
import { isOld, settledOf } from "./sheetState.ts";
import { type ReadingLine, residualOf, type SurveyLine, type SurveyLines, typedOn } from "./survey.ts";

/** What stands beside a reading: by how much it is off what the others say, and a mark where it does not fit. */
export function echoOfLine(
  line: SurveyLine,
  bench: SheetOnBench,
  { sheet }: SurveyLines,
): { readonly text: string; readonly good: boolean } {
  const settled = settledOf(bench);
  if (line.is !== "reading" || settled === null) return { text: "", good: true };
  const residual = residualOf(settled, line, sheet);
  if (residual === null) return { text: "", good: true };
  if (residual.is === "unchecked") return { text: "?", good: true };
  const { off } = residual;
  const size = isAngle(line.way)
    ? degrees(Math.abs(off), 2)
    : formatLength(Math.abs(off), sheetStyle(settled.surveyed.survey.units));
  const signed = /^0(\.0+)?°?$/.test(size) ? "0" : `${off > 0 ? "+" : "-"}${size}`;
  const cell = isOld(bench) ? `(${signed})` : signed;
  return residual.is === "wrong" ? { text: `X ${cell}`, good: false } : { text: `  ${cell}`, good: true };
}

/** What the marks beside the readings mean, and the same in few words. */
export const legends = [
  "+ reads too much by the others, X does not fit, ? no other checks it",
  "+ too much, X does not fit, ? checked by no other",
];

/** What is said of the line under the cursor: how to answer, what was typed, what the others say; loud where it is wrong. */
export function saidOfLine(
  line: SurveyLine,
  form: SurveyLines,
  bench: SheetOnBench,
  text: string,
): { readonly words: string; readonly isLoud: boolean } {
  if (line.is !== "reading") return { words: "ask" in line ? line.ask : actionWords(line, bench), isLoud: false };
  const typed = typedOn(form.sheet, line, text);
  if (typed === null) return { words: sample, isLoud: false };
  if ("complaint" in typed) return { words: `"${text.trim()}" is ${typed.complaint}.`, isLoud: true };
  const exact = typed.map((value) => sayReading(line.way, value, exactly(form.sheet.survey.units)));
  const others = othersWords(line, bench, form, typed);
  return { words: [`= ${exact.join(" and ")}.`, others ?? ""].join(" ").trim(), isLoud: /^DOES/.test(others ?? "") };
}

const sample = "Type it as the tape shows it: 14 3/8; taken twice 14 3/8, 14 7/16; doubtful 14 3/8 +- 1/4.";

function exactly(units: LengthUnit): (mm: number) => string {
  return (mm) => `${formatLength(mm, units === "in" ? { unit: "in", exact: true } : { unit: "mm" })} ${units}`;
}

/**
 * What the others make of a line's reading, and of what is typed there, as it was last brought together: typing changes
 * nothing of what they say. Null where that is not known.
 */
export function othersWords(
  line: ReadingLine,
  bench: SheetOnBench,
  { sheet }: SurveyLines,
  typed: readonly number[],
): string | null {
  const settled = settledOf(bench);
  const residual = settled === null ? null : residualOf(settled, line, sheet);
  if (settled === null || residual === null) return null;
  if (residual.is === "unchecked") return "No other reading checks this one: a mistake here would not show.";
  const { surveyed, others } = settled;
  const [by, at] = [others[residual.reading], surveyed.readings[residual.reading]];
  if (by === null || by === undefined || at === undefined) return null;
  const { reading } = at;
  const say = (value: number) => sayReading(reading, value, sheetLength(surveyed.survey.units));
  // Heights are read from the table, and brought together from the ground.
  const table = reading.kind === "height" && reading.points.length === 1 ? sheet.bench.table : 0;
  const words = `The others make it ${say(by.value - table)}, give or take ${say(nineteenOfTwenty * by.deviation)}`;
  const isIt = typed.some((value) => Math.abs(value + table - reading.value) < 1e-6);
  const off = offBy(
    reading,
    isIt ? residual.off : (typed.at(-1) ?? 0) + table - by.value,
    sheetLength(surveyed.survey.units),
  );
  if (!isIt) return `${words}: this is ${off}.`;
  if (residual.is === "fitting") return `${words}.`;
  const { or = [] } = surveyed.blunders.find((each) => each.reading === residual.reading) ?? {};
  const instead = or.slice(0, 2).flatMap((each) => surveyed.readings[each]?.reading.name ?? []);
  const which = instead.length === 0 ? "measure it again" : `or this is right and wrong is ${instead.join(" or ")}`;
  return `DOES NOT FIT: reads ${off}; ${which}. ${words}.`;
}

const axes = ["ahead", "out", "up"] as const;

/** How near a line's points are known, a sentence each. */
export function nearnessOf(line: ReadingLine, settled: SettledSheet, brief: boolean): readonly string[] {
  const { surveyed } = settled;
  const { units } = surveyed.survey;
  const style = units === "in" ? ({ unit: "in", decimals: 2 } as const) : ({ unit: "mm" } as const);
  return (line.sets[0] ?? []).flatMap((at) => {
    const point = surveyed.points.find((each) => each.point === at);
    const whole = surveyed.survey.points[at]?.name ?? "";
    const name = brief ? whole.replace(/^left /, "L ").replace(/^right /, "R ") : whole;
    if (point === undefined) return [];
    const near = point.deviations.map((deviation, axis) =>
      deviation === "undetermined"
        ? `${axes[axis]} not settled`
        : `${axes[axis]} within ${formatLength(nineteenOfTwenty * deviation, style)}`,
    );
    const said = `${name}: ${near.join(", ")}`;
    return [brief ? said.replaceAll(" within ", " +-") : `${said} ${units}`];
  });
}

/** What all readings come to, in short; and whether one of them does not fit. */
export function verdictOf(bench: SheetOnBench): { readonly text: string; readonly isWrong: boolean } {
  const { settled } = bench;
  const known = settledOf(bench);
  if (known === null) {
    const complaint = settled !== null && "complaint" in settled.outcome ? settled.outcome.complaint : null;
    const begin = "Begin with the heights: as soon as readings check each other, what each is off stands beside it.";
    return {
      text: settled === null || isOld(bench) ? "Being brought together." : (complaint ?? begin),
      isWrong: false,
    };
  }
  const { surveyed, next, others } = known;
  const { readings, points, blunders, survey } = surveyed;
  const length = sheetLength(survey.units);
  const old = isOld(bench) ? "OLD, being brought together anew: " : "";
  const wrong = blunders.map(({ reading }) => readings[reading]?.reading.name ?? "");
  const checked = others.filter((by) => by !== null && by !== undefined).length;
  const fit =
    wrong.length === 0
      ? fitWords(checked, readings.length)
      : `${wrong.length} ${wrong.length === 1 ? "DOES" : "DO"} NOT FIT (Ctrl-N goes there): ${wrong.join("; ")}`;
  const loose = unsettledWords(surveyed);
  const unread = unreadPoints(surveyed).length;
  const left = [
    ...(loose.length === 0 ? [] : [`${loose.length} not settled (Ctrl-P lists them)`]),
    ...(unread === 0 ? [] : [`${unread} not read`]),
  ];
  const of = `${points.length} points${left.length === 0 ? "" : `, ${left.join(", ")}`}`;
  const forward = nextWords(next, 0, length);
  return {
    text: `${old}${readings.length} readings of ${of}; ${fit}.${forward === null ? "" : ` ${forward}`}`,
    isWrong: wrong.length > 0,
  };
}

/** That no reading is found wrong, and of how many that could have been found. */
function fitWords(checked: number, all: number): string {
  if (checked === 0) return "no reading checks another yet: a wrong one would not show";
  return checked === all ? "none stands out" : `of ${checked} that others check none stands out`;
}

/** What is still to know before a car is made of the sheet, or the sheet written. */
export function actionWords(line: SurveyLine, bench: SheetOnBench): string {
  const settled = settledOf(bench);
  switch (line.is) {
    case "another":
      return "Type two points, such as left eye to right wheel.center: the sheet gets a line for it.";
    case "file":
      return line.key === "file"
        ? "What to call the sheet's file, such as front-sheet: rackwright tape reads it, and o opens it here again."
        : "What to call the new car's file, such as my-car. A file that is there already is never written over.";
    case "write":
      return bench.file === "" ? "First name its file, a line above." : `Enter writes it to ${bench.file}.`;
    case "make": {
      if (bench.car === "") return "First name its file, a line above.";
      const { blunders = [] } = settled?.surveyed ?? {};
      const aside =
        blunders.length === 0
          ? ""
          : ` ${blunders.length} that ${blunders.length === 1 ? "does" : "do"} not fit left out.`;
      return `Enter writes the car's file and opens it.${aside} What was not read is assumed, and marked ~ until you change it.`;
    }
    default:
      return "";
  }
}
