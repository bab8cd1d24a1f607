import { describe, expect, it } from "vitest";
import { standingTo, targetKinds, targetNames, targetOf } from "../../src/vehicle/sections/targets.ts";

const none = Object.fromEntries(targetNames.map((name) => [name, null])) as Record<(typeof targetNames)[number], null>;

describe("targets", () => {
  it("are common practice, and say so, where the file has none; doubtful comes before bad", () => {
    for (const name of targetNames) {
      const { warn, bad, wrong, from } = targetOf(null, name);
      expect(from).toBe("common practice");
      expect({ warn, bad }).toEqual({ warn: targetKinds[name].warn, bad: targetKinds[name].bad });
      expect(wrong === "over" ? warn < bad : warn > bad, name).toBe(true);
    }
  });

  it("keep their two levels in order where the file gives one of them only", () => {
    for (const name of targetNames)
      for (const factor of [0, 0.5, 2, 10])
        for (const key of ["warn", "bad"] as const) {
          const given = targetKinds[name][key] * factor;
          const own = { warn: null, bad: null, [key]: given };
          const target = targetOf({ ...none, [name]: own }, name);
          expect(target[key]).toBe(given);
          expect(target.from).toBe("file");
          expect(target.wrong === "over" ? target.warn <= target.bad : target.warn >= target.bad, name).toBe(true);
        }
  });

  it("tell good from doubtful from bad, a level itself still being within", () => {
    const over = { warn: 1, bad: 3, wrong: "over" } as const;
    expect([0, 1, 2, 3, 4].map((value) => standingTo(over, value))).toEqual([
      "good",
      "good",
      "doubtful",
      "doubtful",
      "bad",
    ]);
    const under = { warn: 3, bad: 1, wrong: "under" } as const;
    expect([4, 3, 2, 1, 0].map((value) => standingTo(under, value))).toEqual([
      "good",
      "good",
      "doubtful",
      "doubtful",
      "bad",
    ]);
  });
});
