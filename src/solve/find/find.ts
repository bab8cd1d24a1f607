import { checkJob } from "../check/check.ts";
import { type CheckReport, countOf } from "../check/report.ts";
import type { Goal } from "../goals/goals.ts";
import { missedMusts } from "../goals/score.ts";
import { finished, type Job, jobOf, type Piece } from "../job.ts";
import { evolve } from "../search/evolve.ts";
import type { Box, Cost, Spot } from "../search/problem.ts";
import { downhill } from "../search/simplex.ts";
import { snapped } from "../search/snap.ts";
import { asItIs, costOf, type Placed, placed, type Quest, worsened } from "./place.ts";
import { boxOf, gridOf } from "./room.ts";

/** One answer: the best place there is, and the best of those that can be set. */
export interface Answer {
  readonly exact: Placed;
  readonly snapped: Placed;
  /** The full check of the snapped place; null while it is not done. */
  readonly check: CheckReport | null;
}

/** A must that can't be met with the others: left out, what it kept from being met is met. */
export interface Fight {
  readonly without: Goal;
  /** The musts that are met then and are missed with it. */
  readonly frees: readonly Goal[];
  /** Whether every other must is met then. */
  readonly all: boolean;
}

/** What a search has found, or has found so far. */
export interface Found {
  readonly quest: Quest;
  readonly before: Placed;
  readonly beforeCheck: CheckReport | null;
  /** Best first; none while nothing is found that goes together. */
  readonly answers: readonly Answer[];
  /** Null unless a must is missed by the best answer; and while that is not looked into. */
  readonly fights: readonly Fight[] | null;
  readonly evaluations: number;
  /** False where the search was stopped before its end. */
  readonly done: boolean;
}

/** How many places are looked at, by the number of variables: the same car always gets the same answer. */
interface Effort {
  readonly population: number;
  readonly generations: number;
  readonly finish: number;
}

const effortFor = (many: number): Effort => ({
  population: Math.min(16 + 4 * many, 56),
  generations: 18 + 4 * many,
  finish: 60 * many,
});

/** Answers beside the best one differ from each before by this share of its room, in one variable at least. */
const APART = 0.25;
/** They do about as well where they cost no more than so much above the best: a fifth of a miss of what is wanted, or a tenth. */
const ABOUT = 2;
const ABOUT_SHARE = 0.1;
const MOST_ANSWERS = 3;
/** What it costs to be near another answer: more than any place that goes together. */
const NEAR = 1e12;

/** How far two places are apart, as the largest share of a variable's room. */
function apart({ low, high }: Box, a: Float64Array, b: Float64Array): number {
  return Math.max(...Array.from(a, (value, d) => (high[d] > low[d] ? Math.abs(value - b[d]) / (high[d] - low[d]) : 0)));
}

/** The cost with places near others ruled out. */
function awayFrom(box: Box, cost: Cost, others: readonly Float64Array[]): Cost {
  if (others.length === 0) return cost;
  return (x, enough) => {
    const nearest = Math.min(...others.map((other) => apart(box, x, other)));
    return nearest < APART ? NEAR * (2 - nearest) : cost(x, enough);
  };
}

/** Searches the whole box, then about the best place. Yields the best so far after each cost. */
function* searched(
  box: Box,
  cost: Cost,
  effort: Effort,
  seed: number,
  first: readonly Float64Array[],
): Generator<Spot, Spot, void> {
  const wide = yield* evolve(box, cost, { ...effort, seed }, first);
  const near = yield* downhill(box, cost, wide, 0.08, effort.finish / 2);
  return yield* downhill(box, cost, near, 0.02, effort.finish / 2);
}

/** Where the car stands now, if that is in the box: a search that starts there ends no worse. */
function startIn({ low, high }: Box): readonly Float64Array[] {
  const inside = low.every((from, d) => from <= 0 && high[d] >= 0);
  return inside ? [new Float64Array(low.length)] : [];
}

