/** Where a search may look: from and to of each variable. */
export interface Box {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * What is to be made least. Where it is sure to be no less than `enough`, any value that is no less will do: what costs
 * much to work out is left out then.
 */
export type Cost = (x: Float64Array, enough: number) => number;

/** A place and what it costs. */
export interface Spot {
  readonly x: Float64Array;
  readonly cost: number;
}

export function within(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
