import { expect, test } from "vitest";
import { expectClose } from "../close.ts";
import { spatialCar } from "./known.ts";
import { cornerOf, placesOf, reach } from "./newton.ts";
import { fitPose } from "./other.ts";

/** Two solutions that share nothing but the drawing: coordinates with distances, and a turned rigid body by least squares. */
test("the rigid-body fit and the generic Newton find the same poses", () => {
  const left = cornerOf(spatialCar, "left");
  for (const [input, travel] of [
    [0, 100],
    [-60, -100],
    [60, 50],
    [35, -80],
  ]) {
    const fit = fitPose(spatialCar, "left", input, travel);
    expect(fit.residual).toBeLessThan(1e-10);
    const found = reach(left, input, travel);
    expect(found.reached).toBe(true);
    expectClose(fit.places, placesOf(left, found.state), { abs: 1e-8 }, `rack ${input}, travel ${travel}`);
  }
});
