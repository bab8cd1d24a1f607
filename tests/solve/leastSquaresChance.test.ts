import jstat from "jstat";
import { expect, it } from "vitest";
import {
  above,
  chanceAbove,
  criticalSize,
  deviateAbove,
  deviationsHolding,
} from "../../src/solve/least-squares/chance.ts";

// The error function behind these is good to 1.2e-7 of itself (Numerical Recipes' rational fit, by its own account).
const GOOD_TO = 3e-7;

it("normal deviates agree with a statistics library", () => {
  for (const chance of [0.4, 0.1, 0.025, 1e-3, 1e-4, 1e-6]) {
    expect(deviateAbove(chance)).toBeCloseTo(-jstat.normal.inv(chance, 0, 1), 6);
    expect(Math.abs(above(deviateAbove(chance)) / chance - 1)).toBeLessThan(GOOD_TO);
  }
  expect(deviationsHolding(0.95)).toBeCloseTo(1.959964, 6);
});

it("chi-square's tail agrees with a statistics library", () => {
  for (const freedom of [1, 2, 3, 4, 7, 10, 31, 60])
    for (const share of [0.2, 0.8, 1, 1.5, 3]) {
      const value = share * freedom;
      expect(Math.abs(chanceAbove(value, freedom) - (1 - jstat.chisquare.cdf(value, freedom)))).toBeLessThan(GOOD_TO);
    }
});

it("the critical size leaves a whole sheet the chance that was said", () => {
  for (const readings of [1, 5, 40]) {
    const one = 2 * above(criticalSize(0.02, readings));
    expect(1 - (1 - one) ** readings).toBeCloseTo(0.02, 6);
  }
});
