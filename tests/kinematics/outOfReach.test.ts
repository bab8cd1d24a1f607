import { describe, expect, test } from "vitest";
import type { Corner, Drawn, Mechanism, Point, Relay } from "../../src/kinematics/drawn.ts";
import { readSide } from "../../src/kinematics/face.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { expectClose } from "../close.ts";
import { frontOf, pointIn, solved } from "../oracles/kernel.ts";
import { cross, distance, dot, minus, plus, point, times, unit } from "../oracles/vectors.ts";

/** Links that do not reach, by plane trigonometry: what is to blame, by how much, and where things are brought as near as they go. Invented; mm, rad. */

const corner: Corner = {
  tieRodOuter: point(-120, 600, 300),
  tieRodLength: null,
  wheelCenter: point(0, 700, 310),
  camber: 0,
  toe: 0,
};
const uprightPin = { lowerJoint: point(0, 600, 200), upperJoint: point(0, 600, 400) };

const onKingPin = (pin: typeof uprightPin, mechanism: Mechanism, of: Partial<Corner> = {}): Drawn => ({
  linkage: { kind: "fixed-kingpin", left: pin, right: pin },
  mechanism,
  left: { ...corner, ...of },
  right: { ...corner, ...of },
  range: { inputLow: -50, inputHigh: 50, travelLow: 0, travelHigh: 0 },
});
const rackFrom = (eye: Point): Mechanism => ({
  kind: "centre-rack",
  leftEye: eye,
  rightEye: eye,
  tilt: 0,
  straightAhead: 0,
});

const saidOf = (poses: Float64Array) => ({ link: poses[Side.Blame], gap: poses[Side.Gap] });

describe("a tie rod that does not reach its tab, which goes round an upright king pin at 120 mm", () => {
  // The eye 20 below the tab and 30 ahead of the king pin; moved to stand that far inboard of it.
  const eye = point(30, 260, 280);
  const inboard = (by: number) => 600 - eye.y - by;
  const cases = [
    { name: "too short: the eye is beyond its length", rod: 250, by: 400, near: true },
    { name: "too short, the eye within the tab's circle", rod: 70, by: 40, near: true },
    { name: "too long, the eye within the tab's circle", rod: 300, by: 40, near: false },
    { name: "too long, the eye outside the tab's circle", rod: 300, by: 140, near: false },
  ];

  test.each(cases)("$name", ({ rod, by, near }) => {
    const poses = solved(frontOf(onKingPin(uprightPin, rackFrom(eye), { tieRodLength: rod })), inboard(by), 0);
    const far = Math.hypot(30, by);
    const plan = near ? far - 120 : far + 120;
    expectClose(saidOf(poses), { link: Link.TieRod, gap: rod - Math.hypot(20, plan) }, { abs: 1e-9 });
    // The tab stands in line with the eye and the king pin, on the eye's side where the rod is too short.
    const share = (near ? 120 : -120) / far;
    const tab = point(30 * share, 600 - by * share, 300);
    expectClose(pointIn(poses, Side.TieRodOuter), tab, { abs: 1e-9 });
    expectClose(poses[Side.Lever], 0, { abs: 0 });
    const read = readSide(poses, 0, "left");
    expectClose(read, { closes: false, link: "tie-rod", gap: poses[Side.Gap] }, { abs: 0 });
    // Nothing that does not close has a rate.
    expectClose(pointIn(poses, Side.Turn), point(0, 0, 0), { abs: 0 });
  });
});

