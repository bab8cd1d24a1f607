import { type Blame, blameWords } from "../../measures/blame.ts";
import type { LeastRodAngle } from "../../measures/leastRodAngle.ts";
import type { SteerRow } from "../../measures/steerTable.ts";
import type { Study } from "../../measures/study.ts";
import type { WorstToe } from "../../measures/worstToe.ts";
import {
  bounce,
  bumpCure,
  bumpMove,
  degrees,
  fixed,
  type Grade,
  innerEndBrief,
  keepsToe,
  type Length,
  lockSaid,
  offMiddle,
  rodAngleGrade,
  rodLength,
  rodsPutOff,
  travelPlace,
} from "../../output/words.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Standing, standingTo, type TargetName, targetOf } from "../../vehicle/sections/targets.ts";
import { atTheEnd, inputEnd, inputSize } from "../here.ts";
import { level, line, type Mark, needle } from "./gauge.ts";

/** How much a value matters: said in words in the cell as well. */
export type Tone = "plain" | "warn" | "bad";

/** One thing said about one side, with a gauge where a picture helps. */
export interface Cell {
  /** From the longest way of saying it to the shortest: the first that fits is shown. */
  readonly texts: readonly string[];
  readonly tone: Tone;
  /** What the last change of the car did to it, such as "+0.2"; "" where it did nothing. */
  readonly change: string;
  /** Each number of the cell with its change beside it, for where there is room for more than the chief one's change. */
  readonly beside?: readonly Beside[];
  readonly gauge: { readonly low: number; readonly high: number; readonly marks: readonly (Mark | null)[] } | null;
}

/** A number in words, and what the last change did to it; "" where it did nothing. */
export interface Beside {
  readonly text: string;
  readonly change: string;
}

/** A row of the five numbers: a cell for each side, or one for the car. */
export interface ReadoutRow {
  /** The number's name, on its first row. */
  readonly label: string;
  /** What is measured, below the name. */
  readonly caption: string;
  /** Columns that its words are given, so that what follows them stands in one column. */
  readonly slot: number;
  readonly cells: readonly [Cell, Cell] | readonly [Cell];
}

/** Columns of "outer 24.9°, inner 31.8°". */
const lockSlot = 24;

const degree = Math.PI / 180;

const tonesOf = { good: "plain", doubtful: "warn", bad: "bad" } as const satisfies Record<Standing, Tone>;

/** How a value stands to a target of the car, as a tone. */
function toneFor({ car }: Study, name: TargetName, value: number): Tone {
  return tonesOf[standingTo(targetOf(car.sections.targets, name), value)];
}

/** A target's two levels as marks on a gauge, on one side of nothing or on both. */
export function levels({ car }: Study, name: TargetName, both = false): readonly Mark[] {
  const { warn, bad } = targetOf(car.sections.targets, name);
  return [warn, bad].flatMap((at) => [at, ...(both ? [-at] : [])]).map((at) => ({ at, glyph: level }));
}

function cell(texts: readonly string[], tone: Tone = "plain", gauge: Cell["gauge"] = null, change = ""): Cell {
  return { texts, tone, change, gauge };
}

/** A change in words, signed; "" where there is none that can be seen, or nothing to compare with. */
function changeOf(now: number | null, before: number | null | undefined, write: (size: number) => string): string {
  if (now === null || before === null || before === undefined) return "";
  const size = write(Math.abs(now - before));
  return size === write(0) ? "" : `${now > before ? "+" : "-"}${size}`;
}

/**
 * The five numbers of a front end that stands, as rows of cells: nothing is drawn yet.
 * `before` is the front end before the last change, for saying what that did.
 */
export function readout(study: Study, before: Study | null, length: Length, cut: CutLength): readonly ReadoutRow[] {
  const both = (read: (wheel: Wheel) => Cell): readonly [Cell, Cell] => [read("left"), read("right")];
  return [
    { label: "LOCK", caption: "", slot: lockSlot, cells: both((wheel) => lock(study, before, wheel, length)) },
    { label: "", caption: "balance", slot: 0, cells: balanceCells(study, before, length) },
    {
      label: "ACKERMANN",
      caption: "",
      slot: 7,
      cells: both((wheel) => ackermann(study, study.locks[wheel], before?.locks[wheel])),
    },
    {
      label: "",
      caption: "inner wheel",
      slot: 0,
      cells: both((wheel) => shortOfIdeal(study.locks[wheel], before?.locks[wheel])),
    },
    ...(study.suspended ? bumpRows(study, before, length) : [noBump(study)]),
    {
      label: "DEAD POINT",
      caption: "",
      slot: 15,
      cells: both((wheel) => rodAngle(study, study.worst.rodAngle[wheel], before?.worst.rodAngle[wheel])),
    },
    { label: "", caption: "rod to arm", slot: 0, cells: both((wheel) => rodAnglePlace(study, wheel, length)) },
    { label: "RODS", caption: "", slot: 0, cells: both((wheel) => rodCell(study, before, wheel, cut)) },
  ];
}

