import { describe, expect, test } from "vitest";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { drawnOf } from "../../src/measures/front.ts";
import { studyOf } from "../../src/measures/study.ts";
import { frontOf } from "./cars.ts";
import { carOf, presetText, studied } from "./carTexts.ts";

const example = presetText("widened-offset-rack");
const withRight = (length: string, text = example) =>
  text.replace("  both:", `  right: { tie-rod: { length: ${length} } }\n  both:`);

/** Why a car that cannot stand is refused. */
function refusedOf(text: string) {
  const study = studyOf(carOf(text));
  if (!("refused" in study)) throw new Error("that car stands");
  return study;
}

/** How much longer the right rod of a car would have to be at its middle, mm, by the kernel. */
function missing(text: string): number {
  const poses = newPoses(1);
  solve(frontOf(drawnOf(carOf(text))), 0, 0, 0, poses, 0);
  return -poses[Pose.Right + Side.Gap];
}

describe("a car that cannot stand is refused", () => {
  test("at its rod's length where the file gives that, at the rod where it is cut to fit", () => {
    const cut = refusedOf(withRight("5"));
    expect(cut.part).toEqual(["front", "right", "tie-rod", "length"]);
    expect(cut.refused).toMatch(
      /^At rack 0, travel 0 the front end does not go together: the right tie rod is [\d.]+ in too short\.$/,
    );
    // Drawn 4 in off the middle, within a rack that goes 5 in: the rods that fit there do not reach from the middle.
    const fit = refusedOf(example.replace("travel: 2,", "travel: 5, straight-ahead: 4,"));
    expect(fit.part.slice(0, 1)).toEqual(["front"]);
    expect(fit.part.slice(2)).toEqual(["tie-rod"]);
  });

  test("in its own units, to a hundredth of an inch and a tenth of a millimetre, and never by nothing", () => {
    const inches = missing(withRight("5"));
    expect(inches).toBeGreaterThan(25.4);
    expect(refusedOf(withRight("5")).refused).toContain(` ${(inches / 25.4).toFixed(2)} in too short`);
    expect(refusedOf(withRight(`${5 * 25.4 + inches - 0.01} mm`)).refused).toContain(" 0.01 in too short");
    const strut = presetText("strut-hatchback-corners");
    const short = missing(withRight("150", strut));
    expect(refusedOf(withRight("150", strut)).refused).toMatch(
      new RegExp(` ${short.toFixed(1).replace(".0", "")}(\\.0)? mm too short`),
    );
    expect(refusedOf(withRight(`${150 + short - 0.01}`, strut)).refused).toContain(" 0.1 mm too short");
  });

  test("at its column, and without a word of travel where it has none", () => {
    const kart = refusedOf(withRight("90", presetText("fixed-kingpin-yard-kart")));
    expect(kart.refused).toMatch(/^At column 0 the front end does not go together: the right tie rod/);
    const plate = refusedOf(withRight("5", presetText("torsion-beam-steering-plate")));
    expect(plate.refused).toMatch(/^At column 0, travel 0 the front end/);
  });

  test("as no mechanism, at the part that draws it", () => {
    // The tab halfway from the rack's eye, the rack on the middle of the car, to (-0.25, 20.9, 10.5), the middle of the king pin.
    const dead = example
      .replace(/outer: \{ ahead: -4.5,.*\}/, "outer: { ahead: -2.875, out: 13.7, up: 9.5625 }")
      .replace("offset: -2.5", "offset: 0");
    expect(refusedOf(dead)).toMatchObject({ part: ["front", "left", "tie-rod"] });
  });
});

describe("a study", () => {
  test("of king pins that are fixed has no table of travel, and one with suspension has it afresh for each rack position", () => {
    const kart = studied(presetText("fixed-kingpin-yard-kart"));
    expect([kart.bumpTable(0), kart.bumpTable(0, { from: -1, to: 1, rows: 3 })]).toEqual([null, null]);
    const car = studied(example);
    const first = car.bumpTable(3);
    expect(first?.rows).toHaveLength(21);
    expect(first?.rows.map(({ travel }) => travel).at(-1)).toBeCloseTo(3 * 25.4, 9);
    expect(first?.input).toBe(3);
    expect(car.bumpTable(3)).toBe(first);
    const span = { from: 0, to: 10, rows: 2 };
    expect(car.bumpTable(3, span)?.rows).toHaveLength(2);
    expect(car.bumpTable(4)?.input).toBe(4);
    expect(car.steerTable(span).rows).toHaveLength(2);
    expect(car.steerTable().rows).toHaveLength(21);
  });

  test("steers the way of its column, unless the box turns the pitman arm the other way", () => {
    const relay = presetText("twin-beam-relay");
    expect(studied(relay).steersBackwards).toBe(false);
    expect(studied(relay.replace("turns: with", "turns: against")).steersBackwards).toBe(true);
    expect(studied(presetText("torsion-beam-steering-plate")).steersBackwards).toBe(false);
  });

  test("looks for the worst as closely as it is told", () => {
    const car = carOf(example);
    const [whole, coarse] = [studyOf(car), studyOf(car, "coarse")];
    if ("refused" in whole || "refused" in coarse) throw new Error("the example stands");
    const [fine, rough] = [whole.worst.rodAngle.left?.travel, coarse.worst.rodAngle.left?.travel];
    // Between the places of either's grid (see worst.test.ts): a sixteenth of a quarter of the range is coarse.
    expect(fine).not.toBe(rough);
    expect(Math.abs(Number(fine) - Number(rough))).toBeLessThan((6 * 25.4) / 4 / 4);
  });
});
