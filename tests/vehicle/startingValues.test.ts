import { describe, expect, test } from "vitest";
import { changeFrontEnd } from "../../src/vehicle/change.ts";
import { setQuantity } from "../../src/vehicle/edit.ts";
import { startingValues, withoutMarks } from "../../src/vehicle/starting/marks.ts";
import { carOf, presetText } from "../measures/carTexts.ts";

const offsetRack = carOf(presetText("widened-offset-rack"));
const strut = carOf(changeFrontEnd(offsetRack, { linkage: "strut" }).text);

/** The line of a text that begins with a key. */
function lineOf(text: string, key: string): string {
  return text.split("\n").find((line) => line.trim().startsWith(`${key}:`)) ?? "";
}

describe("starting values of a car file", () => {
  test("are those that a change of front end filled in, and no others", () => {
    for (const change of [
      { linkage: "strut" },
      { linkage: "trailing-arms" },
      { mechanism: "relay" },
      { takeOff: "centre" },
    ] as const) {
      const { text, filled } = changeFrontEnd(offsetRack, change);
      expect([...startingValues(carOf(text))].sort()).toEqual([...filled].sort());
    }
    expect(startingValues(offsetRack).size).toBe(0);
  });

  test("stay through a second change, beside those of the second", () => {
    const first = startingValues(strut);
    const { text, filled } = changeFrontEnd(strut, { mechanism: "steering-plate" });
    expect([...startingValues(carOf(text))].sort()).toEqual([...first, ...filled].sort());
  });

  test("are none any more once edited, value by value of a point that stands on one line", () => {
    const text = setQuantity(strut, { pair: "strut.top.ahead", sides: "both", value: -60 });
    expect(lineOf(text, "top")).toContain("# starting value of out, up: measure and correct");
    const car = carOf(text);
    expect(startingValues(car).has("left.strut.top.ahead")).toBe(false);
    expect(startingValues(car).has("right.strut.top.out")).toBe(true);
    const rest = withoutMarks(
      car,
      new Set(["left.strut.top.out", "right.strut.top.out", "left.strut.top.up", "right.strut.top.up"]),
    );
    expect(lineOf(rest, "top")).not.toContain("#");
    expect(lineOf(rest, "bottom")).toContain("# starting value: measure and correct");
  });

  test("stay on the other side when one side is edited", () => {
    const car = carOf(setQuantity(strut, { pair: "strut.top.up", sides: "left", value: 700 }));
    expect(startingValues(car).has("left.strut.top.up")).toBe(false);
    expect(startingValues(car).has("right.strut.top.up")).toBe(true);
  });

  test("are told from what else stands on their line", () => {
    const rack = carOf(changeFrontEnd(offsetRack, { takeOff: "centre" }).text);
    expect(startingValues(rack).has("left.rack.travel")).toBe(false);
    expect(startingValues(rack).has("left.rack.eye.ahead")).toBe(true);
  });

  test("nothing but comments changes when marks go", () => {
    const all = withoutMarks(strut, startingValues(strut));
    expect(all).not.toContain("starting value");
    expect(carOf(all).numbers).toEqual(strut.numbers);
    expect(all.length).toBeLessThan(strut.text.length);
  });
});
