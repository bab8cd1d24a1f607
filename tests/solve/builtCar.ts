import { type Study, studyOf } from "../../src/measures/study.ts";
import { triedOut } from "../../src/solve/adjusters/rebuilt.ts";
import { predictionsOf } from "../../src/solve/match/predictions.ts";
import type { CarReading } from "../../src/vehicle/car-readings/reading.ts";
import { quantityOf } from "../../src/vehicle/quantities.ts";
import { formatLength } from "../../src/vehicle/units/format.ts";

export const inch = 25.4;
export const degree = Math.PI / 180;

/** A car as it came out of the shop: places off by so much, mm or rad, and rods cut with the rack so far off its middle, mm. */
export function builtCar(plan: Study, off: Readonly<Record<string, number>>, rackOff: number): Study {
  const values = Object.fromEntries(
    Object.entries(off).map(([id, by]) => [id, plan.car.numbers[quantityOf(id).index] + by]),
  );
  const cutting = studied(triedOut(plan.car, { values: { ...values, "rack.straight-ahead": rackOff }, rods: "fit" }));
  return studied(triedOut(plan.car, { values, rods: { ...cutting.rodLengths } }));
}

function studied(car: Parameters<typeof studyOf>[0]): Study {
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

/** What a gauge shows of a value: the nearest whole step, or all of it. */
const shown = (value: number, step: number | undefined) =>
  step === undefined ? value : Math.round(value / step) * step;

/** What a reading is read to: plates a quarter of a degree, gauges a twentieth, tapes 1/16 in. */
export interface Steps {
  readonly plate: number;
  readonly gauge: number;
  readonly finder: number;
  readonly tape: number;
}

export const usualSteps: Steps = { plate: degree / 4, gauge: degree / 20, finder: degree / 4, tape: inch / 16 };

/** Where a careful builder puts the car and the gauges, without what they show. */
export interface Places {
  readonly racks: readonly number[];
  readonly travels: readonly number[];
  readonly tapes: readonly (readonly [from: string, to: string])[];
}

const wheels = ["left", "right"] as const;

/** The places of the example's readings: a rack in half inches, wheel travel in inches, tapes from the tabs. */
export function carefulPlaces({ wheelTravel }: Study): Places {
  return {
    racks: [0.5, 1, 1.5].map((inches) => inches * inch),
    travels: [-3, -2, -1, 1, 2, 3]
      .map((inches) => inches * inch)
      .filter((at) => at >= -wheelTravel.droop && at <= wheelTravel.bump),
    tapes: [
      ["left.tie-rod.outer", "left.lower-arm.joint"],
      ["right.tie-rod.outer", "right.lower-arm.joint"],
      ["left.tie-rod.outer", "left.upper-arm.joint"],
      ["right.tie-rod.outer", "right.upper-arm.joint"],
      ["left.tie-rod.outer", "right.tie-rod.outer"],
    ],
  };
}

/** The readings of a car, as its gauges show them, `error` (in deviations) added to each number first. */
export function readingsOf(
  built: Study,
  plan: Study,
  places: Places,
  steps: Steps | null,
  error = () => 0,
): readonly CarReading[] {
  const line = 1;
  const plate = { tolerance: degree / 2, line, left: 0, right: 0 };
  const blank: CarReading[] = [
    ...wheels.flatMap((turn) => {
      const way = turn === plan.inputLeftTurns ? 1 : -1;
      return [
        ...places.racks.map((rack): CarReading => ({ kind: "turn", turn, stood: way * rack, ...plate })),
        { kind: "turn", turn, stood: "lock", ...plate } as const,
      ];
    }),
    ...wheels.flatMap((wheel) =>
      places.travels.map(
        (travel): CarReading => ({ kind: "bump", wheel, travel, toe: 0, tolerance: degree / 10, line }),
      ),
    ),
    { kind: "toe", value: 0, tolerance: degree / 10, line },
    ...wheels.flatMap((wheel): CarReading[] => [
      { kind: "camber", wheel, value: 0, tolerance: degree / 4, line },
      { kind: "caster", wheel, value: 0, tolerance: degree / 2, line },
    ]),
    ...wheels.map((wheel): CarReading => ({ kind: "rod", wheel, value: 0, tolerance: inch / 16, line })),
    ...places.tapes.map(
      ([from, to]): CarReading => ({ kind: "between", from, to, value: 0, tolerance: inch / 16, line }),
    ),
  ];
  return blank.map((reading): CarReading => {
    const values = predictionsOf([reading], plan).map(({ predict, tolerance }) => {
      const value = predict(built);
      if (value === null) throw new Error(`${reading.kind} cannot be read on this car`);
      return value + (error() * tolerance) / 2;
    });
    const [one = 0, other = 0] = values;
    switch (reading.kind) {
      case "turn":
        return { ...reading, left: shown(one, steps?.plate), right: shown(other, steps?.plate) };
      case "bump":
        return { ...reading, toe: shown(one, steps?.gauge) };
      case "toe":
        return { ...reading, value: shown(one, steps?.gauge) };
      case "camber":
      case "caster":
        return { ...reading, value: shown(one, steps?.finder) };
      default:
        return { ...reading, value: shown(one, steps?.tape) };
    }
  });
}

const degrees = (rad: number) => String(Number((rad / degree).toFixed(4)));
const inches = (mm: number) => formatLength(mm, { unit: "in", exact: true });

/** The readings as a file, in inches. */
export function sheetOf(title: string, readings: readonly CarReading[]): string {
  const of = (kind: CarReading["kind"]) => readings.filter((each) => each.kind === kind);
  const rows = (kind: CarReading["kind"]) =>
    of(kind).map((reading) => {
      if (reading.kind === "turn") {
        const { stood, left, right, turn } = reading;
        const at =
          stood === "lock"
            ? "at: lock"
            : `rack: ${inches(Math.abs(stood ?? 0))} ${(stood ?? 0) > 0 ? "left" : "right"}`;
        return `    - { turn: ${turn}, ${at}, left: ${degrees(left ?? 0)}, right: ${degrees(right ?? 0)} }`;
      }
      if (reading.kind === "bump")
        return `    - { wheel: ${reading.wheel}, travel: ${inches(reading.travel)}, toe: ${degrees(reading.toe)} }`;
      if (reading.kind === "between")
        return `    - { from: ${reading.from}, to: ${reading.to}, is: ${inches(reading.value)} }`;
      throw new Error(`${reading.kind} has no rows`);
    });
  const pair = (kind: "camber" | "caster" | "rod", say: (value: number) => string) =>
    of(kind).flatMap((reading) =>
      "wheel" in reading && "value" in reading ? [`${reading.wheel}: ${say(reading.value)}`] : [],
    );
  const toe = of("toe").flatMap((reading) => ("value" in reading ? [`toe: ${degrees(reading.value)} deg`] : []));
  return [
    `title: ${title}`,
    "units: in",
    "turn-plates:",
    "  rows:",
    ...rows("turn"),
    "bump-gauge:",
    "  rows:",
    ...rows("bump"),
    ...toe,
    `camber: { ${pair("camber", degrees).join(", ")} }`,
    `caster: { ${pair("caster", degrees).join(", ")} }`,
    `rods: { ${pair("rod", inches).join(", ")} }`,
    "lengths:",
    "  rows:",
    ...rows("between"),
    "",
  ].join("\n");
}
