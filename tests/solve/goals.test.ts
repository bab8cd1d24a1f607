import { describe, expect, test } from "vitest";
import { goalsFor } from "../../src/solve/goals/goals.ts";
import { readingOf } from "../../src/solve/goals/readings.ts";
import { missedMusts, scoreOf } from "../../src/solve/goals/score.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { degree } from "../../src/vehicle/value.ts";
import { carOf, studied } from "../measures/carTexts.ts";
import { exampleText } from "../measures/exampleText.ts";

const example = studied(exampleText);

/** "line: part: message" of each complaint about what follows the example. */
function complaints(more: string): readonly string[] {
  const car = readCar(exampleText + more);
  if (!("complaints" in car)) return [];
  const first = exampleText.split("\n").length - 1;
  return car.complaints.map(({ line, part, message }) => `${(line ?? 0) - first}: ${part}: ${message}`);
}

describe("what a file says of its goals", () => {
  const find = carOf(`${exampleText}
find:
  must: { rod-to-arm: 30, toe-change: 1/2 }
  want: { ackermann: { least: 60, most: 110, over: 50 }, off-ideal: { most: 2, over: 25 } }
  nice: { ackermann: 100, turning-circle: 26 ft }
  move:
    tie-rod.outer.ahead: { from: -6, to: -3.5, sides: each }
    rack.up: { within: 1 }
  rods: keep
  step: 1/8
`).sections.find;

  test("lengths are mm, angles rad, shares of a lock shares", () => {
    expect(find?.must?.["rod-to-arm"]).toEqual({ least: 30 * degree, most: null, over: 1 });
    expect(find?.must?.["toe-change"]).toEqual({ least: null, most: 12.7, over: 1 });
    expect(find?.want?.ackermann).toEqual({ least: 60, most: 110, over: 0.5 });
    expect(find?.want?.["off-ideal"]).toEqual({ least: null, most: 2 * degree, over: 0.25 });
    expect(find?.nice?.ackermann).toEqual({ least: 100, most: 100, over: 1 });
    expect(find?.nice?.["turning-circle"]?.most).toBeCloseTo(26 * 304.8, 9);
    expect(find?.move?.["tie-rod.outer.ahead"]).toEqual({ from: -152.4, to: -88.9, within: null, sides: "each" });
    expect(find?.step).toBeCloseTo(25.4 / 8, 12);
  });

  test.each([
    ["find: { want: { ackermann: { least: 110, most: 60 } } }", "found 110, expected no more than the most, 60"],
    ["find: { want: { ackermann: { over: 50 } } }", "missing: the least or the most there may be"],
    ["find: { move: { rack.up: { from: 9, to: 8 } } }", "found 9, expected less than to, 8"],
    ["find: { move: { rack.up: { from: 9 } } }", "missing: both from and to, or within alone"],
    ["find: { move: { rack.up: { from: 8, to: 9, within: 1 } } }", "give either within, or from and to"],
    ["find: { rods: shrink }", 'found "shrink", expected follow or keep'],
  ])("%s is refused, with its place", (line, message) => {
    const [first] = complaints(`${line}\n`);
    expect(first).toContain(message);
    expect(first).toMatch(/^1: find\./);
  });

  test("a goal or a quantity that there is none of is refused", () => {
    expect(complaints("find: { want: { straightness: 1 } }\n")[0]).toContain("straightness");
    expect(complaints("find: { move: { wheelbase: { within: 1 } } }\n")[0]).toContain("wheelbase");
  });
});