describe("an inner eye on the steering axis itself, to a billionth of the tab's way from it", () => {
  const pin = { lowerJoint: point(0, 600, 200), upperJoint: point(-40, 560, 400) };
  const axis = unit(minus(pin.upperJoint, pin.lowerJoint));
  const middle = point(-20, 580, 300);
  const arm = minus(corner.tieRodOuter, pin.lowerJoint);
  const foot = plus(pin.lowerJoint, times(axis, dot(arm, axis)));
  const radius = distance(corner.tieRodOuter, foot);
  // Square to the axis, as far ahead as can be; and toward the side that the rack moves the eye to.
  const square = (a: Point) => unit(minus(a, times(axis, dot(a, axis))));
  const front = square(point(1, 0, 0));
  const out = square(point(0, 1, 0));

  const cases = [
    { name: "too short", rod: 70, hand: 1 },
    { name: "too long", rod: 400, hand: -1 },
  ];
  test.each(cases)("has the tab ahead where the rod is $name, and else in line with the eye", ({ rod, hand }) => {
    const ready = frontOf(onKingPin(pin, rackFrom(point(-20, 300, 300)), { tieRodLength: rod }));
    const limit = (1e-9 * radius) / dot(out, point(0, 1, 0));
    for (const by of [0, 0.5 * limit, -0.5 * limit]) {
      const poses = solved(ready, 280 + by, 0);
      expectClose(
        saidOf(poses),
        { link: Link.TieRod, gap: rod - Math.hypot(radius, distance(middle, foot)) },
        { abs: 1e-6 },
      );
      expectClose(pointIn(poses, Side.TieRodOuter), plus(foot, times(front, hand * radius)), { abs: 1e-6 }, `${by}`);
    }
    for (const by of [2 * limit, -2 * limit]) {
      const poses = solved(ready, 280 + by, 0);
      const tab = plus(foot, times(out, Math.sign(by) * hand * radius));
      // The eye's way from the axis, 2e-7 mm, is told to 1e-13 mm.
      expectClose(pointIn(poses, Side.TieRodOuter), tab, { abs: 1e-3 }, `${by}`);
    }
  });
});

describe("a centre link that does not reach its idler arm", () => {
  // Upright shafts: pitman arm 150 long at (0, 200), idler arm 60 long at (0, −200), link 400: all straight ahead but for the idler's.
  const relay: Relay = {
    kind: "relay",
    pitmanPivot: point(0, 200, 250),
    pitmanAxis: point(0, 0, 1),
    pitmanJoint: point(150, 200, 250),
    idlerPivot: point(0, -200, 250),
    idlerAxis: point(0, 0, 2),
    idlerJoint: point(60, -200, 250),
    leftEye: point(150, 200, 260),
    rightEye: point(150, 200, 260),
    turn: 0.5,
    straightAhead: 0,
  };
  const link = distance(relay.pitmanJoint, relay.idlerJoint);
  const along = unit(minus(relay.idlerJoint, relay.pitmanJoint));
  // On the link's line, a tenth from the pitman's joint, and 10 aside and 5 above it; on either side.
  const aside = cross(point(0, 0, 1), along);
  const eyeAt = (from: Point, way: Point, side: Point) =>
    plus(from, plus(times(way, 0.1 * link), plus(times(side, 10), point(0, 0, 5))));
  const eye = eyeAt(relay.pitmanJoint, along, aside);
  const drawn = onKingPin(uprightPin, { ...relay, leftEye: eye, rightEye: eye });

  const cases = [
    { name: "too short", pitman: 1.2, near: true },
    { name: "too long", pitman: -1.4, near: false },
  ];
  test.each(cases)("$name, the pitman arm turned by $pitman", ({ pitman, near }) => {
    const poses = solved(frontOf(drawn), pitman / relay.turn, 0);
    const joint = point(150 * Math.cos(pitman), 200 + 150 * Math.sin(pitman), 250);
    const far = distance(joint, relay.idlerPivot);
    const gap = link - (near ? far - 60 : far + 60);
    expect(Math.sign(gap)).toBe(near ? -1 : 1);
    expectClose(saidOf(poses), { link: Link.CentreLink, gap }, { abs: 1e-9 });
    expectClose(readSide(poses, 0, "right"), { closes: false, link: "centre-link", gap }, { abs: 1e-9 });
    // The link lies toward the idler's pivot, as long as it is.
    const way = unit(minus(relay.idlerPivot, joint));
    const placed = eyeAt(joint, way, cross(point(0, 0, 1), way));
    expectClose(pointIn(poses, Side.TieRodInner), placed, { abs: 1e-9 });
  });

  test("closes short of that", () => {
    expect(saidOf(solved(frontOf(drawn), 0.05, 0))).toEqual({ link: Link.None, gap: 0 });
  });
});

