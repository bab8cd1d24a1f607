import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, length, minus, plus, times } from "../../kinematics/math.ts";
import { sideAt } from "../../measures/points.ts";
import { bodiesOf } from "../../measures/range/bodies.ts";
import { placeMoved, turned } from "../../measures/range/motion.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Joint } from "../../vehicle/linkage.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { type Carry, drawnPoint, redrawn } from "./redraw.ts";
import { type Hold, refitted } from "./refit.ts";

/** How the upright stands, from its drawing, with the steering where the car is drawn and the wheel at ride height. */
export function carryNow(study: Study, wheel: Wheel): Carry {
  const motion = bodiesOf(study, wheel).move("upright")(study.ridePose(study.straightAhead), sideAt(wheel)).slice();
  return { place: (p) => placeMoved(motion, p), turn: (d) => turned(motion, d) };
}

/** The rod ends of arms that a car's linkage can be adjusted by: those of an arm that carries one end of the steering axis. */
export function armJoints(linkage: Study["car"]["form"]["linkage"]): readonly Joint[] {
  return linkage === "pivoting-beam" ? [] : linkageOf(linkage).joints;
}

/** How long an arm is: from each of its places on the frame to its joint, mm. */
interface Arm {
  readonly joint: Point;
  readonly front: Point;
  readonly rear: Point;
}

/**
 * Both legs of an arm on two pivots once one rod end is screwed out by so much, mm: at a pivot that leg alone is longer;
 * at the joint the joint goes out along the line from the middle between the pivots, and both legs are.
 */
export function legsAfter({ joint, front, rear }: Arm, end: string, by: number): { front: number; rear: number } {
  const legs = (to: Point) => ({ front: length(minus(to, front)), rear: length(minus(to, rear)) });
  const now = legs(joint);
  if (end === "front") return { ...now, front: now.front + by };
  if (end === "rear") return { ...now, rear: now.rear + by };
  const shank = minus(joint, times(plus(front, rear), 0.5));
  return legs(plus(joint, times(shank, by / length(shank))));
}

function armHolds(study: Study, wheel: Wheel, arm: string, end: string | null, by: number): readonly Hold[] {
  const at = (point: string) => drawnPoint(study, wheel, `${arm}.${point}`);
  const joint = at("joint");
  if (study.car.form.linkage === "trailing-arms") {
    const pivot = at("pivot");
    const shank = minus(joint, pivot);
    const target = end === null ? joint : plus(joint, times(shank, by / length(shank)));
    const reach = (p: Point) => Math.hypot(p.x - pivot.x, p.z - pivot.z);
    // The arm turns about an axis straight across: its joint keeps its place across the car and its distance from there.
    return [({ place }) => reach(place(joint)) - reach(target), ({ place }) => place(joint).y - target.y];
  }
  const pivots = { front: at("front"), rear: at("rear") };
  const legs = legsAfter({ joint, ...pivots }, end ?? "joint", end === null ? 0 : by);
  return (["front", "rear"] as const).map(
    (leg): Hold =>
      ({ place }) =>
        length(minus(place(joint), pivots[leg])) - legs[leg],
  );
}

/** A strut's centre line, which is fixed in the upright, goes through its top mount on the frame. */
function strutHolds(study: Study, wheel: Wheel): readonly Hold[] {
  const [top, bottom] = [drawnPoint(study, wheel, "strut.top"), drawnPoint(study, wheel, "strut.bottom")];
  const line = minus(top, bottom);
  const first = cross(line, { x: 1, y: 0, z: 0 });
  const second = cross(line, first);
  return [first, second].map((way): Hold => {
    const across = times(way, 1 / length(way));
    return ({ place, turn }) => dot(minus(top, place(bottom)), turn(across));
  });
}

const wheelPoint = "wheel.center";

/**
 * The numbers of a corner once one of its arms' rod ends is screwed out by so much, mm, with the tie rod as long as it is,
 * the steering where the car is drawn, and the wheel centre at its height. Null where it does not go together so.
 */
export function armTurned(
  study: Study,
  wheel: Wheel,
  [arm, end]: readonly [string, string],
  by: number,
): Readonly<Record<string, number>> | null {
  const { linkage } = study.car.form;
  const arms = linkage === "strut" ? ["lower-arm"] : ["lower-arm", "upper-arm"];
  const center = drawnPoint(study, wheel, wheelPoint);
  const outer = drawnPoint(study, wheel, "tie-rod.outer");
  const inner = bodiesOf(study, wheel).place("tie-rod.inner");
  const holds: readonly Hold[] = [
    ...arms.flatMap((each) => armHolds(study, wheel, each, each === arm ? end : null, by)),
    ...(linkage === "strut" ? strutHolds(study, wheel) : []),
    ({ place }) => length(minus(place(outer), inner)) - study.rodLengths[wheel],
    ({ place }) => place(center).z - center.z,
  ];
  const carry = refitted(carryNow(study, wheel), center, holds);
  return carry === null ? null : redrawn(study, wheel, carry);
}
