import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { plainName } from "../../vehicle/survey/points.ts";
import type { Survey } from "../../vehicle/survey/survey.ts";
import { dot } from "../least-squares/row.ts";
import { equationsOf, type Held } from "./equations.ts";
import { placesFrom, type Unknowns } from "./unknowns.ts";

/** A way in which the whole can be moved without any reading noticing. */
export type Freedom = "fore and aft" | "sideways" | "up and down" | "leaning" | "pitching" | "turning in plan";

const freedoms: readonly Freedom[] = [
  "fore and aft",
  "sideways",
  "up and down",
  "leaning",
  "pitching",
  "turning in plan",
];

/** A turn of so much moves a front end's points by about 1, 1/mm: half a metre is how far they stand from its middle. */
const lever = 1 / 500;

/** Which way a motion of the whole takes a place: along an axis, or about one through the origin. */
function motionOf(freedom: number, x: number, y: number, z: number): readonly [number, number, number] {
  const turns: readonly (readonly [number, number, number])[] = [
    [0, -z * lever, y * lever],
    [z * lever, 0, -x * lever],
    [-y * lever, x * lever, 0],
  ];
  if (freedom >= 3) return turns[freedom - 3] ?? [0, 0, 0];
  return [freedom === 0 ? 1 : 0, freedom === 1 ? 1 : 0, freedom === 2 ? 1 : 0];
}

/** What a motion of the whole does to the unknowns; null where a point and its mirror image could not both go along. */
function inUnknowns({ count, at, sign }: Unknowns, places: Float64Array, freedom: number): Float64Array | null {
  const moved = new Float64Array(count);
  const known = new Uint8Array(count);
  for (let point = 0; 3 * point < places.length; point++) {
    const motion = motionOf(freedom, places[3 * point], places[3 * point + 1], places[3 * point + 2]);
    for (let axis = 0; axis < 3; axis++) {
      const unknown = at[3 * point + axis];
      if (unknown < 0) continue;
      const move = sign[3 * point + axis] * motion[axis];
      if (known[unknown] === 1 && Math.abs(moved[unknown] - move) > 1e-9) return null;
      moved[unknown] = move;
      known[unknown] = 1;
    }
  }
  return moved;
}

/**
 * The front-axle line goes through the wheel centres: their mean is its place fore and aft. Held where no reading is taken
 * from the line itself, and both centres are among the unknowns; else null.
 */
export function axleHeld({ points, readings }: Survey, { count, at }: Unknowns): Held | null {
  if (readings.some(({ kind, points: { length } }) => kind === "ahead" && length === 1)) return null;
  const by = new Float64Array(count);
  for (const wheel of ["left", "right"]) {
    const center = points.findIndex(({ name }) => plainName(name) === `${wheel} wheel center`);
    const unknown = at[3 * center];
    if (center < 0 || unknown < 0) return null;
    by[unknown] = by[unknown] + 0.5;
  }
  return { by, at: 0 };
}

/** Less than this share of what a motion does to the points is seen in readings: it is free, but for rounding. */
const unseen = 1e-6;

/** What is free of the whole at a place, and what to hold so that it stays there (inner constraints). */
export function freedomsAt(
  survey: Survey,
  unknowns: Unknowns,
  held: readonly Held[],
  x: Float64Array,
): { readonly free: readonly Freedom[]; readonly held: readonly Held[] } {
  const { count } = unknowns;
  const equations = equationsOf(survey, unknowns, held);
  const jacobian = new Float64Array(equations.readings * count);
  equations.evaluate(x, new Float64Array(equations.readings), jacobian);
  const places = new Float64Array(3 * survey.points.length);
  placesFrom(unknowns, x, places);
  const motions = freedoms.flatMap((freedom, i) => {
    const by = inUnknowns(unknowns, places, i);
    return by === null ? [] : [{ freedom, by }];
  });
  const seen = Array.from({ length: equations.readings }, (_, row) => {
    const derivatives = jacobian.subarray(row * count, (row + 1) * count);
    return motions.map(({ by }) => dot(derivatives, by));
  });
  const gram = motions.map((_, i) => motions.map((_, j) => seen.reduce((sum, row) => sum + row[i] * row[j], 0)));
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(new Matrix(gram), {
    assumeSymmetric: true,
  });
  const most = Math.max(...realEigenvalues, 1);
  const free = new Set<Freedom>();
  const kept: Held[] = [];
  realEigenvalues.forEach((value, k) => {
    if (value > most * unseen * unseen) return;
    const by = new Float64Array(count);
    motions.forEach((motion, i) => {
      const share = eigenvectorMatrix.get(i, k);
      motion.by.forEach((each, j) => {
        by[j] = by[j] + share * each;
      });
    });
    const length = Math.hypot(...by);
    if (length < 1e-6) return;
    const unit = by.map((each) => each / length);
    kept.push({ by: unit, at: dot(unit, x) });
    motions.forEach(({ freedom }, i) => {
      if (Math.abs(eigenvectorMatrix.get(i, k)) > 0.3) free.add(freedom);
    });
  });
  return { free: freedoms.filter((each) => free.has(each)), held: kept };
}