function* pieces(quest: Quest): Iterator<Piece<Found>, void> {
  const { variables } = quest;
  const before = asItIs(quest);
  const box = boxOf(variables);
  const grid = gridOf(variables);
  const effort = effortFor(variables.length);
  const plain = costOf(quest, before.score);
  let evaluations = 0;
  const cost: Cost = (x, enough) => {
    evaluations++;
    return plain(x, enough);
  };
  let found: Found = { quest, before, beforeCheck: null, answers: [], fights: null, evaluations: 0, done: false };
  const oneRun = effort.population * (effort.generations + 1) + effort.finish;
  // What most searches come to: a run, a second one for another answer, the steps, the checks.
  const expected = 2.6 * oneRun;
  const tell = (most = 0.95): Piece<Found> => {
    found = { ...found, evaluations };
    return { progress: Math.min(evaluations / expected, most), best: found };
  };

  const spots: { readonly exact: Spot; readonly snapped: Spot }[] = [];
  for (let i = 0; i < MOST_ANSWERS; i++) {
    const others = spots.map(({ exact }) => exact.x);
    const away = awayFrom(box, cost, others);
    const starts = i === 0 ? startIn(box) : [];
    let told: Spot | null = null;
    const run = searched(box, away, i === 0 ? effort : half(effort), i + 1, starts);
    let next = run.next();
    for (; !next.done; next = run.next()) {
      if (i === 0 && next.value !== told && next.value.cost < (told?.cost ?? Number.POSITIVE_INFINITY)) {
        told = next.value;
        found = { ...found, answers: soFar(quest, told, grid) };
      }
      yield tell();
    }
    const exact = next.value;
    const [best] = spots;
    const most = best === undefined ? Number.POSITIVE_INFINITY : best.exact.cost;
    if (exact.cost >= NEAR || exact.cost > most + Math.max(ABOUT, ABOUT_SHARE * most)) break;
    const steps = snapped(grid, cost, exact.x);
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield tell();
    spots.push({ exact, snapped: step.value });
    found = { ...found, answers: spots.flatMap((each) => answerOf(quest, each)) };
  }

  const beforeCheck = yield* checked(before, tell);
  const answers: Answer[] = [];
  for (const answer of found.answers) answers.push({ ...answer, check: yield* checked(answer.snapped, tell) });
  found = { ...found, beforeCheck, answers: soundFirst(answers, before, beforeCheck) };
  yield tell();

  const [best] = found.answers;
  const missed = best === undefined ? [] : missedMusts(best.snapped.score).map(({ goal }) => goal);
  if (missed.length > 0) {
    const fights: Fight[] = [];
    for (const without of quest.goals.filter(({ level, name }) => level === "must" && name !== "range")) {
      const fewer: Quest = { ...quest, goals: quest.goals.filter((goal) => goal !== without) };
      const run = searched(box, counted(costOf(fewer, asItIs(fewer).score)), half(effort), 1, startIn(box));
      let next = run.next();
      for (; !next.done; next = run.next()) yield tell(0.99);
      const nearest = placed(fewer, next.value.x);
      if (nearest === null) continue;
      const still = missedMusts(nearest.score).map(({ goal }) => goal);
      const frees = missed.filter((goal) => goal !== without && !still.includes(goal));
      const all = still.length === 0;
      if (frees.length > 0 || (all && missed.length === 1 && missed[0] === without))
        fights.push({ without, frees, all });
    }
    found = { ...found, fights };
  }
  found = { ...found, done: true };
  yield { ...tell(1), progress: 1 };

  function counted(of: Cost): Cost {
    return (x, enough) => {
      evaluations++;
      return of(x, enough);
    };
  }
}

function half(effort: Effort): Effort {
  return { ...effort, generations: Math.ceil(effort.generations / 2) };
}

function answerOf(quest: Quest, spot: { readonly exact: Spot; readonly snapped: Spot }): readonly Answer[] {
  const [exact, near] = [placed(quest, spot.exact.x), placed(quest, spot.snapped.x)];
  return exact === null || near === null ? [] : [{ exact, snapped: near, check: null }];
}

/** The best so far and what is nearest to it in whole steps: all that a stopped search leaves. */
function soFar(quest: Quest, { x, cost }: Spot, { step, first, last }: ReturnType<typeof gridOf>): readonly Answer[] {
  const near = x.map((value, d) => Math.min(Math.max(Math.round(value / step[d]), first[d]), last[d]) * step[d]);
  return answerOf(quest, { exact: { x, cost }, snapped: { x: near, cost } });
}

function* checked({ study }: Placed, tell: () => Piece<Found>): Generator<Piece<Found>, CheckReport | null, void> {
  const job = checkJob(study);
  while (!job.step(64)) yield tell();
  return job.best();
}

/** Limits that are broken there and not before. */
export function newlyBroken(before: CheckReport | null, after: CheckReport | null): readonly string[] {
  const broken = (report: CheckReport | null) =>
    report?.items.filter(({ state, part }) => state === "broken" && part !== "targets").map(({ id }) => id) ?? [];
  const was = broken(before);
  return broken(after).filter((id) => !was.includes(id));
}

/**
 * The best in whole steps first; but answers that make a must worse, and then those that break a limit which the car keeps
 * now, stand last, however well they do otherwise.
 */
function soundFirst(answers: readonly Answer[], before: Placed, beforeCheck: CheckReport | null): readonly Answer[] {
  const worse = ({ snapped: { score } }: Answer) => (worsened(before.score, score) > 0 ? 1 : 0);
  const breaks = ({ check }: Answer) => (newlyBroken(beforeCheck, check).length > 0 ? 1 : 0);
  return [...answers].sort(
    (a, b) => worse(a) - worse(b) || breaks(a) - breaks(b) || a.snapped.score.total - b.snapped.score.total,
  );
}

/**
 * Searches for the places that meet a car's goals best within the room there is: the same quest always gives the same
 * answer, since its budget is places looked at and not time. A piece is one place, or a small part of a check; its best is
 * what has been found so far.
 */
export function findJob(quest: Quest): Job<Found> {
  const first = asItIs(quest);
  return jobOf<Found>(
    { quest, before: first, beforeCheck: null, answers: [], fights: null, evaluations: 0, done: false },
    pieces(quest),
  );
}

/** Runs a search through. */
export function found(quest: Quest): Found {
  return finished(findJob(quest));
}

/** How many limits a check found broken. */
export function brokenIn(report: CheckReport | null): number {
  return report === null ? 0 : countOf(report, "broken");
}