describe("a wheel that cannot get as high", () => {
  // A beam on an axis across the car, 60 ahead of a wheel whose centre is on its upright king pin: that goes round the axis at 60.
  const beam = { beamFront: point(60, 500, 300), beamRear: point(60, 400, 300), ...uprightPin };
  const drawn: Drawn = {
    ...onKingPin(uprightPin, rackFrom(point(-110, 210, 320)), { wheelCenter: point(0, 600, 300) }),
    linkage: { kind: "pivoting-beam", left: beam, right: beam },
    range: { inputLow: -20, inputHigh: 20, travelLow: -40, travelHigh: 40 },
  };
  const front = frontOf(drawn);

  test.each([1, -1])("lacks what is asked beyond its way from the axis (%d)", (way) => {
    for (const more of [1e-3, 10, 5000]) {
      const poses = solved(front, 0, way * (60 + more));
      expectClose(saidOf(poses), { link: Link.Travel, gap: way * more }, { abs: 1e-9 });
      expectClose(pointIn(poses, Side.LowerRate), point(0, 0, 0), { abs: 0 });
    }
  });

  test.each([-59.9, -40, -13, 0, 25, 41, 59.9])("stands on its circle at %d", (travel) => {
    const poses = solved(front, 0, travel);
    expect(saidOf(poses)).toEqual({ link: Link.None, gap: 0 });
    const sin = travel / 60;
    const cos = Math.sqrt(1 - sin * sin);
    // The lower joint is 60 behind the axis and 100 below it. Height is met to 1e-8 mm, what it does along the car grows as sin/cos.
    const lower = point(60 - 60 * cos - 100 * sin, 600, 300 + 60 * sin - 100 * cos);
    expectClose(pointIn(poses, Side.Lower), lower, { abs: 1e-6 });
    const rate = point((60 * sin - 100 * cos) / (60 * cos), 0, (60 * cos + 100 * sin) / (60 * cos));
    expectClose(pointIn(poses, Side.LowerRate), rate, { abs: 1e-6 });
  });

  // Whatever the tie rod does, the wheel's height is the beam's alone: where the rod gives out, the beam is turned on to the height all the same.
  const eyeFrom = (angle: number) => {
    const axis = point(Math.sin(angle), 0, Math.cos(angle));
    const centre = point(60 - 60 * Math.cos(angle), 600, 300 + 60 * Math.sin(angle));
    const toEye = minus(point(-110, 210, 320), centre);
    const along = dot(toEye, axis);
    const out = distance(toEye, times(axis, along));
    return { near: Math.hypot(along, out - 120), far: Math.hypot(along, out + 120) };
  };
  test.each([250, 275, 560])("lacks of a tie rod %d long what it lacks where the wheel is as high as asked", (rod) => {
    const given: Drawn = { ...drawn, left: { ...drawn.left, tieRodLength: rod } };
    const ready = frontOf(given);
    let lacking = 0;
    for (const travel of [-55, -40, -25, -10, 0, 10, 25, 40, 55]) {
      const { near, far } = eyeFrom(Math.asin(travel / 60));
      if (rod > near && rod < far) continue;
      lacking++;
      const poses = solved(ready, 0, travel);
      expectClose(
        saidOf(poses),
        { link: Link.TieRod, gap: rod - (rod < near ? near : far) },
        { abs: 1e-6 },
        `${travel}`,
      );
      expectClose(pointIn(poses, Side.WheelCenter).z, 300 + travel, { abs: 1e-6 });
    }
    expect(lacking).toBeGreaterThan(2);
    // Higher than the beam takes it the wheel is not looked for: it is told where it turns back, at 90°, which is a whole number of its steps.
    for (const way of [1, -1]) {
      const poses = solved(ready, 0, way * 80);
      const { near, far } = eyeFrom((way * Math.PI) / 2);
      expectClose(saidOf(poses), { link: Link.TieRod, gap: rod - (rod < near ? near : far) }, { abs: 1e-9 });
      expectClose(pointIn(poses, Side.WheelCenter).z, 300 + way * 60, { abs: 1e-9 });
    }
  });

  test("has no travel on a king pin that is fixed to the body", () => {
    const fixed = frontOf(onKingPin(uprightPin, rackFrom(point(-110, 210, 320))));
    for (const travel of [25, -3, 1e-4]) {
      expectClose(saidOf(solved(fixed, 10, travel)), { link: Link.Travel, gap: travel }, { abs: 0 });
    }
    // Less than 1e-8 of the half width is none.
    for (const travel of [0, 6e-6, -6e-6])
      expect(saidOf(solved(fixed, 10, travel))).toEqual({ link: Link.None, gap: 0 });
  });
});

