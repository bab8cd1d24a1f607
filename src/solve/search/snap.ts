import { type Cost, type Spot, within } from "./problem.ts";

/** Places that can be set: whole steps of each variable from its origin, from and to counts. */
export interface Grid {
  readonly step: Float64Array;
  readonly origin: Float64Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Up to so many variables, every corner of the cell about the place is tried to begin with. */
const CORNERS = 5;
/** A round looks at every neighbour; more of them than this have never been needed. */
const ROUNDS = 12;

/** Every choice of two numbers for so many variables. */
function corners(many: number): readonly (readonly (0 | 1)[])[] {
  return many === 0 ? [[]] : corners(many - 1).flatMap((rest) => [[...rest, 0] as const, [...rest, 1] as const]);
}

/** Every step of one variable and of two at once. */
function neighbours(many: number): readonly (readonly (readonly [at: number, by: number])[])[] {
  const singles = Array.from({ length: many }, (_, d) => [-1, 1].map((by) => [[d, by]] as const)).flat();
  const pairs = singles.flatMap(([a]) => singles.filter(([b]) => b[0] > a[0]).map(([b]) => [a, b] as const));
  return [...singles, ...pairs];
}

/**
 * The best place of a grid near a place between: the best corner of the cell about it, then whatever step of one variable or
 * of two at once is better, until none is. Yields the best so far after each cost.
 */
export function* snapped(grid: Grid, cost: Cost, place: Float64Array): Generator<Spot, Spot, void> {
  const { step, origin, first, last } = grid;
  const many = step.length;
  const seen = new Map<string, Spot>();
  const look = (counts: readonly number[], enough: number): Spot => {
    const name = counts.join();
    const known = seen.get(name);
    if (known !== undefined) return known;
    const x = Float64Array.from(counts, (count, d) => origin[d] + count * step[d]);
    const spot: Spot = { x, cost: cost(x, enough) };
    seen.set(name, spot);
    return spot;
  };
  const floors = Array.from(place, (value, d) => Math.floor((value - origin[d]) / step[d]));
  const begin =
    many <= CORNERS
      ? corners(many).map((which) => which.map((up, d) => within(floors[d] + up, first[d], last[d])))
      : [Array.from(place, (value, d) => within(Math.round((value - origin[d]) / step[d]), first[d], last[d]))];
  let counts = begin[0];
  let best: Spot | null = null;
  for (const each of begin) {
    const spot = look(each, best?.cost ?? Number.POSITIVE_INFINITY);
    if (best === null || spot.cost < best.cost) [best, counts] = [spot, each];
    yield best;
  }
  if (best === null) throw new Error("a grid has no corner");
  const moves = neighbours(many);
  for (let round = 0; round < ROUNDS; round++) {
    const from: readonly number[] = counts;
    let better = false;
    for (const move of moves) {
      const to = [...from];
      for (const [at, by] of move) to[at] += by;
      if (move.some(([at]) => to[at] < first[at] || to[at] > last[at])) continue;
      const spot = look(to, best.cost);
      if (spot.cost < best.cost) [best, counts, better] = [spot, to, true];
      yield best;
    }
    if (!better) return best;
  }
  return best;
}
