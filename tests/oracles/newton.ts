import { lup, lusolve } from "mathjs";
import type { Drawn, Point } from "../../src/kinematics/drawn.ts";
import { drawnSpin, type Places, type SideName } from "./corner.ts";
import { linkageLoops } from "./linkageLoops.ts";
import { type MechanismLoops, mechanismLoops } from "./mechanismLoops.ts";
import { components, fromSkew, off, skewCoordinates } from "./skew.ts";
import { cross, distance, dot, minus, plus, point, times, unit } from "./vectors.ts";

/**
 * A generic Newton on the loop equations of one corner, whatever its linkage and steering mechanism.
 *
 * Unknowns: the coordinates of the lower joint L, a second place K on the drawn steering axis, the tie rod's outer end T, the wheel centre W and a
 * point S out on the spin axis; 15 numbers, and those that the steering mechanism has of its own. Equations, in mm: the linkage's five (six where the
 * king pin is fixed); T keeps its distances from L, K and the inner eye (3); W and S keep their coordinates in the skew frame (K - L, T - L, (K - L) x
 * (T - L)) of the upright, which also keeps the side they lie on (6); the height of W is the drawn one plus the travel (1, where there is travel); and
 * the mechanism's own.
 *
 * The pose at an input, travel and rod length is reached from the drawn pose by continuation: small steps, each a Newton, the linear algebra by
 * mathjs. A step counts only if the solution moved as the tangent foretold and some signs are the drawn ones: of the triple products that are nought
 * at the dead points of the linkage, of the mechanism and of the tie rod, and of det J, which is nought where the wheel turns back. A step that fails
 * is halved; when steps come to nothing, there is no solution beyond.
 */
export interface Knobs {
  readonly input: number;
  readonly travel: number;
  readonly rod: number;
}

export interface State {
  readonly at: Knobs;
  readonly unknowns: readonly number[];
}

/** What a solution can be followed in: its equations, and what tells that a dead point has been passed. */
export interface Loops {
  readonly residuals: (unknowns: readonly number[], at: Knobs) => number[];
  readonly triples: (unknowns: readonly number[], at: Knobs) => readonly number[];
  /** The signs of the triple products and of det J as drawn. */
  readonly signs: string;
}

export interface Corner extends Loops {
  readonly drawn: State;
  /** The rod length of the car: as given, or cut to fit. */
  readonly rod: number;
  /** The inner eye of a state, in the corner's frame. */
  readonly eye: (state: State) => Point;
  /** The upper end of the steering axis, for K as it is. */
  readonly upper: (second: Point) => Point;
}

export type Reached = { readonly reached: true; readonly state: State };
export type Stalled = { readonly reached: false; readonly state: State };

const spinArm = 100;
/** Any step serves: every equation is at most quadratic in each unknown, so that central differences are exact. */
const differenceStep = 1;
/** Steps in the path shorter than this, mm or rad, are given up. */
const leastStep = 1e-7;
/** Unknowns of the corner itself; the mechanism's own come after them. */
const own = 15;

/** The loop equations of one corner. */
export function cornerOf(drawn: Drawn, side: SideName): Corner {
  const { tieRodOuter, wheelCenter, tieRodLength } = drawn[side];
  const linkage = linkageLoops(drawn.linkage, side, tieRodOuter);
  const mechanism = mechanismLoops(drawn.mechanism, side);
  const [lower, second] = linkage.start;
  const tip = plus(wheelCenter, times(drawnSpin(drawn[side]), spinArm));
  const lowerToTab = distance(lower, tieRodOuter);
  const secondToTab = distance(second, tieRodOuter);
  const wheelIn = skewCoordinates(lower, second, tieRodOuter, wheelCenter);
  const tipIn = skewCoordinates(lower, second, tieRodOuter, tip);

  const residuals = (unknowns: readonly number[], at: Knobs): number[] => {
    const [l, k, tab, wheel, spinTip, ...steering] = pointsIn(unknowns);
    return [
      ...linkage.residuals(l, k, tab),
      off(tab, l, lowerToTab),
      off(tab, k, secondToTab),
      off(tab, mechanism.eye(steering, at.input), at.rod),
      ...components(minus(wheel, fromSkew(l, k, tab, wheelIn))),
      ...components(minus(spinTip, fromSkew(l, k, tab, tipIn))),
      ...(linkage.hasTravel ? [wheel.z - wheelCenter.z - at.travel] : []),
      ...mechanism.residuals(steering, at.input),
    ];
  };

  const triples: Corner["triples"] = (unknowns, at) => {
    const [l, k, tab, , , ...steering] = pointsIn(unknowns);
    return [
      dot(minus(tab, mechanism.eye(steering, at.input)), cross(minus(k, l), minus(tab, l))),
      ...linkage.triples(l, k, tab),
      ...mechanism.triples(steering, at.input),
    ];
  };

  const from = drawn.mechanism.straightAhead;
  const steering = steeringAt(mechanism, from);
  if (steering === null) throw new Error("the steering mechanism does not get to where the car is drawn");
  const drawnRod = distance(tieRodOuter, mechanism.eye(pointsIn(steering), from));
  const at = { input: from, travel: 0, rod: drawnRod };
  const unknowns = [...[lower, second, tieRodOuter, wheelCenter, tip].flatMap(components), ...steering];
  const loops = { residuals, triples };
  return {
    ...loops,
    signs: signsOf(loops, unknowns, at),
    drawn: { at, unknowns },
    rod: tieRodLength ?? drawnRod,
    eye: (state) => mechanism.eye(pointsIn(state.unknowns.slice(own)), state.at.input),
    upper: linkage.upper,
  };
}