const noBump = ({ noTravel }: Study): ReadoutRow => ({
  label: "BUMP",
  caption: "",
  slot: 0,
  cells: [
    cell([
      noTravel === "assumed"
        ? "blank until arms and travel are measured: they are assumed"
        : "no suspension: the wheels have no travel",
    ]),
  ],
});

function bumpRows(study: Study, before: Study | null, length: Length): readonly ReadoutRow[] {
  const { toe } = study.worst;
  const was = before?.worst.toe;
  return [
    {
      label: "BUMP",
      caption: "",
      slot: 17,
      cells: [worstToe(study, toe.left, was?.left, length), worstToe(study, toe.right, was?.right, length)],
    },
    {
      label: "",
      caption: "across tyre",
      slot: 0,
      cells: [worstToePlace(study, "left", length), worstToePlace(study, "right", length)],
    },
    { label: "", caption: "both wheels", slot: 36, cells: [bounceOf(study, before, length)] },
  ];
}

const notReached = cell(["cannot be reached"], "bad");
const unknown = cell(["not known"]);

const bareDegrees = (angle: number) => fixed(angle / degree, 1);

function lock(study: Study, before: Study | null, wheel: Wheel, length: Length): Cell {
  const row = study.locks[wheel];
  if (row === null) return cell(["the steering turns neither wheel"], "bad");
  if (row.blame !== null) return blamed(row.blame, length);
  if (row.inner === null || row.outer === null || row.turn !== wheel)
    return cell([lockSaid(study, row, wheel), "none"]);
  const other = study.locks[wheel === "left" ? "right" : "left"]?.inner ?? null;
  const was = before?.locks[wheel];
  const [outerText, innerText] = [
    `outer ${degrees(row.outer).padStart(5)}`,
    `, inner ${degrees(row.inner).padStart(5)}`,
  ];
  const outer = changeOf(row.outer, was?.outer, bareDegrees);
  const inner = changeOf(row.inner, was?.inner, bareDegrees);
  const shown = cell(
    [`${outerText}${innerText}`],
    "plain",
    {
      low: 10 * degree,
      high: 50 * degree,
      marks: [other === null ? null : { at: other, glyph: line }, { at: row.inner, glyph: needle }],
    },
    inner,
  );
  const beside = [
    { text: outerText, change: outer },
    { text: innerText, change: inner },
  ];
  return { ...shown, beside };
}

function blamed(blame: Blame, length: Length): Cell {
  return cell([blameWords(blame, length), `${blame.wheel} ${blame.link} does not reach`, "does not reach"], "bad");
}

/** How unequal the locks are, and where that comes from: rods that are cut so say it themselves. */
function balanceCells(study: Study, before: Study | null, length: Length): ReadoutRow["cells"] {
  const { zero, inputKind, locks } = study;
  const difference = locks.difference.inner;
  if (zero === null || difference === null || !rodsPutOff(study))
    return [balance(study, before), inputAtZero(study, before, length)];
  const name = inputKind;
  const off = inputSize(study, zero, length);
  const { texts, change } = balance(study, before);
  const [words = ""] = texts;
  const short = words.replace(/ of (left|right)$/, "").replace("left and right lock are equal", "locks are equal");
  return [
    cell(
      [
        `${words}: the ${name} is ${off} off its middle when straight, as the rods are cut`,
        `${words}: rods are cut with ${name} ${off} off`,
        `${short}: rods cut with ${name} ${off} off middle`,
        `${short}: rods cut, ${name} ${off} off`,
      ],
      "warn",
      null,
      change,
    ),
  ];
}

function balance(study: Study, before: Study | null): Cell {
  const difference = study.locks.difference.inner;
  if (difference === null) return unknown;
  const size = degrees(Math.abs(difference));
  const was = before?.locks.difference.inner ?? null;
  const change = changeOf(Math.abs(difference), was === null ? null : Math.abs(was), bareDegrees);
  if (size === degrees(0)) return cell(["left and right lock are equal"], "plain", null, change);
  const [less, more] = difference < 0 ? ["left", "right"] : ["right", "left"];
  const tone = toneFor(study, "lock-difference", Math.abs(difference));
  return cell([`${less} inner ${size} short of ${more}`, `${less} inner ${size} short`], tone, null, change);
}

