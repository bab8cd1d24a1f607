import { describe, expect, test } from "vitest";
import type { Drawn, Relay } from "../../src/kinematics/drawn.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { expectClose } from "../close.ts";
import { sides } from "../oracles/corner.ts";
import { frontOf, pointIn, solved, startOf } from "../oracles/kernel.ts";
import { eyeAt } from "../oracles/newton.ts";
import { distance, minus, plus, point, rotated, times, unit } from "../oracles/vectors.ts";

/** A relay whose shafts lean different ways: its eyes are on the centre link's own line, or beyond its ends. Invented; mm, rad. */
const relay: Relay = {
  kind: "relay",
  pitmanPivot: point(-40, 180, 240),
  pitmanAxis: point(0.2, -0.1, 1),
  pitmanJoint: point(-180, 190, 215),
  idlerPivot: point(-50, -170, 230),
  idlerAxis: point(-0.2, 0.3, 2),
  idlerJoint: point(-185, -185, 220),
  leftEye: point(0, 0, 0),
  rightEye: point(0, 0, 0),
  turn: -1 / 12,
  straightAhead: 0.5,
};
const shares = { left: 0.1, right: 1.05 };
const onLine = (from: typeof relay.pitmanJoint, to: typeof from, share: number) =>
  plus(from, times(minus(to, from), share));
const pin = { lowerJoint: point(0, 600, 180), upperJoint: point(-20, 570, 400) };
const corner = {
  tieRodOuter: point(-170, 560, 240),
  tieRodLength: null,
  wheelCenter: point(0, 690, 290),
  camber: 0,
  toe: 0,
};
const drawn: Drawn = {
  linkage: { kind: "fixed-kingpin", left: pin, right: pin },
  mechanism: {
    ...relay,
    leftEye: onLine(relay.pitmanJoint, relay.idlerJoint, shares.left),
    rightEye: onLine(relay.pitmanJoint, relay.idlerJoint, shares.right),
  },
  left: corner,
  right: corner,
  range: { inputLow: -5, inputHigh: 5, travelLow: 0, travelHigh: 0 },
};

describe("a relay on shafts that are not parallel", () => {
  const front = frontOf(drawn);
  const link = distance(relay.pitmanJoint, relay.idlerJoint);
  test.each([-5, -2, 0, 0.5, 3, 5])("has its eyes on the centre link's line at column %d", (column) => {
    const poses = solved(front, column, 0);
    const turned = rotated(
      minus(relay.pitmanJoint, relay.pitmanPivot),
      times(unit(relay.pitmanAxis), column * relay.turn),
    );
    const pitman = plus(relay.pitmanPivot, turned);
    const eyes = sides.map((side) => {
      const at = startOf(side);
      expect(poses[at + Side.Blame], side).toBe(Link.None);
      const eye = pointIn(poses, at + Side.TieRodInner);
      // The Newton stops at steps under 1e-9 mm.
      expectClose(eye, eyeAt(drawn, side, column), { abs: 1e-8 }, side);
      return side === "left" ? eye : point(eye.x, -eye.y, eye.z);
    });
    expectClose(
      sides.map((side, i) => distance(eyes[i], pitman) - shares[side] * link),
      [0, 0],
      { abs: 1e-9 },
    );
    expectClose(distance(eyes[0], eyes[1]), (shares.right - shares.left) * link, { abs: 1e-9 });
    // From the line, the idler's joint: as far from its pivot, and from its axis, as drawn.
    const joint = onLine(eyes[0], eyes[1], (1 - shares.left) / (shares.right - shares.left));
    const axis = unit(relay.idlerAxis);
    for (const place of [relay.idlerPivot, plus(relay.idlerPivot, times(axis, 100))])
      expectClose(distance(joint, place), distance(relay.idlerJoint, place), { abs: 1e-9 });
  });
});