/** A mechanism's own unknowns at an input, from input 0, where a file has them; null where its own links do not reach. */
function steeringAt(mechanism: MechanismLoops, input: number): readonly number[] | null {
  const loops = {
    residuals: (unknowns: readonly number[], at: Knobs) => mechanism.residuals(pointsIn(unknowns), at.input),
    triples: (unknowns: readonly number[], at: Knobs) => mechanism.triples(pointsIn(unknowns), at.input),
  };
  const unknowns = mechanism.start.flatMap(components);
  if (unknowns.length === 0) return unknowns;
  const at = { input: 0, travel: 0, rod: 0 };
  const found = follow({ ...loops, signs: signsOf(loops, unknowns, at) }, { at, unknowns }, { ...at, input });
  return found.reached ? found.state.unknowns : null;
}

function pointsIn(unknowns: readonly number[]): Point[] {
  return Array.from({ length: unknowns.length / 3 }, (_, i) =>
    point(unknowns[3 * i], unknowns[3 * i + 1], unknowns[3 * i + 2]),
  );
}

/** Follows the solution along the straight line from a state's knobs to others. */
export function follow(corner: Loops, from: State, to: Knobs): Reached | Stalled {
  const path = Math.max(
    Math.abs(to.input - from.at.input),
    Math.abs(to.travel - from.at.travel),
    Math.abs(to.rod - from.at.rod),
  );
  let state = from;
  let done = 0;
  let step = 1;
  while (done < 1) {
    const next = Math.min(1, done + step);
    const at = next === 1 ? to : between(from.at, to, next);
    const unknowns = newtonStep(corner, state.unknowns, at);
    if (unknowns) {
      state = { at, unknowns };
      done = next;
      step *= 2;
    } else {
      step = Math.min(step, 1 - done) / 2;
      if (step * path < leastStep) return { reached: false, state };
    }
  }
  return { reached: true, state };
}

/** The same pose by more than one way round, since a rack and a travel that both close may be joined by a line that does not. */
export function reach(corner: Corner, input: number, travel: number): Reached | Stalled {
  const to = { input, travel, rod: corner.rod };
  const ways: Knobs[][] = [
    [{ ...to, travel: 0 }, to],
    [to],
    [{ ...corner.drawn.at, travel }, to],
    [{ ...to, input: 0, travel: 0 }, { ...to, input: 0 }, to],
  ];
  let last: Reached | Stalled = { reached: false, state: corner.drawn };
  for (const way of ways) {
    last = { reached: true, state: corner.drawn };
    for (const knobs of way) if (last.reached) last = follow(corner, last.state, knobs);
    if (last.reached) return last;
  }
  return last;
}

/** The inner eye of one side at an input, in the corner's frame; null where the mechanism's own links do not reach. */
export function eyeAt(drawn: Drawn, side: SideName, input: number): Point | null {
  const mechanism = mechanismLoops(drawn.mechanism, side);
  const steering = steeringAt(mechanism, input);
  return steering && mechanism.eye(pointsIn(steering), input);
}

/** The state of a corner that stands in the places given; `second` is where K has gone. */
export function stateIn(drawn: Drawn, side: SideName, at: Knobs, places: Places & { readonly second: Point }): State {
  const { lower, second, tieRodOuter, wheelCenter, spin } = places;
  const steering = steeringAt(mechanismLoops(drawn.mechanism, side), at.input);
  if (steering === null) throw new Error("a corner that stands where its steering mechanism does not");
  const tip = plus(wheelCenter, times(spin, spinArm));
  return {
    at,
    unknowns: [...[lower, second, tieRodOuter, wheelCenter, tip].flatMap(components), ...steering],
  };
}

