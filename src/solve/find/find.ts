import { checkJob } from "../check/check.ts";
import type { CheckReport } from "../check/report.ts";
import type { Goal } from "../goals/goals.ts";
import { isTight, type Met, missedMusts, NO_CAR } from "../goals/score.ts";
import { finished, type Job, jobOf, type Piece } from "../job.ts";
import { evolve } from "../search/evolve.ts";
import { type Box, type Cost, type Spot, within } from "../search/problem.ts";
import { downhill } from "../search/simplex.ts";
import { type Grid, snapped } from "../search/snap.ts";
import { costsOf, type Worsened } from "./costs.ts";
import { asItIs, costOf, type Placed, placed, type Quest, turnsAgainst, worsened } from "./place.ts";
import { boxOf, gridOf } from "./room.ts";

/** One answer: the best place there is, and the best of those that can be set. */
export interface Answer {
  readonly exact: Placed;
  readonly snapped: Placed;
  /** Musts that the snapped place meets by less than what counts as one miss: the build may lose them. */
  readonly tight: readonly Met[];
  /** What the snapped place makes much worse that no goal asks for. */
  readonly costs: readonly Worsened[];
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
  population: Math.min(12 + 4 * many, 56),
  generations: 18 + 3 * many,
  finish: 48 * many,
});

/** Answers beside the best one differ from each before by this share of its room, in one variable at least. */
const APART = 0.25;
/** They do about as well where they cost no more than so much above the best: a fifth of a miss of what is wanted, or a tenth. */
const ABOUT = 2;
const ABOUT_SHARE = 0.1;
const MOST_ANSWERS = 3;
/** What it costs to be near another answer, times how near: no less than a front end that does not go together. */
const NEAR = NO_CAR;

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

/** Searches the whole box coarsely, then closely about the best place. Yields the best so far after each cost. */
function* searched(
  box: Box,
  { coarse, whole }: Costs,
  effort: Effort,
  seed: number,
  first: readonly Float64Array[],
): Generator<Spot, Spot, void> {
  const { x } = yield* evolve(box, coarse, { ...effort, seed }, first);
  const wide: Spot = { x, cost: whole(x, Number.POSITIVE_INFINITY) };
  const near = yield* downhill(box, whole, wide, 0.08, effort.finish / 2);
  return yield* downhill(box, whole, near, 0.02, effort.finish / 2);
}

/** Where the car stands now, if that is in the box: a search that starts there ends no worse. */
function startIn({ low, high }: Box): readonly Float64Array[] {
  const inside = low.every((from, d) => from <= 0 && high[d] >= 0);
  return inside ? [new Float64Array(low.length)] : [];
}

/** A place as a search leaves it: the best there is, and the best in whole steps. */
interface Pair {
  readonly exact: Spot;
  readonly snapped: Spot;
}

/** The same as a cost that is looked at coarsely, and closely; both count. */
interface Costs {
  readonly coarse: Cost;
  readonly whole: Cost;
}

function* pieces(quest: Quest, before: Placed): Iterator<Piece<() => Found>, void> {
  const box = boxOf(quest.variables);
  const grid = gridOf(quest.variables);
  const effort = effortFor(quest.variables.length);
  const start = startIn(box);
  let evaluations = 0;
  const counted = (cost: Cost): Cost => {
    return (x, enough) => {
      evaluations++;
      return cost(x, enough);
    };
  };
  const costsOf = (of: Quest, { score }: Placed): Costs => ({
    coarse: counted(costOf(of, score, "coarse")),
    whole: counted(costOf(of, score, "whole")),
  });
  const costs = costsOf(quest, before);
  // What most searches come to: a run, a shorter one for another answer, the steps.
  const expected = 2.2 * (effort.population * (effort.generations + 1) + effort.finish);
  let found: () => Found = () => nothing(quest, before);
  const tell = (most = 0.9): Piece<() => Found> => ({ progress: Math.min(evaluations / expected, most), best: found });

  const pairs: Pair[] = [];
  for (let i = 0; i < MOST_ANSWERS; i++) {
    const others = pairs.map(({ exact }) => exact.x);
    const away: Costs = { coarse: awayFrom(box, costs.coarse, others), whole: awayFrom(box, costs.whole, others) };
    const run = searched(box, away, i === 0 ? effort : shorter(effort), i + 1, i === 0 ? start : []);
    let next = run.next();
    for (; !next.done; next = run.next()) {
      const spot = next.value;
      if (i === 0)
        found = () => ({ ...nothing(quest, before), answers: soFar(quest, before, spot, grid), evaluations });
      yield tell();
    }
    const exact = next.value;
    const most = pairs[0]?.exact.cost ?? NO_CAR;
    if (exact.cost >= NO_CAR || exact.cost > most + Math.max(ABOUT, ABOUT_SHARE * most)) break;
    const steps = inSteps(grid, costs.whole, exact, start);
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield tell();
    pairs.push({ exact, snapped: step.value });
    const sofar = pairs.flatMap((each) => answerOf(quest, each));
    found = () => ({ ...nothing(quest, before), answers: sofar, evaluations });
  }

  const beforeCheck = yield* checked(before, tell);
  const answers: Answer[] = [];
  for (const answer of found().answers) answers.push({ ...answer, check: yield* checked(answer.snapped, tell) });
  const distinct = farApart(box, soundFirst(answers, before, beforeCheck));
  const last = { ...nothing(quest, before), beforeCheck, answers: distinct };
  found = () => ({ ...last, evaluations });
  yield tell();

  const fights: Fight[] = [];
  const [best] = last.answers;
  const missed = best === undefined ? [] : missedMusts(best.snapped.score).map(({ goal }) => goal);
  // What is met with room to spare stands in nobody's way.
  const tight = missed.length === 0 || best === undefined ? [] : best.snapped.score.met.filter(isTight);
  const others = tight.map(({ goal }) => goal).filter(({ name }) => name !== "range");
  for (const without of others) {
    const fewer: Quest = { ...quest, goals: quest.goals.filter((goal) => goal !== without) };
    const run = searched(box, costsOf(fewer, asItIs(fewer)), shorter(effort), 1, start);
    let next = run.next();
    for (; !next.done; next = run.next()) yield tell(0.98);
    const nearest = placed(fewer, next.value.x);
    if (nearest !== null)
      fights.push(
        fightOf(
          without,
          missed,
          missedMusts(nearest.score).map(({ goal }) => goal),
        ),
      );
  }
  found = () => ({ ...last, fights: missed.length === 0 ? null : fights.filter(tells), evaluations, done: true });
  yield { progress: 1, best: found };
}

