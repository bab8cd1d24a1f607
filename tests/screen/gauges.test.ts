import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { steerTable } from "../../src/measures/steerTable.ts";
import { answersFrom, fileText, gaugeLines } from "../../src/screen/gauges.ts";
import { nameOf } from "../../src/screen/gaugeWords.ts";
import type { Answers } from "../../src/screen/model.ts";
import { matchedLines } from "../../src/screen/view/MatchedPage.tsx";
import { finished } from "../../src/solve/job.ts";
import { matchJob } from "../../src/solve/match/match.ts";
import { predictionsOf } from "../../src/solve/match/predictions.ts";
import { readCarReadings } from "../../src/vehicle/car-readings/read.ts";
import { expectClose } from "../close.ts";
import { Bench, opened } from "./support/bench.tsx";

const asBuilt = readFileSync(new URL("../../presets/readings/as-built.yaml", import.meta.url), "utf8");

/** The form as M opens it, nothing kept of an earlier time. */
function onForm(preset = "balanced-two-seater", columns = 80, rows = 24): Bench {
  return new Bench(opened(preset), columns, rows).press("M").send({ is: "keptGauges", kept: null });
}

const withExample = () => onForm().send({ is: "gaugesOpened", name: "as-built", text: asBuilt, isExample: true });
const flat = (bench: Bench) => bench.text().replace(/\s+/g, " ");

function readingsOf(text: string, bench: Bench) {
  const read = readCarReadings(text, bench.model.bench.car);
  if ("complaints" in read) throw new Error(read.complaints.map(({ message }) => message).join("; "));
  return read;
}

/** Brings the work that was asked for last to its end. */
async function worked(bench: Bench): Promise<Bench> {
  const asked = bench.effects.findLast((effect) => effect.do === "work");
  if (asked?.do !== "work") throw new Error("no match was asked for");
  const { job, key } = asked;
  for (let done = false; !done; ) {
    done = job.step(50);
    if (!done) await new Promise((next) => setTimeout(next, 1));
  }
  return bench.send({ is: "worked", key, progress: 1, done: true, result: job.best() });
}

