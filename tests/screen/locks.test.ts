import { describe, expect, it } from "vitest";
import { finished } from "../../src/solve/job.ts";
import { Bench, opened } from "./support/bench.tsx";

/** The bench in the view of the locks, its long work done. */
function onLocks(preset: string, columns = 80, rows = 24): Bench {
  const bench = new Bench(opened(preset), columns, rows).press("9");
  return worked(bench);
}

function worked(bench: Bench): Bench {
  const asked = bench.effects.findLast((effect) => effect.do === "work");
  if (asked?.do !== "work") throw new Error("no long work was asked for");
  return bench.send({ is: "worked", key: asked.key, progress: 1, done: true, result: finished(asked.job) });
}

describe("the view of unequal locks", () => {
  it("says why they differ, and what would help with its figures", () => {
    const text = onLocks("widened-offset-rack").text();
    expect(text).toContain("WHY ARE MY LOCKS UNEQUAL?");
    expect(text.replace(/\s+/g, " ")).toContain("rack offset 2 1/2 in to the right -2.1°");
    expect(text).toMatch(/> shift +32\.6 +32\.6/);
    expect(text).toContain("The only clean cure");
  });

  it("fits every line at every size", () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
    ] as const) {
      const lines = onLocks("widened-offset-rack", columns, rows).lines();
      expect(lines.length).toBeLessThanOrEqual(rows);
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(columns);
    }
  });

  it("takes the remedy under the cursor as a change that u takes back", () => {
    const bench = onLocks("cut-rods-off-middle");
    const before = bench.model.bench.car.text;
    expect(bench.text()).toContain("> recut");
    bench.press("t");
    expect(bench.model.bench.car.form.rods).toEqual({ left: "fit", right: "fit" });
    expect(bench.text()).toContain("Set the rack on its middle");
    expect(worked(bench).text()).toContain("No remedy is needed");
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("ranks by the two answers", () => {
    const bench = onLocks("widened-offset-rack");
    bench.press("a", "a");
    expect(bench.text()).toContain("could follow a shifted rack (a): no");
    expect(bench.text()).not.toContain("> shift");
    bench.press("n");
    expect(bench.text()).toContain("Uprights to be made (n): yes");
    expect(bench.text()).toContain("> tab");
  });

  it("waits for what is worked out, and says so", () => {
    expect(new Bench(opened("widened-offset-rack")).press("9").text()).toContain("Working out what would help");
  });
});