describe("readings are the figures of the car", () => {
  test("locks, toe and rods of the example car", () => {
    // The car file's description gives these: Ackermann 75.9 and 100.8 %, inner locks 31.8 and 34.0°, rod 17.5° from its dead point.
    const ackermann = readingOf("ackermann", 1, example);
    expect(ackermann?.low).toBeCloseTo(75.9, 1);
    expect(ackermann?.high).toBeCloseTo(100.8, 1);
    expect((readingOf("inner-lock", 1, example)?.low ?? 0) / degree).toBeCloseTo(31.8, 1);
    expect((readingOf("lock-difference", 1, example)?.high ?? 0) / degree).toBeCloseTo(34.0 - 31.8, 0);
    expect((readingOf("rod-to-arm", 1, example)?.low ?? 0) / degree).toBeCloseTo(17.5, 1);
    expect((readingOf("bounce-steer", 1, example)?.high ?? 0) / degree).toBeCloseTo(0.9, 1);
  });

  test("over a part of the lock a band is no narrower than at its end", () => {
    const [end, part] = [readingOf("ackermann", 1, example), readingOf("ackermann", 0.3, example)];
    expect(part?.low ?? 0).toBeLessThan(end?.low ?? 0);
    expect(part?.high ?? 0).toBeGreaterThanOrEqual(end?.high ?? 0);
  });

  test("toe at lock is that of the bump table there", () => {
    const worst = Math.max(
      ...(["left", "right"] as const).map((lock) => {
        const input = example.locks[lock]?.input ?? 0;
        const table = example.bumpTable(input, { from: -76.2, to: 76.2, rows: 9 });
        return Math.abs(table?.summary.worstToeChange ?? 0);
      }),
    );
    const across = 2 * 10.75 * 25.4 * Math.sin(worst);
    expect(readingOf("toe-change-at-lock", 1, example)?.high).toBeCloseTo(across, 9);
  });
});

describe("the score", () => {
  test("a car whose musts and wishes are met costs less than one miss, and one that misses a must more than any wish", () => {
    const met = studied(`${exampleText}find: { must: { rod-to-arm: 10 }, want: { inner-lock: 30 } }\n`);
    expect(scoreOf(goalsFor(met), met).total).toBeLessThan(1);
    const missed = studied(`${exampleText}find: { must: { rod-to-arm: 30 } }\n`);
    const score = scoreOf(goalsFor(missed), missed);
    expect(missedMusts(score).map(({ goal }) => goal.name)).toEqual(["rod-to-arm"]);
    // 12.5 degrees short at five degrees a miss.
    expect(score.total).toBeCloseTo((1000 * (30 - 17.5)) / 5, -2);
  });

  test("whoever asks for something else still wants no rod near its dead point, and no circle smaller than asked", () => {
    const car = studied(`${exampleText}find: { want: { ackermann: { least: 60, most: 110 } } }\n`);
    const names = goalsFor(car).map(({ name, level }) => `${level} ${name}`);
    expect(names).toEqual(["must range", "must rod-to-arm", "want rod-to-arm", "want ackermann"]);
    const circle = (most: number) =>
      scoreOf([{ name: "turning-circle", level: "want", least: null, most, over: 1, from: "asked" }], example);
    const wide = Number(readingOf("turning-circle", 1, example)?.high);
    expect([circle(wide).total, circle(2 * wide).total]).toEqual([0, 0]);
    expect(circle(wide - 304.8).total).toBeCloseTo(10, 6);
  });

  test("a goal that is asked for as hard or harder at a higher level stands in the place of the file's, a softer one beside it", () => {
    const car = studied(`${exampleText}find: { want: { toe-change: 1/8 } }\n`);
    const asked = (level: "must" | "nice", most: number) =>
      goalsFor(car, [{ name: "toe-change", level, least: null, most, over: 1, from: "asked" }])
        .filter(({ name }) => name === "toe-change")
        .map(({ level: at }) => at);
    expect(asked("must", 25.4 / 32)).toEqual(["must"]);
    expect(asked("must", 25.4 / 4).sort()).toEqual(["must", "want"]);
    expect(asked("nice", 25.4 / 32).sort()).toEqual(["nice", "want"]);
  });

  test("a goal that the file says too little for is left out", () => {
    const car = studied(`${exampleText}find: { must: { clearance: 1/4 }, want: { inner-lock: 30 } }\n`);
    expect(scoreOf(goalsFor(car), car).met.map(({ goal }) => goal.name)).not.toContain("clearance");
  });

  test("with no goals of its own a car is held to its targets and limits", () => {
    const names = goalsFor(example).map(({ name, level }) => `${level} ${name}`);
    expect(names).toEqual([
      "must range",
      "must rod-to-arm",
      "want rod-to-arm",
      "want toe-change",
      "want bounce-steer",
      "want ackermann",
      "want lock-difference",
      "want turning-circle",
    ]);
  });

  test("the last level of a target that the file sets is a must", () => {
    const car = studied(`${exampleText}targets: { toe-change: { warn: 1/16, bad: 1/4 } }\n`);
    const own = goalsFor(car).filter(({ name }) => name === "toe-change");
    expect(own.map(({ level, most }) => [level, most])).toEqual([
      ["must", 6.35],
      ["want", 1.5875],
    ]);
  });
});