/** The named places of a state. */
export function placesOf(corner: Corner, state: State): Places {
  const [lower, second, tieRodOuter, wheelCenter, tip] = pointsIn(state.unknowns);
  return {
    lower,
    upper: corner.upper(second),
    tieRodOuter,
    tieRodInner: corner.eye(state),
    wheelCenter,
    spin: unit(minus(tip, wheelCenter)),
  };
}

/** The unknowns that places stand for; the way back from `placesOf` where the upper joint and the rack leave nothing else open. */
export function unknownsOf({ lower, upper, tieRodOuter, wheelCenter, spin }: Places): number[] {
  return [lower, upper, tieRodOuter, wheelCenter, plus(wheelCenter, times(spin, spinArm))].flatMap(components);
}

/** The Jacobian by central differences, which are exact here; row = equation, column = unknown. */
export function jacobian(corner: Pick<Loops, "residuals">, unknowns: readonly number[], at: Knobs): number[][] {
  const rows: number[][] = unknowns.map(() => []);
  const moved = [...unknowns];
  for (let column = 0; column < unknowns.length; column++) {
    moved[column] = unknowns[column] + differenceStep;
    const ahead = corner.residuals(moved, at);
    moved[column] = unknowns[column] - differenceStep;
    const behind = corner.residuals(moved, at);
    moved[column] = unknowns[column];
    for (let row = 0; row < rows.length; row++) rows[row][column] = (ahead[row] - behind[row]) / (2 * differenceStep);
  }
  return rows;
}

/** One Newton correction, the unknowns less J^-1 F, by mathjs; null where the Jacobian is singular. */
export function correction(corner: Pick<Loops, "residuals">, unknowns: readonly number[], at: Knobs): number[] | null {
  return corrected(corner, unknowns, at)?.change ?? null;
}

interface Corrected {
  readonly change: number[];
  readonly signOfDeterminant: number;
}

function corrected(corner: Pick<Loops, "residuals">, unknowns: readonly number[], at: Knobs): Corrected | null {
  try {
    const factors = lup(jacobian(corner, unknowns, at));
    const solved = lusolve(factors, corner.residuals(unknowns, at)).valueOf() as number[][];
    const change = solved.map(([value]) => -value);
    return { change, signOfDeterminant: signOfDeterminant(factors) };
  } catch {
    return null;
  }
}

function newtonStep(corner: Loops, start: readonly number[], at: Knobs): number[] | null {
  const tangent = correction(corner, start, at);
  if (!tangent) return null;
  let unknowns = start.map((value, i) => value + tangent[i]);
  for (let turn = 0; turn < 8; turn++) {
    const found = corrected(corner, unknowns, at);
    if (!found) return null;
    const { change } = found;
    unknowns = unknowns.map((value, i) => value + change[i]);
    if (largest(change) < 1e-9) {
      const astray = largest(unknowns.map((value, i) => value - start[i] - tangent[i]));
      if (astray > 0.25 * largest(tangent) + 1e-9) return null;
      // Of the determinant before the last change, which moved nothing by more than 1e-9 mm.
      return signsIn(corner.triples(unknowns, at), found.signOfDeterminant) === corner.signs ? unknowns : null;
    }
  }
  return null;
}

function signsOf(corner: Omit<Loops, "signs">, unknowns: readonly number[], at: Knobs): string {
  return signsIn(corner.triples(unknowns, at), signOfDeterminant(lup(jacobian(corner, unknowns, at))));
}

function signsIn(triples: readonly number[], determinant: number): string {
  return [...triples.map(Math.sign), determinant].join();
}

function signOfDeterminant({ U, p }: ReturnType<typeof lup>): number {
  const upper = U as unknown as number[][];
  let sign = 1;
  for (let i = 0; i < upper.length; i++) sign *= Math.sign(upper[i][i]);
  const order = [...p];
  for (let i = 0; i < order.length; i++) {
    while (order[i] !== i) {
      const j = order[i];
      [order[i], order[j]] = [order[j], order[i]];
      sign = -sign;
    }
  }
  return sign;
}

function between(from: Knobs, to: Knobs, share: number): Knobs {
  return {
    input: from.input + (to.input - from.input) * share,
    travel: from.travel + (to.travel - from.travel) * share,
    rod: from.rod + (to.rod - from.rod) * share,
  };
}

function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
