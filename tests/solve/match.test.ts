import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, it } from "vitest";
import type { Study } from "../../src/measures/study.ts";
import { studyOf } from "../../src/measures/study.ts";
import { matchJob, matchOf } from "../../src/solve/match/match.ts";
import type { Matched, PartRow } from "../../src/solve/match/matched.ts";
import { carWith, unknownsOf } from "../../src/solve/match/unknowns.ts";
import { matchedText } from "../../src/solve/match/written.ts";
import { readCarReadings } from "../../src/vehicle/car-readings/read.ts";
import type { BuiltTo, CarReading, CarReadings } from "../../src/vehicle/car-readings/reading.ts";
import { presetText, studied } from "../measures/carTexts.ts";
import { built, plausible } from "../measures/plausibleCars.ts";
import { builtCar, carefulPlaces, degree, inch, readingsOf, sheetOf, usualSteps } from "./builtCar.ts";
import { normalFrom } from "./normal.ts";

const builtTo: BuiltTo = { length: inch / 16, angle: degree / 2, of: new Map() };

function matched(plan: Study, readings: readonly CarReading[]): Matched {
  const found = matchOf(plan, { title: null, readings, builtTo });
  if ("unreached" in found) throw new Error("the car on file goes wherever the built one was read");
  return found;
}

function partOf({ parts }: Matched, id: string): PartRow | undefined {
  return parts.find(({ unknown }) => unknown.quantities.some((each) => each.id === id));
}

const offIn = (match: Matched) =>
  match.parts.flatMap(({ off, unknown }) => (off === null ? [] : unknown.quantities.map(({ id }) => id)));

