import { afterAll, describe, expect, it } from "vitest";
import { checkJob } from "../../src/solve/check/check.ts";
import { finished } from "../../src/solve/job.ts";
import { folder, run } from "../cli/run.ts";
import { Bench, opened } from "./support/bench.tsx";

const place = folder();
afterAll(() => place.remove());
const spaces = Array.from({ length: 6 }, () => "space");

describe("the page of what differs", { timeout: 120_000 }, () => {
  it("says how to pin a car where none is", () => {
    const bench = new Bench(opened("check-before-welding")).press("8", ...spaces);
    expect(bench.text()).toContain("WHAT DIFFERS");
    expect(bench.text()).toContain("Y pins the saved car");
  });

  it("lists the inputs and the checks that differ from the saved car, those that the command lists", async () => {
    const car = opened("check-before-welding");
    const bench = new Bench(car, 120, 60).press("right", "right", "right", "8", "Y", ...spaces);
    expect(bench.text()).toContain("Both cars are being checked");
    const asked = bench.effects.findLast((effect) => effect.do === "work");
    if (asked?.do !== "work") throw new Error("no long work was asked for");
    const { job, key } = asked;
    while (!job.step(200)) await new Promise((next) => setTimeout(next, 5));
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    const report = finished(checkJob(study));
    if (report === null) throw new Error("the check was stopped");
    bench.send({ is: "worked", key, progress: 1, done: true, result: job.best() });
    bench.send({ is: "checked", checked: { text: study.car.text, report } });
    const [before, after] = [place.put("a.yaml", car.car.text), place.put("b.yaml", study.car.text)];
    const told = JSON.parse((await run(["compare", before, after, "--json"])).out);
    expect(told.inputs.length).toBeGreaterThan(0);
    expect(told.checks.length).toBeGreaterThan(0);
    for (const { label, said } of [...told.inputs, ...told.checks] as { label: string; said: unknown[] }[]) {
      const line = bench.lines().find((each) => each.includes(label.slice(0, 40)));
      expect(line, label).toBeDefined();
      expect(said).toHaveLength(2);
    }
    expect(bench.text()).not.toMatch(/NaN|undefined|null/);
    expect(bench.text()).toContain(told.inputs[0].said[0].words);
    expect(bench.text()).toContain(told.inputs[0].said[1].words);
  });
});
