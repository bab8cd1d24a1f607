import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { idealInner } from "../../src/measures/ackermann.ts";
import { cornerRadius, curbCircle, wallCircle } from "../../src/measures/turningCircle.ts";
import { turnCentre, turnRadius } from "../../src/measures/turnRadius.ts";
import { degrees, plus, point, radians, times } from "../oracles/vectors.ts";
import { presetText, studied } from "./carTexts.ts";
import { plainWheel, poseOfWheel, spinOf } from "./wheel.ts";

/**
 * Wheelbase 2400, king pins 1300 apart, inner wheel at 35°, scrub 60, mm: the outer wheel on the ideal, the circle between
 * kerbs, and what a corner 500 ahead of the axle and 800 from the centreline sweeps. Derived; the form, wheelbase over the
 * sine of the outer angle plus the scrub, as in Reimpell, The Automotive Chassis, and the Bosch Automotive Handbook (both
 * quoted from memory).
 */
const [l, w, scrub] = [2400, 1300, 60];
const outer = radians(26.91517);

function corner(toe: number) {
  const spin = spinOf(0, toe);
  return { ...plainWheel, wheelCenter: plus(point(0, w / 2, 300), times(spin, scrub)), spin };
}

function turnLeft(inner: number): Float64Array {
  const poses = poseOfWheel(corner(-inner), Pose.Left);
  poses.set(poseOfWheel(corner(outer), Pose.Right).subarray(Pose.Right), Pose.Right);
  return poses;
}

test("turning circles of the worked car", () => {
  expect(degrees(idealInner(outer, w, l))).toBeCloseTo(35, 4);
  const poses = turnLeft(radians(35));
  const radius = turnRadius(poses, 0, "left", l, 300);
  // The outer angle is given to 5 decimals of a degree, which is worth 0.001 mm of radius.
  expect(radius).toBeCloseTo(5361.866, 2);
  expect(2 * (radius ?? 0)).toBeCloseTo(10723.731, 2);
  const centre = turnCentre(poses, 0, l) ?? Number.NaN;
  expect(cornerRadius(l, { ahead: 500, out: 800 }, centre)).toBeCloseTo(5674.552, 2);
});

describe("a car's circles", () => {
  const car = presetText("widened-offset-rack");
  const inch = 25.4;

  test.each(["left", "right"] as const)(
    "from curb to curb and, where a corner swings wider, from wall to wall: to the %s",
    (lock) => {
      const study = studied(`${car}\nbody: { ahead: 20, out: 30 }\n`);
      const row = study.locks[lock];
      expect(row?.turn).toBe(lock);
      const radius = row?.turnRadius ?? Number.NaN;
      expect(curbCircle(study, lock)).toBe(2 * radius);
      // The centre is on the side of the turn; from it to the other side's corner.
      const centre = Math.abs(turnCentre(study.pose(row?.input ?? Number.NaN, 0, 0), 0, 68 * inch) ?? Number.NaN);
      const swept = Math.hypot((68 + 20) * inch, 30 * inch + centre);
      expect(swept).toBeGreaterThan(radius);
      expect(wallCircle(study, lock)).toBeCloseTo(2 * swept, 9);
      // A corner within the tyres sweeps less than they do.
      expect(wallCircle(studied(`${car}\nbody: { ahead: 2, out: 5 }\n`), lock)).toBe(2 * radius);
      expect(wallCircle(studied(car), lock)).toBeNull();
    },
  );

  test("are not told of a lock that is none, or too small to tell a circle", () => {
    const study = studied(`${car.replace("travel: 2,", "travel: 0.05,")}\nbody: { ahead: 20, out: 30 }\n`);
    expect(study.locks.left?.turn).toBe("left");
    expect([curbCircle(study, "left"), wallCircle(study, "left")]).toEqual([null, null]);
    const none = { ...study, locks: { ...study.locks, left: null } };
    expect([curbCircle(none, "left"), wallCircle(none, "left")]).toEqual([null, null]);
  });
});
