import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import type { FrontEnd } from "../../src/measures/frontEnd.ts";
import { sweepRange } from "../../src/measures/leastRodAngle.ts";
import { placeOf } from "../../src/measures/span.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { transmissionAngle } from "../../src/measures/tieRod.ts";
import { worstOf } from "../../src/measures/worst.ts";
import { acrossTyre, worstToeOf } from "../../src/measures/worstToe.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { expectClose } from "../close.ts";
import { radians } from "../oracles/vectors.ts";
import { endOf, inch, mirrored, offsetCar, poseOf, setting, tabsAhead, withRack } from "./cars.ts";
import { presetText, studied } from "./carTexts.ts";
import { between, plausible, textOf } from "./plausibleCars.ts";

function studyOfText(text: string): Study | null {
  const car = readCar(text);
  if ("complaints" in car) return null;
  const study = studyOf(car);
  return "refused" in study ? null : study;
}

/** The least angle of a wheel by a scan: a grid this fine, and by halving wherever it stands at one of two neighbours only. */
const fine = 36;
const halvings = 32;

function scanned(end: FrontEnd, side: number): { readonly least: number; readonly outOfReach: number } {
  const { furthestInput, wheelTravel } = end;
  const inputs = { from: -furthestInput.right, to: furthestInput.left, rows: fine + 1 };
  const travels = { from: -wheelTravel.droop, to: wheelTravel.bump, rows: fine + 1 };
  let least = Number.POSITIVE_INFINITY;
  let outOfReach = 0;
  const stands = (input: number, travel: number): boolean => {
    const poses = poseOf(end.front, input, travel);
    if (poses[side + Side.Blame] !== 0) return false;
    least = Math.min(least, transmissionAngle(poses, side));
    return true;
  };
  const place = (i: number, j: number): Place => [placeOf(inputs, i), placeOf(travels, j)];
  const closeIn = (one: Place, other: Place): void => {
    let [near, far] = stands(...one) ? [one, other] : [other, one];
    for (let i = 0; i < halvings; i++) {
      const middle: Place = [(near[0] + far[0]) / 2, (near[1] + far[1]) / 2];
      if (stands(...middle)) near = middle;
      else far = middle;
    }
  };
  const grid = Array.from({ length: fine + 1 }, (_, i) =>
    Array.from({ length: fine + 1 }, (_, j) => stands(...place(i, j))),
  );
  for (let i = 0; i <= fine; i++) {
    for (let j = 0; j <= fine; j++) {
      if (!grid[i][j]) outOfReach++;
      if (i > 0 && grid[i][j] !== grid[i - 1][j]) closeIn(place(i, j), place(i - 1, j));
      if (j > 0 && grid[i][j] !== grid[i][j - 1]) closeIn(place(i, j), place(i, j - 1));
    }
  }
  return { least, outOfReach };
}

type Place = readonly [input: number, travel: number];

