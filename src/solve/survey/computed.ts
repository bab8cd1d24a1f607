import type { Kind, SurveyReading } from "../../vehicle/survey/readings.ts";

/**
 * What a reading is between points that stand somewhere: writes the derivatives by the points' coordinates (three a point,
 * in the reading's order) and gives the value, mm or rad. `places` has three coordinates a point: ahead, left, up.
 *
 * With r from the first point p to the second q: a distance is |r|, its derivative by q the unit vector along r; between
 * plumb marks the same in plan. The angle from level is atan2(r_z, h), h the length of r in plan. The distance of p in plan
 * from the line through a and b is |(b − a) × (p − a)| / |b − a|; it goes with a and b by the share of p's foot along the line.
 */
export function computed(
  { kind, points }: Pick<SurveyReading, "kind" | "points">,
  outward: number,
  places: Float64Array,
  partials: Float64Array,
): number {
  partials.fill(0);
  const [p = 0, q = -1, s = -1] = points;
  const along = (axis: number) => places[3 * q + axis] - places[3 * p + axis];
  switch (kind) {
    case "distance":
      return distance([along(0), along(1), along(2)], partials);
    case "plumb":
      return distance([along(0), along(1), 0], partials);
    case "angle":
      return angle(along(0), along(1), along(2), partials);
    case "line":
      return fromLine(places, [p, q, s], partials);
    default:
      return offset(kind, outward, places, p, q, partials);
  }
}

const axes = { ahead: 0, out: 1, height: 2 } as const;

function offset(
  kind: Extract<Kind, keyof typeof axes>,
  outward: number,
  places: Float64Array,
  p: number,
  q: number,
  partials: Float64Array,
): number {
  const axis = axes[kind];
  const sign = kind === "out" ? outward : 1;
  partials[axis] = sign;
  if (q >= 0) partials[3 + axis] = -sign;
  return sign * (places[3 * p + axis] - (q < 0 ? 0 : places[3 * q + axis]));
}

function distance(r: readonly [number, number, number], partials: Float64Array): number {
  const length = Math.hypot(...r);
  for (let axis = 0; axis < 3; axis++) {
    const share = length === 0 ? 0 : r[axis] / length;
    partials[axis] = -share;
    partials[3 + axis] = share;
  }
  return length;
}

function angle(x: number, y: number, z: number, partials: Float64Array): number {
  const plan = Math.hypot(x, y);
  const square = plan * plan + z * z;
  const byPlan = square === 0 ? 0 : -z / square;
  const by = [
    plan === 0 ? 0 : (byPlan * x) / plan,
    plan === 0 ? 0 : (byPlan * y) / plan,
    square === 0 ? 0 : plan / square,
  ];
  by.forEach((share, axis) => {
    partials[axis] = -share;
    partials[3 + axis] = share;
  });
  return Math.atan2(z, plan);
}

function fromLine(places: Float64Array, [p, a, b]: readonly [number, number, number], partials: Float64Array): number {
  const at = (point: number, axis: number) => places[3 * point + axis];
  const [x, y] = [at(b, 0) - at(a, 0), at(b, 1) - at(a, 1)];
  const [px, py] = [at(p, 0) - at(a, 0), at(p, 1) - at(a, 1)];
  const length = Math.hypot(x, y);
  if (length === 0) return Math.hypot(px, py);
  const signed = (x * py - y * px) / length;
  const way = signed < 0 ? -1 : 1;
  const foot = (px * x + py * y) / (length * length);
  [(-way * y) / length, (way * x) / length].forEach((share, axis) => {
    partials[axis] = share;
    partials[3 + axis] = -share * (1 - foot);
    partials[6 + axis] = -share * foot;
  });
  return way * signed;
}
