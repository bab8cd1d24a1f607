import type { Study } from "../../measures/study.ts";
import { type Difference, differences } from "../../vehicle/differences.ts";
import type { CheckReport } from "../check/report.ts";
import { type Reading, readings } from "../sensitivity/readings.ts";
import { type CheckRow, checkRows } from "./checks.ts";

/** A car that is compared: what it is called, its study, and how it came through the checks. */
export interface Compared {
  readonly name: string;
  readonly study: Study;
  readonly checks: CheckReport;
}

/** A figure of every car, in their order; null where it cannot be told. mm, rad, rad/mm or percent. */
export interface FigureRow {
  readonly reading: Reading;
  readonly values: readonly (number | null)[];
  /** Each less the first car's; of a worst value, whose sign is that of the worse end of the travel, by their sizes. */
  readonly changes: readonly (number | null)[];
}

/** Cars beside each other, the first of them what the others are held against. */
export interface Comparison {
  readonly cars: readonly Compared[];
  readonly inputs: readonly Difference[];
  /** Every figure that can be told of any car. */
  readonly figures: readonly FigureRow[];
  /** Every checked thing, the same or not. */
  readonly checks: readonly CheckRow[];
}

function figureRow(reading: Reading, cars: readonly Compared[]): FigureRow {
  const values = cars.map(({ study }) => reading.read(study));
  const size = (value: number) => (reading.bySize ? Math.abs(value) : value);
  const [first = null] = values;
  return {
    reading,
    values,
    changes: values.map((value) => (value === null || first === null ? null : size(value) - size(first))),
  };
}

/** Compares cars: what differs of what was put in, every figure, every check. */
export function compare(cars: readonly Compared[]): Comparison {
  return {
    cars,
    inputs: differences(cars.map(({ study }) => study.car)),
    figures: readings
      .map((reading) => figureRow(reading, cars))
      .filter(({ values }) => values.some((value) => value !== null)),
    checks: checkRows(cars.map((each) => each.checks)),
  };
}
