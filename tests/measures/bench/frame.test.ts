import { describe, expect, test } from "vitest";
import { armLengths } from "../../../src/measures/bench/armLengths.ts";
import { framePlaces } from "../../../src/measures/bench/framePlaces.ts";
import { pivotLines } from "../../../src/measures/bench/pivotLines.ts";
import { degrees } from "../../oracles/vectors.ts";
import { at, carOf, head, presetText } from "../carTexts.ts";

/** Arms whose lengths are those of whole right-angled triangles, mm. */
const car = carOf(`${head}
wheel-travel: { bump: 60, droop: 60 }
front:
  linkage: double-arm
  both:
    lower-arm: { front: ${at(300, 250, 250)}, rear: ${at(-180, 250, 250)}, joint: ${at(0, 650, 250)} }
    upper-arm: { front: ${at(124, 290, 450)}, rear: ${at(-156, 310, 430)}, joint: ${at(-20, 620, 440)} }
    tie-rod: { outer: ${at(-110, 630, 290)} }
    wheel: { center: ${at(0, 720, 300)} }
  right:
    upper-arm: { front: ${at(-20, 320, 440)} }
steering:
  mechanism: rack
  rack: { ahead: -110, up: 290, eye-to-eye: 500, travel: 40 }
shock:
  left: { top: ${at(30, 330, 690)}, foot: ${at(20, 500, 258)}, on: lower-arm }
`);

describe("lengths of arms", () => {
  test("run from pivots to joint and from pivot to pivot", () => {
    const lower = armLengths({ car }, "left").filter(({ arm }) => arm === "lower-arm");
    const told = lower.map(({ from, to, square, mm }) => `${[from, to].sort().join(" - ")} ${mm.toFixed(9)} ${square}`);
    expect(told.sort()).toEqual([
      "front pivot - joint 500.000000000 false",
      "front pivot - rear pivot 480.000000000 false",
      // √(180² + 400²)
      "joint - rear pivot 438.634243989 false",
    ]);
    const right = armLengths({ car }, "right").filter(({ arm, from, to }) => {
      return arm === "upper-arm" && [from, to].includes("front pivot") && [from, to].includes("joint");
    });
    expect(right.map(({ mm }) => mm)).toEqual([300]);
  });

  test("of a trailing arm are square to its pivot, which runs straight across", () => {
    // 5.8 in back and 0.5 in down, whatever it is across; 6.6 back and 0.5 down.
    const told = armLengths({ car: carOf(presetText("torsion-beam-steering-plate")) }, "left");
    expect(told.map(({ from, to, square }) => [from, to, square])).toEqual([
      ["pivot", "joint", true],
      ["pivot", "joint", true],
    ]);
    expect(told.map(({ mm }) => (mm / 25.4).toFixed(9))).toEqual([
      Math.sqrt(5.8 ** 2 + 0.5 ** 2).toFixed(9),
      Math.sqrt(6.6 ** 2 + 0.5 ** 2).toFixed(9),
    ]);
  });

  test("are told of no strut, which slides, and of no king pin on the frame", () => {
    const strut = armLengths({ car: carOf(presetText("strut-hatchback-corners")) }, "left");
    expect(new Set(strut.map(({ arm }) => arm))).toEqual(new Set(["lower-arm"]));
    expect(strut.length).toBe(3);
    expect(armLengths({ car: carOf(presetText("fixed-kingpin-yard-kart")) }, "left")).toEqual([]);
  });
});

describe("places on the frame", () => {
  test("are pivots as the file has them, and the shock's eye where it is given", () => {
    const words = (wheel: "left" | "right") =>
      framePlaces({ car }, wheel).map(({ label, ahead, out, up }) => `${label}: ${ahead}, ${out}, ${up}`);
    expect(words("left")).toEqual([
      "lower arm, front pivot: 300, 250, 250",
      "lower arm, rear pivot: -180, 250, 250",
      "upper arm, front pivot: 124, 290, 450",
      "upper arm, rear pivot: -156, 310, 430",
      "shock, eye on the frame: 30, 330, 690",
    ]);
    expect(words("right")).toEqual([
      "lower arm, front pivot: 300, 250, 250",
      "lower arm, rear pivot: -180, 250, 250",
      "upper arm, front pivot: -20, 320, 440",
      "upper arm, rear pivot: -156, 310, 430",
    ]);
  });

  test.each([
    ["strut-hatchback-corners", ["lower arm, front pivot", "lower arm, rear pivot", "strut, top mount"]],
    ["torsion-beam-steering-plate", ["lower arm, pivot", "upper arm, pivot"]],
    ["twin-beam-relay", ["beam, pivot", "beam, radius arm's frame end"]],
    ["fixed-kingpin-yard-kart", ["king pin, lower end", "king pin, upper end"]],
  ])("of %s are named", (name, labels) => {
    expect(framePlaces({ car: carOf(presetText(name)) }, "left").map(({ label }) => label)).toEqual(labels);
  });
});

describe("lines of pivots", () => {
  test("are told going ahead, outward and upward", () => {
    const [lower, upper] = pivotLines({ car }, "left");
    expect([lower?.outward, lower?.upward]).toEqual([0, 0]);
    // 280 ahead, 20 in, 20 up.
    expect(degrees(upper?.outward ?? 0)).toBeCloseTo(-degrees(Math.asin(20 / Math.hypot(20, 280))), 10);
    expect(degrees(upper?.upward ?? 0)).toBeCloseTo(degrees(Math.asin(20 / Math.hypot(20, 280))), 10);
  });

  test("of a beam run ahead too, whichever of its ends is ahead", () => {
    const beam = (brace: string) =>
      carOf(`${head}
wheel-travel: { bump: 60, droop: 60 }
front:
  linkage: pivoting-beam
  both:
    beam: { pivot: ${at(0, 100, 300)}, brace: ${brace} }
    king-pin: { lower: ${at(0, 550, 200)}, upper: ${at(0, 550, 400)} }
    tie-rod: { outer: ${at(-120, 540, 300)} }
    wheel: { center: ${at(0, 550, 300)} }
steering:
  mechanism: rack
  rack: { ahead: -130, up: 300, eye-to-eye: 300, travel: 40 }
`);
    // From a brace 500 behind, 50 further out and 20 lower, in and up to the pivot; and on from it to one as far ahead.
    for (const brace of [at(-500, 150, 280), at(500, 50, 320)]) {
      const [line] = pivotLines({ car: beam(brace) }, "right");
      expect(Math.tan(line?.outward ?? Number.NaN)).toBeCloseTo(-50 / 500, 12);
      expect(Math.tan(line?.upward ?? Number.NaN)).toBeCloseTo(20 / 500, 12);
      expect(Math.abs(line?.outward ?? Number.NaN)).toBeLessThan(Math.PI / 2);
    }
    expect(pivotLines({ car: carOf(presetText("torsion-beam-steering-plate")) }, "left")).toEqual([]);
    expect(pivotLines({ car: carOf(presetText("strut-hatchback-corners")) }, "left").length).toBe(1);
  });
});
