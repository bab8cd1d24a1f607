import { describe, expect, test, vi } from "vitest";
import { compile } from "../../src/kinematics/compile.ts";
import type { Drawn, Linkage, Range } from "../../src/kinematics/drawn.ts";
import { linkages } from "../../src/kinematics/linkages.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Pose, Side, Work } from "../../src/kinematics/slots.ts";
import { solve, solveSide } from "../../src/kinematics/solve.ts";
import { sides } from "../oracles/corner.ts";
import { frontOf, solved, startOf } from "../oracles/kernel.ts";
import { spatialCar } from "../oracles/known.ts";
import { both, namedOver, oneOfEach } from "../oracles/oneOfEach.ts";

/**
 * How often a corner is placed for one pose: what a search costs, told without a clock. A start that is fitted well is 1e-6 off at most, so that the
 * place it gives and one more are all that it takes. Invented cars, mm.
 */

/** Off the middle in everything: the fit has to look where the range is. */
const range: Range = { inputLow: -35, inputHigh: 55, travelLow: -55, travelHigh: 40 };
const { left: corner } = spatialCar;

const drawnOn = (linkage: Linkage, of: Range = range): Drawn => ({
  linkage,
  mechanism: { kind: "rack", ahead: -110, up: 330, eyeToEye: 540, offset: 25, tilt: 0.03, straightAhead: 5 },
  left: corner,
  right: corner,
  range: of,
});

const shares = [-1, -0.7, -0.3, 0, 0.4, 0.8, 1];
const at = (share: number, low: number, high: number) => 0.5 * (low + high) + 0.5 * share * (high - low);

/** Places of one corner for all that is done in `work`. */
function placesFor(kind: Linkage["kind"], work: () => void): number {
  const carry = linkages[kind].carry as { place: (...given: never[]) => void };
  const spied = vi.spyOn(carry, "place");
  try {
    work();
    return spied.mock.calls.length;
  } finally {
    spied.mockRestore();
  }
}

const grid = shares.flatMap((i) => shares.map((z) => ({ i, z })));

describe.each(oneOfEach)("$kind", (linkage) => {
  const { kind } = linkage;

  test("takes two places a side all over its range, its ends too, on either side alone and on both", () => {
    const front = frontOf(drawnOn(linkage));
    const poses = newPoses(1);
    for (const { i, z } of grid) {
      const input = at(i, range.inputLow, range.inputHigh);
      const [left, right] = [z, -z].map((share) => at(share, range.travelLow, range.travelHigh));
      expect(
        placesFor(kind, () => solve(front, input, left, right, poses, 0)),
        `input ${input}, travel ${left}`,
      ).toBe(4);
      for (const side of sides) {
        expect(poses[startOf(side) + Side.Blame]).toBe(Link.None);
        const travel = side === "left" ? left : right;
        expect(placesFor(kind, () => solveSide(front, startOf(side), input, travel, poses, 0))).toBe(2);
      }
    }
  });

  test("takes little more than three for each place that its start is fitted through", () => {
    // Six heights by seven inputs on two sides, and the drawn pose of each.
    expect(placesFor(kind, () => compile(drawnOn(linkage)))).toBeLessThan(2 + 84 * 3.3);
  });

  test.each([
    { name: "input", of: { ...range, inputLow: 5, inputHigh: 5 } },
    { name: "travel", of: { ...range, travelLow: -20, travelHigh: -20 } },
  ])("is as quick where its range of $name is nothing, and a unit about it", ({ of }) => {
    const front = frontOf(drawnOn(linkage, of));
    const poses = newPoses(1);
    for (const { i, z } of grid) {
      const input = at(i, of.inputLow, of.inputHigh) + (of.inputLow === of.inputHigh ? i : 0);
      const travel = at(z, of.travelLow, of.travelHigh) + (of.travelLow === of.travelHigh ? z : 0);
      expect(placesFor(kind, () => solve(front, input, travel, travel, poses, 0))).toBe(4);
    }
  });

  test("stands where the slow way finds it, which a front that is tuned to another range has to take", () => {
    const front = frontOf(drawnOn(linkage));
    const slow = frontOf(drawnOn(linkage, { inputLow: 199, inputHigh: 200, travelLow: 299, travelHigh: 300 }));
    const poses = newPoses(1);
    let all = 0;
    for (const { i, z } of grid) {
      const input = at(i, range.inputLow, range.inputHigh);
      const travel = at(z, range.travelLow, range.travelHigh);
      solve(slow, input, travel, travel, poses, 0);
      for (const side of sides) {
        const places = placesFor(kind, () => solveSide(slow, startOf(side), input, travel, newPoses(1), 0));
        const turned = (2 * Math.abs(Math.atan(slow[side].work[Work.HalfAngle])) * 180) / Math.PI;
        // Two places for each degree that the arm is turned by; beyond that it closes in on the height faster than by halving, which takes 50.
        const closingIn = places - 2 * Math.ceil(turned);
        expect(closingIn, `${side}, ${input}, ${travel}`).toBeLessThan(17);
        all += closingIn;
      }
      const quick = solved(front, input, travel);
      // The height is met to 1e-11 of the half width by the quick way, to the last bit of the arm's angle by the slow one.
      for (let slot = 0; slot < Pose.Stride; slot++)
        expect(Math.abs(poses[slot] - quick[slot]), `${slot} at ${input}, ${travel}`).toBeLessThan(1e-7);
    }
    expect(all / (2 * grid.length)).toBeLessThan(11);
  });
});

