import { describe, expect, it } from "vitest";
import { finished } from "../../src/solve/job.ts";
import { notesOf } from "../../src/vehicle/notes.ts";
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
    expect(text).toContain("DOUBTFUL: a rod comes to 25.8°");
    expect(text).toContain("(? tells all)");
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
    expect(worked(bench).text()).toContain("Nothing to take: ");
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("says of a car that needs nothing so, and names what another cannot have with its reason", () => {
    expect(onLocks("fixed-kingpin-yard-kart").text()).toContain(
      "Nothing to take: inner locks, outer locks and circles are equal already.",
    );
    const text = onLocks("twin-beam-relay").text();
    expect(text).not.toContain("t take it");
    expect(text).not.toContain("a column?");
  });

  it("tells what a shifted rack gains before what it asks of the column", () => {
    const text = onLocks("widened-offset-rack", 120, 40).text().replace(/\s+/g, " ");
    expect(text).toMatch(/The only clean cure: .* The column's joints must stay within their angle/);
  });

  it("ranks by the two answers", () => {
    const bench = onLocks("widened-offset-rack");
    bench.press("a", "a");
    expect(bench.text()).toContain("a: column can follow the rack? no");
    expect(bench.text()).not.toContain("> shift");
    bench.press("n");
    expect(bench.text()).toContain("n: uprights to be made? yes");
    expect(bench.text()).toContain("> tab");
  });

  it("tells what is dangerous before all else, never cut, and again as it is taken; the file goes on to tell it", () => {
    const bench = onLocks("widened-offset-rack");
    const told = () => bench.text().replace(/\s+/g, " ");
    for (let i = 0; i < 12 && !bench.text().includes("> extender"); i++) bench.press("down");
    expect(told()).toContain("DANGEROUS: a rod comes to 17.5° from its dead point somewhere in the travel. CAUTION:");
    expect(told()).toContain("Have it looked at by someone qualified.");
    expect(told()).toMatch(/LOCKS UNEQUAL\? \(8 of 8\)|LOCKS \(8 of 8\)/);
    bench.press("t");
    expect(told()).toContain("DANGEROUS: a rod comes to 17.5°");
    expect(notesOf(bench.model.bench.car)).toContain("can snap and leave the car without steering");
  });

  it("asks a car without a rack of no rack, and says what was ruled out", () => {
    expect(onLocks("twin-beam-relay").text()).not.toContain("column can follow the rack");
    const bench = onLocks("widened-offset-rack").press("a", "a");
    for (let i = 0; i < 12 && !bench.text().includes("> shift"); i++) bench.press("down");
    expect(bench.text()).toContain("Not as you said: the column cannot follow.");
  });

  it("tells the shares of the outer locks and of the circles too, without losing an answer", () => {
    const bench = onLocks("cut-rods-off-middle").press("a");
    const flat = () => bench.text().replace(/\s+/g, " ");
    expect(flat()).toContain("Inner locks, left less right -5.9°");
    bench.press("w");
    expect(flat()).toContain("Outer locks, left less right -3.1°: rods cut wrong: rack 3.0 mm right -3.1°");
    bench.press("w");
    expect(flat()).toContain("Turning radius, left less right 465 mm: rods cut wrong: rack 3.0 mm right 465 mm");
    expect(flat()).toMatch(/column (can follow the rack\?|could follow a shifted rack \(a\):) yes/i);
    bench.press("w", "a");
    expect(flat()).toContain("Inner locks, left less right -5.9°");
    expect(flat()).toMatch(/column (can follow the rack\?|could follow a shifted rack \(a\):) no/i);
  });

  it("says what ends a lock where it is not the rack's own end", () => {
    const stopped = opened(
      "widened-offset-rack",
      (text) => `${text.trimEnd()}\nstops: { collar: { left: 1/4, right: 0 } }\n`,
    );
    const bench = worked(new Bench(stopped).press("9"));
    expect(bench.text().replace(/\s+/g, " ")).toContain("right lock by a collar on the rack");
  });

  it("waits for what is worked out, and says so", () => {
    expect(new Bench(opened("widened-offset-rack")).press("9").text()).toContain("Working out what would help");
  });
});
