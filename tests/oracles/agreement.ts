import { inv } from "mathjs";
import { expect } from "vitest";
import { expectClose } from "../close.ts";
import type { Places } from "./corner.ts";
import { type Corner, jacobian, placesOf, type State } from "./newton.ts";

/** The kernel meets the wheel's height to 1e-11 of the half width and lengths to rounding; Newton stops under 1e-9 mm. */
const residue = 2e-8;

/**
 * A pose of the kernel's against the Newton's. Both satisfy the loop equations to `residue`, so that they may differ by no more than the inverse
 * Jacobian times it: next to nothing in the middle of the range, more near a dead point, where a pose is badly determined by any means.
 */
export function expectSamePose(corner: Corner, state: State, found: Places, path: string): void {
  const inverse = inv(jacobian(corner, state.unknowns, state.at)) as number[][];
  const norm = Math.max(...inverse.map((row) => row.reduce((sum, value) => sum + Math.abs(value), 0)));
  expect(norm, path).toBeLessThan(1e5);
  const { spin, ...places } = placesOf(corner, state);
  const { spin: foundSpin, ...foundPlaces } = found;
  const abs = 1e-9 + residue * norm;
  expectClose(foundPlaces, places, { abs }, path);
  // The spin's place is 100 mm out on it, as one of the unknowns.
  expectClose(foundSpin, spin, { abs: (2 * abs) / 100 }, path);
}