/** A range over much of which nothing closes, so that the start is fitted through what runs on from there, and is poor. */
const wild: Range = { inputLow: -160, inputHigh: 140, travelLow: -420, travelHigh: 380 };

/** An arm that is named from its axis's other end turns the other way about. */
const bothWays = [...oneOfEach, ...oneOfEach.filter(({ kind }) => kind !== "trailing-arms").map(namedOver)];

test.each(bothWays)("a front that is tuned to more than it can do stands in the same places ($kind)", (linkage) => {
  const poor = frontOf(drawnOn(linkage, wild));
  const slow = frontOf(drawnOn(linkage, { inputLow: 199, inputHigh: 200, travelLow: 799, travelHigh: 800 }));
  let costs = 0;
  let closed = 0;
  for (let i = -1; i <= 1; i += 0.125)
    for (let z = -1; z <= 1; z += 0.125) {
      const input = at(i, wild.inputLow, wild.inputHigh);
      const travel = at(z, wild.travelLow, wild.travelHigh);
      const expected = solved(slow, input, travel);
      const found = newPoses(1);
      const places = placesFor(linkage.kind, () => solve(poor, input, travel, travel, found, 0));
      for (const side of sides) expect(found[startOf(side)], `${input}, ${travel}`).toBe(expected[startOf(side)]);
      if (found[Pose.Left] !== Link.None || found[Pose.Right] !== Link.None) continue;
      closed++;
      costs += places;
      let most = 0;
      for (let slot = 0; slot < Pose.Stride; slot++) most = Math.max(most, Math.abs(found[slot] - expected[slot]));
      // Nearer to a turning back than a millimetre a root of the height's 1e-8 mm is left in the arm's angle.
      expect(most, `${input}, ${travel}`).toBeLessThan(1e-5);
    }
  expect(closed).toBeGreaterThan(40);
  // The slow way takes some 60 a side for an arm that is turned by 25 degrees.
  expect(costs / closed).toBeLessThan(20);
});

test("a pose beyond the range depends on nothing that was solved before it", () => {
  for (const linkage of oneOfEach) {
    const front = frontOf(drawnOn(linkage));
    for (const [input, travel] of [
      [-35, 70],
      [90, -20],
      [20, -400],
      [-300, 10],
    ] as const) {
      const alone = solved(frontOf(drawnOn(linkage)), input, travel);
      solved(front, 10, travel / 3);
      expect([...solved(front, input, travel)], `${linkage.kind} at ${input}, ${travel}`).toEqual([...alone]);
    }
  }
});

test("a corner on a fixed king pin is placed once", () => {
  const pin = { lowerJoint: spatialCar.linkage.left.lowerJoint, upperJoint: spatialCar.linkage.left.upperJoint };
  const front = frontOf(drawnOn({ kind: "fixed-kingpin", ...both(pin) }, { ...range, travelLow: 0, travelHigh: 0 }));
  const poses = newPoses(1);
  for (const share of shares)
    for (const travel of [0, 0.5, 10]) {
      const input = at(share, range.inputLow, range.inputHigh);
      expect(placesFor("fixed-kingpin", () => solve(front, input, travel, -travel, poses, 0))).toBe(2);
    }
});
