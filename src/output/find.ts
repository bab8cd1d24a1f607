import type { Study } from "../measures/study.ts";
import type { CheckReport } from "../solve/check/report.ts";
import type { Answer, Found } from "../solve/find/find.ts";
import type { Placed } from "../solve/find/place.ts";
import type { Goal } from "../solve/goals/goals.ts";
import type { Reading } from "../solve/goals/readings.ts";
import type { Met } from "../solve/goals/score.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { goalKinds } from "../vehicle/sections/goals.ts";
import { madeAnew } from "./findArms.ts";
import { type Beside, besides, costWords, unaimed } from "./findCosts.ts";
import {
  brokenWords,
  goalName,
  goalShort,
  goalWords,
  metByLittle,
  metShort,
  missedWords,
  moveLines,
  partWords,
  placeWords,
  readingWords,
  roomWords,
  STAYS,
  shortName,
} from "./findWords.ts";
import type { Json } from "./json.ts";
import { noteLines } from "./notes.ts";
import { inUnits, unitsOf } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { cautions, deadPoint, type Length } from "./words.ts";

/** What a report on a search is made from. */
export interface FindReport {
  readonly found: Found;
  /** mm: what lengths are set to. */
  readonly step: number;
  /** Goals that were asked for and that the file says too little to judge, and what it lacks. */
  readonly unjudged: readonly { readonly goal: Goal; readonly lacks: string }[];
  /** What a car gives of a number that a goal may be set for. */
  readonly readOf: (name: Beside, study: Study) => Reading | null;
}

const froms: Readonly<Record<Goal["from"], string>> = { file: "the file", asked: "asked", usual: "usual" };

/** What is said first of an answer: what can hurt someone, and what was asked for and is not had. */
export function warningsOf(
  { before, beforeCheck }: Pick<Found, "before" | "beforeCheck">,
  { snapped, check, costs }: Answer,
  unit: LengthUnit,
  length: Length,
): readonly string[] {
  const near = deadPoint(snapped.study);
  const missed = snapped.score.met.filter(({ goal, miss }) => goal.level === "must" && miss > 0);
  const broken = brokenWords(check);
  return [
    ...(near === null ? [] : [near]),
    ...missed.map((met) => `NOT MET: ${goalWords(met.goal, unit, length)}: ${missedWords(met, unit, length)}.`),
    ...(worseMusts(before, snapped).length === 0 ? [] : ["WORSE THAN NOW in what must be met: see the table."]),
    ...(broken.length === 0
      ? []
      : [`PAST A LIMIT in the full check${sameAs(beforeCheck, broken)}: ${broken.join("; ")}.`]),
    ...costWords(costs, unit, length),
  ];
}

function worseMusts(before: Placed, after: Placed): readonly Met[] {
  return after.score.met.filter(({ goal, miss }) => {
    const was = before.score.met.find((each) => each.goal === goal)?.miss ?? 0;
    return goal.level === "must" && miss > was + 1e-9;
  });
}

function sameAs(before: CheckReport | null, broken: readonly string[]): string {
  const was = brokenWords(before);
  return broken.every((each) => was.includes(each)) ? " (as now)" : "";
}

/** What a car gives of a goal, in a table; "!" where it is missed. */
function columnOf(met: readonly Met[], goal: Goal, unit: LengthUnit, length: Length): string {
  const found = met.find((each) => each.goal === goal);
  return found === undefined ? "-" : metShort(found, unit, length);
}

/** Each goal now, at the exact best and at each answer in whole steps; "!" where it is missed. */
function goalTable(
  { found: { quest, before, answers }, readOf }: FindReport,
  unit: LengthUnit,
  length: Length,
): readonly string[] {
  const [best] = answers;
  const goals = quest.goals.filter((goal) => before.score.met.some((each) => each.goal === goal));
  const heads = [
    "",
    "now",
    ...(best === undefined ? [] : ["exact"]),
    ...answers.map((_, i) => (answers.length > 1 ? `answer ${i + 1}` : "answer")),
  ];
  const columns = [before, ...(best === undefined ? [] : [best.exact]), ...answers.map(({ snapped }) => snapped)];
  const rows = goals.map((goal) => [
    goalShort(goal, unit, length),
    ...columns.map(({ score }) => columnOf(score.met, goal, unit, length)),
  ]);
  // What nobody aims at moves as well, and what it cost has to be seen.
  const beside = besides
    .filter((name) => !goals.some((goal) => goal.name === name) && readOf(name, before.study) !== null)
    .map((name) => {
      const plain = unaimed(name);
      const said = ({ study }: Placed) => readingWords(plain, readOf(name, study), unit, length);
      return [`     ${shortName(plain)}`, ...columns.map(said)];
    });
  return table([heads], [...rows, ...beside], [0]);
}

