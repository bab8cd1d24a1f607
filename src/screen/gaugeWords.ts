import type { Study } from "../measures/study.ts";
import { borne } from "../output/borne.ts";
import { readingWords } from "../output/matchWords.ts";
import { unitName } from "../output/numbers.ts";
import type { Length } from "../output/words.ts";
import type { Prediction } from "../solve/match/predictions.ts";
import { formatLength } from "../vehicle/units/format.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import type { GaugeRow } from "./gaugeRows.ts";
import { type GaugeLine, givenBy, typedOn, unitsOf } from "./gauges.ts";
import type { Answers } from "./model.ts";

/** A length of the form in a row's name: to the last place, in the unit of what was read. */
export function rowLength(units: LengthUnit): Length {
  return (mm) => `${formatLength(mm, units === "in" ? { unit: "in", exact: true } : { unit: "mm" })} ${units}`;
}

/** A row's name on the form, which the report of the match has too. */
export function nameOf({ blank, wheel }: GaugeRow, input: "rack" | "column", units: LengthUnit): string {
  return readingWords({ reading: blank, wheel }, input, rowLength(units));
}

/** What stands beside a reading, and the same in few words. */
export const legends = [
  "+ read more than this car gives, - less, ! by more than its gauge is off",
  "+ more than this car gives, - less, ! beyond its gauge",
];

/** How far a reading is from what the car gives, and whether that is more than its gauge is off by. */
function offOf({ read, tolerance }: Prediction, given: number): { readonly by: number; readonly isFar: boolean } {
  return { by: read - given, isFar: Math.abs(read - given) > tolerance };
}

/** "31.3" and, of what was read, "+0.2"; a mark where that is more than the gauge is off by. */
export function echoOfLine(
  study: Study,
  row: GaugeRow,
  answers: Answers,
  isWide: boolean,
): { readonly text: string; readonly good: boolean } {
  const units = unitsOf(answers);
  const { kind, value } = givenBy(study, row);
  const typed = typedOn(study, row, answers);
  const say = (mm: number, doubt = row.blank.tolerance) => borne(mm, doubt, kind, units);
  if (typed !== null && "complaint" in typed) return { text: isWide ? "not understood" : "not read", good: false };
  if (value === null) return { text: isWide ? "cannot get there" : "cannot", good: typed === null };
  const unit = isWide ? ` ${unitName(kind, units)}` : "";
  if (typed === null) return { text: `${say(value)}${unit}`, good: true };
  const { by, isFar } = offOf(typed, value);
  const size = say(Math.abs(by), typed.tolerance);
  const way = Number(size) === 0 ? "" : by > 0 ? "+" : "-";
  return { text: `${say(value, typed.tolerance).padEnd(6)} ${way}${size}${unit}${isFar ? " !" : ""}`, good: !isFar };
}

/** The same in a sentence. */
export function besideWords(
  study: Study,
  row: GaugeRow,
  answers: Answers,
): { readonly text: string; readonly good: boolean } {
  const units = unitsOf(answers);
  const { kind, value } = givenBy(study, row);
  const typed = typedOn(study, row, answers);
  const text = (answers[row.key] ?? "").trim();
  if (typed !== null && "complaint" in typed) return { text: `"${text}": ${typed.complaint}.`, good: false };
  if (value === null) return { text: "This car cannot be brought there: leave it empty, or look again.", good: false };
  const doubt = typed?.tolerance ?? row.blank.tolerance;
  const say = (mm: number) => `${borne(mm, doubt, kind, units)} ${unitName(kind, units)}`;
  if (typed === null) return { text: `This car gives ${say(value)}.`, good: true };
  const { by, isFar } = offOf(typed, value);
  const more = by > 0 ? "more" : "less";
  const gauge = `its gauge is good to ${say(doubt)}`;
  return {
    text: `Read ${say(typed.read)}; this car gives ${say(value)}: ${say(Math.abs(by))} ${more}, ${isFar ? `! MORE THAN A GAUGE IS OFF BY: ${gauge}` : `and ${gauge}`}.`,
    good: !isFar,
  };
}

/** What is asked on a line, and how to answer it. */
export function askOf({ blank, gauge }: GaugeRow, { inputKind, inputLeftTurns }: Study, answers: Answers): string {
  const units = unitsOf(answers);
  const length = units === "in" ? "14 3/8" : "365";
  const doubtful = `Doubtful: +- behind it, how far it may be off.`;
  switch (blank.kind) {
    case "turn": {
      const how =
        blank.stood === "lock"
          ? `Turn to the ${blank.turn} lock, against its stop.`
          : blank.stood === null
            ? "Turn until the left wheel stands as the line says."
            : `Set the ${inputKind} as far ${blank.stood > 0 ? "left" : "right"} of its middle as the line says${inputLeftTurns === null ? "" : `: the car then turns ${blank.turn}`}.`;
      return `${how} Turn plates zeroed with the wheels straight, at ride height; degrees toward the turn, 17 1/2, or over a board, 7 1/4 over 24. ${doubtful}`;
    }
    case "bump":
      return `The wheel that far from ride height, steering straight ahead. How much its toe changed from ride height, toe-in positive: degrees, or over a board, 1/32 over 24. ${doubtful}`;
    case "toe":
      return `Straight ahead, at ride height, toe-in positive: 1/8 total across the tyres, or 0.1 deg a wheel. ${doubtful}`;
    case "camber":
      return `Straight ahead, at ride height, out at the top positive: degrees. ${doubtful}`;
    case "caster":
      return `Back at the top positive: degrees. ${doubtful}`;
    case "rod":
      return `The tie rod from eye to eye: ${length}. ${doubtful}`;
    case "straight":
      return `How far the ${inputKind} stands from its middle with the wheels straight: ${inputKind === "rack" ? (units === "in" ? "1/8" : "3") : "5"} left, or 0. ${doubtful}`;
    case "between":
      return `Between both centres, straight ahead, at ride height: ${length}. ${gauge === "lengths" ? doubtful : ""}`;
  }
}

/** What a line that is no reading does. */
export function doesWords(is: Exclude<GaugeLine["is"], "reading">): string {
  switch (is) {
    case "match":
      return "Enter lays all readings beside the car as it is here: which point is most likely off and by how much, which reading to take again, what they cannot tell. Nothing is changed before you take it. Geometry only, not strength.";
    case "file":
      return "What to call the file that keeps these readings, such as as-built. A file that is there is never written over.";
    case "write":
      return "Enter writes the readings to that file: rackwright match reads it, and so does this form.";
    case "from":
      return "A file of readings, or the example as-built: its name, then Enter. What stands here now comes back by Ctrl-R.";
  }
}
