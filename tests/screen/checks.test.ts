import { describe, expect, it, vi } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { checker } from "../../src/screen/checker.ts";
import type { Message } from "../../src/screen/turn.ts";
import { checkJob } from "../../src/solve/check/check.ts";
import { finished } from "../../src/solve/job.ts";
import { Bench, opened } from "./support/bench.tsx";

/** A screen whose car's checks have come in. */
function checked(preset: string, columns = 80, rows = 24): Bench {
  const bench = new Bench(opened(preset), columns, rows);
  const { car, study } = bench.model.bench;
  if ("refused" in study) throw new Error(study.refused);
  const report = finished(checkJob(study));
  if (report === null) throw new Error("the checks came to no end");
  return bench.send({ is: "checked", checked: { text: car.text, report } });
}

const lineOf = (bench: Bench, word: string) => bench.lines().find((line) => line.includes(word)) ?? "";

describe("the line of checks", () => {
  it("says that checks run until they are in", () => {
    expect(lineOf(new Bench(opened("check-before-welding")), "CHECKING")).toContain("all of steering by all of travel");
  });

  it("has how many are broken and close, and the worst of them, whatever view is seen", () => {
    const bench = checked("check-before-welding");
    for (const key of ["1", "2", "3", "4"])
      expect(lineOf(bench.press(key), "CHECKS")).toMatch(/5 BROKEN, 4 close.*Rod end/);
  });

  it("is never cut short: in a narrow window it leaves out whole phrases, from the end", () => {
    const line = lineOf(checked("check-before-welding"), "CHECKS");
    expect(line).toMatch(/5 BROKEN, 4 close \(press 0\): Rod end, each tie rod, inner end$/);
    expect(lineOf(checked("check-before-welding", 120, 40), "CHECKS")).toMatch(/Worst: Rod end, .*: -0\.7°$/);
    for (const name of presetNames()) expect(lineOf(checked(name), "CHECKS"), name).not.toMatch(/\.\.\.|:$/);
  });

  it("says so when nothing is broken or close, and that more could be said", () => {
    expect(lineOf(checked("balanced-two-seater"), "CHECKS")).toContain(
      "nothing broken, nothing close; 6 not given (press 0)",
    );
  });

  it("keeps the old count, marked as under way, while a change is checked", () => {
    const bench = checked("check-before-welding").press("right");
    expect(lineOf(bench, "CHECKING")).toContain("5 BROKEN");
  });
});

describe("the view of checks", () => {
  it("has the broken ones first, and of the one under the cursor its limit, where it is worst and what else there is to know", () => {
    const bench = checked("check-before-welding", 100, 40).press("0");
    const text = bench.text();
    expect(text).toContain("> BROKEN");
    expect(text).toMatch(/broken under 0.0°, close under 3.0°; worst at rack .* droop/);
    expect(text).toContain("least worst there can be");
    expect(text.indexOf("CLOSE")).toBeGreaterThan(text.indexOf("BROKEN"));
  });

  it("goes through all of them, and tells the cautions of each", () => {
    const bench = checked("check-before-welding").press("0");
    const count = Number(/of (\d+)/.exec(lineOf(bench, "CHECKS 1"))?.[1]);
    const seen = new Set<string>();
    for (let i = 0; i < count; i++) {
      seen.add(bench.lines().find((line) => line.trimStart().startsWith(">")) ?? "");
      expect(bench.lines()).toHaveLength(24);
      bench.press("down");
    }
    expect(seen.size).toBe(count);
  });
});

describe("what is not given", () => {
  it("is told with where to see how it is written, and help there tells it", () => {
    const bench = checked("widened-offset-rack").press("0", "down");
    expect(bench.text()).toContain("Needs in the file: rod-ends. How such lines are written: press 7, then ?.");
    const help = bench.press("7", "?");
    while (!help.text().includes("outer: { bolt: vertical, angle: 22, size: 1/2-20 }")) {
      const before = help.text();
      expect(help.press("space").text()).not.toBe(before);
    }
  });
});

describe("the checker", () => {
  it("begins once a car stands unchanged, sends the report of that car, and not again", async () => {
    const sent: Message[] = [];
    const { see, end } = checker((message) => sent.push(message));
    const bench = new Bench(opened("balanced-two-seater"));
    see(bench.model);
    see(bench.press("right").model);
    await vi.waitFor(() => expect(sent).toHaveLength(1), { timeout: 20_000 });
    expect(sent[0]).toMatchObject({ is: "checked", checked: { text: bench.model.bench.car.text } });
    for (const message of sent) bench.send(message);
    see(bench.model);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(sent).toHaveLength(1);
    end();
  });

  it("sends nothing of a car that is left before it is done", async () => {
    const sent: Message[] = [];
    const { see, end } = checker((message) => sent.push(message));
    see(new Bench(opened("check-before-welding")).model);
    end();
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(sent).toEqual([]);
  });

  it("begins nothing once it has ended, though it is shown a car", async () => {
    const sent: Message[] = [];
    const { see, end } = checker((message) => sent.push(message));
    end();
    see(new Bench(opened("balanced-two-seater")).model);
    await new Promise((resolve) => setTimeout(resolve, 2000));
    expect(sent).toEqual([]);
  });
});
