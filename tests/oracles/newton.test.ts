import { describe, expect, test } from "vitest";
import { expectClose } from "../close.ts";
import { spatialCar } from "./known.ts";
import { cornerOf, placesOf, reach } from "./newton.ts";
import { readingOf } from "./reading.ts";
import { degrees } from "./vectors.ts";

/** The independent solution is itself checked: against values that other independent solutions agreed on [D]. */
describe("the generic Newton", () => {
  const left = cornerOf(spatialCar, "left");
  const at = (input: number, travel: number) => {
    const found = reach(left, input, travel);
    if (!found.reached) throw new Error(`no solution at rack ${input}, travel ${travel}`);
    return placesOf(left, found.state);
  };

  test("finds the joints of the spatial double arm at 100 mm of bump", () => {
    const { lower, upper, tieRodOuter } = at(0, 100);
    expectClose(lower, { x: 10, y: 635.9348, z: 343.6738 }, { abs: 1e-4 });
    expectClose(upper, { x: -28.209, y: 586.8554, z: 569.8514 }, { abs: 1e-4 });
    expectClose(tieRodOuter, { x: -121.0138, y: 610.8386, z: 410.0482 }, { abs: 1e-4 });
  });

  test("finds its steer and camber at 60 mm of rack", () => {
    const { toe, camber } = readingOf(at(-60, 0), 330);
    expectClose([-degrees(toe), degrees(camber)], [30.89947, 5.27295], { abs: 1e-5 });
  });

  test("says that there is no solution where the wheel cannot reach", () => {
    expect(reach(left, 0, 600).reached).toBe(false);
    expect(reach(left, 600, 0).reached).toBe(false);
  });
});
