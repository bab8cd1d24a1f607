import { describe, expect, it } from "vitest";
import { readCarReadings } from "../../src/vehicle/car-readings/read.ts";
import type { CarReading } from "../../src/vehicle/car-readings/reading.ts";
import { carOf, presetText } from "../measures/carTexts.ts";

const car = carOf(presetText("balanced-two-seater"));
const kart = carOf(presetText("fixed-kingpin-yard-kart"));
const plate = carOf(presetText("torsion-beam-steering-plate"));
const inch = 25.4;
const degree = Math.PI / 180;

function read(text: string, of = car) {
  const found = readCarReadings(text, of);
  if ("complaints" in found)
    throw new Error(found.complaints.map(({ part, message }) => `${part}: ${message}`).join("; "));
  return found;
}

const only = (text: string, of = car): CarReading => {
  const { readings } = read(`units: in\n${text}`, of);
  expect(readings).toHaveLength(1);
  return readings[0];
};

describe("readings of a car", () => {
  it("of turn plates are degrees toward the turn, inner and outer by the turn", () => {
    expect(only("turn-plates: { rows: [ { turn: left, inner: 20, outer: 17 1/2 } ] }")).toMatchObject({
      kind: "turn",
      turn: "left",
      left: expect.closeTo(20 * degree, 12),
      right: expect.closeTo(17.5 * degree, 12),
      stood: null,
      tolerance: expect.closeTo(0.5 * degree, 12),
    });
    expect(only("turn-plates: { rows: [ { turn: right, inner: 20, outer: 18, at: lock } ] }")).toMatchObject({
      left: expect.closeTo(18 * degree, 12),
      right: expect.closeTo(20 * degree, 12),
      stood: "lock",
    });
  });

  it("by a rack are told by where it stands, one wheel or both", () => {
    expect(only("turn-plates: { rows: [ { turn: left, rack: 1 1/2 right, left: 20 } ] }")).toMatchObject({
      stood: expect.closeTo(-1.5 * inch, 12),
      right: null,
    });
    expect(only("turn-plates: { rows: [ { turn: left, column: 90 left, left: 20 } ] }", plate)).toMatchObject({
      stood: expect.closeTo(90 * degree, 12),
    });
  });

  it("over a board are the angle whose sine is length by board", () => {
    const over = (text: string) => only(`turn-plates: { rows: [ { turn: left, at: lock, left: ${text} } ] }`);
    const angle = Math.asin(7.25 / 24);
    expect(over("7 1/4 over 24")).toMatchObject({ left: expect.closeTo(angle, 12) });
    expect(over('"50 1/8, 57 3/8 over 24"')).toMatchObject({ left: expect.closeTo(angle, 12) });
    expect(only("bump-gauge: { board: 24, rows: [ { wheel: right, travel: -3, toe: -1/32 } ] }")).toMatchObject({
      kind: "bump",
      wheel: "right",
      travel: expect.closeTo(-3 * inch, 9),
      toe: expect.closeTo(Math.asin(-1 / 32 / 24), 12),
    });
  });

  it("of toe are across both tyres, or of a wheel", () => {
    // A tyre of 12 1/2 in radius: half of 1/8 in over 25 in.
    expect(only("toe: 1/8 total")).toMatchObject({ value: expect.closeTo(Math.asin(1 / 16 / 25), 12) });
    expect(only("toe: { reads: 0.1 deg, tolerance: 0.05 }")).toMatchObject({
      value: expect.closeTo(0.1 * degree, 12),
      tolerance: expect.closeTo(0.05 * degree, 12),
    });
  });

  it("have the tolerance of their row, else of their gauge, else what is usual", () => {
    const rows =
      "rows: [ { from: left.tie-rod.outer, to: right.tie-rod.outer, is: 44, tolerance: 1/4 }, { from: left.tie-rod.inner, to: left.tie-rod.outer, is: 14 } ]";
    expect(read(`units: in\nlengths: { tolerance: 1/8, ${rows} }`).readings.map(({ tolerance }) => tolerance)).toEqual([
      inch / 4,
      inch / 8,
    ]);
    expect(read(`units: in\nlengths: { ${rows} }`).readings[1].tolerance).toBe(inch / 16);
    expect(only("straight-ahead: 1/8 right")).toMatchObject({
      kind: "straight",
      value: -inch / 8,
      tolerance: inch / 16,
    });
    const { builtTo } = read("units: mm\ncamber: { left: 0 }\nbuilt-to: { angles: 1, rack.offset: 6 }");
    expect(builtTo.length).toBe(1);
    expect(builtTo.angle).toBeCloseTo(degree, 12);
    expect([...builtTo.of]).toEqual([["rack.offset", 6]]);
  });

  it("know the line that they stand on", () => {
    const { readings } = read(
      "units: in\ncamber:\n  left: -0.5\n  right: -0.25\nlengths:\n  rows:\n    - { from: left.tie-rod.outer, to: right.tie-rod.outer, is: 44 }\n",
    );
    expect(readings.map(({ line }) => line)).toEqual([3, 4, 7]);
  });
});

