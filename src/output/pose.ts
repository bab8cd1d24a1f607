import type { WheelFigure } from "../measures/figure.ts";
import { wheelFigures } from "../measures/figures.ts";
import { type Place, pointsOf, sideAt, type WheelPoints } from "../measures/points.ts";
import type { Study } from "../measures/study.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { assumedMark, isAssumedAngle } from "./assumed.ts";
import { inputFigure } from "./column.ts";
import type { Json } from "./json.ts";
import { inUnits, unitName, unitsOf, written } from "./numbers.ts";
import { table } from "./table.ts";
import { inputPlace, type Length, travelPlace } from "./words.ts";

/** A place that was asked for. */
export interface Asked {
  /** mm of rack or rad of column. */
  readonly input: number;
  /** Travel of each wheel, mm. */
  readonly left: number;
  readonly right: number;
}

/** The figures that JSON gives of each wheel; text shows all that the list has. */
const inJson = [
  "steer",
  "toe",
  "camber",
  "caster",
  "kpi",
  "scrubRadius",
  "trail",
  "tieRodLength",
  "leverArm",
  "transmissionAngle",
] as const;

/** A pose that closes, as JSON. `pose` is a buffer of one. */
export function poseJson(study: Study, asked: Asked, pose: Float64Array, unit: LengthUnit): Json {
  const side = (wheel: Wheel): Json => {
    const values = wheelFigures.filter(({ id }) => inJson.some((each) => each === id));
    return {
      travel: inUnits(asked[wheel], "length", unit),
      ...Object.fromEntries(values.map((figure) => [figure.id, figureValue(study, figure, pose, wheel, unit)])),
      points: pointsJson(pointsOf(pose, wheel, study.tireRadius), unit),
    };
  };
  return {
    units: unitsOf(unit),
    [study.inputKind]: inUnits(asked.input, inputFigure(study.inputKind), unit),
    left: side("left"),
    right: side("right"),
  };
}

function figureValue(
  study: Study,
  figure: WheelFigure,
  pose: Float64Array,
  wheel: Wheel,
  unit: LengthUnit,
): number | null {
  const value = figure.read(pose, sideAt(wheel), study);
  return value === null ? null : inUnits(value, figure.kind, unit);
}

function pointsJson(points: WheelPoints | null, unit: LengthUnit): Json {
  if (points === null) return null;
  const place = (at: Place) => at.map((each) => inUnits(each, "length", unit));
  return Object.fromEntries(Object.entries(points).map(([name, at]) => [name, place(at)]));
}

const pointNames: Readonly<Record<keyof WheelPoints, string>> = {
  lowerJoint: "lower joint",
  upperJoint: "upper joint",
  tieRodOuter: "tie rod, outer end",
  tieRodInner: "tie rod, inner end",
  wheelCenter: "wheel centre",
  contact: "tyre on the ground",
};

/** A pose that closes, for reading. */
export function poseText(study: Study, asked: Asked, pose: Float64Array, unit: LengthUnit, length: Length): string[] {
  return [
    study.car.title,
    `${capital(inputPlace(study, asked.input, length))}; ${wheelPlaces(asked, length)}.`,
    "",
    ...table([["", "unit", "left", "right", "positive"]], figureRows(study, pose, unit), [0, 1, 4]),
    "",
    `Points, ${unit}: ahead of the axle line, to the driver's left of the middle, up from the`,
    "ground at ride height",
    "",
    ...table(
      [["", "ahead", "left", "up"]],
      [...pointRows(study, pose, "left", unit), ...pointRows(study, pose, "right", unit)],
      [0],
    ),
  ];
}

function wheelPlaces({ left, right }: Asked, length: Length): string {
  const [leftPlace, rightPlace] = [travelPlace(left, length), travelPlace(right, length)];
  return leftPlace === rightPlace
    ? `both wheels at ${leftPlace}`
    : `left wheel at ${leftPlace}, right wheel at ${rightPlace}`;
}

function figureRows(study: Study, pose: Float64Array, unit: LengthUnit): string[][] {
  return wheelFigures.map((figure) => {
    const cell = (wheel: Wheel) => {
      const value = figure.read(pose, sideAt(wheel), study);
      const mark = isAssumedAngle(study.car, figure.id, wheel) ? assumedMark : "";
      return value === null ? "-" : `${mark}${written(value, figure.kind, unit)}`;
    };
    return [figure.label, unitName(figure.kind, unit), cell("left"), cell("right"), figure.sign];
  });
}

function pointRows(study: Study, pose: Float64Array, wheel: Wheel, unit: LengthUnit): string[][] {
  const points = pointsOf(pose, wheel, study.tireRadius);
  if (points === null) return [];
  return (Object.keys(pointNames) as (keyof WheelPoints)[]).map((key) => [
    `${wheel} ${pointNames[key]}`,
    ...points[key].map((each) => written(each, "length", unit)),
  ]);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
