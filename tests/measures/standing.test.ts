import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { blameOf } from "../../src/measures/blame.ts";
import { contactY } from "../../src/measures/contact.ts";
import { steer } from "../../src/measures/steer.ts";
import { expectClose } from "../close.ts";
import { spatialCar } from "../oracles/known.ts";
import { degrees, radians } from "../oracles/vectors.ts";
import { endOf, offsetCar, poseOf, setting, withCorners, withRack, withRods } from "./cars.ts";
import { presetText, studied } from "./carTexts.ts";

describe("what is known of a front end as drawn", () => {
  test("the steering axes meet the ground as far apart as scrub radius and contacts say", () => {
    // Contact 720 out, scrub radius 47.39130: three independent solutions of this invented car.
    expectClose(endOf(spatialCar, { ...setting, tireRadius: 330 }).kingPinSpacing, 2 * (720 - 47.3913), { abs: 1e-4 });
  });

  test("the track is that of the contacts of the solved pose, with much camber and toe, unlike on both sides", () => {
    const leaning = withCorners(offsetCar, { camber: radians(7), toe: radians(9) });
    const drawn = { ...leaning, right: { ...leaning.right, camber: radians(-4), toe: radians(-6) } };
    const end = endOf(drawn);
    const poses = poseOf(end.front, 0, 0);
    const apart = contactY(poses, Pose.Left, end.tireRadius) + contactY(poses, Pose.Right, end.tireRadius);
    // Heights are met to 1e-11 of 600 mm.
    expectClose(end.track, apart, { abs: 1e-7 });
  });
});

describe("straight ahead", () => {
  test("is looked for as far as twice the longer way from the middle, on a rack that goes further one way", () => {
    const { left, right } = endOf(withRack(offsetCar, { straightAhead: 15 })).rodLengths;
    const drawn = withRods(offsetCar, left, right);
    for (const inputTravel of [
      { left: 8, right: 2 },
      { left: 2, right: 8 },
    ])
      expectClose(endOf(drawn, { ...setting, inputTravel }).zero, 15, { abs: 1e-7 });
    expect(endOf(drawn, { ...setting, inputTravel: { left: 7, right: 7 } }).zero).toBeNull();
  });

  test("is looked for from the rack's middle where the rods do not reach the place that the car is drawn at", () => {
    const { left, right } = endOf(withRack(offsetCar, { straightAhead: 5 })).rodLengths;
    const end = endOf(withRods(withRack(offsetCar, { straightAhead: 65 }), left, right));
    expect(blameOf(end.ridePose(65), 0)).not.toBeNull();
    expectClose(end.zero, 5, { abs: 1e-7 });
  });

  test("has each wheel's own steer, and the way that the rack turns them", () => {
    const uneven = { ...offsetCar, left: { ...offsetCar.left, toe: radians(3) } };
    const end = endOf(uneven);
    const poses = poseOf(end.front, end.zero ?? Number.NaN, 0);
    expect(end.zeroSteer).toEqual({ left: steer(poses, Pose.Left), right: steer(poses, Pose.Right) });
    expectClose(steer(poses, Pose.Left), -steer(poses, Pose.Right), { abs: 1e-9 });
    expect(end.inputLeftTurns).toBe("right");
  });
});

test("the furthest that a stop lets the rack go is looked for in droop as in bump", () => {
  // A rack this low toes the wheels the other way: it is droop that turns them back from their stops.
  const low = presetText("widened-offset-rack").replace('"8 5/8"', "7.5").replace("droop: 3", "droop: 2.5");
  const study = studied(`${low}\nstops: { upright: { inner: 28 } }\n`);
  const zeros = study.zeroSteer ?? { left: Number.NaN, right: Number.NaN };
  const right = (travel: number) =>
    Math.abs(degrees(steer(study.pose(study.furthestInput.left, travel, travel), Pose.Right) - zeros.right));
  expect(study.furthestInput.left).toBeGreaterThan(study.inputTravel.left + 1);
  // Tabs behind: the rack goes left for a right turn, whose inner wheel is the right one.
  const [droops, bumps] = [-1, 1].map((way) =>
    [0.25, 0.5, 0.75, 1].map((share) => right(way * share * (way < 0 ? 2.5 : 3) * 25.4)),
  );
  expectClose(Math.min(...(droops ?? [])), 28, { abs: 1e-6 });
  expect(Math.min(...(bumps ?? []))).toBeGreaterThan(28);
});

test("a stop that only one wheel has lets the rack go further at some travel too", () => {
  const car = presetText("widened-offset-rack");
  const left = studied(`${car}\nstops: { upright: { inner: { left: 28, right: 0 } } }\n`);
  expect(left.furthestInput.right).toBeGreaterThan(left.inputTravel.right + 1);
  const right = studied(`${car.replace('"8 5/8"', "7.5")}\nstops: { upright: { inner: { left: 0, right: 28 } } }\n`);
  expect(right.furthestInput.left).toBeGreaterThan(right.inputTravel.left + 1);
});