/** A tie rod's length; beside one that is as cut stands the key that fits it, the first cure for unequal locks. */
/** A length that steel is cut to, with its unit: briefly, and with the decimals that a fraction hides. */
type CutLength = (mm: number) => readonly [brief: string, exact: string];

function rodCell(study: Study, before: Study | null, wheel: Wheel, cut: CutLength): Cell {
  const [words, exact] = ([0, 1] as const).map((at) => rodLength(study, wheel, (mm) => cut(mm)[at]));
  const change = changeOf(study.rodLengths[wheel], before?.rodLengths[wheel], (mm) => bare((of) => cut(of)[0])(mm));
  const all = [exact ?? "", words ?? ""];
  const texts = study.car.form.rods[wheel] === "cut" ? [...all.map((each) => `${each} (c fits it)`), ...all] : all;
  return cell(texts, "plain", null, change);
}

/** How far the rack or column is off its middle while the wheels are straight, which is what makes the locks unequal. */
function inputAtZero(study: Study, before: Study | null, length: Length): Cell {
  const { zero } = study;
  if (zero === null) return cell(["wheels cannot be set straight"], "bad");
  const name = study.inputKind;
  const size = inputSize(study, zero, length);
  const was = before?.inputKind === name ? before.zero : null;
  const change = changeOf(Math.abs(zero), was === null ? null : Math.abs(was), (off) =>
    inputSize(study, off, length).replace(/ ?(in|mm|°)$/, ""),
  );
  if (size === inputSize(study, 0, length)) return cell([`straight: ${name} on its middle`], "plain", null, change);
  const way = zero > 0 ? "left" : "right";
  const tone = Math.abs(zero) >= offMiddle[name] ? "warn" : "plain";
  return cell([`straight: ${name} ${size} off, ${way}`, `${name} ${size} off, ${way}`], tone, null, change);
}

function ackermann(study: Study, row: SteerRow | null, before: SteerRow | null | undefined): Cell {
  if (row?.blame) return notReached;
  if (row === null || row.ackermann === null) return unknown;
  const little = toneFor(study, "ackermann-least", row.ackermann);
  return cell(
    [`${fixed(row.ackermann, 0)} %`.padStart(6)],
    little === "plain" ? toneFor(study, "ackermann-most", row.ackermann) : little,
    {
      low: -50,
      high: 150,
      marks: [
        ...levels(study, "ackermann-least"),
        ...levels(study, "ackermann-most"),
        { at: 0, glyph: line },
        { at: 100, glyph: line },
        { at: row.ackermann, glyph: needle },
      ],
    },
    changeOf(row.ackermann, before?.ackermann, (percent) => fixed(percent, 0)),
  );
}

function shortOfIdeal(row: SteerRow | null, before: SteerRow | null | undefined): Cell {
  if (row === null || row.idealInner === null || row.inner === null || row.percentOfIdealInner === null)
    return cell([""]);
  const percent = `${fixed(row.percentOfIdealInner, 0)} % of ideal`;
  const size = degrees(Math.abs(row.idealInner - row.inner));
  const change = changeOf(row.percentOfIdealInner, before?.percentOfIdealInner, (value) => fixed(value, 0));
  if (size === degrees(0)) return cell([`as ideal, ${percent}`], "plain", null, change);
  const way = row.inner < row.idealInner ? "short" : "past";
  return cell(
    [`${size} ${way} of ideal, ${percent}`.replace("past of", "past"), `${size} ${way}, ${percent}`],
    "plain",
    null,
    change,
  );
}

/** A gauge of half an inch either way: far more than a front end should do. */
const acrossReach = 12.7;

function worstToe(study: Study, worst: WorstToe | null, before: WorstToe | null | undefined, length: Length): Cell {
  if (worst === null) return notReached;
  const size = length(Math.abs(worst.acrossTyre));
  const text = keepsToe(worst) ? "keeps its toe" : `toes ${worst.acrossTyre > 0 ? "in" : "out"} ${size}`;
  return cell(
    [text],
    toneFor(study, "toe-change", Math.abs(worst.acrossTyre)),
    {
      low: -acrossReach,
      high: acrossReach,
      marks: [...levels(study, "toe-change", true), { at: 0, glyph: line }, { at: worst.acrossTyre, glyph: needle }],
    },
    changeOf(Math.abs(worst.acrossTyre), before ? Math.abs(before.acrossTyre) : null, bare(length)),
  );
}