describe("the form for readings on the built car", () => {
  it("asks for what was kept, and has what this car gives beside every line before anything is read", () => {
    const bench = new Bench(opened("balanced-two-seater")).press("M");
    expect(bench.effects.at(-1)).toEqual({ do: "keptGauges" });
    bench.send({ is: "keptGauges", kept: null });
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    // Left lock is at the right end of the rack here, and turn plates read changes from straight ahead.
    const end = -study.acting.right.at;
    const [row] = steerTable(study, { from: end, to: end, rows: 1 }).rows;
    const inner = ((row?.inner ?? Number.NaN) * 180) / Math.PI;
    expect(bench.text()).toMatch(new RegExp(`turn left, lock: left +${inner.toFixed(1)} deg`));
    expect(bench.text()).toContain("0 of 29");
  });

  it("says at once how much more or less was read, and marks what no gauge is off by", () => {
    const bench = onForm().press("=31.5", "enter");
    const first = bench.lines().find((line) => line.includes("turn left, rack 1 in R: left")) ?? "";
    const [, given, more] = /31\.5 +([\d.]+) +\+([\d.]+) deg !/.exec(first) ?? [];
    expect(Number(given) + Number(more)).toBeCloseTo(31.5, 6);
    bench.press("=12", "enter");
    expect(bench.lines().find((line) => line.includes("turn left, rack 1 in R: right"))).not.toContain("!");
  });

  it("does not leave a line that cannot be read, and says why; every line that is left is kept", () => {
    const bench = onForm().press("=31 1/2x", "enter");
    expect(flat(bench)).toMatch(/[Ff]ound "?31 1\/2x/);
    expect(bench.text()).toMatch(/> turn left, rack 1 in R: left/);
    bench.press("=13", "down");
    expect(bench.effects.at(-1)).toMatchObject({ do: "keepGauges" });
    expect(JSON.stringify(bench.effects.at(-1))).toContain('"13"');
    expect(bench.press("escape").model.focus.on).toBe("bench");
    expect(bench.press("M").text()).toContain("1 of 29");
  });

  it("sets readings of a rack aside on a car that has none, and gives them back", () => {
    const kept = onForm().press("=13", "down").model.gauges?.answers ?? null;
    const bench = new Bench(opened("twin-beam-relay")).press("M").send({ is: "keptGauges", kept });
    expect(flat(bench)).toContain("it is steered by a rack. Ctrl-R shows them");
    expect(bench.text()).toContain("0 of");
    expect(bench.text()).not.toContain("not understood");
    expect(bench.press("ctrl+r").model.gauges?.answers).toEqual(kept);
  });

  it("takes no place of a rack for one of a column, in either direction, where another car is opened meanwhile", () => {
    for (const [first, second, other, lock] of [
      ["balanced-two-seater", "twin-beam-relay", "column", "rack"],
      ["twin-beam-relay", "balanced-two-seater", "rack", "column"],
    ] as const) {
      const bench = onForm(first).press("=13", "down", "=11", "down", "=31", "down", "escape");
      bench.send({ is: "opened", opened: opened(second) }).press("M");
      expect(flat(bench)).toContain(`it is steered by a ${lock}. Ctrl-R shows them`);
      expect(bench.text()).toContain("READ ON THE BUILT CAR, 0 of");
      // Only what was read at a lock says anything of this car.
      bench.press("ctrl+r");
      expect(bench.text()).toContain("READ ON THE BUILT CAR, 1 of");
      const lines = gaugeLines(bench.model, bench.model.gauges?.answers ?? {});
      expect(lines.filter(({ key }) => / at |^straight/.test(key))).toEqual([]);
      const written = fileText(bench.model.bench.car, bench.model.gauges?.answers ?? {}, lines);
      expect(written).toContain("at: lock, left: 31");
      expect(written).not.toMatch(new RegExp(`${other}:|13|11`));
    }
  });

  it("says whose they are where another car of the same steering is opened meanwhile", () => {
    const bench = onForm().press("=13", "down", "escape");
    bench.send({ is: "opened", opened: opened("widened-offset-rack") }).press("M");
    expect(flat(bench)).toContain('These readings were kept of "Balanced two-seater, rack on the centreline"');
    expect(bench.model.gauges?.answers).toMatchObject({ "turn left at -25.4 left": "13" });
  });

  it("opens a file of readings and writes one that says the same", () => {
    const bench = withExample();
    expect(flat(bench)).toContain("40 readings from as-built");
    const { car } = bench.model.bench;
    const answers = answersFrom(asBuilt, car);
    if ("complaint" in answers) throw new Error(String(answers.complaint));
    const again = readingsOf(fileText(car, answers, gaugeLines(bench.model, answers)), bench);
    const first = readingsOf(asBuilt, bench);
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    // A pair of turn plates stands in one row of the one and in two of the other: what the match is made from is the same.
    const told = ({ readings }: typeof first) =>
      predictionsOf(readings, study)
        .map((each) => ({ kind: each.kind, read: each.read, tolerance: each.tolerance, given: each.predict(study) }))
        .toSorted((x, y) => (x.given ?? 0) - (y.given ?? 0) || x.read - y.read);
    expectClose(told(again), told(first), { abs: 1e-6 });
    expect(told(first).length).toBe(40);
  });

  it("takes no file of another kind, and loses nothing of what stands there", () => {
    const bench = onForm()
      .press("=13", "down")
      .send({ is: "gaugesOpened", name: "car", text: "units: in\nwheelbase: 80\n", isExample: false });
    expect(flat(bench)).toContain("car:");
    expect(bench.model.gauges?.answers).toMatchObject({ units: "in" });
    expect(Object.values(bench.model.gauges?.answers ?? {})).toContain("13");
  });

  it("matches to what the command's match comes to, shows it, and takes it as one change that u takes back", async () => {
    const bench = withExample().press("end", "enter");
    expect(bench.model.focus.on).toBe("matched");
    await worked(bench);
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    const outcome = finished(matchJob(study, readingsOf(asBuilt, bench)));
    if (outcome === null || "unreached" in outcome) throw new Error("the example matches");
    expect(flat(bench)).toMatch(/Tie-rod tab, ahead, left: 0\.18 \+- 0\.06 in \(3\/16 in\) farther back/);
    const zero = (outcome.zero?.value ?? Number.NaN) / 25.4;
    expect(flat(bench)).toContain(`the rack stands ${zero.toFixed(3)} +-`);
    const before = bench.model.bench.car.text;
    bench.press("t");
    expect(bench.model.bench.car.text).not.toBe(before);
    expect(bench.model.bench.car.form.rods).toEqual({ left: "cut", right: "cut" });
    expect(bench.press("u").model.bench.car.text).toBe(before);
  }, 60_000);

  it("says of two readings that they cannot tell what is off, and puts no such car on the bench", async () => {
    const bench = onForm().press("=14 1/2", "enter", "=7 1/4 over 24", "enter", "end", "enter");
    await worked(bench);
    expect(flat(bench)).toMatch(/TWO READINGS CANNOT TELL WHAT IS OFF: .* set on the bench what you know to be off/);
    expect(flat(bench)).toContain("- Lower arm, joint");
    expect(bench.text()).not.toContain("puts this car on the bench");
    expect(bench.text()).not.toContain("t take this car");
    const before = bench.model.bench.car.text;
    bench.press("t");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.text()).toContain("Not yet: two readings cannot tell what is off.");
  }, 60_000);

  it("names a reading in the match as its line is named on the form, and cuts no word of it", async () => {
    // Two inches too much between the tabs: a slip that is found.
    const slip = asBuilt.replace(/(right\.tie-rod\.outer, is: )\S+ \S+ /, "$1 46 3/4 ");
    expect(slip).not.toBe(asBuilt);
    const bench = onForm().send({ is: "gaugesOpened", name: "as-built", text: slip, isExample: true });
    const { study } = bench.model.bench;
    const answers: Answers = bench.model.gauges?.answers ?? {};
    if ("refused" in study) throw new Error(study.refused);
    const names = gaugeLines(bench.model, answers).flatMap((line) =>
      line.is === "reading" && (answers[line.key] ?? "") !== "" ? [nameOf(line, study.inputKind, "in")] : [],
    );
    expect(names.length).toBe(40);
    await worked(bench.press("end", "enter"));
    const wide = matchedLines(bench.model);
    const rows = wide.filter((line) => / {2}[-\d.]+ {2}/.test(line)).map((line) => line.split(/ {2,}/)[0] ?? "");
    for (const name of names) expect(rows, name).toContain(name);
    const said = wide.join(" ").replace(/\s+/g, " ");
    expect(said).toContain("Read again: L tab to R tab reads");
    expect(said).not.toMatch(/\bline \d/);
    expect(wide.find((line) => line.startsWith("L tab to R tab"))).toMatch(/READ AGAIN$/);
    const narrow = matchedLines(bench.send({ is: "resized", columns: 60, rows: 20 }).model);
    expect(narrow.find((line) => line.startsWith("L tab to R tab"))).toMatch(/ X$/);
    expect(narrow).toContain("X: to be read again, left out.");
    for (const line of wide) expect(line.length, line).toBeLessThanOrEqual(78);
    expect(bench.text()).toContain("t puts this car on the bench; u takes it back.");
    // Without Unicode a sign for "give or take" would become another one: 0.18 + 0.06 is no doubt, but a sum.
    for (const line of [...wide, ...narrow]) expect(line, line).toMatch(/^[\x20-\x7e]*$/);
    expect(said).toMatch(/stands 0\.\d+ \+- 0\.\d+ in/);
    for (const line of narrow) expect(line.length, line).toBeLessThanOrEqual(58);
  }, 60_000);

  it("says what + and ! beside a reading mean, on every line", () => {
    const bench = onForm();
    for (const { key } of gaugeLines(bench.model, {})) {
      expect(flat(bench), key).toContain("+ read more than this car gives, - less, ! by more than its gauge is off");
      bench.press("down");
    }
  });

  it("writes readings under the name of the car that they were read of, not of the example that lent its lines", () => {
    const written = (bench: Bench) => {
      bench.press("end", "down", "=mine", "enter", "enter");
      const asked = bench.effects.findLast((effect) => effect.do === "writeGauges");
      return asked?.do === "writeGauges" ? (asked.text.split("\n")[0] ?? "") : "";
    };
    expect(written(withExample())).toBe('title: "Balanced two-seater, rack on the centreline, as read on the car"');
    const own = asBuilt.replace(/^title: .*$/m, "title: Job 12, in May");
    expect(written(onForm().send({ is: "gaugesOpened", name: "job-12", text: own, isExample: false }))).toBe(
      'title: "Job 12, in May"',
    );
  });

  it("fits every example and a small window, no line cut", () => {
    for (const name of ["twin-beam-relay", "fixed-kingpin-yard-kart", "strut-hatchback-corners", "widened-offset-rack"])
      for (const [columns, rows] of [
        [80, 24],
        [60, 20],
      ] as const) {
        const bench = onForm(name, columns, rows);
        const { study } = bench.model.bench;
        if ("refused" in study) throw new Error(study.refused);
        expect(bench.lines().length, name).toBeLessThanOrEqual(rows);
        for (const line of bench.lines()) expect(line.length, `${name}: ${line}`).toBeLessThanOrEqual(columns);
        expect(bench.text()).not.toMatch(/NaN|Infinity|undefined/);
        // A car without suspension is asked for no travel.
        bench.press("pageDown", "pageDown");
        if (!study.suspended) expect(bench.text()).not.toContain("bump gauge");
      }
  });
});
