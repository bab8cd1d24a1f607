import { type Box, type Cost, type Spot, within } from "./problem.ts";

/** The simplex has come together where it is smaller than this share of the box. */
const TOGETHER = 1e-7;

/**
 * The least of a cost near a place, looked for by the downhill simplex (Nelder and Mead, A simplex method for function
 * minimization, The Computer Journal 7, 1965) with its usual factors 1, 2, 1/2 and 1/2; what would leave the box is put at
 * its side. `size`: of the first simplex, as a share of the box. Never worse than where it begins. Yields the best so far
 * after each cost.
 */
export function* downhill(
  box: Box,
  cost: Cost,
  start: Spot,
  size: number,
  budget: number,
): Generator<Spot, Spot, void> {
  const { low, high } = box;
  const many = low.length;
  const clamped = (x: Float64Array) => x.map((value, d) => within(value, low[d], high[d]));
  let spent = 0;
  const look = (x: Float64Array, enough = Number.POSITIVE_INFINITY): Spot => {
    spent++;
    const at = clamped(x);
    return { x: at, cost: cost(at, enough) };
  };
  const corners: Spot[] = [start];
  for (let d = 0; d < many && spent < budget; d++) {
    const x = Float64Array.from(start.x);
    const side = size * (high[d] - low[d]);
    x[d] += x[d] + side > high[d] ? -side : side;
    corners.push(look(x));
    yield corners.reduce((a, b) => (b.cost < a.cost ? b : a));
  }
  while (spent < budget && corners.length > many) {
    corners.sort((a, b) => a.cost - b.cost);
    const best = corners[0];
    const worst = corners[many];
    const next = corners[many - 1];
    if (widthOf(corners, box) < TOGETHER) break;
    const middle = low.map((_, d) => corners.slice(0, many).reduce((sum, { x }) => sum + x[d], 0) / many);
    const along = (factor: number) => middle.map((value, d) => value + factor * (value - worst.x[d]));
    const mirrored = look(along(1));
    yield best;
    if (mirrored.cost < best.cost) {
      const farther = look(along(2));
      corners[many] = farther.cost < mirrored.cost ? farther : mirrored;
      yield corners[many];
      continue;
    }
    if (mirrored.cost < next.cost) {
      corners[many] = mirrored;
      continue;
    }
    const nearer = look(mirrored.cost < worst.cost ? along(0.5) : along(-0.5));
    yield best;
    if (nearer.cost < Math.min(mirrored.cost, worst.cost)) {
      corners[many] = nearer;
      continue;
    }
    for (let i = 1; i <= many && spent < budget; i++) {
      corners[i] = look(best.x.map((value, d) => (value + corners[i].x[d]) / 2));
      yield best;
    }
  }
  return corners.reduce((a, b) => (b.cost < a.cost ? b : a));
}

/** The widest side of a simplex, as a share of the box. */
function widthOf(corners: readonly Spot[], { low, high }: Box): number {
  return Math.max(
    ...Array.from(low, (_, d) => {
      const values = corners.map(({ x }) => x[d]);
      return (Math.max(...values) - Math.min(...values)) / (high[d] - low[d]);
    }),
  );
}
