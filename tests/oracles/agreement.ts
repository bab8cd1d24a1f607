import { inv } from "mathjs";
import { expect } from "vitest";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { expectClose } from "../close.ts";
import type { Places, SideName } from "./corner.ts";
import { type Corner, cornerOf, jacobian, placesOf, type State, stateIn } from "./newton.ts";
import { ruledBy } from "./regions.ts";

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

/** What the kernel and the scan of the arm's angle agree on at one place. */
export type Agreed = "closes" | "does not close" | "too near to tell";

/**
 * The kernel's answer at an input and a travel against the scan's, which follows the kernel's rule by means of its own: they close alike and in the
 * same places, and these meet the Newton's equations.
 */
export function expectAsScanned(
  drawn: Drawn,
  side: SideName,
  found: Places | null,
  input: number,
  travel: number,
): Agreed {
  const scanned = ruledBy(drawn, side)(input, travel);
  const path = `${side}, input ${input}, travel ${travel}`;
  if (scanned === "too near to tell") return scanned;
  expect(found !== null, `${path}: the kernel finds a pose`).toBe(scanned !== null);
  if (scanned === null || found === null) return "does not close";
  const corner = cornerOf(drawn, side);
  const state = stateIn(drawn, side, { input, travel, rod: corner.rod }, scanned);
  const off = corner.residuals(state.unknowns, state.at).map(Math.abs);
  expect(Math.max(...off), `${path}: the scan is off the Newton's equations by`).toBeLessThan(residue);
  expectSamePose(corner, state, found, path);
  return "closes";
}
