import { expect, test } from "vitest";
import type { Car } from "../../src/vehicle/car.ts";
import { changeFrontEnd } from "../../src/vehicle/change.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { degree } from "../../src/vehicle/value.ts";
import { exampleText } from "../measures/exampleText.ts";

const all = `
rod-ends:
  both:
    tie-rod: { outer: { bolt: vertical, angle: 18, size: 1/2-20 }, inner: { bolt: { ahead: 1, out: 0, up: 0.2 }, angle: 22 } }
    lower-arm: { joint: { bolt: square-upright, bolt-on: upright, angle: 34, spacers: yes } }
  right:
    tie-rod: { outer: { angle: 15 } }
threads:
  both:
    outer: { size: 1/2-20, reach: 2.4, thread: 1.5 }
    inner: { size: M12x1.25, hand: left, fitting: donor, reach: 4, thread: 2 }
tubes:
  both:
    tie-rod: 7/8
    lower-arm: 1
    frame:
      lower-rail: { from: { ahead: 10, out: 7, up: 6 }, to: { ahead: -20, out: 7, up: 6 }, diameter: 1.5 }
  left:
    frame: { lower-rail: { diameter: 1.25 } }
steering-shaft:
  wheel: { ahead: -40, offset: 14, up: 32 }
  upper-joint: { ahead: -22, offset: 13, up: 24 }
  lower-joint: { ahead: -8, offset: 5, up: 13 }
  pinion: { ahead: -6, offset: 4, up: 9.5 }
shock:
  both: { top: { ahead: 1, out: 12, up: 26 }, foot: { ahead: 0, out: 19, up: 8 }, on: lower-arm, spring-rate: 250, stroke: 6 }
body: { ahead: 20, out: 16 }
limits: { clearance: { broken: 3/8 } }
`;

const text = exampleText + all;

function sectionsOf(source: string): Car["sections"] {
  const car = readCar(source);
  if ("complaints" in car) throw new Error(car.complaints.map((each) => each.message).join("\n"));
  return car.sections;
}

/** "line: part: message" of each complaint about a text. */
function complaintsOf(source: string): readonly string[] {
  const car = readCar(source);
  if (!("complaints" in car)) return [];
  const first = exampleText.split("\n").length - 1;
  return car.complaints.map(({ line, part, message }) => `${(line ?? 0) - first}: ${part}: ${message}`);
}

test("a file without optional sections has none, and an empty one counts as left out", () => {
  expect(new Set(Object.values(sectionsOf(exampleText)))).toEqual(new Set([null]));
  expect(sectionsOf(`${exampleText}\nthreads:\n`).threads).toBeNull();
});

test("numbers of optional sections are mm and rad, in the file's units", () => {
  const sections = sectionsOf(text);
  expect(sections.threads?.left?.outer.reach).toBeCloseTo(2.4 * 25.4, 12);
  expect(sections["rod-ends"]?.left?.["tie-rod"]?.outer?.angle).toBeCloseTo(18 * degree, 12);
  expect(sections["steering-shaft"]?.wheel).toEqual({ ahead: -1016, offset: 355.6, up: 812.8 });
  expect(sections.limits?.clearance).toEqual({ close: null, broken: 9.525 });
});

test("250 lb/in is 43.78 N/mm, by the pound's exact definition", () => {
  const rate = (250 * 0.45359237 * 9.80665) / 25.4;
  expect(sectionsOf(text).shock?.left?.["spring-rate"]).toBeCloseTo(rate, 12);
  const metric = text.replace("spring-rate: 250", 'spring-rate: "50 N/mm"');
  expect(sectionsOf(metric).shock?.left?.["spring-rate"]).toBe(50);
});

test("left and right override any part of both, down to a single number", () => {
  const { "rod-ends": ends, tubes } = sectionsOf(text);
  expect(ends?.right?.["tie-rod"]?.outer).toMatchObject({ bolt: "vertical", angle: 15 * degree });
  expect(tubes?.left?.frame.get("lower-rail")).toMatchObject({ diameter: 1.25 * 25.4, from: { out: 177.8 } });
  expect(tubes?.right?.frame.get("lower-rail")?.diameter).toBe(38.1);
});

test("a change of linkage takes along what the sections say of parts that stay, and drops what is of parts that go", () => {
  const car = readCar(text.replace("on: lower-arm", "on: upper-arm"));
  if ("complaints" in car) throw new Error("the text is no car");
  const changed = sectionsOf(changeFrontEnd(car, { linkage: "pivoting-beam" }).text);
  expect(changed["rod-ends"]?.right?.["tie-rod"]?.outer?.angle).toBeCloseTo(15 * degree, 12);
  expect(changed.tubes?.left?.diameters).toEqual({ "tie-rod": 22.225, beam: null });
  expect(changed.tubes?.left?.frame.size).toBe(1);
  expect(changed.shock).toBeNull();
});

