import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { blameWords } from "../../src/measures/blame.ts";
import { bumpTable, travelSpan } from "../../src/measures/bumpTable.ts";
import { locksOf } from "../../src/measures/locks.ts";
import { placeOf } from "../../src/measures/span.ts";
import { inputSpan, steerTable } from "../../src/measures/steerTable.ts";
import { toe } from "../../src/measures/toe.ts";
import { expectClose } from "../close.ts";
import { endOf, inch, mirrored, offsetCar, poseOf, setting, tabsAhead, withRack, withRods } from "./cars.ts";
import { notFinite } from "./notFinite.ts";

describe("rows", () => {
  test("both ends are exact and the places evenly counted", () => {
    const span = { from: -0.3, to: 0.7, rows: 11 };
    expect([placeOf(span, 0), placeOf(span, 10)]).toEqual([-0.3, 0.7]);
    expectClose(placeOf(span, 3), 0, { abs: 1e-16 });
    expect(placeOf({ from: 5, to: 9, rows: 1 }, 0)).toBe(5);
  });
});

describe("locks", () => {
  test("with the tabs behind the steering axis the left lock is the rack's right end, ahead of it the left one", () => {
    expect(locksOf(endOf(offsetCar)).left?.input).toBe(-2 * inch);
    expect(locksOf(endOf(tabsAhead)).left?.input).toBe(2 * inch);
    expect(locksOf(endOf(tabsAhead)).left?.turn).toBe("left");
  });

  test("differ as left less right, each of the three for itself", () => {
    const { left, right, difference } = locksOf(endOf(offsetCar));
    if (left === null || right === null) throw new Error("both locks are known");
    expectClose(difference, less(left, right), { abs: 0 });
  });

  test("of a mirrored car are exchanged to the last bit", () => {
    const [here, there] = [locksOf(endOf(offsetCar)), locksOf(endOf(mirrored(offsetCar)))];
    expect(there.left?.inner).toBe(here.right?.inner);
    expect(there.left?.ackermann).toBe(here.right?.ackermann);
    expect(there.right?.turnRadius).toBe(here.left?.turnRadius);
    expect(there.difference.outer).toBe(-(here.difference.outer ?? Number.NaN));
  });

  test("a rack 1/16 in off its middle makes the inner locks of a central rack unequal by about 3 degrees", () => {
    const central = withRack(offsetCar, { offset: 0 });
    const { left, right } = endOf(withRack(central, { straightAhead: inch / 16 })).rodLengths;
    const { difference } = locksOf(endOf(withRods(central, left, right)));
    const apart = Math.abs(difference.inner ?? 0) * (180 / Math.PI);
    expect(apart).toBeGreaterThan(2);
    expect(apart).toBeLessThan(4);
  });
});

function less<T extends Record<"inner" | "outer" | "turnRadius", number | null>>(a: T, b: T) {
  const part = (key: "inner" | "outer" | "turnRadius") => (a[key] ?? Number.NaN) - (b[key] ?? Number.NaN);
  return { inner: part("inner"), outer: part("outer"), turnRadius: part("turnRadius") };
}

describe("the bump table", () => {
  const end = endOf(offsetCar);
  const table = bumpTable(end, 0, travelSpan(end));

  test("changes count from travel 0 at the table's own rack", () => {
    const turned = bumpTable(end, 30, travelSpan(end));
    expect(turned.rows[10]).toMatchObject({ travel: 0, bounceSteer: 0 });
    expect(turned.rows[10].left).toMatchObject({ toeChange: 0, trackChange: 0 });
    const own = toe(poseOf(end.front, 30, -3 * inch), Pose.Left) - toe(poseOf(end.front, 30, 0), Pose.Left);
    expectClose(turned.rows[0].left.toeChange, own, { abs: 0 });
  });

  test("bounce steer is half the right wheel's toe change less the left's", () => {
    for (const row of table.rows) {
      const mean = ((row.right.toeChange ?? Number.NaN) - (row.left.toeChange ?? Number.NaN)) / 2;
      expectClose(row.bounceSteer, mean, { abs: 1e-15 });
    }
  });

  test("the summary holds the row of largest size: toe without its sign, bounce with it", () => {
    const toes = table.rows.flatMap((row) => [row.left.toeChange ?? 0, row.right.toeChange ?? 0]);
    expect(table.summary.worstToeChange).toBe(Math.max(...toes.map(Math.abs)));
    expect(table.summary.worstBounceSteer).toBe(table.rows[0].bounceSteer);
    expect(table.summary.worstBounceSteer).toBeLessThan(0);
  });

  test("a central rack with alike sides has no bounce steer", () => {
    const central = endOf(withRack(offsetCar, { offset: 0 }));
    const sizes = bumpTable(central, 0, travelSpan(central)).rows.map((row) => Math.abs(row.bounceSteer ?? 1));
    expect(Math.max(...sizes)).toBe(0);
  });
});

describe("places that cannot be reached", () => {
  const end = endOf(offsetCar);

  test("are rows with blame, their numbers null and never NaN", () => {
    const { rows } = steerTable(end, { from: -12 * inch, to: 12 * inch, rows: 5 });
    const far = rows[0];
    expect(far.blame).not.toBeNull();
    expect([far.turn, far.inner, far.outer, far.ackermann, far.turnRadius]).toEqual([null, null, null, null, null]);
    expect(notFinite(rows)).toEqual([]);
    expect(notFinite({ rows, spoilt: [0, Number.NaN] })).toEqual([".spoilt[1]"]);
    const high = bumpTable(end, 0, { from: 0, to: 60 * inch, rows: 3 });
    expect(high.rows[2].blame).not.toBeNull();
    expect(high.rows[2].left.toe).toBeNull();
    expect(high.summary.worstToeChange).toBe(0);
  });

  test("say which link, how much and which way", () => {
    const inches = (mm: number) => `${(mm / inch).toFixed(2)} in`;
    const at = { input: 0, travel: 0 };
    expect(blameWords({ wheel: "right", link: "tie rod", gap: -inch / 4, ...at }, inches)).toBe(
      "right tie rod is 0.25 in too short",
    );
    expect(blameWords({ wheel: "left", link: "upright", gap: inch / 2, ...at }, inches)).toBe(
      "left upright, joint to joint, is 0.50 in too long for the parts that carry it",
    );
    expect(blameWords({ wheel: "left", link: "travel", gap: -inch, ...at }, inches)).toBe(
      "left wheel stops 1.00 in short of going that far down",
    );
  });

  test("a car whose rack ends do not close has locks without numbers, still told apart", () => {
    const long = endOf(offsetCar, { ...setting, inputTravel: { left: 12 * inch, right: 12 * inch } });
    const locks = locksOf(long);
    expect(locks.left?.input).toBe(-inputSpan(long).to);
    expect(locks.left?.blame).not.toBeNull();
    expect(locks.difference).toEqual({ inner: null, outer: null, turnRadius: null });
  });
});
