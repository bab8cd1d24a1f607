import { describe, expect, test } from "vitest";
import { compile } from "../../src/kinematics/compile.ts";
import type { Corner, Drawn, Linkage, Mechanism, Point } from "../../src/kinematics/drawn.ts";
import { type SideName, sides } from "../oracles/corner.ts";
import { distance, point } from "../oracles/vectors.ts";

/**
 * Drawings that are no mechanism, each on the very limit of one: what stands a hair short of it is refused, a hair beyond it is not, or only for
 * something else. The limits are those that the kernel states (a billionth of a car's size is nothing). Invented; mm, rad.
 */

type Points<Kind extends Linkage["kind"]> = Extract<Linkage, { kind: Kind }>["left"];

const wheel: Corner = {
  tieRodOuter: point(-120, 620, 300),
  tieRodLength: null,
  wheelCenter: point(-30, 700, 300),
  camber: 0,
  toe: 0,
};
const eye = point(-110, 260, 330);
const sound = {
  "double-arm": {
    lowerFront: point(100, 250, 200),
    lowerRear: point(-100, 250, 200),
    lowerJoint: point(0, 650, 200),
    upperFront: point(80, 300, 400),
    upperRear: point(-80, 300, 400),
    upperJoint: point(-10, 620, 420),
  },
  "trailing-arms": {
    lowerPivot: point(220, 500, 190),
    lowerJoint: point(0, 650, 200),
    upperPivot: point(200, 500, 390),
    upperJoint: point(-10, 640, 400),
  },
  strut: {
    lowerFront: point(100, 250, 200),
    lowerRear: point(-100, 250, 200),
    lowerJoint: point(0, 650, 200),
    top: point(-30, 560, 700),
    bottom: point(-10, 630, 350),
  },
  "pivoting-beam": {
    beamFront: point(20, -60, 320),
    beamRear: point(-600, 240, 340),
    lowerJoint: point(0, 650, 200),
    upperJoint: point(-10, 640, 400),
  },
  "fixed-kingpin": { lowerJoint: point(0, 650, 200), upperJoint: point(0, 650, 400) },
} satisfies { [Kind in Linkage["kind"]]: Points<Kind> };

interface Side {
  readonly points?: object;
  readonly corner?: Partial<Corner>;
  readonly eye?: Point;
}

/** A car of that linkage, sound on its one side, and with what is given in the place of what is sound on the other. */
function drawnWith(kind: Linkage["kind"], odd: SideName, side: Side, mechanism?: Mechanism): Drawn {
  const eyes = { leftEye: eye, rightEye: eye, [`${odd}Eye`]: side.eye ?? eye };
  const points = { left: sound[kind], right: sound[kind], [odd]: { ...sound[kind], ...side.points } };
  return {
    linkage: { kind, ...points } as Linkage,
    mechanism: mechanism ?? { kind: "centre-rack", ...eyes, tilt: 0, straightAhead: 0 },
    left: wheel,
    right: wheel,
    range: { inputLow: -40, inputHigh: 40, travelLow: -50, travelHigh: 50 },
    [odd]: { ...wheel, ...side.corner },
  };
}

function refusalOf(drawn: Drawn): { readonly refused: string; readonly wheel: SideName | null } | null {
  const front = compile(drawn);
  return "refused" in front ? front : null;
}

interface Limit {
  readonly refused: string;
  readonly linkage: Linkage["kind"];
  /** The length that decides it, mm, at the limit, and the drawing that has it. */
  readonly limit: number;
  readonly drawn: (length: number) => Side;
  /** What is wrong beyond the limit, where the drawing is still none. */
  readonly beyond?: string;
}

const { "double-arm": arms, strut, "pivoting-beam": beam, "fixed-kingpin": pin } = sound;
const nothing = 1e-9;
const ahead = (a: Point, by: number) => point(a.x + by, a.y, a.z);
const above = (a: Point, by: number) => point(a.x, a.y, a.z + by);

/** A joint that far out from an axis along the car, beside the middle of it. */
const outOf = (a: Point, by: number) => point(0, a.y + by, a.z);

