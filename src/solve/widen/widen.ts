import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Change, changed } from "../../vehicle/edits/change.ts";
import { shiftLengths } from "../../vehicle/edits/shift.ts";
import type { Values } from "../../vehicle/edits/values.ts";
import { shortest } from "../../vehicle/edits/written.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { indexOf, quantitiesOf } from "../../vehicle/quantities.ts";
import { inch } from "../../vehicle/units/length.ts";
import { type Rebuilt, rebuiltText, studyTriedOut } from "../adjusters/rebuilt.ts";
import { uprightPoints } from "../adjusters/redraw.ts";
import { type Job, jobOf, type Piece } from "../job.ts";
import { barBends } from "../remedies/rack.ts";
import type { Say } from "../remedies/remedy.ts";

/** The ways to make a front end wider. */
export const widenKinds = ["arms", "pivots", "spacers", "rack-ends"] as const;

export type WidenKind = (typeof widenKinds)[number];

/** What is said of a way to widen, whatever the car. */
export interface WidenWords {
  readonly key: WidenKind;
  readonly name: string;
  /** What is done, by so much a side. */
  readonly title: (say: Say) => string;
  /** One line: what it costs or leaves as it is. */
  readonly tradeOff: string;
  /** Where it can hurt someone. */
  readonly caution: string;
}

/** A car made wider in one way; `text` is the car so widened. */
export interface Widened extends WidenWords {
  readonly after: Study;
  readonly text: () => string;
}

/** A way that this car cannot have, and why. */
export interface NotWidened extends WidenWords {
  readonly why: string;
}

export type Widening = Widened | NotWidened;

const wheels: readonly Wheel[] = ["left", "right"];

/** All that is outboard of a car's frame, so much further out: of these points below a corner, or of all of them. */
function out({ car }: Study, by: number, points: readonly string[] | "all"): Values {
  const moved = quantitiesOf(car.form).filter(
    ({ path, pair }) =>
      path[0] === "front" && path.at(-1) === "out" && (points === "all" || points.includes(pair.replace(/\.out$/, ""))),
  );
  return Object.fromEntries(moved.map(({ id, index }) => [id, car.numbers[index] + by]));
}

/** Lengths that are worked out are written to this, mm: a hundredth of what a tape shows. */
const fine = 0.001;

/** What the file says of the shocks, when the arms get longer outboard of their feet. */
function shockOnLongerArms({ car }: Study, text: string, by: number): string {
  const { shock } = car.sections;
  const sides = wheels.flatMap((wheel) => (shock?.[wheel] ? [{ wheel, shock: shock[wheel] }] : []));
  if (sides.length === 0) return text;
  if (sides.every((each) => each.shock.on === "upright"))
    return shiftLengths({ text, form: car.form }, by, isShock("foot"));
  const size = car.form.units === "in" ? inch : 1;
  const changes = sides.map(({ wheel, shock: { "arms-widened": before } }): Change => {
    return { path: ["shock", wheel, "arms-widened"], text: shortest(((before ?? 0) + by) / size, fine / size) };
  });
  const alike = sides.length === wheels.length && changes[0]?.text === changes[1]?.text;
  const gone = changes.map(({ path }): Change => ({ path, text: null }));
  const both = { path: ["shock", "both", "arms-widened"], text: changes[0]?.text ?? null };
  return changed(text, alike ? [...gone, both] : changes);
}

/** Whether a path is how far out a shock's eyes are: both, or its foot alone. */
function isShock(which: "all" | "foot"): (path: readonly string[]) => boolean {
  return (path) => path[0] === "shock" && path.at(-1) === "out" && (which === "all" || path.includes("foot"));
}

interface Way extends Omit<WidenWords, "title" | "tradeOff"> {
  readonly title: (say: Say, by: number, study: Study) => string;
  readonly tradeOff: (study: Study) => string;
  readonly make: (study: Study, by: number) => (Rebuilt & { readonly sections: (text: string) => string }) | string;
}

const arms: Way = {
  key: "arms",
  name: "Longer arms",
  title: (say, by) =>
    `Make the arms ${say(by)} longer a side, pivots and rack where they are; tie rods made anew to fit`,
  tradeOff: () =>
    "The wheels keep their angles at ride height. Springs act on a longer lever: softer, with more wheel travel for the shock's.",
  caution:
    "CAUTION: longer arms and rods bend and buckle under less load. Have tubes, joints and welds looked at by someone qualified.",
  make: (study, by) => {
    const { linkage } = study.car.form;
    if (linkage === "fixed-kingpin") return "there are no arms: the king pins are fixed to the frame";
    if (linkage === "strut")
      return "the strut's top mount would have to go out as far as the arm: that is what wider pivots do";
    if (linkage === "trailing-arms") return "its arms trail: longer ones move the wheels back, not out";
    return {
      values: out(study, by, uprightPoints(linkage)),
      rods: "fit",
      sections: (text) => shockOnLongerArms(study, text, by),
    };
  },
};

