import { armLengths } from "../../measures/bench/armLengths.ts";
import { framePlaces } from "../../measures/bench/framePlaces.ts";
import { bumpProof, proofPlaces, steerProof } from "../../measures/bench/proof.ts";
import { tabPlaceOf } from "../../measures/bench/tabPlace.ts";
import type { Pair } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import { threadsOf } from "../../measures/threads.ts";
import type { LengthUnit, Wheel } from "../../vehicle/car.ts";
import { whyNoUpright } from "../../vehicle/hang.ts";
import { checkJson } from "../check.ts";
import { inputFigure } from "../column.ts";
import type { Json } from "../json.ts";
import { inUnits, unitsOf } from "../numbers.ts";
import { uprightJson } from "../upright.ts";
import { missedJson } from "./aims.ts";
import { rodChanges } from "./changes.ts";
import { lacksOf } from "./lacks.ts";
import type { SheetReport } from "./sheet.ts";

type Say = (value: number | null) => number | null;

function sayers(unit: LengthUnit): { readonly length: Say; readonly angle: Say } {
  const say =
    (kind: "length" | "angle"): Say =>
    (value) =>
      value === null ? null : inUnits(value, kind, unit);
  return { length: say("length"), angle: say("angle") };
}

function sides(of: (wheel: Wheel) => Json): Json {
  return { left: of("left"), right: of("right") };
}

function pair({ left, right }: Pair<number | null>, say: Say): Json {
  return { left: say(left), right: say(right) };
}

function rodJson(study: Study, wheel: Wheel, length: Say): Json {
  const fit = threadsOf(study, wheel);
  return {
    eyeToEye: length(study.rodLengths[wheel]),
    cut: study.car.form.rods[wheel] === "cut",
    tube: length(fit?.tube ?? null),
    outerEngagement: length(fit?.ends[0].engagement ?? null),
    innerEngagement: length(fit?.ends[1].engagement ?? null),
    longer: length(fit?.longer ?? null),
    shorter: length(fit?.shorter ?? null),
  };
}

function tabJson(study: Study, wheel: Wheel, unit: LengthUnit): Json {
  const { length, angle } = sayers(unit);
  const place = tabPlaceOf(study, wheel);
  return {
    toKingPin: length(place.toKingPin),
    toLower: length(place.toLower),
    toUpper: length(place.toUpper),
    toSpindle: length(place.toSpindle),
    insideRim: length(place.insideRim),
    ahead: length(place.ahead),
    out: length(place.out),
    up: length(place.up),
    rise: angle(place.rise),
    inboard: angle(place.inboard),
    frontHigher: angle(place.frontHigher),
    outerHigher: angle(place.outerHigher),
  };
}

/** What a build sheet is made from, as JSON, numbers not rounded. */
export function sheetJson({ study, checks, missed, unjudged, spread, from }: SheetReport, unit: LengthUnit): Json {
  const { length, angle } = sayers(unit);
  const places = proofPlaces(study, unit);
  return {
    units: unitsOf(unit),
    title: study.car.title,
    changes:
      from === null
        ? null
        : rodChanges(from, study).map(({ wheel, by, turns, turned, fits, seenFrom, newTube }) => ({
            wheel,
            by: length(by),
            turns,
            turned,
            fits,
            longerClockwiseFrom: seenFrom,
            newTube: length(newTube),
          })),
    rods: sides((wheel) => rodJson(study, wheel, length)),
    arms: sides((wheel) =>
      armLengths(study, wheel).map(({ arm, from: a, to, mm }) => ({ arm, from: a, to, length: length(mm) })),
    ),
    upright: whyNoUpright(study.car) === null ? uprightJson(study, unit) : null,
    frame: sides((wheel) =>
      framePlaces(study, wheel).map(({ label, ahead, out, up }) => ({
        place: label,
        ahead: length(ahead),
        out: length(out),
        up: length(up),
      })),
    ),
    tab: sides((wheel) => tabJson(study, wheel, unit)),
    board: length(places.board),
    turnPlates: steerProof(study, places).map((row, i) => ({
      [study.inputKind]: inUnits(row.input, inputFigure(study.inputKind), unit),
      turned: pair(row.turned, angle),
      board: pair(row.board, length),
      within: { turned: angle(spread?.steer[i]?.turned ?? null), board: length(spread?.steer[i]?.board ?? null) },
    })),
    bump: bumpProof(study, places).map((row, i) => ({
      travel: length(row.travel),
      toeChange: pair(row.toe, angle),
      board: pair(row.board, length),
      acrossTyre: pair(row.acrossTyre, length),
      camber: pair(row.camber, angle),
      within: {
        toeChange: angle(spread?.bump[i]?.toe ?? null),
        board: length(spread?.bump[i]?.board ?? null),
        acrossTyre: length(spread?.bump[i]?.acrossTyre ?? null),
        camber: angle(spread?.bump[i]?.camber ?? null),
      },
    })),
    checks: checkJson(study, checks, unit),
    missed: missed.map((met) => missedJson(met, unit)),
    notJudged: unjudged.map(({ name, needs }) => ({ goal: name, needs })),
    lacks: lacksOf(study).map(({ what, keys }) => ({ what, keys })),
  };
}
