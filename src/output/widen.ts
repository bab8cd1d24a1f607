import { carFigures } from "../measures/carFigures.ts";
import type { FigureKind } from "../measures/figure.ts";
import { sideAt } from "../measures/points.ts";
import { scrubRadiusFigure } from "../measures/scrubRadius.ts";
import type { Study } from "../measures/study.ts";
import type { Widened, Widening } from "../solve/widen/widen.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { bewareOf } from "./beware.ts";
import type { Json } from "./json.ts";
import { inUnits, unitsOf, written } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { cautions, fixed, type Length } from "./words.ts";

/** What a report on widening is made from. */
export interface WidenReport {
  readonly study: Study;
  /** mm a side. */
  readonly by: number;
  readonly ways: readonly Widening[];
}

/** One figure by which the ways are compared. */
export interface Compared {
  readonly id: string;
  readonly kind: FigureKind;
  readonly label: string;
  readonly read: (study: Study) => number | null;
}

function scrub(wheel: Wheel): Compared {
  return {
    id: `scrubRadius${wheel === "left" ? "Left" : "Right"}`,
    kind: scrubRadiusFigure.kind,
    label: `${wheel} scrub radius`,
    read: (study) => scrubRadiusFigure.read(study.ridePose(study.zero ?? study.straightAhead), sideAt(wheel), study),
  };
}

function ofCar(id: string, label: string): Compared {
  const figure = carFigures.find((each) => each.id === id);
  if (figure === undefined) throw new Error(`no figure is called ${id}`);
  return { id, kind: figure.kind, label, read: figure.read };
}

/** The figures of a widened car that a builder looks at, in a table's short words. */
export const compared: readonly Compared[] = [
  ofCar("track", "track"),
  ofCar("overallWidth", "width over tyres"),
  scrub("left"),
  scrub("right"),
  ofCar("leftLockInner", "left lock, inner"),
  ofCar("rightLockInner", "right lock, inner"),
  ofCar("leftLockAckermann", "left Ackermann"),
  ofCar("rightLockAckermann", "right Ackermann"),
  ofCar("leftLockTurnRadius", "left turn radius"),
  ofCar("rightLockTurnRadius", "right turn radius"),
  ofCar("worstToeAcrossTyreLeft", "left worst toe in travel"),
  ofCar("worstToeAcrossTyreRight", "right worst toe in travel"),
  ofCar("worstBounceSteer", "worst bounce steer"),
  ofCar("leastRodAngleLeft", "left dead point"),
  ofCar("leastRodAngleRight", "right dead point"),
  ofCar("rodLengthLeft", "left tie rod"),
  ofCar("rodLengthRight", "right tie rod"),
];

/** A figure of one car for a reader, without its unit. */
export function comparedCell({ kind, read }: Compared, study: Study, unit: LengthUnit): string {
  const value = read(study);
  if (value === null) return "-";
  return kind === "angle" || kind === "percent" ? fixed(inUnits(value, kind, unit), 1) : written(value, kind, unit);
}

/** The unit that stands beside a figure's name. */
export function comparedUnit({ kind }: Compared, unit: LengthUnit): string {
  return kind === "angle" ? "°" : kind === "percent" ? "%" : unit;
}

export function isWidened(way: Widening): way is Widened {
  return "after" in way;
}

/** The ways to widen a car side by side, for reading. */
export function widenText({ study, by, ways }: WidenReport, unit: LengthUnit, length: Length): string[] {
  const done = ways.filter(isWidened);
  return [
    ...wrap(study.car.title, WIDTH),
    "",
    `Wider by ${length(by)} a side`,
    "",
    ...table(
      [["", "as it is", ...done.map(({ key }) => key)]],
      compared.map((each) => [
        `${each.label}, ${comparedUnit(each, unit)}`,
        comparedCell(each, study, unit),
        ...done.map(({ after }) => comparedCell(each, after, unit)),
      ]),
      [0],
    ),
    "",
    ...done.flatMap((way) => [
      ...wrap(`${way.title(length)}.`, WIDTH, `${way.key}: `, 4),
      ...wrap(way.tradeOff, WIDTH, "    "),
      ...bewareOf(study, way.after, length).flatMap((words) => wrap(`BEWARE: ${words}.`, WIDTH, "    ")),
      ...wrap(way.caution, WIDTH, "    "),
    ]),
    ...ways.flatMap((way) => (isWidened(way) ? [] : wrap(`${way.name}: ${way.why}.`, WIDTH, "Not here: ", 4))),
    "",
    ...wrap("Tubes of the frame stay where the file has them. --take prints the car widened in one way.", WIDTH),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

/** The same as JSON, numbers not rounded. */
export function widenJson({ study, by, ways }: WidenReport, unit: LengthUnit): Json {
  const say: Length = (mm) => `${written(mm, "length", unit)} ${unit}`;
  const figures = (of: Study) =>
    Object.fromEntries(
      compared.map(({ id, kind, read }) => {
        const value = read(of);
        return [id, value === null ? null : inUnits(value, kind, unit)];
      }),
    );
  return {
    units: unitsOf(unit),
    title: study.car.title,
    by: inUnits(by, "length", unit),
    now: figures(study),
    ways: ways.filter(isWidened).map((way) => ({
      key: way.key,
      what: way.title(say),
      tradeOff: way.tradeOff,
      caution: way.caution,
      figures: figures(way.after),
      text: way.text(),
    })),
    not: ways.flatMap((way) => (isWidened(way) ? [] : [{ key: way.key, name: way.name, why: way.why }])),
  };
}
