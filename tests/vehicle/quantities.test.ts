import { expect, test } from "vitest";
import { indexOf, pairOf, quantities, quantitiesOf, quantityOf } from "../../src/vehicle/quantities.ts";
import { carIn, presets } from "./cars.ts";

test("each quantity is there once, and knows its place in the list", () => {
  expect(new Set(quantities.map((each) => each.id)).size).toBe(quantities.length);
  expect(new Set(quantities.map((each) => each.path.join("/"))).size).toBe(quantities.length);
  for (const [index, each] of quantities.entries()) {
    expect(each.index).toBe(index);
    expect(indexOf(each.id)).toBe(index);
    expect(quantityOf(each.id)).toBe(each);
  }
});

test("a pair is one quantity, or a left and a right one that differ in nothing but their side and the words for it", () => {
  for (const { pair } of quantities) {
    const members = pairOf(pair);
    const [first, second, ...more] = members;
    expect(more).toEqual([]);
    if (second === undefined) expect(first).toMatchObject({ id: pair, wheel: null });
    else {
      expect(members.map((each) => each.wheel).sort()).toEqual(["left", "right"]);
      const { id: a, path: b, wheel: c, index: d, help: _, ...left } = first as (typeof quantities)[number];
      const { id: e, path: f, wheel: g, index: h, help: __, ...right } = second;
      expect({ a: a === e, b: b.join() === f.join(), c: c === g, d: d === h }).toEqual({
        a: false,
        b: false,
        c: false,
        d: false,
      });
      expect(left).toEqual(right);
    }
  }
});

test("each has words for a builder, and a range that its absence lies in or stands apart from", () => {
  for (const { label, help, low, high, absent, id } of quantities) {
    expect(label, id).toMatch(/^[A-Z][^.]*$/);
    expect(help, id).toMatch(/^[A-Z].*\.$/);
    expect(low, id).toBeLessThan(high);
    if (absent !== null) expect(absent, id).toBe(0);
  }
});

test("a car has the quantities of its own linkage and mechanism, and a number for each", () => {
  for (const [name, text] of presets) {
    const car = carIn(text);
    const own = quantitiesOf(car.form);
    expect(own.length, name).toBeGreaterThan(20);
    expect(car.numbers, name).toHaveLength(quantities.length);
    for (const each of quantities) {
      const number = car.numbers[each.index] ?? Number.NaN;
      if (!own.includes(each)) expect(number, each.id).toBe(0);
      else if (number !== each.absent) {
        expect(number, each.id).toBeGreaterThanOrEqual(each.low);
        expect(number, each.id).toBeLessThanOrEqual(each.high);
      }
    }
  }
});

test("what the list has not is a mistake in the program", () => {
  expect(() => indexOf("left.nothing")).toThrow("left.nothing");
  expect(() => pairOf("nothing")).toThrow("nothing");
  expect(quantitiesOf({ linkage: "none", mechanism: "none" }).some((each) => each.id.includes("arm"))).toBe(false);
});
