import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { caster } from "../../src/measures/caster.ts";
import { locksOf } from "../../src/measures/locks.ts";
import { scrubRadius } from "../../src/measures/scrubRadius.ts";
import { trail } from "../../src/measures/trail.ts";
import { worstOf } from "../../src/measures/worst.ts";
import { endOf, inch, offsetCar, tabsAhead, withCorners, withRack } from "./cars.ts";
import { presetText, studied } from "./carTexts.ts";

/** Facts that the trade goes by (common practice, no source), asked of whole front ends. */

const tabsBehind = withRack(offsetCar, { offset: 0 });

function ackermannAtLock(drawn: Parameters<typeof endOf>[0]): number {
  return locksOf(endOf(drawn)).left?.ackermann ?? Number.NaN;
}

function withTabOut(drawn: typeof offsetCar, by: number) {
  const outer = drawn.left.tieRodOuter;
  return withCorners(drawn, { tieRodOuter: { ...outer, y: outer.y + by } });
}

describe("Ackermann effect", () => {
  test.each([
    ["behind", tabsBehind],
    ["ahead", tabsAhead],
  ])("moving the rack back raises it, tabs %s", (_, drawn) => {
    const { ahead } = drawn.mechanism;
    const back = ackermannAtLock(withRack(drawn, { ahead: ahead - inch / 2 }));
    const forward = ackermannAtLock(withRack(drawn, { ahead: ahead + inch / 2 }));
    expect(back).toBeGreaterThan(ackermannAtLock(drawn));
    expect(forward).toBeLessThan(ackermannAtLock(drawn));
  });

  test("with the tab ahead of the king pin, a tab nearer the wheel raises it", () => {
    expect(ackermannAtLock(withTabOut(tabsAhead, inch / 2))).toBeGreaterThan(ackermannAtLock(tabsAhead));
  });

  test("with the tab behind the king pin, a tab further from the wheel raises it", () => {
    expect(ackermannAtLock(withTabOut(tabsBehind, -inch / 2))).toBeGreaterThan(ackermannAtLock(tabsBehind));
  });
});

describe("bump steer", () => {
  const partsOf = (drawn: typeof offsetCar) => {
    const toe = worstOf(endOf(drawn)).toe.left;
    return [toe?.slopePart ?? Number.NaN, toe?.bowPart ?? Number.NaN] as const;
  };
  const [slope, bow] = partsOf(tabsBehind);
  const changeOf = (drawn: typeof offsetCar) => {
    const [newSlope, newBow] = partsOf(drawn);
    return { slope: Math.abs(newSlope - slope), bow: Math.abs(newBow - bow) };
  };

  test("the inner ends' height changes the slope more than the bow", () => {
    const change = changeOf(withRack(tabsBehind, { up: tabsBehind.mechanism.up + inch / 2 }));
    expect(change.slope).toBeGreaterThan(5 * change.bow);
  });

  test("the rods' length changes the bow more than the slope", () => {
    const { eyeToEye } = tabsBehind.mechanism;
    const change = changeOf(withRack(tabsBehind, { eyeToEye: eyeToEye - 4 * inch }));
    expect(change.bow).toBeGreaterThan(change.slope);
  });

  test("an offset rack steers both wheels the same way in bounce; the inner ends on the middle do not", () => {
    const offset = worstOf(endOf(offsetCar)).bounce?.bounceSteer ?? Number.NaN;
    expect(Math.abs(offset)).toBeGreaterThan((0.3 * Math.PI) / 180);
    expect(worstOf(endOf(tabsBehind)).bounce?.bounceSteer).toBeCloseTo(0, 12);
  });
});