function rodWords({ quest }: Found, study: Study, length: Length): string {
  const { left, right } = study.rodLengths;
  if (quest.rods === "keep") return `Tie rods stay as they are: left ${length(left)}, right ${length(right)}.`;
  return `Cut the tie rods to fit, eye to eye: left ${length(left)}, right ${length(right)}.`;
}

function answerLines(found: Found, answer: Answer, i: number, unit: LengthUnit, length: Length): readonly string[] {
  const { quest, answers } = found;
  const head = answers.length > 1 ? `ANSWER ${i + 1}` : "ANSWER";
  const { variables, study } = quest;
  const still = answer.snapped.moves.every((move) => Math.abs(move) < 1e-9);
  const parts = [...new Set(variables.map(partWords))];
  const to = moveLines(variables, answer.snapped.moves, length).map((words, at) =>
    words.endsWith(STAYS)
      ? `${words}.`
      : `${words}. Then ${placeWords(variables, answer.snapped, parts[at] ?? "", length)}.`,
  );
  return [
    still && quest.rods === "follow" ? `${head}: leave it all where it is: no step is better` : head,
    ...warningsOf(found, answer, unit, length).flatMap((words) => wrap(words, WIDTH, "  ", 4)),
    ...(still ? [] : to.flatMap((words) => wrap(words, WIDTH, "  ", 4))),
    ...madeAnew(variables, answer.snapped.moves, answer.snapped.study.car, length).flatMap((words) =>
      wrap(words, WIDTH, "  ", 4),
    ),
    ...wrap(rodWords(found, answer.snapped.study, length), WIDTH, "  ", 4),
    ...edgeWords(found, answer).flatMap((words) => wrap(words, WIDTH, "  ", 4)),
    ...nearlyMissed(answer, unit, length).flatMap((words) => wrap(words, WIDTH, "  ", 4)),
    ...(answer.check === null ? wrap("Not yet checked over its whole range.", WIDTH, "  ", 4) : []),
    ...(study.car.form.rods.left === "cut" && quest.rods === "follow"
      ? wrap("The rods that are cut now do not fit any more.", WIDTH, "  ", 4)
      : []),
    "",
  ];
}

function nearlyMissed(answer: Answer, unit: LengthUnit, length: Length): readonly string[] {
  const near = metByLittle(answer.tight, unit, length);
  if (near.length === 0) return [];
  return [
    `MET BY LITTLE: ${near.join("; ")}. Building it a little off may lose that: write the car with --write, and rackwright tolerance says how many of 100 builds keep it.`,
  ];
}

/** Said where an answer lies at the edge of its room: the best may lie beyond it. */
function edgeWords({ quest: { variables } }: Found, { snapped: { moves } }: Answer): readonly string[] {
  const near = (a: number, b: number, { step }: (typeof variables)[number]) => Math.abs(a - b) < step;
  const at = variables.filter((each, i) => near(moves[i], each.low, each) || near(moves[i], each.high, each));
  return at.length === 0
    ? []
    : [`At the edge of the room given, or less than a step from it: ${at.map(({ label }) => label).join("; ")}.`];
}

function fightLines({ fights, answers }: Found, unit: LengthUnit, length: Length): readonly string[] {
  const [best] = answers;
  if (fights === null || best === undefined) return [];
  const words = (goal: Goal) => goalWords(goal, unit, length);
  const told = fights.map(({ without, frees, all }) =>
    frees.length === 0
      ? `Without "${words(without)}" every other must is met.`
      : `"${words(without)}" fights ${frees.map((goal) => `"${words(goal)}"`).join(" and ")}: without it ${all ? "every other must is met" : "that is met, others still are not"}.`,
  );
  const none = "No single must stands in the way: more than one would have to go, or more room be given.";
  return [
    "THE MUSTS CAN'T ALL BE MET within this room.",
    ...wrap(
      "Answer 1 is nearest to all of them together, by how far each is missed. To see the car without one of them, ask for that one as nice.",
      WIDTH,
      "  ",
      4,
    ),
    ...(told.length === 0 ? wrap(none, WIDTH, "  ", 4) : told.flatMap((each) => wrap(each, WIDTH, "  ", 4))),
    "",
  ];
}

