import { describe, expect, test } from "vitest";
import { compile } from "../../src/kinematics/compile.ts";
import type { Corner, Mechanism, Point, Relay, SteeringPlate } from "../../src/kinematics/drawn.ts";
import { sides } from "../oracles/corner.ts";
import { point, rotated } from "../oracles/vectors.ts";

/** Steering that is no mechanism, each a hair short of the limit that the kernel states and a hair beyond it. Invented; mm, rad. */

const corner: Corner = {
  tieRodOuter: point(-110, 620, 300),
  tieRodLength: null,
  wheelCenter: point(0, 700, 300),
  camber: 0,
  toe: 0,
};
const pin = { lowerJoint: point(0, 650, 200), upperJoint: point(0, 640, 400) };

function refusalOf(mechanism: Mechanism) {
  const front = compile({
    linkage: { kind: "fixed-kingpin", left: pin, right: pin },
    mechanism,
    left: corner,
    right: corner,
    range: { inputLow: -3, inputHigh: 3, travelLow: 0, travelHigh: 0 },
  });
  return "refused" in front ? front : null;
}

const nothing = 1e-9;

describe("a steering plate with an eye on the column's own axis", () => {
  // Sides of 3, 4 and 5: 500 up the column is 300 up and 400 back.
  const plate: SteeringPlate = {
    kind: "steering-plate",
    foot: point(-100, 0, 300),
    rake: Math.atan2(3, 4),
    leftEye: point(-160, 40, 320),
    rightEye: point(-160, 40, 320),
    straightAhead: 0,
  };
  test.each(sides)("is refused on the %s", (wheel) => {
    const aside = (out: number) => ({ ...plate, [`${wheel}Eye`]: point(-500, out, 600) });
    const limit = nothing * 500;
    for (const out of [0, limit / 2]) expect(refusalOf(aside(out))).toEqual({ refused: "eye-on-column-axis", wheel });
    expect(refusalOf(aside(2 * limit))).toBeNull();
  });
});

const up = point(0, 0, 1);
const relay: Relay = {
  kind: "relay",
  pitmanPivot: point(-40, 150, 220),
  pitmanAxis: up,
  pitmanJoint: point(80, 150, 220),
  idlerPivot: point(-40, -150, 220),
  idlerAxis: up,
  idlerJoint: point(80, -150, 220),
  leftEye: point(80, 165, 220),
  rightEye: point(80, -165, 220),
  turn: 1 / 16,
  straightAhead: 0,
};

interface Limit {
  readonly refused: string;
  /** What decides it, at the limit: a length in mm, or what the test says. */
  readonly limit: number;
  readonly drawn: (value: number) => Partial<Relay>;
}

const above = (a: Point, by: number) => point(a.x, a.y, a.z + by);

const limits: readonly Limit[] = [
  {
    refused: "pitman-has-no-axis",
    limit: nothing * 120,
    drawn: (length) => ({ pitmanAxis: point(0, 0, length) }),
  },
  {
    refused: "idler-has-no-axis",
    limit: nothing * 120,
    drawn: (length) => ({ idlerAxis: point(0, 0, length) }),
  },
  {
    // 120 up its axis from its pivot.
    refused: "pitman-joint-on-its-axis",
    limit: nothing * 120,
    drawn: (length) => ({ pitmanJoint: point(-40 + length, 150, 340) }),
  },
  {
    refused: "idler-joint-on-its-axis",
    limit: nothing * 120,
    drawn: (length) => ({ idlerJoint: point(-40 + length, -150, 340) }),
  },
  {
    // The link lies along the idler arm, which is 120 long, but for so much as it passes its pivot by.
    refused: "centre-link-in-line",
    limit: nothing * 120,
    drawn: (length) => ({ idlerPivot: point(80 + length, -30, 220), idlerJoint: point(80 + length, -150, 220) }),
  },
];

describe.each(limits)("a relay: $refused", ({ refused, limit, drawn }) => {
  test("to half of the limit and not at twice as much", () => {
    expect(refusalOf(relay)).toBeNull();
    for (const value of [0, limit / 2]) {
      expect(refusalOf({ ...relay, ...drawn(value) })).toEqual({ refused, wheel: null });
    }
    expect(refusalOf({ ...relay, ...drawn(2 * limit) })).toBeNull();
  });
});

describe("a relay's centre link", () => {
  test("of no length is in line with whatever there is", () => {
    const joint = point(80, 0, 220);
    const one = {
      pitmanPivot: point(0, 90, 220),
      idlerPivot: point(0, -90, 220),
      pitmanJoint: joint,
      idlerJoint: joint,
    };
    expect(refusalOf({ ...relay, ...one })).toEqual({ refused: "centre-link-in-line", wheel: null });
  });

  // Shafts that lean and are no unit vectors: what counts is the angle to them, whose sine may not be less than 0.02.
  const lean = point(0.6, 0, 0.8);
  test.each([1, 3])("along shafts that are parallel is refused below a fiftieth, told by shafts %d long", (long) => {
    const shaft = point(long * lean.x, 0, long * lean.z);
    const drawn = (sine: number): Relay => {
      const way = 500 * Math.sqrt(1 - sine * sine);
      const idlerJoint = point(80 + way * lean.x, 150 - 500 * sine, 220 + way * lean.z);
      const idlerPivot = point(-40 + way * lean.x, 150 - 500 * sine, 220 + way * lean.z);
      return { ...relay, pitmanAxis: shaft, idlerAxis: shaft, idlerJoint, idlerPivot };
    };
    expect(refusalOf(drawn(0.0199))).toEqual({ refused: "centre-link-along-shaft", wheel: null });
    expect(refusalOf(drawn(0.0201))).toBeNull();
  });

  // 1e-6 of the link's 300 mm.
  const crossed = (angle: number, length: number): Relay => {
    const turned = rotated(up, point(angle, 0, 0));
    return { ...relay, idlerAxis: point(0, length * turned.y, length * turned.z) };
  };
  const eyes = [
    { eye: "leftEye", at: point(80, 165, 220) },
    { eye: "rightEye", at: point(80, -165, 220) },
  ] as const;
  test.each(eyes)("on shafts that are not parallel may twist: its $eye has a place on its line only", ({ eye, at }) => {
    const twisted = { refused: "centre-link-twists", wheel: null };
    const drawn = (off: number) => ({ ...crossed(0.1, 1), [eye]: above(at, off) });
    expect(refusalOf(drawn(0))).toBeNull();
    expect(refusalOf(drawn(0.99e-6 * 300))).toBeNull();
    expect(refusalOf(drawn(1.01e-6 * 300))).toEqual(twisted);
  });

  test.each([1, 0.01, 40])(
    "counts as on parallel shafts to a billionth of a thousandth, told by shafts %d long",
    (length) => {
      const drawn = (angle: number) => ({ ...crossed(angle, length), leftEye: above(relay.leftEye, 10) });
      expect(refusalOf(drawn(0.9e-12))).toBeNull();
      expect(refusalOf(drawn(1.1e-12))).toEqual({ refused: "centre-link-twists", wheel: null });
    },
  );
});
