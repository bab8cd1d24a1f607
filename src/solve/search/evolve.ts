import { type Box, type Cost, type Spot, within } from "./problem.ts";
import { randomFrom } from "./random.ts";

/** How long a differential evolution goes on; with the seed it decides every place that is looked at. */
export interface Effort {
  readonly population: number;
  readonly generations: number;
  readonly seed: number;
}

/** A trial takes each variable from the mutant with this chance; the difference of two others counts between so much and so much. */
const CROSSOVER = 0.9;
const LEAST_FACTOR = 0.4;
const MOST_FACTOR = 0.9;

/**
 * The least of a cost in a box, looked for by differential evolution: DE/rand/1/bin (Storn and Price, Differential
 * evolution: a simple and efficient heuristic for global optimization over continuous spaces, Journal of Global Optimization
 * 11, 1997), with the factor drawn anew for every trial, and a mutant that leaves the box put half way between its base and
 * the side that it left by. `first`: places to begin with, within the box. Yields the best so far after each cost.
 */
export function* evolve(
  { low, high }: Box,
  cost: Cost,
  { population, generations, seed }: Effort,
  first: readonly Float64Array[] = [],
): Generator<Spot, Spot, void> {
  const random = randomFrom(seed);
  const size = low.length;
  const below = (end: number) => Math.min(Math.floor(random() * end), end - 1);
  const members: Spot[] = [];
  let best: Spot | null = null;
  for (let i = 0; i < population; i++) {
    const x = first[i] ?? low.map((from, d) => from + random() * (high[d] - from));
    const member: Spot = { x, cost: cost(x, Number.POSITIVE_INFINITY) };
    members.push(member);
    if (best === null || member.cost < best.cost) best = member;
    yield best;
  }
  if (best === null) throw new Error("a search needs somebody to begin with");
  for (let generation = 0; generation < generations; generation++) {
    for (let i = 0; i < population; i++) {
      const [a, b, c] = threeOthers(i, population, below);
      const factor = LEAST_FACTOR + random() * (MOST_FACTOR - LEAST_FACTOR);
      const sure = below(size);
      const x = Float64Array.from(members[i].x);
      for (let d = 0; d < size; d++) {
        if (d !== sure && random() >= CROSSOVER) continue;
        const base = members[a].x[d];
        const mutant = base + factor * (members[b].x[d] - members[c].x[d]);
        x[d] = mutant < low[d] ? (base + low[d]) / 2 : mutant > high[d] ? (base + high[d]) / 2 : mutant;
        x[d] = within(x[d], low[d], high[d]);
      }
      const trial: Spot = { x, cost: cost(x, members[i].cost) };
      if (trial.cost <= members[i].cost) members[i] = trial;
      if (trial.cost < best.cost) best = trial;
      yield best;
    }
  }
  return best;
}

/** Three members that are neither each other nor that one. */
function threeOthers(i: number, population: number, below: (end: number) => number): readonly [number, number, number] {
  const draw = (taken: readonly number[]): number => {
    const at = below(population);
    return taken.includes(at) ? draw(taken) : at;
  };
  const a = draw([i]);
  const b = draw([i, a]);
  return [a, b, draw([i, a, b])];
}
