import { describe, expect, it } from "vitest";
import { hangOf, uprightOn, withUpright } from "../../src/vehicle/hang.ts";
import { uprightFields } from "../../src/vehicle/upright-fields.ts";
import { expectClose } from "../close.ts";
import { Bench, opened } from "./support/bench.tsx";

const degree = Math.PI / 180;

function form(columns = 80, rows = 24): Bench {
  return new Bench(opened("widened-offset-rack"), columns, rows).press("U");
}

/** Down to a field, by its key. */
function to(bench: Bench, key: string): Bench {
  while (bench.model.focus.on === "upright" && uprightFields[bench.model.focus.cursor]?.key !== key)
    bench.press("down");
  return bench;
}

const flat = (bench: Bench) => bench.text().replace(/\s+/g, " ");

describe("the upright on the bench", () => {
  it("asks for every measure and shows what it is now, and fits the window", () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
    ] as const) {
      const bench = form(columns, rows);
      for (const { name, help } of uprightFields) {
        expect(bench.text()).toContain(`> ${name}`);
        expect(flat(bench)).toContain(`${name}: ${help}. Now `);
        expect(bench.lines().length).toBeLessThanOrEqual(rows);
        for (const line of bench.lines()) expect(line.length, line).toBeLessThanOrEqual(columns);
        bench.press("down");
      }
      expect(bench.text()).toContain("> HANG IT SO");
    }
  });

  it("is hung as one change that u takes back, the same as by its function", () => {
    const bench = to(form(), "camber").press("=-1", "enter", "=9");
    expect(flat(bench)).toMatch(/It does: King-pin inclination 9\.73 -> 10\.26 deg/);
    const { car } = bench.model.bench;
    bench.press("enter", "enter");
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.model.bench.undo).toHaveLength(1);
    const made = withUpright(car, "both", { camber: -degree, caster: 9 * degree });
    expect(made).toEqual({ text: bench.model.bench.car.text });
    for (const wheel of ["left", "right"] as const) {
      const { camber, caster } = hangOf(bench.model.bench.car, wheel);
      expectClose(camber, -degree, { abs: 1e-12 });
      // Joints are written to a thousandth of an inch, an upright is 7 in tall: 0.01 degrees.
      expectClose(caster, 9 * degree, { abs: 0.01 * degree });
    }
    expect(flat(bench)).toContain("Uprights, both sides: camber, as it hangs -1.00°, caster, as it hangs 9.00°");
    expect(bench.press("u").model.bench.car.text).toBe(car.text);
  });

  it("takes one side alone where the bench changes one, and an angle over a board", () => {
    const bench = new Bench(opened("widened-offset-rack")).press("tab", "U");
    expect(bench.text()).toContain("left side");
    // asin(1.75 / 14) by a table of sines is 7.1808 degrees.
    to(bench, "caster").press("=1/4, 2 over 14", "enter", "enter");
    const { car } = bench.model.bench;
    expectClose(hangOf(car, "left").caster, 7.1808 * degree, { abs: 0.01 * degree });
    expect(uprightOn(car, "right")).toEqual(uprightOn(opened("widened-offset-rack").car, "right"));
  });

  it("stays at a measure that is none, and leaves the car alone on the way back", () => {
    const bench = form().press("=tall", "enter");
    expect(bench.text()).toContain("> Joint to joint");
    expect(flat(bench)).toContain('"tall" is');
    expect(bench.press("escape").model.bench.undo).toEqual([]);
    const steep = to(form(), "spindleLean").press("=89", "enter");
    to(steep, "camber").press("=-15", "enter", "enter", "enter");
    expect(flat(steep)).toContain("cannot stand at that camber and caster");
    expect(steep.model.bench.undo).toEqual([]);
  });

  it("is not to be had of a strut, and the key says so", () => {
    const bench = new Bench(opened("strut-hatchback-corners")).press("U");
    expect(bench.model.focus.on).toBe("bench");
    expect(flat(bench)).toContain("A strut's upright has no upper joint");
  });
});
