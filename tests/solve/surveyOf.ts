import type { Drawn, Point } from "../../src/kinematics/drawn.ts";
import { floorMarks, planOf, type ToTake } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import { readingName } from "../../src/vehicle/survey/readings.ts";
import type { Survey, VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { inch } from "../../src/vehicle/units/length.ts";

/** What a tape, a level and a plumb line show of points that stand somewhere, worked out apart from the program. */
export function shownBy({ kind, names }: ToTake, at: (name: string) => VehiclePlace): number {
  const [first, second] = names;
  const [x, y, z] = at(first);
  const [u, v, w] = second === undefined ? [0, 0, 0] : at(second);
  switch (kind) {
    case "height":
      return z - w;
    case "ahead":
      return x - u;
    case "out":
      return first.startsWith("right") ? v - y : y - v;
    case "distance":
      return Math.sqrt((x - u) ** 2 + (y - v) ** 2 + (z - w) ** 2);
    case "plumb":
      return Math.sqrt((x - u) ** 2 + (y - v) ** 2);
    case "angle":
      return Math.asin((w - z) / Math.sqrt((x - u) ** 2 + (y - v) ** 2 + (z - w) ** 2));
    case "line": {
      const [p, q] = at(names[2]);
      const [a, b] = [p - u, q - v];
      const share = ((x - u) * a + (y - v) * b) / (a * a + b * b);
      return Math.sqrt((x - u - share * a) ** 2 + (y - v - share * b) ** 2);
    }
  }
}

/** A sheet of readings of points whose places are known, each off by so many of its sigmas as `error` says. */
export function surveyOf(
  form: SurveyForm,
  at: (name: string) => VehiclePlace,
  {
    taken = planOf(form),
    error = () => 0,
    sigma = inch / 16,
    more = {},
  }: {
    taken?: readonly ToTake[];
    error?: (reading: number) => number;
    sigma?: number;
    more?: Partial<Survey>;
  } = {},
): Survey {
  const points = more.points ?? [...pointsOf(form), ...floorMarks];
  const readings = taken.map((each, i) => ({
    kind: each.kind,
    points: each.names.map((name) => {
      const found = points.findIndex((point) => point.name === name);
      if (found < 0) throw new Error(`no point ${name}`);
      return found;
    }),
    value: shownBy(each, at) + sigma * error(i),
    sigma,
    name: readingName(each.kind, each.names),
    line: i + 1,
  }));
  return {
    title: "Known car",
    units: "in",
    form,
    tolerance: 2 * sigma,
    points,
    readings,
    mirrors: new Map(),
    rough: new Map(),
    given: new Map(),
    words: new Map(),
    ...more,
  };
}

/** What a sheet calls the kernel's points of a corner. */
const cornerNames: Readonly<Record<string, string>> = {
  lowerFront: "lower-arm.front",
  lowerRear: "lower-arm.rear",
  upperFront: "upper-arm.front",
  upperRear: "upper-arm.rear",
  lowerPivot: "lower-arm.pivot",
  upperPivot: "upper-arm.pivot",
  top: "strut.top",
  bottom: "strut.bottom",
  beamFront: "beam.pivot",
  beamRear: "beam.brace",
};

function jointName(kind: Drawn["linkage"]["kind"], key: string): string {
  const pinned = kind === "pivoting-beam" || kind === "fixed-kingpin";
  if (key === "lowerJoint") return pinned ? "king-pin.lower" : "lower-arm.joint";
  if (key === "upperJoint") return pinned ? "king-pin.upper" : "upper-arm.joint";
  return cornerNames[key];
}

/** Where everything on a drawn car is, by the names that a sheet has for it, in the vehicle's frame; the floor marks beside it. */
export function placesOfDrawn({ linkage, mechanism, left, right }: Drawn): ReadonlyMap<string, VehiclePlace> {
  const at = new Map<string, VehiclePlace>();
  const put = (name: string, { x, y, z }: Point, hand = 1) => at.set(name, [x, hand * y, z]);
  for (const side of ["left", "right"] as const) {
    const hand = side === "left" ? 1 : -1;
    const corner = side === "left" ? left : right;
    for (const [key, point] of Object.entries(linkage[side]))
      put(`${side} ${jointName(linkage.kind, key)}`, point as Point, hand);
    put(`${side} tie-rod.outer`, corner.tieRodOuter, hand);
    put(`${side} wheel.center`, corner.wheelCenter, hand);
    at.set(`${side} floor mark`, [0, hand * 0.65 * corner.wheelCenter.y, 0]);
    if (mechanism.kind === "centre-rack" || mechanism.kind === "steering-plate")
      put(`${side} eye`, side === "left" ? mechanism.leftEye : mechanism.rightEye, hand);
    if (mechanism.kind === "relay") put(`${side} eye`, side === "left" ? mechanism.leftEye : mechanism.rightEye);
    if (mechanism.kind === "rack") {
      const along = (hand * mechanism.eyeToEye) / 2 + mechanism.straightAhead;
      at.set(`${side} eye`, [
        mechanism.ahead,
        mechanism.offset + along * Math.cos(mechanism.tilt),
        mechanism.up + along * Math.sin(mechanism.tilt),
      ]);
    }
  }
  if (mechanism.kind === "steering-plate") put("column", mechanism.foot);
  if (mechanism.kind === "relay")
    for (const arm of ["pitman", "idler"] as const) {
      put(`${arm}.pivot`, mechanism[`${arm}Pivot`]);
      put(`${arm}.joint`, mechanism[`${arm}Joint`]);
    }
  return at;
}
