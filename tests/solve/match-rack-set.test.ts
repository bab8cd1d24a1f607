import { expect, it } from "vitest";
import { predictionsOf } from "../../src/solve/match/predictions.ts";
import { turnAt } from "../../src/solve/match/turned.ts";
import type { CarReading, Stood } from "../../src/vehicle/car-readings/reading.ts";
import { presetText, studied } from "../measures/carTexts.ts";
import { degree, inch } from "./builtCar.ts";
import { normalFrom } from "./normal.ts";

const plan = studied(presetText("balanced-two-seater"));
const row = (stood: Stood): CarReading => ({
  kind: "turn",
  turn: plan.inputLeftTurns ?? "left",
  left: 0,
  right: 0,
  stood,
  tolerance: degree / 2,
  line: 1,
});

it("holds what plates show 19 times of 20 where the rack is set by a tape good to 1/16 in, over seeded trials", () => {
  const normal = normalFrom(5);
  const trials = 400;
  for (const stood of [0.5 * inch, 1.25 * inch]) {
    for (const { predict, tolerance, wheel } of predictionsOf([row(stood)], plan)) {
      const meant = predict(plan);
      if (meant === null || wheel === null) throw new Error("the rack goes there");
      let held = 0;
      let heldByPlate = 0;
      for (let i = 0; i < trials; i++) {
        const turned = turnAt(plan, wheel, stood + (normal() * inch) / 32);
        if (turned === null) throw new Error("the rack goes there");
        const error = Math.abs(Math.abs(turned) + (normal() * degree) / 4 - Math.abs(meant));
        if (error <= tolerance * (1.96 / 2)) held++;
        if (error <= (degree / 2) * (1.96 / 2)) heldByPlate++;
      }
      // 95 % of 400 with a binomial deviation of 1.1 %: three of those either way.
      expect(held / trials, wheel).toBeGreaterThan(0.917);
      expect(held / trials, wheel).toBeLessThan(0.983);
      expect(heldByPlate / trials, wheel).toBeLessThan(0.85);
    }
  }
});

it("leaves a row at lock what its plates are good to", () => {
  for (const { tolerance } of predictionsOf([row("lock")], plan)) expect(tolerance).toBe(degree / 2);
});
