import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { drawnOf } from "../../src/measures/front.ts";
import { rodFit, threadsOf, turnOfArm } from "../../src/measures/threads.ts";
import { toe } from "../../src/measures/toe.ts";
import type { RodThread } from "../../src/vehicle/sections/threads.ts";
import { cross, dot, minus, point, unit, type Vector } from "../oracles/vectors.ts";
import { frontOf, inch, poseOf } from "./cars.ts";
import { presetText, studied } from "./carTexts.ts";
import { threadOf } from "./thread.ts";

// Held by at least 1.5 diameters, 19.05 and 18 mm, and at most by 40 − 8 = 32 and by the 28 mm that the tube is threaded:
// 12.95 and 10 mm of adjustment. Reach and shoulder make 125 mm of both ends. All worked out by hand.
const outer: RodThread = {
  size: threadOf("1/2-20"),
  hand: "right",
  fitting: "tapped",
  reach: 60,
  thread: 40,
  depth: null,
  shoulder: 0,
  "jam-nut": 8,
};
const inner: RodThread = { ...outer, size: threadOf("M12"), depth: 28, shoulder: 5, "jam-nut": 7 };

describe("a tie rod of 400 mm, worked out by hand", () => {
  test("to be cut: its ends stand in the middle of their adjustment, which is all that they can be screwed out or in", () => {
    const fit = rodFit({ outer, inner, cut: null }, 400, 1.5);
    expect(fit.engaged[0]).toBeCloseTo(19.05 + 6.475, 10);
    expect(fit.engaged[1]).toBeCloseTo(18 + 5, 10);
    expect(fit.tube).toBeCloseTo(400 - 125 + 25.525 + 23, 10);
    expect(fit).toMatchObject({ turnbuckle: false, step: 1.27 / 2 });
    expect([fit.longer, fit.shorter].map((mm) => mm.toFixed(9))).toEqual(["11.475000000", "11.475000000"]);
  });

  test("as a turnbuckle: the M12 end runs out first, after 5/1.75 turns of both pitches", () => {
    const fit = rodFit({ outer, inner: { ...inner, hand: "left" }, cut: null }, 400, 1.5);
    expect(fit.turnbuckle).toBe(true);
    expect(fit.step).toBeCloseTo(3.02, 12);
    expect(fit.longer).toBeCloseTo((5 / 1.75) * 3.02, 10);
    expect(fit.shorter).toBeCloseTo((5 / 1.75) * 3.02, 10);
  });

  test("cut to 320: 45 mm are in both ends, what is more than the least shared by their adjustment", () => {
    const fit = rodFit({ outer, inner, cut: 320 }, 400, 1.5);
    expect(fit.engaged[0]).toBeCloseTo(19.05 + (7.95 * 12.95) / 22.95, 10);
    expect(fit.engaged[1]).toBeCloseTo(18 + (7.95 * 10) / 22.95, 10);
    expect(fit.longer).toBeCloseTo(45 - 37.05, 10);
    expect(fit.shorter).toBeCloseTo(32 + 28 - 45, 10);
  });

  test("with threads too short for any adjustment, both ends share what is in them alike", () => {
    const short = { ...outer, thread: 20 };
    const fit = rodFit({ outer: short, inner: short, cut: 320 }, 400, 1.5);
    // 60 + 60 + 320 − 400 = 40 mm are in both.
    expect(fit.engaged[0]).toBeCloseTo(20, 10);
    expect(fit.engaged[1]).toBeCloseTo(20, 10);
  });
});

test("an arm turns by a right angle at most", () => {
  expect(turnOfArm(120, 120)).toBeCloseTo(Math.PI / 2, 12);
  expect(turnOfArm(121, 120)).toBeNull();
  expect(turnOfArm(-121, 120)).toBeNull();
});

const ends = (cut: string) =>
  `{ outer: { size: 1/2-20, reach: 2.44 in, thread: 1.5 in, jam-nut: 0.3 in }, inner: { size: 1/2-20, hand: left, reach: 2.44 in, thread: 1.5 in }${cut} }`;
const car = presetText("cut-rods-off-middle");

