import type { Point } from "../../kinematics/drawn.ts";

/** Shank directions, three numbers each, all unit vectors, as the bolt's body sees them over the range. */
export type Shanks = Float64Array;

/** The worst swing over a range that a bolt in the direction b gives, rad: the largest asin|e·b|, b a unit vector. */
export function worstSwing(shanks: Shanks, b: Point): number {
  return Math.asin(Math.min(largest(shanks, b.x, b.y, b.z, 1), 1));
}

/** The largest |e·b| among every `skip`-th shank; `count` doubles of them are looked at. */
function largest(shanks: Shanks, x: number, y: number, z: number, skip: number, count = shanks.length): number {
  let most = 0;
  for (let i = 0; i < count; i += 3 * skip) {
    const here = Math.abs(shanks[i] * x + shanks[i + 1] * y + shanks[i + 2] * z);
    if (here > most) most = here;
  }
  return most;
}

/** Writes those shanks whose |e·b| is at least so much, and gives how many doubles they are. */
function putNear(shanks: Shanks, x: number, y: number, z: number, least: number, near: Float64Array): number {
  let count = 0;
  for (let i = 0; i < shanks.length; i += 3) {
    if (Math.abs(shanks[i] * x + shanks[i + 1] * y + shanks[i + 2] * z) < least) continue;
    for (let k = 0; k < 3; k++) near[count++] = shanks[i + k];
  }
  return count;
}

/** A bolt direction, a unit vector, and the worst swing that it gives, rad. */
export interface Best {
  readonly bolt: Point;
  readonly worst: number;
}

/** Rings of the first grid over the half sphere, and how many shanks it looks at. */
const RINGS = 24;
const SAMPLE = 150;
/** Each round looks so many ways about the best so far; what is no better often enough halves its reach, down to this many rad. */
const WAYS = 96;
const TRIES = 2;
const FINE = 1e-6;
/** What a step has to gain, as a share of its length: without that a search could creep along a valley for ever. */
const GAIN = 1e-4;
/** Each round's ways lie between those of the round before (the golden angle), so that no narrow way down is missed for long. */
const TURN = Math.PI * (3 - Math.sqrt(5));

/** How far a place is from the nearest of the grid, rad, at most: half a cell's diagonal. */
const CELL = (Math.PI / 2 / RINGS) * Math.SQRT1_2;

/** A place of the grid, and the largest |e·b| there among the sampled shanks. */
interface Start extends Point {
  readonly most: number;
}

/** The search goes on from the best places of the grid, so many at most and no two within this of each other, rad. */
const STARTS = 4;
const APART = (10 * Math.PI) / 180;

/** The places of a grid over the half sphere. Yields after each ring. */
function* gridOf(shanks: Shanks): Generator<void, readonly Start[], void> {
  const skip = Math.max(Math.floor(shanks.length / 3 / SAMPLE), 1);
  const places: Start[] = [];
  for (let i = 0; i <= RINGS; i++) {
    const lean = (i * Math.PI) / 2 / RINGS;
    const around = Math.max(Math.round(4 * RINGS * Math.sin(lean)), 1);
    for (let j = 0; j < around; j++) {
      const way = (j * 2 * Math.PI) / around;
      const side = Math.sin(lean);
      const [x, y, z] = [side * Math.cos(way), side * Math.sin(way), Math.cos(lean)];
      places.push({ x, y, z, most: largest(shanks, x, y, z, skip) });
    }
    yield;
  }
  return places;
}

/** The best places, apart from each other; a bolt and its opposite are one. */
function startsOf(places: readonly Start[]): readonly Start[] {
  const starts: Start[] = [];
  for (const each of [...places].sort((a, b) => a.most - b.most)) {
    if (starts.length === STARTS) break;
    const near = (other: Start) => Math.abs(each.x * other.x + each.y * other.y + each.z * other.z) > Math.cos(APART);
    if (!starts.some(near)) starts.push(each);
  }
  return starts;
}

/** A pattern search from a place of the grid, that turns its pattern and halves its step. Yields between rounds. */
function* descend(shanks: Shanks, start: Point): Generator<void, Best, void> {
  let { x, y, z } = start;
  let least = largest(shanks, x, y, z, 1);
  const near = new Float64Array(shanks.length);
  let failed = 0;
  for (let [step, round] = [Math.PI / 2 / RINGS, 0]; step > FINE; round++) {
    // Two directions square to the best so far: the pattern lies in the plane that touches the sphere there.
    const [ax, ay, az] = Math.abs(z) < 0.9 ? [y, -x, 0] : [0, z, -y];
    const size = Math.sqrt(ax * ax + ay * ay + az * az);
    const [ux, uy, uz] = [ax / size, ay / size, az / size];
    const [vx, vy, vz] = [y * uz - z * uy, z * ux - x * uz, x * uy - y * ux];
    const [bx, by, bz] = [x, y, z];
    // A bolt that turns by a step changes no |e·b| by more: what is two steps short of the worst cannot become it.
    const count = putNear(shanks, bx, by, bz, least - 2 * step, near);
    let better = false;
    for (let k = 0; k < WAYS; k++) {
      const way = (k * 2 * Math.PI) / WAYS + round * TURN;
      const c = step * Math.cos(way);
      const s = step * Math.sin(way);
      const [px, py, pz] = [bx + c * ux + s * vx, by + c * uy + s * vy, bz + c * uz + s * vz];
      const long = Math.sqrt(px * px + py * py + pz * pz);
      const here = largest(near, px / long, py / long, pz / long, 1, count);
      if (!(here < least - GAIN * step)) continue;
      [x, y, z, least] = [px / long, py / long, pz / long, here];
      better = true;
    }
    failed = better ? 0 : failed + 1;
    if (failed === TRIES) [step, failed] = [step / 2, 0];
    yield;
  }
  return { bolt: { x, y, z }, worst: Math.asin(Math.min(least, 1)) };
}

/**
 * The bolt direction whose worst swing over a range is least: the plane that all shank directions lie nearest to, its normal.
 * A grid over the half sphere, and a search from each of its best places; every direction is looked at by max|e·b|, which is
 * convex as a function of b before its length is fixed, so there are few valleys to miss. Deterministic.
 * Where two turns are about nearly the same axis a valley is so narrow that the search can stop short in it: of 301 random swings
 * four were worse than the best of a grid, by up to 0.03 degrees.
 * Yields between small pieces of the work. Null where there are no shanks.
 */
export function* searchBolt(shanks: Shanks): Generator<void, Best | null, void> {
  if (shanks.length === 0) return null;
  let best: Best | null = null;
  for (const start of startsOf(yield* gridOf(shanks))) {
    // Within a cell of the grid no |e·b| falls by more than the way: a place that is worse than that by more has no better near.
    if (best !== null && start.most - CELL > Math.sin(best.worst)) continue;
    const found = yield* descend(shanks, start);
    if (best === null || found.worst < best.worst) best = found;
  }
  return best;
}

/** The same in one go. See searchBolt. */
export function bestBolt(shanks: Shanks): Best | null {
  const search = searchBolt(shanks);
  let next = search.next();
  while (!next.done) next = search.next();
  return next.value;
}