test("a change to fixed king pins drops shocks, whatever they are on", () => {
  const car = readCar(text.replace("on: lower-arm", "on: upright"));
  if ("complaints" in car) throw new Error("the text is no car");
  expect(sectionsOf(changeFrontEnd(car, { linkage: "fixed-kingpin" }).text).shock).toBeNull();
});

test("shocks on fixed king pins are refused where they stand", () => {
  const car = readCar(text.replace("on: lower-arm", "on: upright"));
  if ("complaints" in car) throw new Error("the text is no car");
  const { text: fixed } = changeFrontEnd(car, { linkage: "fixed-kingpin" });
  const shock =
    "shock: { both: { top: { ahead: 1, out: 9, up: 26 }, foot: { ahead: 1, out: 9, up: 8 }, on: upright } }";
  const refused = readCar(`${fixed}${shock}\n`);
  expect("complaints" in refused ? refused.complaints.map(({ message }) => message) : []).toEqual([
    "king pins that are fixed to the frame have no suspension for a shock to work on: leave shock out",
  ]);
});

test("a joint or a tube of another linkage is told at its own line, with what would be right", () => {
  expect(complaintsOf(text.replace("lower-arm: 1\n", "strut: 1\n"))).toEqual([
    '15: tubes.both.strut: unknown key "strut": expected one of tie-rod, lower-arm, upper-arm, frame',
  ]);
});

test.each([
  [
    "angle: 18",
    "angle: 170",
    "4: rod-ends.both.tie-rod.outer.angle: found 170, expected a value from 1 degrees to 60 degrees",
  ],
  ["bolt: vertical", "bolt: up", '4: rod-ends.both.tie-rod.outer.bolt: found "up", expected vertical or fore-and-aft'],
  [
    "size: 1/2-20, reach",
    "size: 1/2-21, reach",
    '10: threads.both.outer.size: found "1/2-21", expected 1/2-20 or 1/2-13',
  ],
  ["reach: 4, ", "", "11: threads.both.inner.reach: missing: From the middle of the ball"],
  ["tie-rod: 7/8", "tie-rod: thick", '14: tubes.both.tie-rod: found "thick", which is not a length'],
  ["wheel: { ahead: -40", "whel: { ahead: -40", '21: steering-shaft.whel: unknown key "whel": did you mean "wheel"?'],
  [
    "bolt: { ahead: 1, out: 0, up: 0.2 }",
    "bolt: { ahead: 0, out: 0, up: 0 }",
    "4: rod-ends.both.tie-rod.inner.bolt.ahead: found 0 for ahead, out and up, expected a way to point",
  ],
  [
    "reach: 2.4, thread: 1.5",
    "reach: 1.5, thread: 2.4",
    "10: threads.both.outer.thread: found 2.4, expected less than the reach, 1.5",
  ],
  [
    "to: { ahead: -20, out: 7, up: 6 }",
    "to: { ahead: 10, out: 7, up: 6 }",
    "17: tubes.both.frame.lower-rail.to: found both ends of the tube at the same place, expected two places",
  ],
  [
    "upper-joint: { ahead: -22, offset: 13, up: 24 }",
    "upper-joint: { ahead: -40, offset: 14, up: 32 }",
    "22: steering-shaft.upper-joint: found it at the same place as wheel, expected a shaft between the two",
  ],
  [
    "pinion: { ahead: -6, offset: 4, up: 9.5 }",
    "pinion: { ahead: -20, offset: 12, up: 23 }",
    "23: steering-shaft.lower-joint: found a joint bent by ",
  ],
  [
    "upper-joint: { ahead: -22, offset: 13, up: 24 }",
    "middle-joint: { ahead: -22, offset: 13, up: 24 }",
    "22: steering-shaft.middle-joint: found a middle joint without upper-joint",
  ],
  [
    "foot: { ahead: 0, out: 19, up: 8 }",
    "foot: { ahead: 1, out: 12, up: 26 }",
    "26: shock.both.foot: found the shock's top and foot at the same place",
  ],
  [
    "stroke: 6",
    "stroke: 30, free-length: 22",
    "26: shock.both.stroke: found 30, expected less than the free length, 22: a shock cannot close by all of its length",
  ],
  [
    "clearance: { broken: 3/8 }",
    "clearance: { broken: 3/8, close: 1/4 }",
    '28: limits.clearance.close: found "1/4", expected more than "3/8": what is broken under "3/8" is close before that',
  ],
  ["on: lower-arm", "on: chassis", '26: shock.both.on: found "chassis", expected lower-arm or upper-arm or upright'],
])("%s written as %s is refused where it stands", (right, wrong, said) => {
  const told = complaintsOf(text.replace(right, wrong));
  expect(told.map((each) => each.slice(0, said.length))).toContain(said);
});
