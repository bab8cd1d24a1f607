import { compile } from "../kinematics/compile.ts";
import type { Mechanism, Point } from "../kinematics/drawn.ts";
import type { Case } from "./evened.ts";
import type { Pair } from "./span.ts";
import { worstOfTravel } from "./worst.ts";
import type { WorstToe } from "./worstToe.ts";

/** Where a tie rod's inner end goes, seen from the front: out is away from the car's middle. */
export type InnerEndWay = "up" | "down" | "out" | "in";

/** That, or "here" where the best place is nearer than a tape reads. */
export type InnerEndMove = InnerEndWay | "here";

/** How far the inner ends are moved to see what that does, mm: so little that no toe worth mending is past its best by it. */
const STEP = 0.1;

/** As far as an inner end is moved in earnest, mm: three inches. Common practice, no source. */
const FAR = 76.2;

/** What a tape reads, 1/64 in, mm. Common practice, no source. */
const TAPE = 0.397;

/** What half of the way to no toe at all, or so far, takes off the worst toe at least: less is no cure. */
const WORTH = 1 / 4;

/** Which of a rod's inner end's two coordinates is moved, and by how much each wheel's, mm, up or outward positive. */
interface Move {
  readonly axis: "height" | "width";
  readonly by: Pair<number>;
}

/** The coordinate that the shape of a curve speaks for, and then the other: a slope asks for height, a bow for width. Common practice, no source. */
const axes: Readonly<Record<WorstToe["chiefly"], readonly Move["axis"][]>> = {
  slope: ["height", "width"],
  bow: ["width", "height"],
};

const words: Readonly<Record<Move["axis"], readonly [more: InnerEndWay, less: InnerEndWay]>> = {
  height: ["up", "down"],
  width: ["out", "in"],
};

type Wheel = keyof Pair<unknown>;

const wheels: readonly Wheel[] = ["left", "right"];

/** The mechanism with its inner ends elsewhere; a rack goes up and down as a whole, by the mean of both. */
function moved(mechanism: Mechanism, { axis, by }: Move): Mechanism {
  if (mechanism.kind === "rack") {
    if (axis === "height") return { ...mechanism, up: mechanism.up + (by.left + by.right) / 2 };
    return {
      ...mechanism,
      eyeToEye: Math.max(0, mechanism.eyeToEye + by.left + by.right),
      offset: mechanism.offset + (by.left - by.right) / 2,
    };
  }
  // A relay's eyes are in the vehicle's frame, y to the driver's left; the others' are each in its own corner's.
  const outward = mechanism.kind === "relay" ? { left: 1, right: -1 } : { left: 1, right: 1 };
  const eyeOf = (eye: Point, wheel: Wheel): Point =>
    axis === "height" ? { ...eye, z: eye.z + by[wheel] } : { ...eye, y: eye.y + outward[wheel] * by[wheel] };
  return { ...mechanism, leftEye: eyeOf(mechanism.leftEye, "left"), rightEye: eyeOf(mechanism.rightEye, "right") };
}

/** Each wheel's worst toe over travel, rad, with the rods cut to fit; infinite where it cannot stand. */
function toesWith({ drawn, setting }: Case, mechanism: Mechanism): Pair<number> {
  const uncut = (wheel: Wheel) => ({ ...drawn[wheel], tieRodLength: null });
  const front = compile({ ...drawn, mechanism, left: uncut("left"), right: uncut("right") });
  const none = Number.POSITIVE_INFINITY;
  if ("refused" in front) return { left: none, right: none };
  const { straightAhead } = mechanism;
  const { toe } = worstOfTravel({ ...setting, front, straightAhead, zero: straightAhead }, "coarse");
  return { left: Math.abs(toe.left?.toeChange ?? none), right: Math.abs(toe.right?.toeChange ?? none) };
}

/**
 * Which way each wheel's inner rod end has to go for less toe change over travel, the rod cut to follow, its other end where
 * it is: along the coordinate that the curve's own kind speaks for, or where that hardly helps along the other; null where
 * neither does. Tried on the drawing itself, since which way helps depends on where the rack is and on the arms. Straight
 * ahead each wheel's toe hangs on its own inner end alone, so that both are tried at once.
 */
export function innerEndWays(from: Case, toe: Pair<WorstToe | null>): Pair<InnerEndMove | null> {
  const found: { left: InnerEndMove | null; right: InnerEndMove | null } = { left: null, right: null };
  const { mechanism } = from.drawn;
  const now = toesWith(from, mechanism);
  const triedFor = (axis: Move["axis"], wanting: readonly Wheel[]) => {
    const step = toesWith(from, moved(mechanism, { axis, by: { left: STEP, right: STEP } }));
    const best = (wheel: Wheel) => {
      const gain = (now[wheel] - step[wheel]) / STEP;
      return Math.sign(gain) * Math.min(now[wheel] / Math.abs(gain) / 2, FAR);
    };
    const [one = "left", other = one] = wanting;
    // A wheel that asks for nothing comes along, so that a whole rack's height is the other's.
    const by = { left: best(one), right: best(other) };
    if (!Number.isFinite(by.left) || !Number.isFinite(by.right)) return;
    const there = toesWith(from, moved(mechanism, { axis, by }));
    for (const wheel of wanting) {
      if (there[wheel] > (1 - WORTH) * now[wheel]) continue;
      found[wheel] = Math.abs(by[wheel]) < TAPE ? "here" : words[axis][by[wheel] > 0 ? 0 : 1];
    }
  };
  for (const turn of [0, 1]) {
    for (const axis of ["height", "width"] as const) {
      const wanting = wheels.filter((wheel) => {
        const worst = toe[wheel];
        return worst !== null && found[wheel] === null && axes[worst.chiefly][turn] === axis;
      });
      if (wanting.length > 0) triedFor(axis, wanting);
    }
  }
  return found;
}