describe("readings that are none", () => {
  it.each([
    ["camber: { left: 0 }", "1:1 units", /missing: what lengths are in, expected in or mm/],
    ["units: feet\ncamber: { left: 0 }", "1:8 units", /found "feet", expected in or mm/],
    ["units: in", "1:1 ", /nothing was read: there is none of turn-plates/],
    ["units: in\ncambr: { left: 0 }", "2:1 ", /unknown key "cambr": did you mean "camber"\?/],
    ["units: in\ncamber: { left: lots }", "2:17 camber.left", /found "lots", which is not degrees/],
    ["units: in\ncamber: { left: 1 mm }", "2:17 camber.left", /found "1 mm", which is not degrees/],
    ["units: in\ncamber: { left: 45 }", "2:17 camber.left", /found "45" \(45.00°\), expected -30.00° to 30.00°/],
    ["units: in\ncamber: 1", "2:9 camber", /expected the keys left, right, tolerance/],
    ["units: in\nrods: { left: 3 deg }", "2:15 rods.left", /found "3 deg", which is not a length/],
    [
      "units: in\nturn-plates:\n  rows:\n    - { left: 3 }",
      "4:7 turn-plates.rows row 1",
      /missing: turn: left or right/,
    ],
    [
      "units: in\nturn-plates:\n  rows:\n    - { turn: up }",
      "4:15 turn-plates.rows row 1.turn",
      /found "up", expected left or right/,
    ],
    [
      "units: in\nturn-plates:\n  rows:\n    - { turn: left, left: 3 }",
      "4:7 turn-plates.rows row 1",
      /missing: the other wheel's turn, or rack: where it stood, or at: lock/,
    ],
    [
      "units: in\nturn-plates:\n  rows:\n    - { turn: left, left: 3, rack: 1/2 }",
      "4:36 turn-plates.rows row 1.rack",
      /say which way from the middle, such as "1\/2 left"/,
    ],
    ["units: in\nturn-plates: { tolerance: 1 }", "2:14 turn-plates", /missing: rows/],
    [
      "units: in\nlengths:\n  rows:\n    - { from: left.tie-rod.outr, to: right.tie-rod.outer, is: 3 }",
      "4:15 lengths.rows row 1.from",
      /no point of this car: did you mean "left.tie-rod.outer"\?/,
    ],
    [
      "units: in\nbump-gauge:\n  rows:\n    - { wheel: left, toe: 0.1 }",
      "4:7 bump-gauge.rows row 1",
      /missing: travel/,
    ],
    ["units: in\ncamber: { left: 0, tolerance: 0 }", "2:31 camber.tolerance", /found "0" \(0.00°\), expected/],
    [
      "units: in\ncamber: { left: 0 }\nbuilt-to: { rak.offset: 1 }",
      "3:13 built-to",
      /unknown key "rak.offset": did you mean "rack.offset"\?/,
    ],
    ["units: in\ncamber: [\n", null, /bracket/],
  ])("%j", (text, place, message) => {
    const found = readCarReadings(text, car);
    if (!("complaints" in found)) throw new Error("this is no file of readings");
    const [first] = found.complaints;
    if (place !== null) expect(`${first.line}:${first.column} ${first.part}`).toBe(place);
    expect(first.message).toMatch(message);
  });

  it("of travel are refused where there is no suspension", () => {
    const found = readCarReadings("units: in\nbump-gauge: { rows: [ { wheel: left, travel: 1, toe: 0 } ] }", kart);
    expect("complaints" in found && found.complaints.map(({ message }) => message)).toEqual([
      "this car has no suspension, so that there is no travel to read at",
    ]);
  });

  it("tell all that is wrong, each with its place", () => {
    const found = readCarReadings("units: in\ncamber: { left: x, right: y }\nrods: { left: z }\n", car);
    expect("complaints" in found && found.complaints.map(({ line }) => line)).toEqual([2, 2, 3]);
  });
});