const pivots: Way = {
  key: "pivots",
  name: "Wider pivots, the rack kept",
  title: (say, by, { car }) =>
    `Set all that is on the frame ${say(by)} further out a side${
      linkageOf(car.form.linkage).noTravel === undefined ? ": pivots, arms and shocks" : ": the king pins"
    }, the rack as it is; tie rods made anew to fit`,
  tradeOff: ({ suspended }) =>
    suspended
      ? "Arms and springs stay as they are. Only the rods get longer, and how long they are beside the arms makes the toe bow over the travel: see worst toe."
      : "Only the rods get longer: the Ackermann effect changes.",
  caution: "CAUTION: mounts further out load the frame's rails more: brace them, and have the welds looked at.",
  make: (study, by) => ({
    values: out(study, by, "all"),
    rods: "fit",
    sections: (text) => shiftLengths({ text, form: study.car.form }, by, isShock("all")),
  }),
};

const spacers: Way = {
  key: "spacers",
  name: "Wheel offset or spacers",
  title: (say, by) => `Set the wheels ${say(by)} further out a side, by other rims or by spacers; all else stays`,
  tradeOff: () =>
    "Cheap and quick, and no link moves; but the scrub radius grows by as much: heavy steering that kicks back over bumps.",
  caution:
    "CAUTION: a wheel further out loads bearings, spindles and studs more. The nuts must hold on their full thread, and the wheel sit on its centre: have it looked at.",
  make: (study, by) => ({
    values: out(study, by, ["wheel.center"]),
    rods: "as they are",
    sections: (text) => text,
  }),
};

const rackEnds: Way = {
  key: "rack-ends",
  name: "Wider pivots with longer rack ends",
  title: (say, by) =>
    `Set pivots, arms and shocks ${say(by)} further out a side, and lengthen the rack's ends by as much: the tie rods stay`,
  tradeOff: () => "Bump steer stays as it is, since every corner moves out as a whole, its rod's inner end with it.",
  caution: barBends,
  make: (study, by) => {
    const { car } = study;
    if (car.form.mechanism !== "rack" && car.form.mechanism !== "centre-rack")
      return "there is no rack whose ends could be longer";
    const eyes =
      car.form.mechanism === "rack"
        ? { "rack.eye-to-eye": car.numbers[indexOf("rack.eye-to-eye")] + 2 * by }
        : Object.fromEntries(
            wheels.map((wheel) => {
              const id = `${wheel}.rack.eye.out`;
              return [id, car.numbers[indexOf(id)] + by];
            }),
          );
    return {
      values: { ...out(study, by, "all"), ...eyes },
      rods: "as they are",
      sections: (text) => shiftLengths({ text, form: car.form }, by, isShock("all")),
    };
  },
};

/** A new way is one entry here. */
const ways: readonly Way[] = [arms, pivots, spacers, rackEnds];

/** What is usual to ask about first, mm a side: 2 in or 50 mm. */
export function usualWidening(unit: "in" | "mm"): number {
  return unit === "in" ? 2 * inch : 50;
}

function widened(study: Study, by: number, way: Way): Widening {
  const { key, name, caution } = way;
  const words: WidenWords = {
    key,
    name,
    caution,
    title: (say) => way.title(say, by, study),
    tradeOff: way.tradeOff(study),
  };
  const made = way.make(study, by);
  if (typeof made === "string") return { ...words, why: made };
  const after = studyTriedOut(study.car, made);
  if (after === null) return { ...words, why: "the front end does not go together then" };
  return { ...words, after, text: () => made.sections(rebuiltText(study.car, made)) };
}

function* each(study: Study, by: number): Iterator<Piece<readonly Widening[]>, void> {
  const done: Widening[] = [];
  for (const way of ways) {
    done.push(widened(study, by, way));
    yield { progress: done.length / ways.length, best: [...done] };
  }
}

/** A car made wider by so much a side, mm, in every way there is; a piece of the job is one way. */
export function widenJob(study: Study, by: number): Job<readonly Widening[]> {
  return jobOf([], each(study, by));
}
