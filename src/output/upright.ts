import { carFigures } from "../measures/carFigures.ts";
import type { FigureKind } from "../measures/figure.ts";
import { wheelFigures } from "../measures/figures.ts";
import { sideAt } from "../measures/points.ts";
import type { Study } from "../measures/study.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { hangOf, uprightOn } from "../vehicle/hang.ts";
import { numberIn } from "../vehicle/starting/place.ts";
import { type UprightField, uprightFields } from "../vehicle/upright-fields.ts";
import { bewareOf } from "./beware.ts";
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

/** A figure as it is read of a car. */
interface Told {
  readonly label: string;
  readonly kind: FigureKind;
  readonly read: (study: Study) => number | null;
}

const ofWheels: readonly (readonly Told[])[] = wheelFigures
  .filter(({ id }) => wheelIds.some((each) => each === id))
  .map(({ label, kind, read }) =>
    wheels.map((wheel) => ({
      label: `${label}, ${wheel}`,
      kind,
      read: (study) => read(study.ridePose(study.zero ?? study.straightAhead), sideAt(wheel), study),
    })),
  );

const ofCar: readonly Told[] = carFigures.filter(({ id }) => carIds.some((each) => each === id));

/** "9.73 -> 10.26 deg"; null where nothing is seen of it. */
function changeOf({ kind, read }: Told, before: Study, after: Study, unit: LengthUnit): string | null {
  const [from, to] = [before, after].map((study) => {
    const value = read(study);
    return value === null ? "-" : written(value, kind, unit);
  });
  return from === to ? null : `${from} -> ${to} ${unitName(kind, unit)}`;
}

/** What became of the figures that an upright sets: "Left lock, inner wheel 31.82 -> 31.56 deg"; both wheels once where alike. */
export function changesOf(before: Study, after: Study, unit: LengthUnit): readonly string[] {
  const said = (told: Told) => {
    const change = changeOf(told, before, after, unit);
    return change === null ? [] : [`${told.label} ${change}`];
  };
  const pairs = ofWheels.flatMap((pair) => {
    const [first, ...others] = pair.map((each) => changeOf(each, before, after, unit));
    const alike = first !== null && others.every((each) => each === first);
    return alike ? [`${(pair[0]?.label ?? "").replace(/, left$/, "")} ${first}`] : pair.flatMap(said);
  });
  return [...pairs, ...ofCar.flatMap(said)];
}

/** How far a wheel's centre went, as "1/32 in higher and 3/32 in back"; "" where it stayed. */
function moveOf(before: Study, after: Study, wheel: Wheel, length: Length): string {
  const by = (way: "ahead" | "up") => {
    const id = `${wheel}.wheel.center.${way}`;
    return numberIn(after.car.numbers, id) - numberIn(before.car.numbers, id);
  };
  const said = (
    [
      [by("up"), "higher", "lower"],
      [by("ahead"), "forward", "back"],
    ] as const
  ).flatMap(([mm, more, less]) => {
    const size = length(Math.abs(mm));
    return size === length(0) ? [] : [`${size} ${mm > 0 ? more : less}`];
  });
  return said.join(" and ");
}

/** Where the wheels' centres go, which have to stand at the tyre's loaded radius; null where they stay. */
export function moveWords(before: Study, after: Study, length: Length): string | null {
  const [left = "", right = ""] = wheels.map((wheel) => moveOf(before, after, wheel, length));
  if (left === "" && right === "") return null;
  const moves = left === right ? left : [left && `left ${left}`, right && `right ${right}`].filter(Boolean).join(", ");
  return `With the lower joints where they were the wheel centres come ${moves}: set springs or arms so that the car stands as drawn.`;
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
  const moves = moveWords(before, after, length);
  const changes = changesOf(before, after, unit);
  return [
    ...uprightText(after, unit),
    "",
    "What it does:",
    ...(changes.length === 0 ? ["  nothing that is seen"] : changes.map((each) => `  ${each}`)),
    ...bewareOf(before, after, length).flatMap((words) => wrap(`${words}.`, WIDTH, "  BEWARE: ", 10)),
    ...(moves === null ? [] : ["", ...wrap(moves, WIDTH)]),
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
