import { expect, test } from "vitest";
import type { Car } from "../../src/vehicle/car.ts";
import { changeFrontEnd } from "../../src/vehicle/change.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { exampleText } from "../measures/exampleText.ts";

const hardware = `hardware:
  tab: { both: { thickness: 1/4, hole: 1/2, end-radius: 5/8 }, right: { thickness: "6 mm" } }
  bolts: { both: { tie-rod: { outer: 1/2-20 }, upper-arm: { joint: 5/8-18 } } }
  walls: { both: { tie-rod: 0.12, upper-arm: 0.095 } }
  rack: { thickness: 1/4, holes: { left: { along: 3.5, aside: -1/2, diameter: 3/8 } } }
`;

function carOf(text: string): Car {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints.map(({ message }) => message).join("\n"));
  return car;
}

function complaintsOf(text: string): readonly string[] {
  const car = readCar(text);
  return "complaints" in car ? car.complaints.map(({ part, message }) => `${part}: ${message}`) : [];
}

test("hardware is mm, a side overrides what both say, and what is not said is null", () => {
  const { hardware: read } = carOf(exampleText + hardware).sections;
  expect(read?.tab?.left).toEqual({ thickness: 6.35, hole: 12.7, "end-radius": 15.875, foot: null, reach: null });
  expect(read?.tab?.right?.thickness).toBe(6);
  expect(read?.tab?.right?.hole).toBe(12.7);
  expect(read?.bolts?.left?.["tie-rod"]?.outer).toMatchObject({ name: "1/2-20", diameter: 12.7, pitch: 1.27 });
  expect(read?.bolts?.left?.["tie-rod"]?.inner).toBeNull();
  expect(read?.walls?.right?.["tie-rod"]).toBeCloseTo(3.048, 12);
  expect(read?.walls?.right?.["lower-arm"]).toBeNull();
  expect(read?.rack?.holes?.get("left")).toEqual({ along: 88.9, aside: -12.7, diameter: 9.525 });
});

test("all of it may be left out, part by part", () => {
  expect(carOf(exampleText).sections.hardware).toBeNull();
  expect(carOf(`${exampleText}hardware: { rack: { thickness: 1/4 } }\n`).sections.hardware).toMatchObject({
    tab: null,
    bolts: null,
    walls: null,
    rack: { holes: null },
  });
});

test.each([
  [
    "hole: 1/2",
    'hole: "1 1/4"',
    'hardware.tab.both.end-radius: found "5/8", expected more than half of the hole, "1 1/4": there is no metal around it',
  ],
  [
    "outer: 1/2-20",
    "outer: 1/2-21",
    'hardware.bolts.both.tie-rod.outer: found "1/2-21", expected 1/2-20 or 1/2-13, the standard threads of that size',
  ],
  [
    "thickness: 1/4, hole",
    "thickness: 4, hole",
    "hardware.tab.both.thickness: found 4, expected a value from 0.0 in to 2.4 in",
  ],
  [
    "along: 3.5, ",
    "",
    "hardware.rack.holes.left.along: missing: Along the rack from the middle between its inner eyes, to the driver's left positive.",
  ],
  [
    "upper-arm: 0.095",
    "strut: 0.095",
    'hardware.walls.both.strut: unknown key "strut": expected one of tie-rod, lower-arm, upper-arm',
  ],
])("%s -> %s is told at its own place", (from, to, words) => {
  expect(hardware).toContain(from);
  const found = complaintsOf(exampleText + hardware.replace(from, to));
  expect(
    found.some((each) => each.endsWith(words) || each === words),
    found.join("\n"),
  ).toBe(true);
});

test("another front end keeps what is said of parts that stay, and drops the rest", () => {
  const { text } = changeFrontEnd(carOf(exampleText + hardware), { linkage: "fixed-kingpin" });
  const { hardware: kept } = carOf(text).sections;
  expect(kept?.tab?.left?.hole).toBe(12.7);
  expect(kept?.bolts?.left).toEqual({ "tie-rod": { outer: expect.objectContaining({ name: "1/2-20" }), inner: null } });
  expect(kept?.walls?.left).toEqual({ "tie-rod": expect.closeTo(3.048, 12) });
});