describe("an upright that cannot span its arms, seen from the front", () => {
  const plan = (out: number, up: number) => point(0, out, up);
  const axisAt = ({ y, z }: Point) => ({ front: point(100, y, z), rear: point(-100, y, z) });
  const car = (lowerPivot: Point, lowerJoint: Point, upperPivot: Point, upperJoint: Point): Drawn => {
    const [lower, upper] = [axisAt(lowerPivot), axisAt(upperPivot)];
    const arms = {
      lowerFront: lower.front,
      lowerRear: lower.rear,
      lowerJoint,
      upperFront: upper.front,
      upperRear: upper.rear,
      upperJoint,
    };
    const of: Corner = { ...corner, tieRodOuter: point(-120, 640, 300), wheelCenter: point(0, 740, 300) };
    return {
      linkage: { kind: "double-arm", left: arms, right: arms },
      mechanism: rackFrom(point(-120, 250, 290)),
      left: of,
      right: of,
      range: { inputLow: -20, inputHigh: 20, travelLow: -40, travelHigh: 40 },
    };
  };
  const cases = [
    {
      name: "is too short for an upper arm that is far off",
      at: [plan(250, 200), plan(650, 200), plan(430, 390), plan(620, 380)],
      travel: -300,
      near: true,
    },
    {
      name: "is too long between arms that fold",
      at: [plan(250, 200), plan(650, 200), plan(600, 440), plan(640, 400)],
      travel: 200,
      near: false,
    },
  ] as const;
  test.each(cases)("$name", ({ at: [lowerPivot, lowerJoint, upperPivot, upperJoint], travel, near }) => {
    const poses = solved(frontOf(car(lowerPivot, lowerJoint, upperPivot, upperJoint)), 0, travel);
    const lower = pointIn(poses, Side.Lower);
    expectClose(distance(lower, lowerPivot), 400, { abs: 1e-9 });
    const arm = distance(upperJoint, upperPivot);
    const far = distance(lower, upperPivot);
    const pin = distance(upperJoint, lowerJoint);
    const gap = pin - (near ? Math.abs(far - arm) : far + arm);
    expect(Math.sign(gap)).toBe(near ? -1 : 1);
    expectClose(saidOf(poses), { link: Link.Upright, gap }, { abs: 1e-9 });
    expect(readSide(poses, 0, "left")).toEqual({ closes: false, link: "upright", gap: poses[Side.Gap] });
    const way = unit(minus(lower, upperPivot));
    const upper = plus(upperPivot, times(way, near ? arm : -arm));
    expectClose(pointIn(poses, Side.Upper), upper, { abs: 1e-6 });
    expectClose(pointIn(poses, Side.Axis), unit(minus(upper, lower)), { abs: 1e-9 });
  });
});
