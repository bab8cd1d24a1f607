import { describe, expect, test } from "vitest";
import { setQuantity } from "../../src/vehicle/edit.ts";
import { jsonSchema } from "../../src/vehicle/json-schema.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { mechanisms } from "../../src/vehicle/mechanisms.ts";
import { indexOf, pairOf, quantities, quantitiesOf } from "../../src/vehicle/quantities.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { carOf, presetText } from "../measures/carTexts.ts";

const presets = {
  strut: presetText("strut-hatchback-corners"),
  trailing: presetText("torsion-beam-steering-plate"),
  beam: presetText("twin-beam-relay"),
  kart: presetText("fixed-kingpin-yard-kart"),
  centre: presetText("centre-take-off"),
} as const;

function complaints(text: string): readonly string[] {
  const car = readCar(text);
  return "complaints" in car ? car.complaints.map(({ line, part, message }) => `${line} ${part}: ${message}`) : [];
}

describe("car files of every front end", () => {
  test.each(Object.entries(presets))("%s reads without complaint or warning", (_, text) => {
    expect(complaints(text)).toEqual([]);
    expect(carOf(text).warnings).toEqual([]);
  });

  test("numbers stand in mm and rad", () => {
    const { numbers, form } = carOf(presets.trailing);
    const read = (id: string) => numbers[indexOf(id)];
    expect(form).toMatchObject({ linkage: "trailing-arms", mechanism: "steering-plate", wheelLeftMoves: null });
    expect(read("left.upper-arm.pivot.up")).toBeCloseTo(14.125 * 25.4, 9);
    expect(read("steering-plate.rake")).toBeCloseTo(Math.PI / 6, 12);
    expect([read("left.steering-plate.travel"), read("right.steering-plate.travel")]).toEqual([
      (35 * Math.PI) / 180,
      (35 * Math.PI) / 180,
    ]);
    const relay = carOf(presets.beam);
    expect(relay.form).toMatchObject({ linkage: "pivoting-beam", mechanism: "relay", pitmanTurns: "with" });
    expect(relay.numbers[indexOf("relay.ratio")]).toBe(16);
    expect(relay.numbers[indexOf("left.beam.pivot.out")]).toBeCloseTo(-6 * 25.4, 9);
    expect(carOf(presets.centre).form).toMatchObject({ mechanism: "centre-rack", wheelLeftMoves: "right" });
  });

  test("a rack that says take-off: end is the rack that says nothing", () => {
    const text = presetText("balanced-two-seater");
    const said = carOf(text.replace("rack: { ahead", "rack: { take-off: end, ahead"));
    expect(said.form).toEqual(carOf(text).form);
    expect(said.numbers).toEqual(carOf(text).numbers);
  });

  test("a part that two linkages share is one quantity, and every id is there once", () => {
    expect(new Set(quantities.map(({ id }) => id)).size).toBe(quantities.length);
    const has = (linkage: string, pair: string) =>
      quantitiesOf({ linkage, mechanism: "rack" }).some((each) => each.pair === pair);
    expect([has("strut", "lower-arm.front.up"), has("double-arm", "lower-arm.front.up")]).toEqual([true, true]);
    expect([has("strut", "upper-arm.front.up"), has("fixed-kingpin", "wheel-travel.bump")]).toEqual([false, false]);
    expect(pairOf("rack.eye.ahead").map(({ id }) => id)).toEqual(["left.rack.eye.ahead", "right.rack.eye.ahead"]);
  });

  test("every front end lets the tab, and what carries the rods' inner ends, be moved", () => {
    for (const linkage of linkages) {
      for (const mechanism of mechanisms) {
        const moved = quantitiesOf({ linkage: linkage.name, mechanism: mechanism.name })
          .filter(({ roles }) => roles.includes("adjust"))
          .map(({ pair }) => pair);
        expect(moved).toContain("tie-rod.outer.out");
        expect(moved).toContain(`${mechanism.section}.travel`);
        expect(moved).toContain(mechanism.name === "rack" ? "rack.offset" : `${mechanism.section}.eye.out`);
      }
    }
  });
});

