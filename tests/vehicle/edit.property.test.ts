import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import type { Car } from "../../src/vehicle/car.ts";
import { cutRods, type Edit, fitRods, setQuantity, setTitle } from "../../src/vehicle/edit.ts";
import { quantitiesOf } from "../../src/vehicle/quantities.ts";
import type { Quantity } from "../../src/vehicle/quantity.ts";
import { carIn, presets } from "./cars.ts";
import { laidOut, layouts, remarksIn } from "./layout.ts";

type Data = Record<string, unknown>;

function put(data: Data, path: readonly string[], value: unknown): void {
  let at = data;
  for (const key of path.slice(0, -1)) {
    at[key] ??= {};
    at = at[key] as Data;
  }
  at[path.at(-1) ?? ""] = value;
}

/** An example car in a random layout, with some of its values overridden at one side. */
const cars: fc.Arbitrary<Car> = fc
  .record({
    text: fc.constantFrom(...presets.values()),
    layout: layouts,
    overrides: fc.array(fc.tuple(fc.nat(), fc.integer({ min: -8, max: 8 })), { maxLength: 6 }),
  })
  .map(({ text, layout, overrides }) => {
    const data: Data = parse(text);
    const car = carIn(text);
    const sided = quantitiesOf(car.form).filter(
      ({ path, kind, pair }) => path[0] === "front" && kind === "length" && pair !== "tie-rod.length",
    );
    const unit = car.form.units === "in" ? 25.4 : 1;
    for (const [which, steps] of overrides) {
      const quantity = sided[which % sided.length] as Quantity;
      put(data, quantity.path, Math.round(((car.numbers[quantity.index] ?? 0) / unit + steps / 16) * 1e4) / 1e4);
    }
    return carIn(laidOut(data, layout));
  });

/** Values as a builder makes them: whole 64ths of an inch, tenths of a mm, hundredths of a degree. */
function edits(car: Car): fc.Arbitrary<{ of: readonly Quantity[]; edit: Edit }> {
  const all = quantitiesOf(car.form);
  const sides = fc.constantFrom("both", "left", "right");
  return fc.tuple(fc.constantFrom(...all), fc.integer({ min: 1, max: 40 }), sides).map(([one, steps, side]) => {
    const of = all.filter((each) => each.pair === one.pair);
    const now = car.numbers[one.index] ?? 0;
    const step = one.kind === "angle" ? Math.PI / 18_000 : car.form.units === "in" ? 25.4 / 64 : 0.1;
    const moved = one.high - now > 40 * step ? now + steps * step : now - steps * step;
    return { of, edit: { pair: one.pair, sides: side, value: Math.max(moved, one.low) } };
  });
}

/** A text's value differs from the one asked for by rounding only: 1e-9 mm and 1e-12 rad, as the file is written. */
const rounding = { length: 1e-9, angle: 1e-12, ratio: 1e-12 };

const cases = cars.chain((car) => edits(car).map((change) => ({ car, ...change })));

test("an edit changes the value that is meant, and no other", () => {
  fc.assert(
    fc.property(cases, ({ car, of, edit }) => {
      const after = carIn(setQuantity(car, edit));
      expect(after.title).toBe(car.title);
      expect({ ...after.form, rods: null }).toEqual({ ...car.form, rods: null });
      for (const quantity of quantitiesOf(car.form)) {
        const meant =
          of.includes(quantity) && (edit.sides === "both" || quantity.wheel === null || quantity.wheel === edit.sides);
        const found = after.numbers[quantity.index] ?? Number.NaN;
        if (meant) expect(Math.abs(found - edit.value), quantity.id).toBeLessThanOrEqual(rounding[quantity.kind]);
        else expect(found, quantity.id).toBe(car.numbers[quantity.index]);
      }
    }),
    { numRuns: 120 },
  );
});

test("an edit leaves the rest of the file as it was, comments and all", () => {
  fc.assert(
    fc.property(cases, ({ car, edit }) => {
      const text = setQuantity(car, edit);
      const [before, after] = [car.text.split("\n"), text.split("\n")];
      const kept = new Set(after);
      const gone = before.filter((line) => !kept.has(line));
      // One line for the value itself; when both sides are edited, each override may take the lines of its own mappings along.
      const overrides = edit.sides === "both" ? 12 : 0;
      expect(gone.length).toBeLessThanOrEqual(1 + overrides);
      expect(text.endsWith("\n")).toBe(car.text.endsWith("\n"));
      expect(text.includes("\r\n")).toBe(car.text.includes("\r\n"));
      expect(text.replaceAll("\r\n", "").includes("\r")).toBe(false);
      if (text.includes("\r\n")) expect(text.replaceAll("\r\n", "")).not.toContain("\n");
      if (edit.sides !== "both") expect(remarksIn(text)).toEqual(remarksIn(car.text));
      const alone = (all: readonly string[]) => all.filter((line) => /^\s*# remark/.test(line));
      expect(alone(after)).toEqual(alone(before));
    }),
    { numRuns: 120 },
  );
});

test("after an edit of both sides the value stands at both, and at neither side; no mapping is left empty", () => {
  fc.assert(
    fc.property(cases, ({ car, of, edit }) => {
      const data: Data = parse(setQuantity(car, { ...edit, sides: "both" }));
      const at = (path: readonly string[]) =>
        path.reduce<unknown>((value, key) => (value as Data | undefined)?.[key], data);
      for (const { path, shared } of of) {
        expect(at(shared ?? path)).toBeDefined();
        if (shared !== null) expect(at(path)).toBeUndefined();
      }
      expect(JSON.stringify(data)).not.toContain("{}");
      expect(JSON.stringify(data)).not.toContain("null");
    }),
    { numRuns: 60 },
  );
});

test("edits one upon the other end where the last ones say, whatever came before", () => {
  fc.assert(
    fc.property(
      cars.chain((car) => fc.tuple(fc.constant(car), fc.array(edits(car), { minLength: 2, maxLength: 6 }))),
      ([car, changes]) => {
        const wanted = Float64Array.from(car.numbers);
        let now = car;
        for (const { of, edit } of changes) {
          now = carIn(setQuantity(now, edit));
          for (const { index, wheel } of of)
            if (edit.sides === "both" || wheel === null || wheel === edit.sides) wanted[index] = edit.value;
        }
        for (const { index, kind, id } of quantitiesOf(car.form))
          expect(Math.abs((now.numbers[index] ?? 0) - (wanted[index] ?? 0)), id).toBeLessThanOrEqual(rounding[kind]);
      },
    ),
    { numRuns: 60 },
  );
});

test("rods are cut and fitted again without a trace, and a title is what was typed", () => {
  const lengths = fc.double({ min: 100, max: 900, noNaN: true });
  fc.assert(
    fc.property(cars, lengths, lengths, fc.string({ unit: "grapheme", maxLength: 30 }), (car, left, right, title) => {
      const fit = carIn(fitRods(car));
      expect(fit.form.rods).toEqual({ left: "fit", right: "fit" });
      const cut = carIn(cutRods(fit, { left, right }));
      expect(cut.form.rods).toEqual({ left: "cut", right: "cut" });
      expect(carIn(fitRods(cut)).numbers).toEqual(fit.numbers);
      const line = title.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ").trim();
      const named = carIn(setTitle(car, title));
      expect(named.title).toBe(line);
      expect(named.numbers).toEqual(car.numbers);
    }),
    { numRuns: 40 },
  );
});
