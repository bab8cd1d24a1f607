import { carFigures } from "../measures/carFigures.ts";
import type { Study } from "../measures/study.ts";
import { overallWidth } from "../measures/turningCircle.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { labelNames, labelsOf } from "../vehicle/labels.ts";
import { assumedWords } from "./assumed.ts";
import { inputFigure } from "./column.ts";
import type { Json } from "./json.ts";
import { stopsWords } from "./lockWords.ts";
import { noteLines } from "./notes.ts";
import { inUnits, unitsOf, written } from "./numbers.ts";
import { WIDTH, wrap } from "./table.ts";
import {
  ackermannOf,
  bothEndsOneWay,
  bounce,
  cautions,
  inputOffMiddle,
  type Length,
  leastRodAngle,
  lockSaid,
  noTravelWords,
  outOfReach,
  rodLength,
  shortOfIdeal,
  steersBackwards,
  tightestTurn,
  toeAtZero,
  unequalLocks,
  wildToe,
  worstToeAndCure,
} from "./words.ts";

/** The whole car on one page, for reading, with what its checks came to: what the screen shows without its keys. */
export function summaryText(study: Study, checks: string, unit: LengthUnit, length: Length): string[] {
  // A rod is cut closer than a tape's mark.
  const fine: Length = (mm) => (unit === "in" ? `${length(mm)} (${written(mm, "length", unit)})` : length(mm));
  return [
    ...wrap(study.car.title, WIDTH),
    ...labelLines(study),
    ...noteLines(study.car),
    ...loud(steersBackwards(study)),
    ...loud(wildToe(study)),
    ...study.car.warnings.flatMap((warning) => wrap(complaintText(warning), WIDTH, "Warning: ", 2)),
    ...(study.worst.blame === null ? [] : wrap(outOfReach(study, study.worst.blame, length), WIDTH, "Warning: ", 2)),
    ...assumedLines(study),
    "",
    ...block("LOCK", [
      ...sides((wheel) => lockWords(study, wheel, length)),
      unequalLocks(study.locks),
      stopsWords(study),
      inputOffMiddle(study, length),
      tightestTurn(study.locks, unit),
    ]),
    ...block(
      "ACKERMANN",
      sides((wheel) => ackermannWords(study, wheel)),
    ),
    ...block("BUMP", bumpLines(study, length)),
    ...block(
      "DEAD POINT",
      sides((wheel) => deadPointWords(study, wheel, length)),
    ),
    ...block(
      "RODS",
      sides((wheel) => rodWords(study, wheel, fine)),
    ),
    ...block("CHECKS", [checks]),
    ...block("SIZE", [sizeWords(study, length)]),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

/** The same as JSON: every figure of the whole car by its name in the list of figures. */
export function summaryJson(study: Study, unit: LengthUnit): Json {
  const blame = study.worst.blame;
  return {
    units: unitsOf(unit),
    title: study.car.title,
    ...labelsJson(study),
    warnings: study.car.warnings.map(complaintText),
    steersBackwards: study.steersBackwards,
    rods: { left: study.car.form.rods.left, right: study.car.form.rods.right },
    outOfReach:
      blame === null
        ? null
        : {
            wheel: blame.wheel,
            link: blame.link,
            gap: inUnits(blame.gap, "length", unit),
            [study.inputKind]: inUnits(blame.input, inputFigure(study.inputKind), unit),
            travel: inUnits(blame.travel, "length", unit),
          },
    figures: Object.fromEntries(
      carFigures.map(({ id, kind, read }) => {
        const value = read(study);
        return [id, value === null ? null : inUnits(value, kind, unit)];
      }),
    ),
  };
}

/** A complaint with its place in the file: "line 12, column 5: ...". */
function complaintText({ line, column, part, message }: Complaint): string {
  const words = part === "" ? message : `${part}: ${message}`;
  return line === null ? words : `line ${line}${column === null ? "" : `, column ${column}`}: ${words}`;
}

/** "job: Job 12", and so on, of those that the file has. */
function labelLines({ car }: Study): string[] {
  const labels = labelsOf(car);
  const said = labelNames.filter((name) => name !== "title" && labels[name] !== "");
  return said.flatMap((name) => wrap(`${name}: ${labels[name]}`, WIDTH, "", 2));
}

function labelsJson({ car }: Study): { readonly [name: string]: Json } {
  const { job, date, "as-built": asBuilt } = labelsOf(car);
  const orNull = (words: string) => (words === "" ? null : words);
  return { job: orNull(job), date: orNull(date), asBuilt: orNull(asBuilt) };
}

function sizeWords(study: Study, length: Length): string {
  const width = overallWidth(study);
  const over = width === null ? "" : `; ${length(width)} wide over the front tyres`;
  return `track ${length(study.track)}, wheelbase ${length(study.wheelbase)}${over}`;
}

function assumedLines(study: Study): string[] {
  const words = assumedWords(study.car);
  return words === null ? [] : wrap(words, WIDTH, "", 2);
}

function loud(words: string | null): string[] {
  return words === null ? [] : ["", ...wrap(`*** ${words} ***`, WIDTH)];
}

function sides(words: (wheel: Wheel) => string): string[] {
  return [`left: ${words("left")}`, `right: ${words("right")}`];
}

function block(name: string, lines: readonly (string | null)[]): string[] {
  const said = lines.filter((line) => line !== null);
  return [...said.flatMap((line, i) => wrap(line, WIDTH, (i === 0 ? name : "").padEnd(12), 14)), ""];
}

function lockWords(study: Study, wheel: Wheel, length: Length): string {
  const row = study.locks[wheel];
  if (row === null) return "not known: the wheels do not turn";
  if (row.blame !== null) return outOfReach(study, row.blame, length);
  return lockSaid(study, row, wheel);
}

function ackermannWords(study: Study, wheel: Wheel): string {
  const row = study.locks[wheel];
  if (row === null || row.blame !== null || row.turn !== wheel) return "not known";
  return ackermannOf(row) ?? shortOfIdeal(row) ?? "not known: the wheels turn too little to tell";
}

function bumpLines(study: Study, length: Length): readonly (string | null)[] {
  if (!study.suspended) return [noTravelWords(study)];
  const { bounce: worst } = study.worst;
  return [
    ...sides((wheel) => bumpWords(study, wheel, length)),
    worst === null ? null : bounce(worst, length),
    bothEndsOneWay(study),
  ];
}

function bumpWords(study: Study, wheel: Wheel, length: Length): string {
  const worst = study.worst.toe[wheel];
  return worst === null
    ? "not known"
    : worstToeAndCure(worst, study.car.form.rods[wheel], study.innerEnds[wheel], length);
}

function deadPointWords(study: Study, wheel: Wheel, length: Length): string {
  const least = study.worst.rodAngle[wheel];
  return least === null ? "not known" : leastRodAngle(study, least, length);
}

function rodWords(study: Study, wheel: Wheel, length: Length): string {
  const toe = toeAtZero(study, wheel);
  return `${rodLength(study, wheel, length)}, eye to eye${toe === null ? "" : `; ${toe} with the wheels straight`}`;
}
