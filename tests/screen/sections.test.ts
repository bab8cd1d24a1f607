import { describe, expect, it } from "vitest";
import { loadPreset, presetNames } from "../../src/files/presets.ts";
import { helpLines } from "../../src/screen/view/helpText.ts";
import { sectionFragments } from "../../src/screen/view/sectionFragments.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { sectionValues, withSectionValue } from "../../src/vehicle/section-values.ts";
import { sectionNames } from "../../src/vehicle/sections.ts";
import { Bench, opened } from "./support/bench.tsx";

/** The cursor of the Car view brought to a value of an optional section. */
function onValue(preset: string, key: string, columns = 80, rows = 24): Bench {
  const bench = new Bench(opened(preset), columns, rows).press("7");
  for (let i = 0; i < 300 && !bench.text().replace(/\s+/g, " ").includes(`In the file: ${key}.`); i++)
    bench.press("down");
  return bench;
}

describe("values of the optional sections", () => {
  it("are all that stands there, each with its place, its help and, of a number, its range", () => {
    const values = sectionValues(opened("check-before-welding").car);
    const keys = values.map(({ path }) => path.join("."));
    for (const key of ["shock.both.stroke", "rod-ends.both.tie-rod.outer.angle", "threads.left.cut", "body.out"])
      expect(keys).toContain(key);
    expect(keys).toContain("tubes.both.frame.lower-rail.from.ahead");
    expect(new Set(keys).size).toBe(keys.length);
    for (const { help, expected } of values) expect(`${help} ${expected}`.length).toBeGreaterThan(20);
    const stroke = values.find(({ path }) => path.join(".") === "shock.both.stroke");
    expect(stroke).toMatchObject({ source: "6.5", range: { kind: "length", low: 1, high: 1000 } });
    expect(values.find(({ path }) => path.join(".") === "shock.both.spring-rate")?.range).toBeNull();
  });

  it("can each be written anew as it is, and the text keeps its lines and its worth", () => {
    for (const preset of presetNames()) {
      const { car } = opened(preset);
      for (const { path, source } of sectionValues(car)) {
        const text = withSectionValue(car, path, source);
        const again = readCar(text);
        if ("complaints" in again) throw new Error(`${path.join(".")}: ${again.complaints[0]?.message}`);
        expect(again.sections, path.join(".")).toEqual(car.sections);
        expect(text.split("\n").length).toBe(car.text.split("\n").length);
      }
    }
  });

  it("are listed below all other numbers, typed over, checked and taken back", () => {
    const bench = onValue("check-before-welding", "shock.both.free-length");
    const before = bench.model.bench.car.text;
    expect(bench.text()).toMatch(/^ shock: both/m);
    expect(bench.text()).toMatch(/^> +free-length +22\.75 +1\.\.79 in/m);
    bench.press("enter", "=-4", "enter");
    expect(bench.text()).toContain("found -4, expected a value from 0.8 in to 78.7 in");
    expect(bench.model.bench.car.text).toBe(before);
    // The whole section has to go together, too: a shock cannot close by all of its length.
    bench.press("=6", "enter");
    expect(bench.text()).toContain("expected less than the free length");
    bench.press("=22 5/8", "enter");
    expect(bench.model.bench.car.sections.shock?.left?.["free-length"]).toBeCloseTo(22.625 * 25.4, 9);
    expect(bench.model.bench.car.text).toBe(before.replace("free-length: 22.75", 'free-length: "22 5/8"'));
    expect(bench.text()).toMatch(/^> +free-length +22 5\/8/m);
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("leave the arrows to lines that every car has, and Enter to both", () => {
    const bench = onValue("check-before-welding", "body.out");
    const before = bench.model.bench.car.text;
    expect(bench.press("right").text()).toContain("Enter types this one");
    expect(bench.model.bench.car.text).toBe(before);
    for (let i = 0; i < 200; i++) bench.press("up");
    expect(bench.press("enter").model.focus.on).toBe("entry");
  });

  it("fit every window", () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
      [60, 20],
    ] as const)
      for (const line of onValue("check-before-welding", "rod-ends.both.tie-rod.outer.bolt", columns, rows).lines())
        expect(line.length, line).toBeLessThanOrEqual(columns);
  });
});

describe("how an optional section is begun", () => {
  it.each(sectionNames)("%s: the lines that help shows are ones that a car can have", (name) => {
    const loaded = loadPreset("widened-offset-rack");
    if ("complaints" in loaded) throw new Error("no such example");
    const car = readCar(`${loaded.text.trimEnd()}\n${sectionFragments[name].join("\n")}\n`);
    if ("complaints" in car) throw new Error(car.complaints.map(({ message }) => message).join("; "));
    expect(car.sections[name]).not.toBeNull();
  });

  it("stands in the help, in the Car view next to its own keys; the view names what the file has not", () => {
    const bench = new Bench(opened("widened-offset-rack"), 120, 40).press("7");
    expect(bench.text()).toContain("Not in the file, ? shows how to begin one: rod-ends, threads");
    const lines = helpLines(bench.model, 80);
    const at = lines.findIndex((line) => line.startsWith("OPTIONAL SECTIONS"));
    expect(at).toBeGreaterThan(lines.indexOf('IN THE VIEW "CAR"'));
    expect(at).toBeLessThan(lines.indexOf("VIEWS"));
    for (const fragment of Object.values(sectionFragments))
      for (const line of fragment) expect(lines).toContain(`      ${line}`);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
  });
});