/** What is known before anything is found. */
function nothing(quest: Quest, before: Placed): Found {
  return { quest, before, beforeCheck: null, answers: [], fights: null, evaluations: 0, done: false };
}

/** What leaving out one must does for those that are missed with it; `still`: those that are missed without it. */
function fightOf(without: Goal, missed: readonly Goal[], still: readonly Goal[]): Fight {
  const frees = missed.filter((goal) => goal !== without && !still.includes(goal));
  return { without, frees, all: still.length === 0 };
}

/** Whether leaving that must out helps anything: itself out of the way is no help to the others. */
function tells({ frees, all }: Fight): boolean {
  return frees.length > 0 || all;
}

/**
 * The best in whole steps about a place; from where the car stands now instead, where that comes out better; or where it stands
 * now, which need not be on a whole step, where no step near it is as good.
 */
function* inSteps(grid: Grid, cost: Cost, { x }: Spot, [start]: readonly Float64Array[]): Generator<Spot, Spot, void> {
  const near = yield* snapped(grid, cost, x);
  const now = start === undefined ? Number.POSITIVE_INFINITY : cost(start, Number.POSITIVE_INFINITY);
  if (start === undefined || near.cost <= now) return near;
  const about = yield* snapped(grid, cost, start);
  return about.cost <= now ? about : { x: start, cost: now };
}

/** What is looked for after the first answer, or with one must less: places are known by then, and a shorter search will do. */
function shorter(effort: Effort): Effort {
  return { ...effort, generations: Math.ceil(0.4 * effort.generations), finish: effort.finish / 2 };
}

function answerOf(quest: Quest, spot: { readonly exact: Spot; readonly snapped: Spot }): readonly Answer[] {
  const [exact, near] = [placed(quest, spot.exact.x), placed(quest, spot.snapped.x)];
  if (exact === null || near === null) return [];
  const tight = near.score.met.filter((met) => met.miss <= 0 && met.goal.name !== "range" && isTight(met));
  const costs = costsOf(quest.goals, quest.study, near.study);
  return [{ exact, snapped: near, tight, costs, check: null }];
}

/**
 * The best so far and what is nearest to it in whole steps: all that a stopped search leaves. Where that would make a must
 * worse, the car as it stands.
 */
function soFar(
  quest: Quest,
  before: Placed,
  { x, cost }: Spot,
  { step, origin, first, last }: Grid,
): readonly Answer[] {
  const near = x.map(
    (value, d) => origin[d] + within(Math.round((value - origin[d]) / step[d]), first[d], last[d]) * step[d],
  );
  const rounded = answerOf(quest, { exact: { x, cost }, snapped: { x: near, cost } });
  const worse = rounded.some(
    ({ snapped: each }) => worsened(before.score, each.score) > 0 || turnsAgainst(quest, each.study),
  );
  const [start] = startIn(boxOf(quest.variables));
  return worse && start !== undefined
    ? answerOf(quest, { exact: { x: start, cost }, snapped: { x: start, cost } })
    : rounded;
}

function* checked<P>({ study }: Placed, tell: () => P): Generator<P, CheckReport | null, void> {
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

/** Answers without those that came near a better one as they were set to whole steps. */
function farApart(box: Box, answers: readonly Answer[]): readonly Answer[] {
  return answers.filter((each, i) =>
    answers.slice(0, i).every((better) => apart(box, each.snapped.moves, better.snapped.moves) >= APART / 2),
  );
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
  const before = asItIs(quest);
  const job = jobOf<() => Found>(() => nothing(quest, before), pieces(quest, before));
  return { ...job, best: () => job.best()() };
}

/** Runs a search through. */
export function found(quest: Quest): Found {
  return finished(findJob(quest));
}

/** How many limits a check found broken; targets are what the search is about, and not among them. */
export function brokenIn(report: CheckReport | null): number {
  return newlyBroken(null, report).length;
}