function worstToePlace(study: Study, wheel: Wheel, length: Length): Cell {
  const worst = study.worst.toe[wheel];
  if (worst === null || keepsToe(worst)) return cell([""]);
  const rod = study.car.form.rods[wheel];
  const where = travelWords(study, worst.travel, length);
  const way = study.innerEnds[wheel];
  const brief = innerEndBrief(worst, way);
  if (brief === null) return cell([`at ${where}, as near as a tape sets it`, `at ${where}`]);
  return cell([
    `at ${where}, ${bumpCure(worst, rod, way)}`,
    `at ${where}: ${bumpMove(worst, rod, way)}`,
    `at ${where}: ${brief}`,
    `${where}: ${brief}`,
    `${where}: ${brief.replace(" end", "")}`,
    `at ${where}`,
  ]);
}

/** A gauge of two degrees either way, left on the left. */
const bounceReach = 2 * degree;

/** The same without its unit. */
function bare(length: Length): Length {
  return (mm) => length(mm).replace(/ (in|mm)$/, "");
}

function bounceOf(study: Study, before: Study | null, length: Length): Cell {
  const worst = study.worst.bounce;
  if (worst === null) return notReached;
  return cell(
    [bounce(worst, length)],
    toneFor(study, "bounce-steer", Math.abs(worst.bounceSteer)),
    {
      low: -bounceReach,
      high: bounceReach,
      marks: [
        ...levels(study, "bounce-steer", true),
        { at: 0, glyph: line },
        { at: -worst.bounceSteer, glyph: needle },
      ],
    },
    changeOf(
      Math.abs(worst.bounceSteer),
      before?.worst.bounce ? Math.abs(before.worst.bounce.bounceSteer) : null,
      bareDegrees,
    ),
  );
}

const gradeWords = { good: "good", doubtful: "DOUBTFUL", dangerous: "DANGEROUS" } as const;
const gradeTones = { good: "plain", doubtful: "warn", dangerous: "bad" } as const;

/** "good" would say too much of a travel that was never measured. */
function gradeOf({ noTravel }: Study, grade: Grade): string {
  return grade === "good" && noTravel === "assumed" ? "ride height" : gradeWords[grade];
}

function rodAngle(study: Study, least: LeastRodAngle | null, before: LeastRodAngle | null | undefined): Cell {
  if (least === null) return notReached;
  const grade = rodAngleGrade(least.angle);
  return cell(
    [`${degrees(least.angle).padStart(5)} ${gradeOf(study, grade)}`],
    gradeTones[grade],
    {
      low: 0,
      high: 70 * degree,
      marks: [
        { at: 20 * degree, glyph: line },
        { at: 30 * degree, glyph: line },
        { at: least.angle, glyph: needle },
      ],
    },
    changeOf(least.angle, before?.angle, bareDegrees),
  );
}

function rodAnglePlace(study: Study, wheel: Wheel, length: Length): Cell {
  const least = study.worst.rodAngle[wheel];
  if (least === null) return cell([""]);
  const where = `${inputWords(study, least.input, length)}, ${travelWords(study, least.travel, length)}`;
  // With two blanks after it at least, so that left and right are not read as one sentence.
  return cell(
    [where, where.replace(/^(rack|column) /, ""), where.replaceAll(/ (in|mm)\b/g, "")].map((each) => `${each} `),
  );
}

/** A place of the rack or column: "rack full left", "rack 1 1/4 in left", "rack on its middle". */
export function inputWords(study: Study, input: number, length: Length): string {
  const name = study.inputKind;
  const end = inputEnd(study, input);
  if (end !== null) return `${name} full ${end}`;
  const size = inputSize(study, input, length);
  return size === inputSize(study, 0, length)
    ? `${name} on its middle`
    : `${name} ${size} ${input > 0 ? "left" : "right"}`;
}

/** A place of a wheel: "full droop", "ride height", "1 1/4 in bump". */
export function travelWords(study: Study, travel: number, length: Length): string {
  const { bump, droop } = study.wheelTravel;
  if (bump > 0 && travel > bump * (1 - atTheEnd)) return "full bump";
  if (droop > 0 && travel < -droop * (1 - atTheEnd)) return "full droop";
  return travelPlace(travel, length);
}