/** The place of the least of a function with one valley, by the golden section. */
function valley(of: (place: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [from, to] = [low, high];
  for (let i = 0; i < 40; i++) {
    const [a, b] = [to - golden * (to - from), from + golden * (to - from)];
    if (of(a) < of(b)) to = b;
    else from = a;
  }
  return (from + to) / 2;
}

const wheels = [
  ["left", Pose.Left],
  ["right", Pose.Right],
] as const;

/** What is found is an angle of the car at the place that is told, none that a scan finds is less, and none is missed by more than told. */
function expectLeast(end: FrontEnd): boolean {
  const { rodAngle } = sweepRange(end);
  let someOutOfReach = false;
  for (const [name, side] of wheels) {
    const { least, outOfReach } = scanned(end, side);
    const found = rodAngle[name];
    if (found === null) throw new Error("the wheel stands nowhere");
    const there = poseOf(end.front, found.input, found.travel);
    expect(there[side + Side.Blame]).toBe(0);
    expect(transmissionAngle(there, side)).toBe(found.angle);
    // The last place of a span is its end but for the last bit.
    const bit = 1e-12 * (end.furthestInput.left + end.furthestInput.right);
    expect(found.input).toBeLessThanOrEqual(end.furthestInput.left + bit);
    expect(found.input).toBeGreaterThanOrEqual(-end.furthestInput.right - bit);
    // A border of what can be reached is closed in on to a hundredth of a degree; where there is none, nothing is missed.
    expect(found.angle).toBeLessThanOrEqual(least + (outOfReach > 0 ? radians(0.01) : 1e-6));
    someOutOfReach ||= outOfReach > 0;
  }
  return someOutOfReach;
}

describe("least rod-to-arm angle over rack and travel", () => {
  test.each([
    ["offset rack", offsetCar],
    ["tabs ahead", tabsAhead],
    ["lower rack", withRack(offsetCar, { up: 7.5 * inch, offset: 0 })],
  ])("is never more than a fine scan finds: %s", (_, drawn) => {
    const end = endOf(drawn);
    expect(sweepRange(end).blame).toBeNull();
    expect(expectLeast(end)).toBe(false);
  });

  test.each([3, 4, 6, 8])("nor where part of the range is out of reach: a rack that goes %d in", (travel) => {
    const end = endOf(offsetCar, { ...setting, inputTravel: { left: travel * inch, right: travel * inch } });
    expect(expectLeast(end)).toBe(true);
  });

  test("nor on random cars with racks too long for them", () => {
    fc.assert(
      fc.property(plausible, between(1.4, 2.6), between(75, 130), (car, long, droop) => {
        const built = studyOfText(
          textOf({ ...car, travel: car.travel * long }).replace("droop: 75", `droop: ${droop}`),
        );
        fc.pre(built !== null && built.worst.blame !== null);
        if (built !== null) expectLeast(built);
      }),
      { numRuns: 6, endOnFailure: true },
    );
    // A scan is slow out of reach, and the machine may be busy.
  }, 120_000);

  test.each([4, 8])("a rack that goes %d in, past a dead point, leaves no angle and tells the widest gap", (travel) => {
    const end = endOf(offsetCar, { ...setting, inputTravel: { left: travel * inch, right: travel * inch } });
    const { rodAngle, blame } = sweepRange(end);
    const { input: rack = Number.NaN, travel: there = Number.NaN, angle } = rodAngle.right ?? {};
    expect(angle).toBeLessThan(1e-4);
    expect(Math.abs(rack)).toBeLessThan(travel * inch);
    expect(blame).toMatchObject({ link: "tie rod" });
    // A hundredth of an inch away, along the rack or along the travel, the rod no longer reaches: it was the dead point.
    const hair = 0.01 * inch;
    const around = [
      poseOf(end.front, rack + hair, there),
      poseOf(end.front, rack - hair, there),
      poseOf(end.front, rack, there + hair),
      poseOf(end.front, rack, there - hair),
    ];
    expect(around.some((poses) => poses[Pose.Right + Side.Blame] !== 0)).toBe(true);
  });

  test("nor where the border is met along the travel only, whatever the rack does", () => {
    const end = {
      ...endOf(offsetCar),
      furthestInput: { left: 2.001 * inch, right: -1.999 * inch },
      wheelTravel: { bump: 3 * inch, droop: 5.5 * inch },
    };
    expect(expectLeast(end)).toBe(true);
  });

  test.each([-7.9, -8])(
    "is closed in on where it stands between the places of the grid, in steering and in travel: tabs at %d",
    (ahead) => {
      // A plate that turns past where its eyes reach furthest, behind long tabs: the rods come nearest to the axes on the way.
      const long = presetText("torsion-beam-steering-plate").replace(
        "outer: { ahead: -5,",
        `outer: { ahead: ${ahead},`,
      );
      const furthest = radians(80);
      const end: FrontEnd = { ...studied(long), furthestInput: { left: furthest, right: furthest } };
      const angleAt = (input: number, travel: number) => transmissionAngle(poseOf(end.front, input, travel), Pose.Left);
      const { bump, droop } = end.wheelTravel;
      const alongTravel = (input: number) => valley((travel) => angleAt(input, travel), -droop, bump);
      const input = valley((each) => angleAt(each, alongTravel(each)), -furthest, 0);
      const travel = alongTravel(input);
      expect([Math.abs(input) < furthest - radians(1), Math.abs(travel) < bump - 10]).toEqual([true, true]);
      const found = sweepRange(end).rodAngle.left;
      expect(Number(found?.angle)).toBeLessThan(angleAt(input, travel) + radians(0.001));
      // Ten steps of the grid, halved six times.
      expect(Math.abs(Number(found?.input) - input)).toBeLessThan((2 * furthest) / 10 / 64);
      expect(Math.abs(Number(found?.travel) - travel)).toBeLessThan((bump + droop) / 10 / 64);
    },
  );

  test("is none of a wheel that stands nowhere in the range", () => {
    const end = { ...endOf(offsetCar), furthestInput: { left: 21 * inch, right: -20 * inch } };
    expect(sweepRange(end).rodAngle).toEqual({ left: null, right: null });
  });

  test("the gap that is told is the widest of both wheels", () => {
    const end = endOf(offsetCar, { ...setting, inputTravel: { left: 8 * inch, right: 8 * inch } });
    const { blame } = sweepRange(end);
    const ends = [-8, 8].flatMap((rack) => {
      const poses = poseOf(end.front, rack * inch, -3 * inch);
      return [poses[Pose.Left + Side.Gap], poses[Pose.Right + Side.Gap]];
    });
    expect(Math.abs(blame?.gap ?? 0)).toBeGreaterThanOrEqual(Math.max(...ends.map(Math.abs)));
  });

  test("a mirrored car has it on the other side, to the last bit", () => {
    const [here, there] = [worstOf(endOf(offsetCar)), worstOf(endOf(mirrored(offsetCar)))];
    expect(there.rodAngle.left?.angle).toBe(here.rodAngle.right?.angle);
    expect(there.toe.left).toEqual(here.toe.right);
    expect(there.bounce?.bounceSteer).toBe(-(here.bounce?.bounceSteer ?? Number.NaN));
  });
});

describe("worst toe", () => {
  const travels = Float64Array.from({ length: 13 }, (_, i) => (i - 6) * 10);
  const curve = (slope: number, bow: number) => travels.map((t) => slope * t + bow * t * t);

  test("a curve made of a slope and a bow is split into them", () => {
    const worst = worstToeOf(travels, curve(-2e-5, 3e-6), 13, 270);
    expectClose([worst?.slopePart, worst?.bowPart], [-2e-5 * 60, 3e-6 * 3600], { abs: 1e-15 });
    expect(worst?.chiefly).toBe("bow");
    expect(worstToeOf(travels, curve(4e-5, -1e-8), 13, 270)?.chiefly).toBe("slope");
  });

  test("the split holds for a travel longer one way than the other", () => {
    const some = travels.subarray(3);
    const changes = some.map((t) => 1e-5 * t - 2e-7 * t * t);
    const worst = worstToeOf(some, changes, 10, 270);
    expectClose([worst?.slopePart, worst?.bowPart], [1e-5 * 60, -2e-7 * 3600], { abs: 1e-15 });
  });

  test("is the change of largest size, where it is, signed, and across the tyre", () => {
    expect(worstToeOf(travels, curve(-2e-5, 3e-6), 13, 270)).toMatchObject({ travel: -60 });
    expectClose(worstToeOf(travels, curve(0, -3e-6), 13, 270)?.toeChange, -3e-6 * 3600, { abs: 1e-15 });
    // Toe in inches is the tyre's diameter times the sine of the toe (common practice): 24 in at 0.15° is 0.0628318 in.
    expectClose(acrossTyre(radians(0.15), 12), 0.0628318, { abs: 5e-8 });
  });

  test("a single place has neither slope nor bow", () => {
    expect(worstToeOf(Float64Array.of(0), Float64Array.of(0), 1, 270)).toMatchObject({ slopePart: 0, bowPart: 0 });
    expect(worstToeOf(travels, travels, 0, 270)).toBeNull();
  });
});
