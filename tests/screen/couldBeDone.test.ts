import { describe, expect, it } from "vitest";
import { finished } from "../../src/solve/job.ts";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { Bench, opened } from "./support/bench.tsx";

/** The trials' page of that many spaces, its long work done. */
function onPage(preset: string, spaces: number, columns = 80, rows = 24): Bench {
  return worked(new Bench(opened(preset), columns, rows).press("8", ...Array.from({ length: spaces }, () => "space")));
}

function worked(bench: Bench): Bench {
  const asked = bench.effects.findLast((effect) => effect.do === "work");
  if (asked?.do !== "work") throw new Error("no long work was asked for");
  return bench.send({ is: "worked", key: asked.key, progress: 1, done: true, result: finished(asked.job) });
}

function rodLength({ model }: Bench): number {
  const { study } = model.bench;
  return "refused" in study ? Number.NaN : study.rodLengths.left;
}

const sizes = [
  [80, 24],
  [120, 40],
] as const;

describe("the page of adjusters", () => {
  it("says what each changes, and of those without a thread that it is not given", () => {
    const bench = onPage("check-before-welding", 2);
    expect(bench.text()).toContain("ADJUSTERS: what each changes");
    expect(bench.text()).toMatch(/> left tie rod, tube, 1 turn +-0\.15 +0\.00 +0\.535/);
    expect(bench.text()).toMatch(/left lower arm, front pivot, 1 turn +not given/);
    expect(bench.text().replace(/\s+/g, " ")).toContain("Check that enough thread stays in");
  });

  it("does it by another amount where left and right say so, less as well as more", () => {
    const bench = onPage("widened-offset-rack", 2, 120, 60);
    expect(bench.text()).toMatch(/rack shim, 1\/8 in/);
    worked(bench.press("right"));
    expect(bench.text()).toMatch(/left tie rod, outer end, 2 turns/);
    expect(bench.text()).toMatch(/rack shim, 1\/4 in/);
    expect(bench.text()).toMatch(/ride height, \+2 in/);
    bench.press("right", "right", "right", "right", "right");
    worked(bench);
    expect(bench.text()).toMatch(/ride height, -1 in/);
  });

  it.each([
    ["2 turns", "2 turns", 2],
    ["1/2", "0.5 turn", 0.5],
    ["1 1/2 turns in", "-1.5 turns", -1.5],
    ["-3", "-3 turns", -3],
  ] as const)("turns by %s where that is typed, each turn by the thread's pitches", (typed, said, turns) => {
    const bench = onPage("check-before-welding", 2, 80, 60);
    worked(bench.press("enter", `=${typed}`, "enter"));
    expect(bench.text()).toContain(`tie rod, tube, ${said}`);
    const before = rodLength(bench);
    // The tube's ends are 1/2-20 right and left: a turn is two pitches of 1/20 in, 2.54 mm.
    expect(rodLength(bench.press("t")) - before).toBeCloseTo(turns * 2.54, 4);
  });

  it("shims, raises and fits by a length that is typed in either unit, left and right taking it from there", () => {
    const bench = onPage("widened-offset-rack", 2, 120, 60);
    const rows = bench.lines().filter((line) => /^[> ↑↓] (left|right) .*, /.test(line));
    const onRow = (words: string) => {
      const row = rows.findIndex((each) => each.includes(words));
      return bench.press(...rows.map(() => "up"), ...rows.slice(0, row).map(() => "down"));
    };
    expect(onRow("rack shim").press("enter", "=10 mm").text()).toContain("= 0.3937 in = 10.0 mm, up");
    worked(bench.press("enter"));
    expect(bench.text()).toMatch(/rack shim, 13\/32 in/);
    expect(bench.text()).toMatch(/ride height, \+1 in/);
    worked(onRow("ride height").press("enter", "=-1/2", "enter"));
    expect(bench.text()).toMatch(/ride height, -1\/2 in/);
    worked(bench.press("right"));
    expect(bench.text()).toMatch(/ride height, -1 in/);
    const before = bench.model.bench.car.numbers[indexOf("rack.up")] ?? Number.NaN;
    worked(onRow("rack shim").press("left"));
    worked(bench.press("enter", "=-10 mm", "enter")).press("t");
    expect((bench.model.bench.car.numbers[indexOf("rack.up")] ?? Number.NaN) - before).toBeCloseTo(-10, 3);
    expect(bench.text()).toContain("Adjusted: rack shim, down by");
  });

  it("says of what is no amount why, and leaves the amount as it was", () => {
    const bench = onPage("check-before-welding", 2, 80, 60);
    for (const [typed, why] of [
      ["soon", "not a number"],
      ["0", "That is nothing"],
      ["500", "at most 50 turns"],
    ] as const) {
      bench.press("enter", `=${typed}`);
      expect(bench.text()).toContain(why);
      expect(bench.press("enter").model.focus.on).toBe("line");
      bench.press("escape");
    }
    expect(bench.text()).toContain("tie rod, tube, 1 turn ");
    const beam = onPage("twin-beam-relay", 2, 80, 60);
    while (!beam.lines().some((line) => line.startsWith("> beam"))) beam.press("down");
    expect(beam.press("enter").text()).toContain("a beam has none");
  });

  it("keeps names whole beside any amount", () => {
    const bench = onPage("check-before-welding", 2, 80, 60);
    worked(bench.press("enter", "=-1.25", "enter"));
    expect(bench.text()).toMatch(/L lower arm, front pivot, -1\.25 turns/);
  });

  it("does the one under the cursor as one change that u takes back", () => {
    const bench = onPage("check-before-welding", 2);
    const before = bench.model.bench.car.text;
    bench.press("t");
    expect(bench.model.bench.undo.length).toBe(1);
    expect(bench.text()).toContain("Adjusted: left tie rod, tube, 1 turn longer (3/32 in)");
    expect(bench.model.bench.car.form.rods).toEqual({ left: "cut", right: "cut" });
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("raises ground and body together as one change", () => {
    const bench = onPage("twin-beam-relay", 2);
    const before = bench.model.bench.car.text;
    bench.press(..."down ".repeat(30).trim().split(" "), "up", "up", "t");
    expect(bench.text()).toContain("Adjusted: ride height, 1 in higher");
    expect(bench.model.bench.undo.length).toBe(1);
    expect(bench.text()).not.toContain("does not go together");
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("says why one cannot be turned", () => {
    const bench = onPage("widened-offset-rack", 2);
    const before = bench.model.bench.car.text;
    bench.press("t");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.text().replace(/\s+/g, " ")).toContain("the file names no thread for it");
  });
});

describe("the page of wider front ends", () => {
  it("sets the ways side by side, by as much as left and right say", () => {
    const bench = onPage("widened-offset-rack", 3);
    expect(bench.text()).toContain("WIDER BY 1/2 in A SIDE");
    expect(bench.text()).toMatch(/> arms +50\.188/);
    worked(bench.press("right", "right", "right"));
    expect(bench.text()).toContain("WIDER BY 2 in A SIDE");
    expect(bench.text()).toMatch(/ spacers +53\.188 +3\.892/);
    expect(bench.text()).toContain("CAUTION: longer arms and rods bend");
  });

  it("widens by a length that is typed", () => {
    const bench = onPage("widened-offset-rack", 3);
    worked(bench.press("enter", "=1 3/8", "enter"));
    expect(bench.text()).toContain("WIDER BY 1 3/8 in A SIDE");
    expect(bench.press("enter", "=-1").text()).toContain("It must be more than nothing");
    expect(bench.press("escape").text()).toContain("WIDER BY 1 3/8 in A SIDE");
  });

  it("widens as one change that u takes back", () => {
    const bench = onPage("widened-offset-rack", 3);
    const before = bench.model.bench.car.text;
    bench.press("down", "down", "t");
    expect(bench.text()).toContain("Set the wheels 1/2 in further out a side");
    expect(bench.model.bench.car.text).toContain("out: 25, up: 10.75");
    expect(bench.model.bench.undo.length).toBe(1);
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("says of a way that is not for a car why", () => {
    const bench = onPage("fixed-kingpin-yard-kart", 3);
    expect(bench.text()).toMatch(/> arms +not here/);
    expect(bench.text().replace(/\s+/g, " ")).toContain("there are no arms: the king pins are fixed to the frame");
  });
});

describe("both pages", () => {
  it.each(sizes)("fit every line at %i by %i", (columns, rows) => {
    for (const preset of ["check-before-welding", "cut-rods-off-middle", "fixed-kingpin-yard-kart"])
      for (const spaces of [2, 3]) {
        const seen = onPage(preset, spaces, columns, rows).lines();
        expect(seen.length).toBeLessThanOrEqual(rows);
        for (const line of seen) expect(line.length, line).toBeLessThanOrEqual(columns);
        // A table's line that is cut would end at the very edge.
        for (const line of seen.filter((each) => /^[> ] (arms|pivots|spacers|rack-ends|left|right|now) /.test(each)))
          expect(line.trimEnd().length, line).toBeLessThan(columns);
      }
  });
});
