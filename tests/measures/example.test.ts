import { describe, expect, test } from "vitest";
import { bumpTable, travelSpan } from "../../src/measures/bumpTable.ts";
import { locksOf } from "../../src/measures/locks.ts";
import { inputSpan, steerTable } from "../../src/measures/steerTable.ts";
import { worstOf } from "../../src/measures/worst.ts";
import { expectClose } from "../close.ts";
import { degrees } from "../oracles/vectors.ts";
import { endOf, inch, offsetCar } from "./cars.ts";

/**
 * The example car of the car file's description, with the results that are quoted beside it there: derived [D], to the
 * digits shown, so half the last of them is allowed.
 */
const end = endOf(offsetCar);
const locks = locksOf(end);
const inDegrees = (radians: number | null | undefined) => (typeof radians === "number" ? degrees(radians) : radians);

describe("the example car with its offset rack", () => {
  test("inner locks are 31.8° left and 34.0° right", () => {
    expectClose([inDegrees(locks.left?.inner), inDegrees(locks.right?.inner)], [31.8, 34.0], { abs: 0.05 });
  });

  test("Ackermann at the locks is 75.9 and 100.8 %", () => {
    expectClose([locks.left?.ackermann, locks.right?.ackermann], [75.9, 100.8], { abs: 0.05 });
  });

  test("the rods are cut to 15.782 and 10.797 in", () => {
    expectClose([end.rodLengths.left / inch, end.rodLengths.right / inch], [15.782, 10.797], { abs: 0.0005 });
  });

  test("bump steer is −0.027 and +0.020 °/in at ride height", () => {
    const { left, right } = bumpTable(end, 0, travelSpan(end)).summary.bumpSteer;
    expectClose([(inDegrees(left) ?? Number.NaN) * inch, (inDegrees(right) ?? Number.NaN) * inch], [-0.027, 0.02], {
      abs: 0.0005,
    });
  });

  test("at 3 in of droop the toe is off by more than a degree and both wheels steer right by 0.9°", () => {
    const { toe, bounce } = worstOf(end);
    expect(Math.abs(inDegrees(toe.right?.toeChange) ?? 0)).toBeGreaterThan(1);
    expectClose(inDegrees(bounce?.bounceSteer), -0.9, { abs: 0.05 });
    expectClose([toe.right?.travel, bounce?.travel], [-3 * inch, -3 * inch], { abs: 1e-9 });
  });

  test("the right rod nears its dead point: 17.5° at rack +2, full droop", () => {
    const least = worstOf(end).rodAngle.right;
    expectClose([inDegrees(least?.angle), least?.input, least?.travel], [17.5, 2 * inch, -3 * inch], { abs: 0.05 });
  });

  test("the steer table counts its rows, both ends included, and is at rest in the middle", () => {
    const { rows } = steerTable(end, inputSpan(end));
    expect(rows.map((row) => row.input / inch)).toEqual(expect.arrayContaining([-2, 0, 2]));
    expect(rows).toHaveLength(21);
    expect(rows[10]).toMatchObject({ input: 0, blame: null, turn: null, inner: null, outer: null, turnRadius: null });
    expect(rows[20].turn).toBe("right");
  });
});
