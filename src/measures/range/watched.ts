import type { Wheel } from "../../vehicle/car.ts";

/** A place in the range: mm of rack or rad of column, and mm of wheel travel. */
export interface RangePlace {
  readonly input: number;
  readonly travel: number;
}

/** Something of one wheel that is watched over the whole range; the lower it gets, the worse. */
export interface Watched {
  readonly wheel: Wheel;
  /**
   * Its value in a pose whose side starts at `at` and closes: mm or rad; where that is no less than `enough`, any value that
   * is no less either will do.
   */
  readonly read: (poses: Float64Array, at: number, enough?: number) => number;
}
