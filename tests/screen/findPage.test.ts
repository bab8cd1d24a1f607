import { describe, expect, it } from "vitest";
import type { Job } from "../../src/solve/job.ts";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { Bench, opened } from "./support/bench.tsx";

/** The trials' page of places, and its job, which is loaded when first needed. */
async function onPage(
  preset: string,
  rows = 24,
): Promise<{ readonly bench: Bench; readonly key: string; readonly job: Job<unknown> }> {
  const bench = new Bench(opened(preset), 80, rows).press("8", "space", "space", "space", "space");
  const asked = bench.effects.findLast((effect) => effect.do === "work");
  if (asked?.do !== "work") throw new Error("no long work was asked for");
  const { job, key } = asked;
  job.step(0);
  while (job.best() === null) await new Promise((next) => setTimeout(next, 5));
  return { bench, key, job };
}

describe("the page of places", () => {
  it("shows the best so far, then all answers; Enter takes one as one change that u takes back", async () => {
    const { bench, key, job } = await onPage("tab-to-place", 34);
    expect(bench.text()).toContain("Looking for places");
    job.step(400);
    bench.send({ is: "worked", key, progress: job.progress(), done: false, result: job.best() });
    expect(bench.text()).toMatch(/FIND A PLACE \(\d+ %, Esc stops\)/);
    expect(bench.text().replace(/\s+/g, " ")).toContain("STILL LOOKING");
    while (!job.step(500));
    bench.send({ is: "worked", key, progress: 1, done: true, result: job.best() });
    expect(bench.text()).toMatch(/> 1 Tie-rod tab .* farther/);
    expect(bench.text()).toMatch(/must rod to arm min 30\.0°/);
    expect(bench.text()).toMatch(/nice circle max 30\.0 ft +37\.6 ft !/);
    expect(bench.text()).not.toMatch(/NaN|undefined|null/);
    const before = bench.model.bench.car.text;
    const [, whole, top, bottom] =
      /Then at: Tie-rod tab, both sides: ahead -(\d+) (\d+)\/(\d+) in/.exec(bench.text()) ?? [];
    bench.press("enter");
    const ahead = bench.model.bench.car.numbers[indexOf("left.tie-rod.outer.ahead")] ?? 0;
    expect(ahead).toBeCloseTo(-25.4 * (Number(whole) + Number(top) / Number(bottom)), 6);
    expect(bench.model.bench.undo.length).toBe(1);
    expect(bench.model.bench.car.text).not.toBe(before);
    expect(bench.model.bench.car.text).toContain("# degrees from the dead point");
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  }, 60_000);

  it("says that it was stopped, not that it still looks, and goes on once the page is come back to", async () => {
    const { bench, key, job } = await onPage("tab-to-place", 34);
    bench.press("escape");
    expect(bench.text()).toContain("FIND A PLACE (stopped)");
    expect(bench.text()).toContain("Stopped before a place was found. Space round to this page begins it again.");
    expect(bench.text()).not.toMatch(/looking/i);
    do bench.press("space");
    while (!bench.text().includes("FIND A PLACE"));
    expect(bench.text()).toMatch(/FIND A PLACE \(0 %, Esc stops\)/);
    job.step(400);
    bench.send({ is: "worked", key, progress: job.progress(), done: false, result: job.best() });
    expect(bench.press("escape").text()).toContain("FIND A PLACE (stopped)");
    const said = bench.text().replace(/\s+/g, " ");
    expect(said).toMatch(/STOPPED: .* Space round to this page begins it again\./);
    expect(said).not.toContain("STILL LOOKING");
  }, 60_000);

  it("begins again after a view that has no long work of its own", async () => {
    const { bench } = await onPage("tab-to-place", 34);
    bench.press("escape", "1");
    expect(bench.press("8").text()).toMatch(/FIND A PLACE \(0 %, Esc stops\)/);
  }, 60_000);

  it("takes nothing while nothing is found", () => {
    const bench = new Bench(opened("tab-to-place"), 80, 24).press("8", "space", "space", "space", "space");
    const before = bench.model.bench.car.text;
    bench.press("enter");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.text()).toContain("Nothing is found yet.");
    bench.press("t");
    expect(bench.text()).toContain("Enter takes the place under the cursor.");
  });
});
