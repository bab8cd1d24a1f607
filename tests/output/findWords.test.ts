import { describe, expect, it } from "vitest";
import { lengthsIn } from "../../src/cli/report.ts";
import { missedWords } from "../../src/output/findWords.ts";
import type { Goal } from "../../src/solve/goals/goals.ts";

describe("a goal that is missed by less than is shown", () => {
  it("never reads as met", () => {
    const goal: Goal = { name: "clearance", level: "must", least: 0.12 * 25.4, most: null, over: 1, from: "asked" };
    const said = (inches: number) =>
      missedWords({ goal, reading: { low: inches * 25.4, high: inches * 25.4 } }, "in", lengthsIn("in"));
    expect(said(0.1191)).toBe("under 1/8 in");
    expect(said(0.06)).toBe("1/16 in");
  });
});
