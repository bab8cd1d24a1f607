import { describe, expect, it } from "vitest";
import type { Job } from "../../src/solve/job.ts";
import { Bench, opened } from "./support/bench.tsx";

/** The trials' page of builds, and its job, which is loaded when first needed. */
async function onPage(preset: string, columns = 80, rows = 24) {
  const bench = new Bench(opened(preset), columns, rows).press("8", "space", "space", "space", "space", "space");
  const asked = bench.effects.findLast((effect) => effect.do === "work");
  if (asked?.do !== "work") throw new Error("no long work was asked for");
  const { job, key } = asked;
  job.step(0);
  while (job.best() === null) await new Promise((next) => setTimeout(next, 5));
  return { bench, key, job };
}

function finish({ bench, key, job }: { bench: Bench; key: string; job: Job<unknown> }): Bench {
  while (!job.step(200));
  return bench.send({ is: "worked", key, progress: 1, done: true, result: job.best() });
}

const slow = { timeout: 240_000 };

describe("the page of builds", slow, () => {
  it("tells what the builds so far say, stops, and in the end how many keep each limit and what to hold", async () => {
    const { bench, key, job } = await onPage("balanced-two-seater");
    expect(bench.text()).toContain("Building the car, every size a little off");
    job.step(900);
    bench.send({ is: "worked", key, progress: job.progress(), done: false, result: job.best() });
    expect(bench.text()).toMatch(/AS IT IS BUILT 1\/7 ←→ \(\d+ %/);
    expect(bench.text()).toMatch(/\d+ builds, of 100:/);
    finish({ bench, key, job });
    const text = bench.text().replace(/\s+/g, " ");
    expect(text).toContain("2000 builds, of 100:");
    expect(text).toMatch(/> Goes together everywhere 100 100/);
    expect(text).toMatch(/Inner locks' difference 0\.0° max 1\.0° \d+ \d+/);
    expect(bench.text()).not.toMatch(/NaN|undefined|null/);
    bench.press("down", "down");
    expect(bench.text().replace(/\s+/g, " ")).toContain("It hangs on Rack at straight ahead");
    bench.press("right");
    const hold = bench.text().replace(/\s+/g, " ");
    expect(hold).toMatch(/1\. Rack at straight ahead: hold it within 1\/32 in instead of 1\/16 in.*It carries \d+ %/);
    expect(hold).toMatch(/Held so, \d+ of 100 builds keep all that the car keeps as drawn/);
  });

  it("shows each limit that the cursor goes to, and the last line, in a window that does not hold them all", async () => {
    const bench = finish(await onPage("check-before-welding"));
    expect(bench.text()).not.toContain("Worst bounce steer");
    expect(bench.text()).toContain("all at once");
    bench.press(...Array.from({ length: 20 }, () => "down"));
    expect(bench.text()).toMatch(/> Worst bounce steer/);
    expect(bench.text()).toContain("all at once");
    expect(bench.lines()).toHaveLength(24);
  });

  it("stops at Esc, and keeps what the builds so far say", async () => {
    const { bench, key, job } = await onPage("balanced-two-seater");
    job.step(700);
    bench.send({ is: "worked", key, progress: job.progress(), done: false, result: job.best() });
    bench.press("escape");
    expect(bench.text()).toContain("(stopped)");
    expect(bench.text()).toMatch(/ 6\d\d builds, of 100:/);
    expect(bench.effects.at(-1)).toEqual({ do: "halt" });
  });

  it("draws what 5, 50 and 95 of 100 builds do not exceed, and lists every number", async () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
    ] as const) {
      const bench = finish(await onPage("widened-offset-rack", columns, rows));
      bench.press("right");
      for (const title of ["Left toe change", "Right toe change", "Steer of both wheels", "Inner wheel short"]) {
        bench.press("right");
        expect(bench.text()).toContain(title);
        expect(bench.text()).toContain("dotted: 5 and 95 of 100");
        expect(bench.text()).toMatch(/[⠁-⣿]/);
      }
      bench.press("right", "down");
      expect(bench.text()).toMatch(/> L lock, outer/);
      expect(bench.lines().length).toBe(rows);
      for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(columns);
      expect(bench.text()).not.toMatch(/NaN|undefined|null/);
    }
  });

  it("says so where there is no travel to look along", async () => {
    const bench = finish(await onPage("fixed-kingpin-yard-kart"));
    bench.press("right", "right");
    expect(bench.text()).toContain("This front end has no wheel travel");
    bench.press("right", "right", "right");
    expect(bench.text()).toContain("Inner wheel short");
  });
});
