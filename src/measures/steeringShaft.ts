import type { Point } from "../kinematics/drawn.ts";
import { cross, dot, minus, plus, times } from "../kinematics/math.ts";
import type { SteeringShaft } from "../vehicle/sections/steering-shaft.ts";

/** One universal joint of a steering shaft. */
export interface ShaftJoint {
  readonly name: "upper" | "middle" | "lower";
  /** How far it bends, rad: 0 is straight. */
  readonly bend: number;
}

/** How a steering shaft's joints stand, and how unevenly they turn the pinion. */
export interface ShaftRun {
  readonly joints: readonly ShaftJoint[];
  /** Least and greatest speed of the pinion over a turn, the steering wheel turning at 1. */
  readonly slowest: number;
  readonly fastest: number;
}

function unit(a: Point): Point {
  return times(a, 1 / Math.sqrt(dot(a, a)));
}

function angle(a: Point, b: Point): number {
  const across = cross(a, b);
  return Math.atan2(Math.sqrt(dot(across, across)), dot(a, b));
}

/** Turns a about the unit vector k by an angle (Rodrigues' formula), a square to k. */
function about(k: Point, a: Point, by: number): Point {
  return plus(times(a, Math.cos(by)), times(cross(k, a), Math.sin(by)));
}

/**
 * Speed of the last shaft while the first turns at 1, its fork turned by `turn` from the plane of the first joint.
 * axes are the shafts' unit vectors, phases[i] the turn from the upper to the lower fork of shaft i + 1.
 *
 * At a joint the driving fork's pin is f, square to its shaft; the driven fork's is then a × f, a the driven shaft, and the
 * speeds' ratio cos β/(1 − (f·a)²) = cos β/(1 − sin²β cos²θ): Hooke's joint, as in any handbook (Khurmi and Gupta, Theory of
 * Machines, ch. 9, form quoted from memory).
 */
export function speedAt(axes: readonly Point[], phases: readonly number[], turn: number): number {
  const [first, second] = axes;
  if (first === undefined || second === undefined) return 1;
  const bent = minus(second, times(first, dot(second, first)));
  const any = Math.abs(first.z) < 0.9 ? cross(first, { x: 0, y: 0, z: 1 }) : cross(first, { x: 1, y: 0, z: 0 });
  let pin = about(first, unit(dot(bent, bent) > 1e-18 ? bent : any), turn);
  let speed = 1;
  for (let i = 1; i < axes.length; i++) {
    const [from, to] = [axes[i - 1] ?? first, axes[i] ?? first];
    const along = dot(pin, to);
    speed *= dot(from, to) / (1 - along * along);
    pin = about(to, unit(cross(to, pin)), phases[i - 1] ?? 0);
  }
  return speed;
}

/** Places over the half turn after which speeds repeat. */
const PLACES = 360;

/** Least and greatest speed of the last shaft over a turn, looked at in so many places. See speedAt. */
export function speedRange(axes: readonly Point[], phases: readonly number[], places = PLACES) {
  let [slowest, fastest] = [Number.POSITIVE_INFINITY, 0];
  for (let i = 0; i < places; i++) {
    const speed = speedAt(axes, phases, (i * Math.PI) / places);
    slowest = Math.min(slowest, speed);
    fastest = Math.max(fastest, speed);
  }
  return { slowest, fastest };
}

/**
 * The turn between the forks of the shaft between two joints that evens their speeds out as far as it goes, rad in
 * −90° … 90°: both joints' planes have to meet a fork at the same time, so it is the angle between the two planes about that
 * shaft. With equal bends nothing of the unevenness is left.
 */
export function bestPhase([first, middle, last]: readonly [Point, Point, Point]): number {
  const normal = cross(first, middle);
  const other = cross(middle, last);
  const by = Math.atan2(dot(cross(normal, other), middle), dot(normal, other));
  return by > Math.PI / 2 ? by - Math.PI : by < -Math.PI / 2 ? by + Math.PI : by;
}

/** Phases a way in the first look at both, and the step, rad, that the search ends with: a fortieth of a degree. */
const PHASES = 18;
const FINE = Math.PI / 180 / 40;

/** Places of a turn that are enough to tell which of two pairs of phases is more even. */
const FEW = 45;

/**
 * The phases of both inner shafts, between three joints, that leave the pinion's speed most even: greatest over least, rad in
 * −90° … 90°. There is no closed form as for two joints: looked for on a grid, and then ever closer about its best.
 */
export function bestPhases(axes: readonly [Point, Point, Point, Point]): readonly [number, number] {
  const uneven = (phases: readonly [number, number]) => {
    const { slowest, fastest } = speedRange(axes, phases, FEW);
    return fastest / slowest;
  };
  let step = Math.PI / PHASES;
  let best = { phases: [0, 0] as readonly [number, number], uneven: uneven([0, 0]) };
  const look = (phases: readonly [number, number]) => {
    const here = uneven(phases);
    if (here < best.uneven) best = { phases, uneven: here };
  };
  for (let i = 0; i < PHASES; i++) {
    for (let j = 0; j < PHASES; j++) look([i * step - Math.PI / 2, j * step - Math.PI / 2]);
  }
  while (step > FINE) {
    const [first, second] = best.phases;
    for (const i of [-1, 0, 1]) {
      for (const j of [-1, 0, 1]) look([first + i * step, second + j * step]);
    }
    if (best.phases[0] === first && best.phases[1] === second) step /= 2;
  }
  const within = (by: number) => (by > Math.PI / 2 ? by - Math.PI : by < -Math.PI / 2 ? by + Math.PI : by);
  return [within(best.phases[0]), within(best.phases[1])];
}

/** The shaft's run with its last joint and the pinion moved across the car by `shift`, mm, to the driver's left. */
export function shaftRun(shaft: SteeringShaft, shift = 0): ShaftRun & { readonly axes: readonly Point[] } {
  const point = ({ ahead, offset, up }: SteeringShaft["wheel"], by = 0): Point => ({ x: ahead, y: offset + by, z: up });
  const inner = [
    ["upper", shaft["upper-joint"]],
    ["middle", shaft["middle-joint"]],
  ] as const;
  const between = inner.flatMap(([name, at]) => (at === null ? [] : [{ name, at: point(at) }]));
  const joints = [...between, { name: "lower" as const, at: point(shaft["lower-joint"], shift) }];
  const places = [point(shaft.wheel), ...joints.map(({ at }) => at), point(shaft.pinion, shift)];
  const axes = places.slice(1).map((place, i) => unit(minus(place, places[i] ?? place)));
  const bends = joints.map(({ name }, i) => ({ name, bend: angle(axes[i] ?? axes[0], axes[i + 1] ?? axes[0]) }));
  return { joints: bends, axes, ...speedRange(axes, [shaft.phase, shaft["second-phase"]]) };
}
