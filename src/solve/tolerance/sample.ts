import { quantileSorted } from "simple-statistics";

/** What is read of one build after the other; a build of which it cannot be told has no value. */
export interface Sample {
  readonly values: Float64Array;
  readonly told: Uint8Array;
}

export function newSample(builds: number): Sample {
  return { values: new Float64Array(builds), told: new Uint8Array(builds) };
}

export function put({ values, told }: Sample, at: number, value: number | null): void {
  if (value === null) return;
  values[at] = value;
  told[at] = 1;
}

/** What 5, 50 and 95 of 100 builds do not exceed, and of how many builds it could be told. */
export interface Spread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly told: number;
}

/** The shares of builds that a spread tells. */
export const SHARES = { low: 0.05, middle: 0.5, high: 0.95 } as const;

/** The values that were told among the first `count`, the least first. */
export function sorted({ values, told }: Sample, count: number, bySize = false): Float64Array {
  const of = values.subarray(0, count).filter((_, i) => told[i] === 1);
  return (bySize ? of.map(Math.abs) : of).sort();
}

/** The spread of the first `count` builds; null where it could be told of none. `bySize`: of its size, without its sign. */
export function spreadOf(sample: Sample, count: number, bySize = false): Spread | null {
  const of = [...sorted(sample, count, bySize)];
  if (of.length === 0) return null;
  const at = (share: number) => quantileSorted(of, share);
  return { low: at(SHARES.low), middle: at(SHARES.middle), high: at(SHARES.high), told: of.length };
}
