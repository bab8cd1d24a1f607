import { carFigures } from "../measures/carFigures.ts";
import { wheelFigures } from "../measures/figures.ts";
import { sideAt } from "../measures/points.ts";
import type { Study } from "../measures/study.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { hangOf, uprightOn } from "../vehicle/hang.ts";
import { numberIn } from "../vehicle/starting/place.ts";
import { type UprightField, uprightFields } from "../vehicle/upright-fields.ts";
import type { Json } from "./json.ts";
import { inUnits, unitName, unitsOf, written } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import type { Length } from "./words.ts";

const wheels = ["left", "right"] as const;

/** A measure of a wheel's upright, or of how it hangs, mm or rad. */
export function uprightValue({ car }: Pick<Study, "car">, wheel: Wheel, { key }: UprightField): number {
  return { ...uprightOn(car, wheel), ...hangOf(car, wheel) }[key];
}

/** What hanging it otherwise changes, by the figures' ids. */
const wheelIds = ["kpi", "scrubRadius", "trail"] as const;
const carIds = [
  "leftLockInner",
  "rightLockInner",
  "leftLockAckermann",
  "rightLockAckermann",
  "rodLengthLeft",
  "rodLengthRight",
  "track",
] as const;

interface Told {
  readonly label: string;
  readonly kind: "length" | "angle" | "percent" | "angle-per-length";
  readonly value: number | null;
}

/** The figures that an upright sets, of a car that stands straight at ride height. */
function toldOf(study: Study): readonly Told[] {
  const pose = study.ridePose(study.zero ?? study.straightAhead);
  const ofWheels = wheelFigures
    .filter(({ id }) => wheelIds.some((each) => each === id))
    .flatMap(({ label, kind, read }) =>
      wheels.map((wheel) => ({ label: `${label}, ${wheel}`, kind, value: read(pose, sideAt(wheel), study) })),
    );
  const ofCar = carFigures
    .filter(({ id }) => carIds.some((each) => each === id))
    .map(({ label, kind, read }) => ({ label, kind, value: read(study) }));
  return [...ofWheels, ...ofCar];
}

/** What was said of a figure before and after, where it changed: "Left lock, inner wheel 31.8 -> 32.4 deg". */
export function changesOf(before: Study, after: Study, unit: LengthUnit): readonly string[] {
  const now = toldOf(after);
  return toldOf(before).flatMap(({ label, kind, value }, i) => {
    const other = now[i]?.value ?? null;
    const [from, to] = [value, other].map((each) => (each === null ? "-" : written(each, kind, unit)));
    return from === to ? [] : [`${label} ${from} -> ${to} ${unitName(kind, unit)}`];
  });
}

/** How far the wheel's centre rose, which has to stand at the tyre's loaded radius; null where it stays. */
export function heightWords(before: Study, after: Study, length: Length): string | null {
  const rise = (wheel: Wheel) =>
    numberIn(after.car.numbers, `${wheel}.wheel.center.up`) - numberIn(before.car.numbers, `${wheel}.wheel.center.up`);
  const said = wheels.flatMap((wheel) => {
    const by = rise(wheel);
    return length(Math.abs(by)) === length(0)
      ? []
      : [`${wheel} ${length(Math.abs(by))} ${by > 0 ? "higher" : "lower"}`];
  });
  if (said.length === 0) return null;
  return `Drawn with the lower joints where they were, the wheel centres come ${said.join(", ")}: set the springs so that the car stands as drawn, or move the arms.`;
}

/** A car's uprights as they would lie on the bench, and how they hang. */
export function uprightText(study: Study, unit: LengthUnit): string[] {
  const rows = uprightFields.map((each) => [
    each.name,
    unitName(each.kind, unit),
    ...wheels.map((wheel) => written(uprightValue(study, wheel, each), each.kind, unit)),
  ]);
  return [
    ...wrap(study.car.title, WIDTH),
    ...wrap("The uprights as they lie on the bench, the king-pin line (through both joints) upright.", WIDTH),
    "",
    ...table([["", "unit", "left", "right"]], rows, [0, 1]),
    "",
    ...uprightFields.flatMap(({ name, help }) => wrap(`${name}: ${help}`, WIDTH, "  ", 4)),
  ];
}

/** What a change of the uprights does. */
export function uprightChangeText(before: Study, after: Study, unit: LengthUnit, length: Length): string[] {
  const height = heightWords(before, after, length);
  const changes = changesOf(before, after, unit);
  return [
    ...uprightText(after, unit),
    "",
    "What it does:",
    ...(changes.length === 0 ? ["  nothing that is seen"] : changes.map((each) => `  ${each}`)),
    ...(height === null ? [] : ["", ...wrap(height, WIDTH)]),
  ];
}

/** The same as JSON. */
export function uprightJson(study: Study, unit: LengthUnit): Json {
  const side = (wheel: Wheel): Json =>
    Object.fromEntries(
      uprightFields.map((each) => [each.key, inUnits(uprightValue(study, wheel, each), each.kind, unit)]),
    );
  return { units: unitsOf(unit), left: side("left"), right: side("right") };
}