describe("complaints about a front end", () => {
  test("a missing point is asked for by what it is", () => {
    const [first] = complaints(presets.strut.replace(/^ {6}top:.*\n/m, ""));
    expect(first).toMatch(/strut\.top\.ahead: missing: Middle of the strut's top mount on the frame: how far ahead/);
  });

  test("wheel travel has to be there with suspension, and is refused with the reason without", () => {
    expect(complaints(presets.strut.replace(/^wheel-travel.*\n/m, ""))[0]).toMatch(/wheel-travel: missing/);
    const [line] = complaints(presets.kart.replace("front:", "wheel-travel: { bump: 0, droop: 0 }\nfront:"));
    expect(line).toMatch(/wheel-travel: a front end on fixed king pins has no suspension.*leave wheel-travel out/);
  });

  test("a part of another linkage or mechanism is told whose it is", () => {
    const arm = presets.strut.replace("    tie-rod:", "    king-pin: { lower: { ahead: 0 } }\n    tie-rod:");
    expect(complaints(arm)[0]).toMatch(
      /king-pin: "king-pin" does not belong here: it goes with linkage: pivoting-beam or linkage: fixed-kingpin/,
    );
    const rack = presets.kart.replace("steering:\n", "steering:\n  rack: { travel: 50 }\n");
    expect(complaints(rack)[0]).toMatch(/it goes with a rack with take-off: end or a rack with take-off: centre/);
    const offset = presets.centre.replace("    travel: 2", "    offset: 1\n    travel: 2");
    expect(complaints(offset)[0]).toMatch(
      /rack\.offset: "offset" does not belong here: it goes with a rack with take-off: end/,
    );
  });

  test("words that are none of the known ones", () => {
    expect(complaints(presets.centre.replace("take-off: centre", "take-off: middle"))[0]).toMatch(
      /steering\.rack\.take-off: found "middle", expected one of end, centre/,
    );
    expect(complaints(presets.beam.replace("turns: with", "turns: both"))[0]).toMatch(
      /relay\.turns: found "both", expected with or against/,
    );
    expect(complaints(presets.beam.replace("    turns: with\n", ""))[0]).toMatch(
      /relay\.turns: missing: Which way the pitman arm turns/,
    );
    expect(complaints(presets.beam.replace("mechanism: relay", "mechanism: gearbox"))[0]).toMatch(
      /found "gearbox", expected one of rack, steering-plate, relay/,
    );
    expect(complaints(presets.strut.replace("linkage: strut", "linkage: leaf"))[0]).toMatch(
      /expected one of double-arm, trailing-arms, strut, pivoting-beam, fixed-kingpin/,
    );
  });

  test("a ratio that is no number, or absurd", () => {
    expect(complaints(presets.beam.replace("ratio: 16", "ratio: many"))[0]).toMatch(
      /relay\.ratio: found "many", which is not a number/,
    );
    expect(complaints(presets.beam.replace("ratio: 16", "ratio: 400"))[0]).toMatch(/expected a value from 0.5 to 60/);
  });

  const places = [
    [
      "strut",
      "bottom: { ahead: 12,  out: 580, up: 380 }",
      "bottom: { ahead: -25, out: 535, up: 790 }",
      "no line to slide along",
    ],
    [
      "strut",
      "rear:  { ahead: -240, out: 300, up: 245 }",
      "rear:  { ahead: 40, out: 290, up: 240 }",
      "no axis to turn about",
    ],
    [
      "trailing",
      "pivot: { ahead: 6, out: 17.5, up: 8.25 }",
      "pivot: { ahead: 0.2, out: 17.5, up: 7.75 }",
      "the arm has no length",
    ],
    [
      "beam",
      "brace: { ahead: -38, out: 15, up: 14.5 }",
      "brace: { ahead: 0.5, out: -6, up: 13 }",
      "no axis to turn about",
    ],
    [
      "beam",
      "lower: { ahead: 0.5, out: 26.25, up: 11 }",
      "lower: { ahead: -38, out: 15, up: 14.5 }",
      "the beam cannot lift it",
    ],
    [
      "beam",
      "joint: { ahead: -8, offset: 12, up: 13.5 }",
      "joint: { ahead: -2, offset: 12, up: 13.5 }",
      "the arm has no length",
    ],
    [
      "beam",
      "joint: { ahead: -8, offset: -12, up: 13.5 }",
      "joint: { ahead: -8, offset: 12, up: 13.5 }",
      "the link has no length",
    ],
    ["kart", "upper: { ahead: -9, out: 408, up: 215 }", "upper: { ahead: 9, out: 428, up: 120 }", "no steering axis"],
    [
      "kart",
      "outer: { ahead: -100, out: 409, up: 140 }",
      "outer: { ahead: 0, out: 418, up: 167.5 }",
      "cannot turn the wheel",
    ],
    [
      "kart",
      "left-eye:  { ahead: -137, out: 23, up: 158 }",
      "left-eye:  { ahead: -100, out: 0, up: 242 }",
      "the plate cannot move it",
    ],
  ] as const;

  test.each(places)("%s: %s made %s: %s", (preset, was, is, words) => {
    expect(presets[preset]).toContain(was);
    expect(complaints(presets[preset].replace(was, is))[0]).toContain(words);
  });

  test("straight ahead beyond the column's stop is warned of", () => {
    const car = carOf(presets.kart.replace("travel: 35", "travel: 35\n    straight-ahead: 40"));
    expect(car.warnings.map(({ message }) => message)).toEqual([
      "straight ahead, 40.0 degrees from the middle, lies beyond the column's own travel",
    ]);
  });
});

describe("edits of a front end", () => {
  test("both eyes at once, or one", () => {
    const car = carOf(presets.kart);
    const both = carOf(setQuantity(car, { pair: "steering-plate.eye.out", sides: "both", value: 30 }));
    const read = (of: typeof car) => pairOf("steering-plate.eye.out").map(({ index }) => of.numbers[index]);
    expect(read(both)).toEqual([30, 30]);
    expect(read(carOf(setQuantity(both, { pair: "steering-plate.eye.out", sides: "left", value: 25 })))).toEqual([
      25, 30,
    ]);
  });

  test("a number of every kind is written and read back the same, comments kept", () => {
    for (const [name, text] of Object.entries(presets)) {
      const car = carOf(text);
      for (const { pair, index, kind } of quantitiesOf(car.form)) {
        if (kind === "length" && pair === "tie-rod.length") continue;
        const value =
          (car.numbers[index] ?? 0) + (kind === "length" ? 0.125 * 25.4 : kind === "angle" ? Math.PI / 720 : 1);
        const after = carOf(setQuantity(car, { pair, sides: "both", value }));
        expect(after.numbers[index], `${name} ${pair}`).toBeCloseTo(value, 9);
        expect(after.text.match(/#.*/g)).toEqual(text.match(/#.*/g));
      }
    }
  });
});

describe("the JSON Schema", () => {
  test("names every linkage, every mechanism and their keys, each with its help", () => {
    const text = JSON.stringify(jsonSchema());
    for (const { name, help } of linkages) {
      expect(text).toContain(JSON.stringify(name));
      expect(text).toContain(JSON.stringify(help));
    }
    for (const { word, help } of mechanisms) {
      expect(text).toContain(JSON.stringify(word));
      expect(text).toContain(JSON.stringify(help));
    }
    for (const { path } of quantities) expect(text).toContain(`"${path.at(-1)}":`);
  });
});
