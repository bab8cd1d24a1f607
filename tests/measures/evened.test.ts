import { describe, expect, it } from "vitest";
import type { Drawn, Mechanism } from "../../src/kinematics/drawn.ts";
import {
  offsetOf,
  onItsMiddle,
  tabsOf,
  withLikeStops,
  withLikeTabs,
  withoutOffset,
} from "../../src/measures/evened.ts";
import { expectClose } from "../close.ts";
import { point } from "../oracles/vectors.ts";
import { offsetCar, setting } from "./cars.ts";

// Every mean here is done in the head; y of a relay and of a plate's foot is the driver's left, of all else outboard.

const steeredBy = (mechanism: Mechanism): Drawn => ({ ...offsetCar, mechanism });

const rack: Mechanism = { ...offsetCar.mechanism, offset: -63.5, tilt: 0.02, straightAhead: 7 };
const bar: Mechanism = {
  kind: "centre-rack",
  leftEye: point(-100, 60, 220),
  rightEye: point(-101, 20, 221),
  tilt: 0.01,
  straightAhead: 0,
};
const plate: Mechanism = {
  kind: "steering-plate",
  foot: point(-90, 15, 200),
  rake: 1,
  leftEye: point(-100, 70, 220),
  rightEye: point(-102, 40, 222),
  straightAhead: 0,
};
const relay: Mechanism = {
  kind: "relay",
  pitmanPivot: point(-200, 210, 260),
  pitmanAxis: point(0, 0, 1),
  pitmanJoint: point(-60, 211, 250),
  idlerPivot: point(-200, -209, 260),
  idlerAxis: point(0, 0, 1),
  idlerJoint: point(-60, -205, 250),
  leftEye: point(-50, 300, 250),
  rightEye: point(-51, -240, 251),
  turn: 1 / 16,
  straightAhead: 0,
};

describe("the midpoint of the inner eyes", () => {
  it.each([
    ["a rack", rack, -63.5],
    ["a bar on a rack's middle", bar, 20],
    ["a plate on the column", plate, 15],
    ["a centre link", relay, 30],
  ])("on %s is so far to the driver's left of the centreline", (_, mechanism, offset) => {
    expect(offsetOf(mechanism)).toBe(offset);
  });

  it.each([
    ["a rack", rack, { ...rack, offset: 0 }],
    ["a bar", bar, { ...bar, leftEye: point(-100, 40, 220), rightEye: point(-101, 40, 221) }],
    [
      "a plate",
      plate,
      { ...plate, foot: point(-90, 0, 200), leftEye: point(-100, 55, 220), rightEye: point(-102, 55, 222) },
    ],
    ["a centre link", relay, { ...relay, leftEye: point(-50, 270, 250), rightEye: point(-51, -270, 251) }],
  ])("on %s is put on it with the eyes as far apart as they were, and all else left", (_, mechanism, centred) => {
    const from = { drawn: steeredBy(mechanism), setting };
    expect(withoutOffset(from)).toEqual({ drawn: steeredBy(centred), setting });
    expect(offsetOf(withoutOffset(from).drawn.mechanism)).toBe(0);
  });
});

it("a rack is put on its middle with nothing else moved", () => {
  const made = onItsMiddle({ drawn: steeredBy(rack), setting });
  expect(made).toEqual({ drawn: steeredBy({ ...rack, straightAhead: 0 }), setting });
});

it("tabs are put at the mean of their places from their own lower joints", () => {
  const { linkage, left, right } = offsetCar;
  const drawn: Drawn = {
    ...offsetCar,
    linkage: {
      kind: "double-arm",
      left: { ...linkage.left, lowerJoint: point(5, 540, 180) },
      right: { ...linkage.right, lowerJoint: point(-3, 550, 170) },
    },
    left: { ...left, tieRodOuter: point(-105, 500, 220) },
    right: { ...right, tieRodOuter: point(-123, 500, 230) },
  };
  expect(tabsOf(drawn)).toEqual({ left: point(-110, -40, 40), right: point(-120, -50, 60) });
  const even = withLikeTabs({ drawn, setting }).drawn;
  expect([even.left.tieRodOuter, even.right.tieRodOuter]).toEqual([point(-110, 495, 230), point(-118, 505, 220)]);
  expect(even).toEqual({
    ...drawn,
    left: { ...drawn.left, tieRodOuter: even.left.tieRodOuter },
    right: { ...drawn.right, tieRodOuter: even.right.tieRodOuter },
  });
});

it("stops are made alike: ends, collars and what both wheels have at their mean, what only one has taken away", () => {
  const stops = {
    collar: { left: 4, right: 0 },
    upright: { inner: { left: 0.5, right: 0.75 }, outer: { left: 0, right: 0.5 } },
    tyreRub: { inner: { left: 0.5, right: 0 }, outer: { left: 0, right: 0 } },
  };
  const made = withLikeStops({
    drawn: offsetCar,
    setting: { ...setting, inputTravel: { left: 50, right: 40 }, stops },
  });
  expect(made.drawn).toBe(offsetCar);
  expectClose(
    [made.setting.inputTravel, made.setting.stops],
    [
      { left: 45, right: 45 },
      {
        collar: { left: 2, right: 2 },
        upright: { inner: { left: 0.625, right: 0.625 }, outer: { left: 0, right: 0 } },
        tyreRub: { inner: { left: 0, right: 0 }, outer: { left: 0, right: 0 } },
      },
    ],
    { abs: 0 },
  );
});