const limits: readonly Limit[] = [
  {
    refused: "lower-arm-has-no-axis",
    linkage: "double-arm",
    limit: nothing * distance(arms.lowerJoint, arms.lowerRear),
    drawn: (length) => ({ points: { lowerFront: ahead(arms.lowerRear, length) } }),
  },
  {
    refused: "upper-arm-has-no-axis",
    linkage: "double-arm",
    limit: nothing * distance(arms.upperJoint, arms.upperRear),
    drawn: (length) => ({ points: { upperFront: ahead(arms.upperRear, length) } }),
  },
  {
    refused: "lower-joint-on-its-axis",
    linkage: "double-arm",
    limit: nothing * 100,
    drawn: (length) => ({ points: { lowerJoint: outOf(arms.lowerRear, length) } }),
    beyond: "wheel-does-not-rise",
  },
  {
    refused: "upper-joint-on-its-axis",
    linkage: "double-arm",
    limit: nothing * 80,
    drawn: (length) => ({ points: { upperJoint: outOf(arms.upperRear, length) } }),
  },
  {
    // The upper arm is level, 320 long, and the lower joint that far above its line.
    refused: "arms-in-line",
    linkage: "double-arm",
    limit: nothing * 320,
    drawn: (length) => ({
      points: { upperJoint: point(0, 620, 400), lowerJoint: point(0, 650, 400 + length) },
      corner: { tieRodOuter: point(-120, 630, 350) },
    }),
  },
  {
    refused: "lower-arm-has-no-axis",
    linkage: "strut",
    limit: nothing * distance(strut.lowerJoint, strut.lowerRear),
    drawn: (length) => ({ points: { lowerFront: ahead(strut.lowerRear, length) } }),
  },
  {
    refused: "lower-joint-on-its-axis",
    linkage: "strut",
    limit: nothing * 100,
    drawn: (length) => ({ points: { lowerJoint: outOf(strut.lowerRear, length) } }),
    beyond: "wheel-does-not-rise",
  },
  {
    refused: "strut-has-no-axis",
    linkage: "strut",
    limit: nothing * distance(strut.top, strut.lowerJoint),
    drawn: (length) => ({ points: { bottom: above(strut.top, -length) } }),
  },
  {
    refused: "top-mount-on-lower-joint",
    linkage: "strut",
    limit: nothing * distance(strut.lowerJoint, strut.lowerRear),
    drawn: (length) => ({ points: { top: above(strut.lowerJoint, length) } }),
  },
  // The farther end of the king pin decides: the nearer one is within 100 mm of the pivot, for which half of the limit is axis enough.
  ...(["lowerJoint", "upperJoint"] as const).map((farther): Limit => {
    const beamRear = point(-60, 570, farther === "lowerJoint" ? 400 : 200);
    return {
      refused: "beam-has-no-axis",
      linkage: "pivoting-beam",
      limit: nothing * distance(beam[farther], beamRear),
      drawn: (length) => ({ points: { beamRear, beamFront: ahead(beamRear, length) } }),
    };
  }),
  ...(["lowerJoint", "upperJoint"] as const).map(
    (end): Limit => ({
      refused: "king-pin-on-beam-axis",
      linkage: "pivoting-beam",
      limit: nothing * 500,
      drawn: (length) => ({
        points: {
          beamFront: point(100, 200, 250),
          beamRear: point(-500, 200, 250),
          [end]: point(0, 200, 250 + length),
        },
      }),
    }),
  ),
  {
    refused: "joints-coincide",
    linkage: "fixed-kingpin",
    limit: nothing * distance(wheel.wheelCenter, eye),
    drawn: (length) => ({ points: { upperJoint: above(pin.lowerJoint, length) } }),
  },
  {
    refused: "tie-rod-on-steering-axis",
    linkage: "fixed-kingpin",
    limit: nothing * distance(wheel.wheelCenter, eye),
    drawn: (length) => ({ corner: { tieRodOuter: ahead(point(0, 650, 300), length) } }),
  },
  {
    refused: "tie-rod-has-no-length",
    linkage: "fixed-kingpin",
    limit: nothing * distance(wheel.wheelCenter, eye),
    drawn: (length) => ({ corner: { tieRodLength: length } }),
  },
  {
    // King pin upright, the tab 120 behind it, the eye 130 farther behind and that far aside.
    refused: "drawn-on-dead-point",
    linkage: "fixed-kingpin",
    limit: nothing * 130,
    drawn: (length) => ({ corner: { tieRodOuter: point(-120, 650, 300) }, eye: point(-250, 650 + length, 300) }),
  },
];

describe.each(limits)("$linkage: $refused", ({ refused, linkage, limit, drawn, beyond }) => {
  test.each(sides)("on the %s, to half of the limit and not at twice as much", (side) => {
    expect(refusalOf(drawnWith(linkage, side, drawn(0)))).toEqual({ refused, wheel: side });
    expect(refusalOf(drawnWith(linkage, side, drawn(limit / 2)))).toEqual({ refused, wheel: side });
    const other = refusalOf(drawnWith(linkage, side, drawn(2 * limit)));
    expect(other).toEqual(beyond === undefined ? null : { refused: beyond, wheel: side });
  });
});

/**
 * A beam on an axis that leans ahead by a hair from upright, and an upright king pin: turning about that moves nothing up or down, and so the wheel
 * rises at the sine of the lean times its way out from the pivot. The limit is a millionth of the half width.
 */
describe("a wheel that hardly rises", () => {
  const leaning = (share: number) => {
    const sine = (share * 1e-6 * wheel.wheelCenter.y) / (wheel.wheelCenter.y - 200);
    const beamRear = point(0, 200, 300);
    return { ...pin, beamRear, beamFront: point(100 * sine, 200, 300 + 100 * Math.sqrt(1 - sine * sine)) };
  };

  test.each(
    sides.flatMap((side) =>
      [null, 340, 380].flatMap((tieRodLength) => [1, -1].map((way) => ({ side, tieRodLength, way }))),
    ),
  )("is told on the $side by its place as drawn, whatever its rod ($tieRodLength) and which way it rises", (it) => {
    const refusedAt = (share: number) => {
      const points = leaning(it.way * share);
      return refusalOf(drawnWith("pivoting-beam", it.side, { points, corner: { tieRodLength: it.tieRodLength } }));
    };
    expect(refusedAt(0.999)).toEqual({ refused: "wheel-does-not-rise", wheel: it.side });
    expect(refusedAt(1.001)).toBeNull();
  });
});