describe("a car's tie rod", () => {
  test("has its engagement, in diameters too, and what is left bare beside the jam nut", () => {
    const study = studied(`${car}\nthreads: { left: ${ends("")} }\n`);
    const fit = threadsOf(study, "left");
    if (fit === null) throw new Error("the threads are given");
    const [out, within] = fit.ends;
    expect([out.end, within.end, fit.isCut, fit.turnbuckle]).toEqual(["outer", "inner", false, true]);
    // Between 1.5 diameters, 0.75 in, and 1.5 − 0.3 = 1.2 in.
    expect(out.engagement).toBeCloseTo(0.975 * inch, 10);
    expect(out.diameters).toBeCloseTo(1.95, 10);
    expect(out.jamNutRoom).toBeCloseTo((1.5 - 0.975 - 0.3) * inch, 10);
    // In the middle of its adjustment an end can go in as far as it can come out: to the standard nut.
    expect(within.jamNutRoom).toBeCloseTo(within.engagement - 0.75 * inch, 10);
    expect(within.engagement + within.jamNutRoom + threadOf("1/2-20").jamNut).toBeCloseTo(1.5 * inch, 10);
    expect(fit.tube).toBeCloseTo(study.rodLengths.left - 2 * 2.44 * inch + out.engagement + within.engagement, 9);
    expect(fit.step).toBeCloseTo(0.1 * inch, 10);
    expect(threadsOf(study, "right")).toBeNull();
    expect(threadsOf(studied(car), "left")).toBeNull();
  });

  test("is cut where the file says so, and held by as much as the file's own limit asks", () => {
    const cut = threadsOf(studied(`${car}\nthreads: { both: ${ends(", cut: 9.5 in")} }\n`), "right");
    expect(cut?.isCut).toBe(true);
    expect(cut?.tube).toBeCloseTo(9.5 * inch, 10);
    const own = `${car}\nthreads: { both: ${ends("")} }\nlimits: { engagement: { broken: 1, close: 1.2 } }\n`;
    expect(threadsOf(studied(own), "right")?.ends[0].engagement).toBeCloseTo(((0.5 + 1.2) / 2) * inch, 10);
  });

  test("turns the wheel by so much for a turn of its tube as one that is made a hair longer and shorter does", () => {
    // King pins on the frame: with arms, those take back what the wheel's centre rises by, some 1e-4 of the toe.
    const kart = presetText("fixed-kingpin-yard-kart").replace("camber: 0, toe: 0", "camber: 6, toe: 4");
    const { left, right } = studied(kart).rodLengths;
    const lengths = `left: { tie-rod: { length: ${left + 3} } }\n  right: { tie-rod: { length: ${right - 2} } }`;
    const study = studied(`${kart.replace("steering:", `  ${lengths}\nsteering:`)}\nthreads: { both: ${ends("")} }\n`);
    const zero = study.zero ?? Number.NaN;
    expect(Math.abs(zero)).toBeGreaterThan(0.01);
    for (const [wheel, side] of [["left", Pose.Left] as const, ["right", Pose.Right] as const]) {
      const drawn = drawnOf(study.car);
      const toeWith = (more: number) => {
        const corner = { ...drawn[wheel], tieRodLength: study.rodLengths[wheel] + more };
        return toe(poseOf(frontOf({ ...drawn, [wheel]: corner }), zero, 0), side);
      };
      // Differences err with the square of the step over the arm, 1e-10, and by rounding over the step, 1e-10.
      const hair = 1e-3;
      const rate = Math.abs(toeWith(hair) - toeWith(-hair)) / (2 * hair);
      // The moment arm by its definition, |((outer − lower) × e) · k|.
      const poses = poseOf(frontOf(drawn), zero, 0);
      const at = (slot: number): Vector => point(poses[side + slot], poses[side + slot + 1], poses[side + slot + 2]);
      const rod = minus(at(Side.TieRodInner), at(Side.TieRodOuter));
      const across = cross(minus(at(Side.TieRodOuter), at(Side.Lower)), unit(rod));
      const arm = Math.abs(dot(across, at(Side.Axis)));
      // One turn of a tube with both hands is two pitches, 0.1 in: the arm's angle by its sine.
      const expected = Math.asin((0.1 * inch) / arm) * arm * rate;
      const told = threadsOf(study, wheel)?.toePerStep ?? Number.NaN;
      expect(Math.abs(told / expected - 1)).toBeLessThan(1e-7);
    }
  });

  test("says nothing of toe where the rod's arm is shorter than a turn of its tube is long", () => {
    const study = studied(`${car}\nthreads: { both: ${ends("")} }\n`);
    const dead = { ...study, ridePose: () => poses };
    const poses = study.pose(0, 0, 0);
    poses[Pose.Left + Side.Lever] = 2;
    expect(threadsOf(dead, "left")?.toePerStep).toBeNull();
    expect(threadsOf(dead, "right")?.toePerStep).toBeGreaterThan(0);
  });
});