describe("the readings that come with the program", () => {
  const plan = studied(presetText("balanced-two-seater"));
  const text = presetText("readings/as-built");
  const readings = readCarReadings(text, plan.car);
  if ("complaints" in readings) throw new Error(readings.complaints.map(({ message }) => message).join());

  it("are what the planted car gives, as gauges show it", () => {
    const car = builtCar(plan, { "left.tie-rod.outer.ahead": (-3 / 16) * inch }, inch / 8);
    const made = sheetOf("Readings after welding, invented", readingsOf(car, plan, carefulPlaces(plan), usualSteps));
    expect(text.replace(/^(#.*\n)+/, "")).toBe(made);
  });

  it("tell of the tab that is 3/16 in off and of rods cut with the rack 1/8 in off its middle", () => {
    const match = matched(plan, readings.readings);
    expect(offIn(match)).toEqual(["left.tie-rod.outer.ahead"]);
    const tab = partOf(match, "left.tie-rod.outer.ahead");
    expect(Math.abs((tab?.moved ?? 0) + (3 / 16) * inch)).toBeLessThan(2 * (tab?.deviation ?? 0));
    expect(Math.abs((match.zero?.value ?? 0) - inch / 8)).toBeLessThan(2 * (match.zero?.deviation ?? 0));
    // Known well enough to be told from nothing, and from a sixteenth.
    expect(match.zero?.deviation).toBeLessThan(inch / 64);
    expect(match.readings.filter(({ wrong }) => wrong !== null)).toEqual([]);
  });

  it("make a car that agrees with them, and of which nothing more is off", () => {
    const match = matched(plan, readings.readings);
    const again = studied(matchedText(match));
    const second = matched(again, readings.readings);
    expect(offIn(second)).toEqual([]);
    for (const { prediction, onFile } of second.readings)
      expect(Math.abs(onFile - prediction.read)).toBeLessThan(prediction.tolerance);
  });

  it("with a slip of the pen: that one is to be read again, and both errors are found all the same", () => {
    const slipped = readings.readings.map((each) =>
      each.kind === "rod" && each.wheel === "right" ? { ...each, value: each.value + inch / 2 } : each,
    );
    const match = matched(plan, slipped);
    const wrong = match.readings.filter((each) => each.wrong !== null);
    expect(wrong.map(({ prediction }) => prediction.reading.kind)).toEqual(["rod"]);
    expect(Math.abs((wrong[0].wrong?.by ?? 0) - inch / 2)).toBeLessThan(3 * (wrong[0].wrong?.deviation ?? 0));
    expect(offIn(match)).toEqual(["left.tie-rod.outer.ahead"]);
  });

  it("give the same in pieces, with progress that only grows, and nothing before the end", () => {
    const job = matchJob(plan, readings);
    const seen: number[] = [];
    while (!job.step(1)) {
      seen.push(job.progress());
      if (job.progress() < 1) expect(job.best()).toBeNull();
    }
    expect(seen.length).toBeGreaterThan(200);
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    const best = job.best();
    if (best === null || "unreached" in best) throw new Error("it comes to an end");
    expect(matchedText(best)).toBe(matchedText(matched(plan, readings.readings)));
  });

  it("give the same answer each time, to the last bit", () => {
    const [one, other] = [matched(plan, readings.readings), matched(plan, readings.readings)];
    expect(one.parts.map(({ moved, deviation }) => [moved, deviation])).toEqual(
      other.parts.map(({ moved, deviation }) => [moved, deviation]),
    );
    expect(matchedText(one)).toBe(matchedText(other));
  });
});

const tabs = ["ahead", "out", "up"].flatMap((way) => ["left", "right"].map((side) => `${side}.tie-rod.outer.${way}`));

it("finds a tab that is 3/16 in off, and the rack off its middle, on seeded random cars", () => {
  const cars = fc
    .sample(plausible, { numRuns: 40, seed: 11 })
    .flatMap((car) => built(car) ?? [])
    .slice(0, 6);
  expect(cars).toHaveLength(6);
  let times = 0;
  cars.forEach((plan, i) => {
    const by = (i % 2 === 0 ? 1 : -1) * (3 / 16) * inch;
    const off = { [tabs[i]]: by };
    const rack = (i % 3 === 0 ? -1 : 1) * (inch / 8);
    const car = builtCar(plan, off, rack);
    const match = matched(plan, readingsOf(car, plan, carefulPlaces(plan), usualSteps));
    const found = partOf(match, tabs[i]);
    // Named outright, or as what it cannot be told from.
    const named = match.parts.flatMap((part) =>
      part.off === null
        ? []
        : [part.unknown, ...part.off.or.flatMap((each) => ("unknown" in each ? [each.unknown] : []))],
    );
    const isNamed = named.some(({ quantities }) => quantities.some(({ id }) => id === tabs[i]));
    if (isNamed) times++;
    // Smaller than what it says it would find, it may go unnamed; rounding is no noise, so that above it, it may not.
    else expect(found?.leastFound, tabs[i]).toBeGreaterThan(Math.abs(by));
    if (found?.off) expect(Math.abs(found.moved - by), tabs[i]).toBeLessThan(3 * found.deviation);
    expect(Math.abs((match.zero?.value ?? 0) - (car.zero ?? 0)), tabs[i]).toBeLessThan(
      3 * (match.zero?.deviation ?? 0),
    );
  });
  expect(times).toBeGreaterThanOrEqual(4);
}, 240_000);

it("keeps its word: 19 of 20 are within what is said, over seeded cars and readings that are off by chance", () => {
  const plan = studied(presetText("balanced-two-seater"));
  const unknowns = unknownsOf(plan, builtTo);
  const watched = [
    "left.tie-rod.outer.ahead",
    "right.tie-rod.outer.up",
    "left.rack.travel",
    "left.tie-rod.length",
    "rack.offset",
  ];
  const held = new Map<string, number>([["zero", 0], ...watched.map((id) => [id, 0] as const)]);
  const trials = 30;
  for (let seed = 1; seed <= trials; seed++) {
    const normal = normalFrom(seed);
    // Every part of the car is off by chance, those too that the readings have no say in; rods by what a builder misses.
    const truth = Float64Array.from(
      unknowns,
      ({ onFile, tolerance, open }) => onFile + (normal() * (open ? 3 : tolerance)) / 2,
    );
    const car = studyOf(carWith(plan, unknowns, truth));
    if ("refused" in car) throw new Error(car.refused);
    const readings = readingsOf(
      car,
      plan,
      { ...carefulPlaces(plan), racks: [0.7 * inch, 1.4 * inch], travels: [-75, 75] },
      null,
      normal,
    );
    const match = matched(plan, readings);
    const keep = (name: string, error: number, deviation: number) => {
      if (Math.abs(error) <= 1.96 * deviation) held.set(name, (held.get(name) ?? 0) + 1);
    };
    keep("zero", (match.zero?.value ?? 0) - (car.zero ?? 0), match.zero?.deviation ?? 0);
    for (const id of watched) {
      const j = unknowns.findIndex(({ quantities }) => quantities.some((each) => each.id === id));
      const part = partOf(match, id);
      if (part === undefined) throw new Error(`${id} is one that these readings tell`);
      keep(id, unknowns[j].onFile + part.moved - truth[j], part.deviation);
    }
  }
  for (const [name, times] of held) {
    // Six counts, each by a binomial of 0.95: one in 1000 to be too few by chance. All of them may keep it.
    const tooFew = jstat.binomial.cdf(times, trials, 0.95);
    expect(tooFew, `${name}: ${times} of ${trials}`).toBeGreaterThan(1e-3);
  }
}, 600_000);

it("says of readings that the car cannot be brought to which they are", () => {
  const plan = studied(presetText("balanced-two-seater"));
  const far: CarReading = {
    kind: "turn",
    turn: "left",
    left: 75 * degree,
    right: 40 * degree,
    stood: null,
    tolerance: degree / 2,
    line: 7,
  };
  const sheet: CarReadings = { title: null, readings: [far], builtTo };
  const match = matchOf(plan, sheet);
  expect("unreached" in match && match.unreached.map(({ reading }) => reading.line)).toEqual([7]);
});

it("has nothing to say of what was not read", () => {
  const plan = studied(presetText("balanced-two-seater"));
  const read: CarReading = { kind: "camber", wheel: "left", value: -1 * degree, tolerance: degree / 4, line: 1 };
  // Any part that lets the wheel toe makes it lean too: all but cambers are said to be known to 0.01 mm and 0.001 degrees.
  const match = matchOf(plan, {
    title: null,
    readings: [read],
    builtTo: {
      length: 0.01,
      angle: degree / 2,
      of: new Map([
        ["tie-rod.length", 0.01],
        ["rack.tilt", degree / 1000],
      ]),
    },
  });
  if ("unreached" in match) throw new Error("camber can always be read");
  expect(match.parts.map(({ unknown }) => unknown.quantities[0].id)).toEqual(["left.wheel.camber"]);
  // Two numbers of one angle, each with its sigma: the mean by weight, w = 1/σ² (derived). File -0.5 ± 0.5, read -1 ± 0.25.
  const [weightOfFile, weightOfRead] = [1 / 0.5 ** 2, 1 / 0.25 ** 2];
  const mean = (-0.5 * weightOfFile - 1 * weightOfRead) / (weightOfFile + weightOfRead);
  expect(match.parts[0].moved / degree).toBeCloseTo(mean + 0.5, 3);
  expect((2 * match.parts[0].deviation) / degree).toBeCloseTo(1 / Math.sqrt(weightOfFile + weightOfRead), 3);
  expect(match.untold.length).toBeGreaterThan(50);
});