/** What a search came to, for reading. */
export function findText(report: FindReport, unit: LengthUnit, length: Length): string[] {
  const { found, step, unjudged } = report;
  const { quest, answers } = found;
  const { car } = quest.study;
  const goalLine = (goal: Goal) =>
    wrap(`${goalWords(goal, unit, length)} (${froms[goal.from]})`, WIDTH, `  ${goal.level}  `, 10);
  return [
    ...wrap(car.title, WIDTH),
    ...noteLines(car),
    "",
    "Goals",
    ...quest.goals.flatMap(goalLine),
    ...unjudged.flatMap(({ goal, lacks }) =>
      wrap(`${goalName(goal)}: not given: needs ${lacks} in the file, and is left out`, WIDTH, `  ${goal.level}  `, 10),
    ),
    `What may move, in steps of ${length(step)}`,
    ...quest.variables.flatMap((variable) =>
      wrap(
        `${variable.label}${variable.sides === null ? "" : variable.sides === "both" ? ", both sides alike" : `, ${variable.sides} side`}: ${roomWords(variable, car.numbers, length)}`,
        WIDTH,
        "  ",
        4,
      ),
    ),
    quest.rods === "follow" ? "  Tie rods are cut to fit" : "  Tie rods keep their length",
    "",
    ...(found.done ? [] : ["STOPPED before its end: the best so far.", ""]),
    ...(answers.length === 0
      ? ["NO PLACE FOUND where the front end goes together within this room.", ""]
      : [
          ...fightLines(found, unit, length),
          ...answers.flatMap((answer, i) => answerLines(found, answer, i, unit, length)),
          ...goalTable(report, unit, length),
          ...(answers.length > 1
            ? ["", "Places far apart that do about as well: choose by what is easier to build."]
            : []),
          "",
        ]),
    ...wrap("! is missed. exact is the best there is, to compare with; build by an answer.", WIDTH),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

function numberOf(goal: Goal, value: number | null, unit: LengthUnit): number | null {
  if (value === null) return null;
  const kind = goal.name === "range" ? "length" : goalKinds[goal.name].kind;
  return kind === "ratio" ? value : inUnits(value, kind, unit);
}

function placedJson({ quest }: Found, { moves, study, score }: Placed, unit: LengthUnit): Json {
  return {
    moves: quest.variables.map(({ pair, sides, kind, quantities }, i) => ({
      quantity: pair,
      sides,
      by: inUnits(moves[i], kind, unit),
      to: Object.fromEntries(quantities.map(({ id, index }) => [id, inUnits(study.car.numbers[index], kind, unit)])),
    })),
    rodLengths: Object.fromEntries(
      (["left", "right"] as const satisfies readonly Wheel[]).map((wheel) => [
        wheel,
        inUnits(study.rodLengths[wheel], "length", unit),
      ]),
    ),
    goals: score.met.map(({ goal, reading, miss }) => ({
      goal: goal.name,
      level: goal.level,
      low: numberOf(goal, reading?.low ?? null, unit),
      high: numberOf(goal, reading?.high ?? null, unit),
      met: miss === 0,
    })),
    score: score.total,
  };
}

/** The same as JSON, numbers not rounded. */
export function findJson({ found, step, unjudged }: FindReport, unit: LengthUnit, length: Length): Json {
  const { quest, before, answers, fights } = found;
  const name = ({ name: goal, level }: Goal): Json => ({ goal, level });
  return {
    units: unitsOf(unit),
    title: quest.study.car.title,
    step: inUnits(step, "length", unit),
    rods: quest.rods,
    goals: quest.goals.map((goal) => ({
      goal: goal.name,
      level: goal.level,
      least: numberOf(goal, goal.least, unit),
      most: numberOf(goal, goal.most, unit),
      over: 100 * goal.over,
      from: goal.from,
    })),
    notJudged: unjudged.map(({ goal, lacks }) => ({ goal: goal.name, level: goal.level, needs: lacks })),
    move: quest.variables.map(({ pair, sides, kind, low, high }) => ({
      quantity: pair,
      sides,
      from: inUnits(low, kind, unit),
      to: inUnits(high, kind, unit),
    })),
    now: placedJson(found, before, unit),
    answers: answers.map((answer) => ({
      warnings: warningsOf(found, answer, unit, length),
      exact: placedJson(found, answer.exact, unit),
      snapped: placedJson(found, answer.snapped, unit),
      broken: brokenWords(answer.check),
    })),
    fights:
      fights === null
        ? null
        : fights.map(({ without, frees, all }) => ({ without: name(without), frees: frees.map(name), all })),
    evaluations: found.evaluations,
    done: found.done,
    cautions,
  };
}