describe("what the README's table of symptoms would have one try", () => {
  const degrees = (rad: number | null | undefined) => ((rad ?? Number.NaN) * 180) / Math.PI;
  const ride = (text: string) => {
    const study = studied(text);
    const poses = study.pose(0, 0, 0);
    const at = Pose.Left;
    return {
      caster: caster(poses, at),
      trail: trail(poses, at, study.tireRadius),
      scrubRadius: scrubRadius(poses, at, study.tireRadius),
    };
  };
  const edited = (name: string, edits: readonly (readonly [string, string])[]) =>
    edits.reduce((text, [from, to]) => {
      if (!text.includes(from)) throw new Error(`${name} does not say ${from}`);
      return text.replaceAll(from, to);
    }, presetText(name));

  test("rods cut to fit with the rack on its middle make the locks equal and straight ahead the rack's middle", () => {
    const cut = presetText("cut-rods-off-middle");
    const study = studied(cut);
    expect(Math.abs(degrees(study.locks.difference.inner))).toBeGreaterThan(5);
    expect(Math.abs(study.zero ?? Number.NaN)).toBeGreaterThan(2.5);
    const fit = studied(cut.replaceAll(/^ *tie-rod: \{ length: \d+ \}\n/gm, ""));
    expect(fit.car.form.rods).toEqual({ left: "fit", right: "fit" });
    expect(degrees(fit.locks.difference.inner)).toBeCloseTo(0, 9);
    expect(fit.zero).toBeCloseTo(0, 9);
  });

  test("no length of the rods cures what both wheels steer together; the inner ends on the middle do", () => {
    const bounce = (text: string) => Math.abs(degrees(studied(text).worst.bounce?.bounceSteer));
    const offset = presetText("widened-offset-rack");
    expect(bounce(offset)).toBeGreaterThan(0.8);
    for (const by of [-0.25, 0.25]) {
      const cut = [15.782, 10.797].map((length) => `tie-rod: { length: ${length + by} }`);
      const text = edited("widened-offset-rack", [
        ["steering:\n", `  left:\n    ${cut[0]}\n  right:\n    ${cut[1]}\nsteering:\n`],
      ]);
      expect(studied(text).car.form.rods).toEqual({ left: "cut", right: "cut" });
      expect(bounce(text), String(by)).toBeGreaterThan(0.4);
    }
    expect(bounce(edited("widened-offset-rack", [["offset: -2.5", "offset: 0"]]))).toBeCloseTo(0, 9);
  });

  test("the rack back, or tabs inward behind the king pin and outward ahead of it, turns the inner wheel more beside the outer", () => {
    const percent = (text: string) => studied(text).locks.left?.ackermann ?? Number.NaN;
    const behind = percent(presetText("tab-to-place"));
    expect(percent(edited("tab-to-place", [["ahead: -5.5, up", "ahead: -6.5, up"]]))).toBeGreaterThan(behind + 5);
    const inward = edited("tab-to-place", [["ahead: -5.25, out: 22.5", "ahead: -5.25, out: 22"]]);
    expect(percent(inward)).toBeGreaterThan(behind + 5);
    const outward = edited("rack-ahead", [['ahead: 4.5, out: "21 7/8"', 'ahead: 4.5, out: "22 3/8"']]);
    expect(percent(outward)).toBeGreaterThan(percent(presetText("rack-ahead")) + 5);
  });

  test("a longer steering arm turns the wheels less and keeps the rods farther from the dead point", () => {
    const longer = studied(edited("balanced-two-seater", [["outer: { ahead: -4.75", "outer: { ahead: -5.5"]]));
    const before = studied(presetText("balanced-two-seater"));
    expect(longer.locks.left?.inner).toBeLessThan(before.locks.left?.inner ?? 0);
    expect(longer.worst.rodAngle.left?.angle).toBeGreaterThan(before.worst.rodAngle.left?.angle ?? 9);
  });

  test("the upper joint back, or the lower one ahead, gives caster and trail; king pins farther out less scrub radius", () => {
    const before = ride(presetText("balanced-two-seater"));
    const upper = ride(edited("balanced-two-seater", [["ahead: -0.9, out: 22.6", "ahead: -1.4, out: 22.6"]]));
    const lower = ride(edited("balanced-two-seater", [["ahead: 0.3,  out: 24", "ahead: 0.8,  out: 24"]]));
    for (const after of [upper, lower]) {
      expect(after.caster).toBeGreaterThan(before.caster);
      expect(after.trail).toBeGreaterThan(before.trail);
    }
    const out = ride(
      edited("balanced-two-seater", [
        ["ahead: 0.3,  out: 24", "ahead: 0.3,  out: 25"],
        ["ahead: -0.9, out: 22.6", "ahead: -0.9, out: 23.6"],
      ]),
    );
    expect(out.scrubRadius).toBeLessThan(before.scrubRadius);
  });
});
