import { lup, lusolve } from "mathjs";
import type { Point } from "../../src/kinematics/drawn.ts";
import { armsOf, type DoubleArmCar, drawnPlaces, fittedRod, innerEye, type Places, type SideName } from "./corner.ts";
import { cross, distance, dot, minus, plus, point, times, unit } from "./vectors.ts";

/**
 * A generic Newton on the loop equations of one corner: a double arm steered by a rack.
 *
 * Unknowns: the coordinates of the lower joint L, the upper joint U, the tie rod's outer end T, the wheel centre W and a point S out on the spin
 * axis; 15 numbers. Equations, in mm: L and U keep their distances from both of their arm's pivots (4), L to U (1), T to L, U and the inner eye
 * (3); W and S keep their coordinates in the skew frame (U - L, T - L, (U - L) x (T - L)) of the upright, which also keeps the side they lie on
 * (6); the height of W is the drawn one plus the travel (1).
 *
 * The pose at a rack, travel and rod length is reached from the drawn pose by continuation: small steps, each a Newton, the linear algebra by
 * mathjs. A step counts only if the solution moved as the tangent foretold and three signs are the drawn ones: of the triple product of king pin
 * and upper arm, of that of tie rod and tab, which are nought at the dead points of these two, and of det J, which is nought where the wheel turns
 * back. A step that fails is halved; when steps come to nothing, there is no solution beyond.
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

export interface Corner {
  readonly drawn: State;
  /** The rod length of the car: as given, or cut to fit. */
  readonly rod: number;
  readonly residuals: (unknowns: readonly number[], at: Knobs) => number[];
  readonly eye: (input: number) => Point;
  /** The triple products, nought at the dead points of the upper arm and of the tie rod. */
  readonly triples: (unknowns: readonly number[], at: Knobs) => readonly [number, number];
  /** The signs of the triple products and of det J as drawn. */
  readonly signs: string;
}

export type Reached = { readonly reached: true; readonly state: State };
export type Stalled = { readonly reached: false; readonly state: State };

const spinArm = 100;
/** Any step serves: every equation is at most quadratic in each unknown, so that central differences are exact. */
const differenceStep = 1;
/** Steps in the path shorter than this, mm, are given up. */
const leastStep = 1e-7;

/** The loop equations of one corner. */
export function cornerOf(drawn: DoubleArmCar, side: SideName): Corner {
  const arms = armsOf(drawn, side);
  const places = drawnPlaces(drawn, side);
  const tip = plus(places.wheelCenter, times(places.spin, spinArm));
  const held: [Point, number][] = [
    [arms.lowerFront, distance(arms.lowerFront, arms.lowerJoint)],
    [arms.lowerRear, distance(arms.lowerRear, arms.lowerJoint)],
    [arms.upperFront, distance(arms.upperFront, arms.upperJoint)],
    [arms.upperRear, distance(arms.upperRear, arms.upperJoint)],
  ];
  const kingPin = distance(places.lower, places.upper);
  const lowerToTab = distance(places.lower, places.tieRodOuter);
  const upperToTab = distance(places.upper, places.tieRodOuter);
  const wheelIn = skewCoordinates(places.lower, places.upper, places.tieRodOuter, places.wheelCenter);
  const tipIn = skewCoordinates(places.lower, places.upper, places.tieRodOuter, tip);
  const eye = (input: number) => innerEye(drawn, side, input);

  const residuals = (unknowns: readonly number[], at: Knobs): number[] => {
    const [lower, upper, tab, wheel, spinTip] = [0, 3, 6, 9, 12].map((i) =>
      point(unknowns[i], unknowns[i + 1], unknowns[i + 2]),
    );
    return [
      off(lower, ...held[0]),
      off(lower, ...held[1]),
      off(upper, ...held[2]),
      off(upper, ...held[3]),
      off(lower, upper, kingPin),
      off(tab, lower, lowerToTab),
      off(tab, upper, upperToTab),
      off(tab, eye(at.input), at.rod),
      ...components(minus(wheel, fromSkew(lower, upper, tab, wheelIn))),
      ...components(minus(spinTip, fromSkew(lower, upper, tab, tipIn))),
      wheel.z - places.wheelCenter.z - at.travel,
    ];
  };

  const triples: Corner["triples"] = (unknowns, at) => {
    const [lower, upper, tab] = [0, 3, 6].map((i) => point(unknowns[i], unknowns[i + 1], unknowns[i + 2]));
    const pin = minus(upper, lower);
    return [
      dot(pin, cross(minus(arms.upperFront, arms.upperRear), minus(upper, arms.upperRear))),
      dot(minus(tab, eye(at.input)), cross(pin, minus(tab, lower))),
    ];
  };

  const unknowns = [places.lower, places.upper, places.tieRodOuter, places.wheelCenter, tip].flatMap(components);
  const at = { input: drawn.mechanism.straightAhead, travel: 0, rod: fittedRod(drawn, side) };
  const corner = {
    drawn: { at, unknowns },
    rod: drawn[side].tieRodLength ?? at.rod,
    residuals,
    eye,
    triples,
    signs: "",
  };
  return { ...corner, signs: signsOf(corner, unknowns, at) };
}

