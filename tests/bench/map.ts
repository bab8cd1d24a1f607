import { compile } from "../../src/kinematics/compile.ts";
import type { Front } from "../../src/kinematics/front.ts";
import { Pose } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { spatialCar } from "../oracles/known.ts";

/** The map that every side of the kernel's bench solves: 41 racks of +-60 mm by 41 travels of +-100 mm, both wheels. */
export const places = 41;
export const rackAt = (row: number): number => -60 + (120 * row) / (places - 1);
export const travelAt = (column: number): number => -100 + (200 * column) / (places - 1);

export function frontOfBench(): Front {
  const front = compile(spatialCar);
  if ("refused" in front) throw new Error("the bench's car was refused");
  return front;
}

export function solveMap(front: Front, poses: Float64Array): void {
  for (let row = 0; row < places; row++) {
    for (let column = 0; column < places; column++) {
      const travel = travelAt(column);
      solve(front, rackAt(row), travel, travel, poses, (row * places + column) * Pose.Stride);
    }
  }
}
