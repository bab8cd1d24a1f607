import type { Equations } from "../../src/solve/least-squares/equations.ts";
import { randomFrom } from "../../src/solve/search/random.ts";

export type Pair = readonly [number, number];
/** Points in space from distances between them, each read to a sigma of 1. */
export function network(points: number, pairs: readonly Pair[], read: readonly number[]): Equations {
  return {
    unknowns: 3 * points,
    readings: pairs.length,
    evaluate: (x, misfits, jacobian) => {
      jacobian?.fill(0);
      pairs.forEach(([a, b], i) => {
        const along = [0, 1, 2].map((k) => x[3 * a + k] - x[3 * b + k]);
        const distance = Math.hypot(...along);
        misfits[i] = distance - read[i];
        along.forEach((part, k) => {
          if (jacobian === null) return;
          jacobian[i * 3 * points + 3 * a + k] = part / distance;
          jacobian[i * 3 * points + 3 * b + k] = -part / distance;
        });
      });
      return true;
    },
  };
}

export function everyPair(points: number): readonly Pair[] {
  return Array.from({ length: points }, (_, a) => a).flatMap((a) =>
    Array.from({ length: points - a - 1 }, (_, b): Pair => [a, a + 1 + b]),
  );
}

export function scattered(points: number, seed: number): Float64Array {
  const random = randomFrom(seed);
  return Float64Array.from({ length: 3 * points }, () => 1500 * random());
}

export function distancesOf(x: Float64Array, pairs: readonly Pair[]): readonly number[] {
  return pairs.map(([a, b]) => Math.hypot(...[0, 1, 2].map((k) => x[3 * a + k] - x[3 * b + k])));
}

/** Of the first three points, what holds a network against shifts and turns. */
const HELD = [0, 1, 2, 3, 4, 6];

/** The same on a frame: six coordinates of the first three points are read too. */
export function framed(
  points: number,
  pairs: readonly Pair[],
  read: readonly number[],
  frame: Float64Array,
): Equations {
  const free = network(points, pairs, read);
  const size = 3 * points;
  return {
    unknowns: size,
    readings: pairs.length + HELD.length,
    evaluate: (x, misfits, jacobian) => {
      free.evaluate(x, misfits.subarray(0, pairs.length), jacobian?.subarray(0, pairs.length * size) ?? null);
      HELD.forEach((j, i) => {
        misfits[pairs.length + i] = x[j] - frame[j];
        if (jacobian === null) return;
        const row = jacobian.subarray((pairs.length + i) * size, (pairs.length + i + 1) * size);
        row.fill(0);
        row[j] = 1;
      });
      return true;
    },
  };
}