/** Follows the solution along the straight line from a state's knobs to others. */
export function follow(corner: Corner, from: State, to: Knobs): Reached | Stalled {
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

/** The named places of a state. */
export function placesOf(corner: Corner, { unknowns, at }: State): Places {
  const [lower, upper, tieRodOuter, wheelCenter, tip] = [0, 3, 6, 9, 12].map((i) =>
    point(unknowns[i], unknowns[i + 1], unknowns[i + 2]),
  );
  return {
    lower,
    upper,
    tieRodOuter,
    tieRodInner: corner.eye(at.input),
    wheelCenter,
    spin: unit(minus(tip, wheelCenter)),
  };
}

/** The unknowns that places stand for; the way back from `placesOf`. */
export function unknownsOf({ lower, upper, tieRodOuter, wheelCenter, spin }: Places): number[] {
  return [lower, upper, tieRodOuter, wheelCenter, plus(wheelCenter, times(spin, spinArm))].flatMap(components);
}

/** The Jacobian by central differences, which are exact here; row = equation, column = unknown. */
export function jacobian(corner: Pick<Corner, "residuals">, unknowns: readonly number[], at: Knobs): number[][] {
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
export function correction(corner: Corner, unknowns: readonly number[], at: Knobs): number[] | null {
  try {
    const solved = lusolve(jacobian(corner, unknowns, at), corner.residuals(unknowns, at));
    return (solved as number[][]).map(([value]) => -value);
  } catch {
    return null;
  }
}

function newtonStep(corner: Corner, start: readonly number[], at: Knobs): number[] | null {
  const tangent = correction(corner, start, at);
  if (!tangent) return null;
  let unknowns = start.map((value, i) => value + tangent[i]);
  for (let turn = 0; turn < 8; turn++) {
    const change = correction(corner, unknowns, at);
    if (!change) return null;
    unknowns = unknowns.map((value, i) => value + change[i]);
    if (largest(change) < 1e-9) {
      const astray = largest(unknowns.map((value, i) => value - start[i] - tangent[i]));
      if (astray > 0.25 * largest(tangent) + 1e-9) return null;
      return signsOf(corner, unknowns, at) === corner.signs ? unknowns : null;
    }
  }
  return null;
}

function signsOf(corner: Omit<Corner, "signs">, unknowns: readonly number[], at: Knobs): string {
  return [...corner.triples(unknowns, at).map(Math.sign), signOfDeterminant(jacobian(corner, unknowns, at))].join();
}

function signOfDeterminant(matrix: number[][]): number {
  const { U, p } = lup(matrix);
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

/** How far two points are from keeping a distance, mm to first order, and quadratic in the coordinates. */
function off(a: Point, b: Point, held: number): number {
  const apart = minus(a, b);
  return (dot(apart, apart) - held * held) / (2 * held);
}

type Skew = readonly [number, number, number];

function skewCoordinates(origin: Point, first: Point, second: Point, place: Point): Skew {
  const u = minus(first, origin);
  const v = minus(second, origin);
  const n = cross(u, v);
  const d = minus(place, origin);
  const square = dot(n, n);
  return [dot(cross(d, v), n) / square, dot(cross(u, d), n) / square, dot(d, n) / square];
}

function fromSkew(origin: Point, first: Point, second: Point, [a, b, c]: Skew): Point {
  const u = minus(first, origin);
  const v = minus(second, origin);
  return plus(origin, plus(plus(times(u, a), times(v, b)), times(cross(u, v), c)));
}

function components({ x, y, z }: Point): number[] {
  return [x, y, z];
}

function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
