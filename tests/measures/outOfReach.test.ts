import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { bounceSteerFigure } from "../../src/measures/bounceSteer.ts";
import { bumpTable } from "../../src/measures/bumpTable.ts";
import { steer } from "../../src/measures/steer.ts";
import { steerTable } from "../../src/measures/steerTable.ts";
import { toe } from "../../src/measures/toe.ts";
import { toeChangeFigure } from "../../src/measures/toeChange.ts";
import { trackChangeFigure } from "../../src/measures/trackChange.ts";
import { endOf, mirrored, offsetCar, poseOf } from "./cars.ts";

// With the rack 65 mm to the right the left tie rod does not reach at ride height, and does with the wheels 60 mm up.
const far = 65;
const up = 60;

describe.each([
  ["left", endOf(offsetCar), -far, Pose.Left, "right", Pose.Right],
  ["right", endOf(mirrored(offsetCar)), far, Pose.Right, "left", Pose.Left],
] as const)("a rack at which the %s rod reaches in bump only", (short, end, input, shortAt, other, otherAt) => {
  const ride = poseOf(end.front, input, 0);
  const high = poseOf(end.front, input, up);

  test("is one at ride height, and there its wheel alone has no numbers", () => {
    expect([ride[shortAt + Side.Blame], high[shortAt + Side.Blame]].map((blame) => blame === 0)).toEqual([false, true]);
    expect([ride[otherAt + Side.Blame], high[otherAt + Side.Blame]]).toEqual([0, 0]);
    const { rows } = steerTable(end, { from: input, to: input, rows: 1 });
    expect(rows.length).toBe(1);
    expect(rows[0]?.blame).toMatchObject({ wheel: short, link: "tie rod" });
    expect(rows[0]?.[short].steer).toBeNull();
    expect(rows[0]?.[other].steer).toBe(steer(ride, otherAt));
    expect(rows[0]).toMatchObject({ turn: null, inner: null, outer: null, turnRadius: null });
  });

  test("counts no change from a place where that wheel cannot stand, nor what is made of both wheels", () => {
    const { rows, summary } = bumpTable(end, input, { from: 0, to: up, rows: 2 });
    expect(rows.map(({ travel }) => travel)).toEqual([0, up]);
    const [low, full] = rows;
    expect(low?.blame).toMatchObject({ wheel: short });
    expect(low?.[short]).toEqual({ toe: null, toeChange: null, camber: null, caster: null, trackChange: null });
    expect(low?.[other]).toMatchObject({ toe: toe(ride, otherAt), toeChange: 0, trackChange: 0 });
    expect(full?.blame).toBeNull();
    expect(full?.[short]).toMatchObject({ toe: toe(high, shortAt), toeChange: null, trackChange: null });
    const change = toe(high, otherAt) - toe(ride, otherAt);
    expect(full?.[other].toeChange).toBe(change);
    expect(rows.map(({ bounceSteer }) => bounceSteer)).toEqual([null, null]);
    expect(summary.worstToeChange).toBe(Math.abs(change));
    expect(summary.worstBounceSteer).toBeNull();
    expect(summary.bumpSteer[short]).toBeNull();
    expect(summary.bumpSteer[other]).toSatisfy(Number.isFinite);
  });

  test("has no figure of such a change either", () => {
    expect(bounceSteerFigure.read(high, 0, end)).toBeNull();
    for (const figure of [toeChangeFigure, trackChangeFigure]) {
      expect(figure.read(high, shortAt, end), figure.id).toBeNull();
      expect(figure.read(high, otherAt, end), figure.id).toSatisfy(Number.isFinite);
    }
  });
});

test("of rows that no wheel reaches nothing is told, nor a worst of them", () => {
  const { rows, summary } = bumpTable(endOf(offsetCar), 0, { from: 1500, to: 1600, rows: 2 });
  expect(rows.map(({ bounceSteer, left, right }) => [bounceSteer, left.toe, right.toe])).toEqual([
    [null, null, null],
    [null, null, null],
  ]);
  expect([summary.worstToeChange, summary.worstBounceSteer]).toEqual([null, null]);
});

test("of a table's bounce steers the largest size is told, wherever it stands among the rows", () => {
  const end = endOf(offsetCar);
  for (const [from, to] of [
    [0, 76],
    [76, 0],
    [-76, 76],
    [76, -76],
  ] as const) {
    const { rows, summary } = bumpTable(end, 0, { from, to, rows: 5 });
    const sizes = rows.map(({ bounceSteer }) => Math.abs(bounceSteer ?? Number.NaN));
    expect(rows.length).toBe(5);
    expect(Math.abs(summary.worstBounceSteer ?? 0)).toBe(Math.max(...sizes));
    expect(Math.max(...sizes)).toBeGreaterThan(0);
  }
});
