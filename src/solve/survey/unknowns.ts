import type { Survey } from "../../vehicle/survey/survey.ts";

/**
 * What is looked for: the coordinates (ahead, left, up; mm) of the points that readings name. A point that mirrors another
 * has that one's unknowns, its sideways one with the sign turned.
 */
export interface Unknowns {
  readonly count: number;
  /** Of each coordinate of each point, 3 × point + axis: its unknown, -1 where the point has none, and its sign. */
  readonly at: Int32Array;
  readonly sign: Float64Array;
  /** The points that have unknowns, by their places in the list. */
  readonly points: readonly number[];
}

/** The unknowns of a sheet. */
export function unknownsOf({ points, readings, mirrors }: Survey): Unknowns {
  const named = new Set(readings.flatMap((reading) => reading.points));
  const at = new Int32Array(3 * points.length).fill(-1);
  const sign = new Float64Array(3 * points.length).fill(1);
  let count = 0;
  const begin = (point: number) => {
    for (let axis = 0; axis < 3; axis++) if (at[3 * point + axis] === -1) at[3 * point + axis] = count++;
  };
  for (const [right, left] of mirrors) {
    if (!named.has(right) && !named.has(left)) continue;
    begin(left);
    for (let axis = 0; axis < 3; axis++) at[3 * right + axis] = at[3 * left + axis];
    sign[3 * right + 1] = -1;
  }
  for (const point of named) begin(point);
  return { count, at, sign, points: points.map((_, i) => i).filter((i) => at[3 * i] !== -1) };
}

/** Where every point is for some unknowns; points without unknowns stay where they are in `places`. */
export function placesFrom({ at, sign }: Unknowns, x: Float64Array, places: Float64Array): void {
  for (let i = 0; i < places.length; i++) {
    const unknown = at[i];
    if (unknown >= 0) places[i] = sign[i] * x[unknown];
  }
}

/** The unknowns that give these places; of a point and its mirror image the mean. */
export function unknownsFrom({ count, at, sign }: Unknowns, places: Float64Array): Float64Array {
  const x = new Float64Array(count);
  const times = new Float64Array(count);
  for (let i = 0; i < places.length; i++) {
    const unknown = at[i];
    if (unknown < 0) continue;
    x[unknown] = x[unknown] + sign[i] * places[i];
    times[unknown] = times[unknown] + 1;
  }
  return x.map((sum, i) => sum / times[i]);
}
