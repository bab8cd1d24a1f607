import type { FigureKind } from "../measures/figure.ts";
import type { Count } from "../solve/tolerance/chance.ts";
import type { Judge } from "../solve/tolerance/judged.ts";
import type { Carrier, FigureSpread, Tolerance } from "../solve/tolerance/result.ts";
import type { Spread } from "../solve/tolerance/sample.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import type { QuantityKind } from "../vehicle/quantity.ts";
import type { Column } from "./column.ts";
import { csv } from "./csv.ts";
import type { Json } from "./json.ts";
import { inUnits, unitName, unitsOf } from "./numbers.ts";

function told(value: number | null | undefined, kind: FigureKind, unit: LengthUnit): number | null {
  return value === null || value === undefined ? null : inUnits(value, kind, unit);
}

function spreadJson(spread: Spread | null, kind: FigureKind, unit: LengthUnit): Json {
  return spread === null
    ? null
    : {
        p5: told(spread.low, kind, unit),
        p50: told(spread.middle, kind, unit),
        p95: told(spread.high, kind, unit),
        of: spread.told,
      };
}

/** A line's numbers are in the unit that it names. */
function columns(unit: LengthUnit): readonly Column<FigureSpread>[] {
  const column = (path: string, read: (row: FigureSpread) => string | number | null): Column<FigureSpread> => ({
    path: [path],
    kind: "word",
    sign: "",
    read,
  });
  const number = (path: string, read: (row: FigureSpread) => number | null | undefined) =>
    column(path, (row) => told(read(row), row.reading.kind, unit));
  return [
    column("figure", ({ reading }) => reading.id),
    column("label", ({ reading }) => reading.label),
    column("unit", ({ reading }) => unitName(reading.kind, unit)),
    number("set", ({ set }) => set),
    number("p5", ({ builds }) => builds?.low),
    number("p50", ({ builds }) => builds?.middle),
    number("p95", ({ builds }) => builds?.high),
    number("linear5", ({ linear }) => linear?.low),
    number("linear95", ({ linear }) => linear?.high),
    column("alike", ({ alike }) => (alike === null ? null : alike ? "yes" : "no")),
    column("builds", ({ builds }) => builds?.told ?? 0),
  ];
}

/** Every figure's spread as rows. */
export function toleranceCsv({ figures }: Tolerance, unit: LengthUnit): string {
  return csv(columns(unit), figures, unit);
}

const figureKind = (kind: QuantityKind | Judge["kind"]): FigureKind =>
  kind === "length" || kind === "angle" ? kind : "percent";

function countJson({ met, of, between }: Count): Json {
  return { met, of, between: [...between] };
}

function carrierJson({ pair, sides, share }: Carrier): Json {
  return { quantity: pair, sides, share };
}

/** The whole as JSON, numbers not rounded. */
export function toleranceJson(result: Tolerance, unit: LengthUnit): Json {
  const { study, asked, tried, apart, held, setAgain, figures, chances, all, jig, bands, done } = result;
  return {
    units: unitsOf(unit),
    title: study.car.title,
    seed: asked.seed,
    builds: tried,
    done,
    doNotGoTogether: apart,
    setAgain: {
      toe: "tie rods",
      arms: setAgain.arms === null ? null : { what: setAgain.arms.what, by: setAgain.arms.by },
    },
    tolerances: held.map(({ quantity, tolerance, from }) => ({
      quantity: quantity.id,
      tolerance: told(tolerance, figureKind(quantity.kind), unit),
      unit: quantity.kind === "angle" ? "deg" : unit,
      from,
    })),
    figures: Object.fromEntries(
      figures.map(({ reading, set, builds, linear, alike }) => [
        reading.id,
        {
          label: reading.label,
          unit: unitName(reading.kind, unit),
          bySize: reading.bySize,
          set: told(set, reading.kind, unit),
          builds: spreadJson(builds, reading.kind, unit),
          linear:
            linear === null
              ? null
              : { p5: told(linear.low, reading.kind, unit), p95: told(linear.high, reading.kind, unit) },
          alike,
        },
      ]),
    ),
    limits: chances.map(({ judge, set, missedAsDrawn, builds, aim, limit, carriers }) => {
      const kind = figureKind(judge.kind);
      return {
        id: judge.id,
        label: judge.label,
        bad: judge.bad,
        from: judge.from,
        set: told(set, kind, unit),
        missedAsDrawn,
        builds: spreadJson(builds, kind, unit),
        good: { end: told(judge.aim, kind, unit), ...(countJson(aim) as object) },
        kept: { end: told(judge.limit, kind, unit), ...(countJson(limit) as object) },
        carriers: carriers.slice(0, 3).map(carrierJson),
      };
    }),
    all: { good: countJson(all.aim), kept: countJson(all.limit) },
    hold:
      jig === null
        ? null
        : {
            carriers: jig.carriers.map(carrierJson),
            before: countJson(jig.before),
            after: jig.after === null ? null : countJson(jig.after),
          },
    bands: {
      steer: bands.steer.map(({ place, of }) => ({
        [study.inputKind]: told(place, study.inputKind === "rack" ? "length" : "angle", unit),
        inner: spreadJson(of.inner, "angle", unit),
        outer: spreadJson(of.outer, "angle", unit),
        innerShortOfIdeal: spreadJson(of.innerShortOfIdeal, "angle", unit),
      })),
      travel: bands.travel.map(({ place, of }) => ({
        travel: told(place, "length", unit),
        left: { toeChange: spreadJson(of.left, "angle", unit) },
        right: { toeChange: spreadJson(of.right, "angle", unit) },
        bounceSteer: spreadJson(of.bounce, "angle", unit),
      })),
    },
  };
}
