import type { Study } from "../../measures/study.ts";
import { perTurn } from "../../measures/threads.ts";
import type { LengthUnit, Wheel } from "../../vehicle/car.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import type { Thread } from "../../vehicle/threads.ts";
import { formatRatio } from "../../vehicle/units/format.ts";
import { inch } from "../../vehicle/units/length.ts";
import { type Job, jobOf, type Piece } from "../job.ts";
import type { Say } from "../remedies/remedy.ts";
import { armJoints, armTurned } from "./arm.ts";
import { changeOf, type Settings, settingsAt } from "./effect.ts";
import { bodyRaised, tyreChanged, whyNotRaised } from "./height.ts";
import { type Rebuilt, rebuiltText, studyTriedOut } from "./rebuilt.ts";

/** How much of each is done: turns, and lengths in mm. */
export interface Amounts {
  /** Of each rod end, out or longer; negative in or shorter. */
  readonly turns: number;
  readonly shim: number;
  readonly rideHeight: number;
  /** More loaded radius. */
  readonly tyre: number;
}

/** What is usual in a shop: one turn, 1/8 in of shim and 1 in of height, or 3 mm and 25 mm. */
export function usualAmounts(unit: LengthUnit): Amounts {
  return unit === "in"
    ? { turns: 1, shim: inch / 8, rideHeight: inch, tyre: inch }
    : { turns: 1, shim: 3, rideHeight: 25, tyre: 25 };
}

/** Something a builder turns, shims or bolts on, on race day. */
export interface Adjuster {
  /** One word, such as "left.lower-arm.joint" or "ride-height". */
  readonly key: string;
  /** The wheel that it sets; null where it sets both. */
  readonly wheel: Wheel | null;
  /** The part, in a few words, without its side and its amount. */
  readonly part: string;
  /** The amount that it is done by. */
  readonly by: keyof Amounts | null;
  /** What is done to it, in a word or two: "1 turn". */
  readonly brief: (say: Say) => string;
  /** The same in full: "1 turn out (5/8-18, 1/16 in)". */
  readonly done: (say: Say) => string;
  readonly caution: string | null;
}

/** An adjuster with what it does; `text` is the car with it done. */
export interface Turned extends Adjuster {
  readonly change: Readonly<Record<Wheel, Settings>>;
  readonly after: Study;
  readonly text: () => string;
}

/** An adjuster of which nothing can be said, and why. */
export interface NotTurned extends Adjuster {
  readonly why: string;
}

export type AdjusterRow = Turned | NotTurned;

const wheels: readonly Wheel[] = ["left", "right"];

interface Made {
  readonly adjuster: Adjuster;
  /** The change; or why there is none. */
  readonly make: () => (Rebuilt & { readonly text?: () => string }) | { readonly why: string };
}

/** Turns in words, without their way: "2 turns". */
function turnsWords(turns: number): string {
  return `${formatRatio(Math.abs(turns))} turn${Math.abs(turns) > 1 ? "s" : ""}`;
}

const turnsBrief = (turns: number) => () => `${turns < 0 ? "-" : ""}${turnsWords(turns)}`;
const turnsDone =
  ({ name, pitch }: Thread, turns: number) =>
  (say: Say) =>
    `${turnsWords(turns)} ${turns < 0 ? "in" : "out"} (${name}, ${say(pitch * Math.abs(turns))})`;

const armCaution =
  "Check that enough thread stays in, tighten the jam nut, and turn the wheels through full lock and travel on stands.";

/** The thread of an arm's rod end: as `threads` says, else the size that `rod-ends` names, with the standard's pitch. */
function threadOf({ car }: Study, wheel: Wheel, [part, end]: readonly [string, string]): Thread | null {
  const { threads, "rod-ends": ends } = car.sections;
  const tied = part === "tie-rod" && (end === "outer" || end === "inner") ? threads?.[wheel]?.[end].size : undefined;
  return tied ?? threads?.[wheel]?.arms[part]?.[end] ?? ends?.[wheel]?.[part]?.[end]?.size ?? null;
}

/** Both rods as long as they are, one of them longer. */
function rodsWith(study: Study, wheel: Wheel, by: number): Rebuilt {
  return { values: {}, rods: { ...study.rodLengths, [wheel]: study.rodLengths[wheel] + by } };
}

function rodMade(study: Study, wheel: Wheel, turns: number): readonly Made[] {
  const threads = study.car.sections.threads?.[wheel] ?? null;
  if (threads !== null && threads.outer.hand !== threads.inner.hand) {
    const step = perTurn(threads.outer, threads.inner);
    const done = (say: Say) =>
      `${turnsWords(turns)} ${turns < 0 ? "shorter" : "longer"} (${say(step * Math.abs(turns))})`;
    const adjuster = {
      key: `${wheel}.tie-rod`,
      wheel,
      part: "tie rod, tube",
      by: "turns" as const,
      brief: turnsBrief(turns),
      done,
      caution: armCaution,
    };
    return [{ adjuster, make: () => rodsWith(study, wheel, step * turns) }];
  }
  return (["outer", "inner"] as const).map((end): Made => {
    const thread = threadOf(study, wheel, ["tie-rod", end]);
    const head = {
      key: `${wheel}.tie-rod.${end}`,
      wheel,
      part: `tie rod, ${end} end`,
      caution: armCaution,
      by: "turns" as const,
    };
    if (thread === null) return notGiven(head, "tie-rod", turns);
    return {
      adjuster: { ...head, brief: turnsBrief(turns), done: turnsDone(thread, turns) },
      make: () => rodsWith(study, wheel, thread.pitch * turns),
    };
  });
}

function notGiven(head: Omit<Adjuster, "done" | "brief">, kind: "tie-rod" | "arm", turns: number): Made {
  const under = kind === "arm" ? "threads (such as lower-arm: { joint: 5/8-18 })" : "threads";
  const why = `not given: the file names no thread for it, neither under ${under} nor as its size under rod-ends`;
  return { adjuster: { ...head, brief: turnsBrief(turns), done: turnsBrief(turns) }, make: () => ({ why }) };
}

function armsMade(study: Study, wheel: Wheel, turns: number): readonly Made[] {
  const { linkage } = study.car.form;
  return armJoints(linkage).map(({ path, label }): Made => {
    const thread = threadOf(study, wheel, path);
    const key = `${wheel}.${path.join(".")}`;
    const head = { key, wheel, part: label, caution: armCaution, by: "turns" as const };
    if (thread === null) return notGiven(head, "arm", turns);
    return {
      adjuster: { ...head, brief: turnsBrief(turns), done: turnsDone(thread, turns) },
      make: () => {
        if (!study.suspended) return { why: "not known: the arms are assumed; measure them first" };
        const values = armTurned(study, wheel, path, thread.pitch * turns);
        if (values === null) return { why: "the front end does not go together then" };
        return { values, rods: study.rodLengths };
      },
    };
  });
}

/** A beam is one piece from its pivot to its king pin: no thread of it is turned (common practice, no source). */
function beamMade({ car }: Study): readonly Made[] {
  if (car.form.linkage !== "pivoting-beam") return [];
  const adjuster: Adjuster = {
    key: "beam",
    wheel: null,
    part: "beam",
    by: null,
    brief: () => "thread",
    done: () => "turned",
    caution: null,
  };
  const why =
    "a beam has none: camber and caster are in its king pin and its pivots, so it is bent, re-bushed or its brace made longer or shorter in the shop; change those points in the car to see what that does";
  return [{ adjuster, make: () => ({ why }) }];
}

function shimMade(study: Study, by: number): Made {
  const { car } = study;
  const done = (say: Say) => `${by < 0 ? "down" : "up"} by ${say(Math.abs(by))}, rods as they are`;
  const adjuster: Adjuster = {
    key: "shim",
    wheel: null,
    part: "rack shim",
    by: "shim",
    brief: (say) => `${by < 0 ? "-" : ""}${say(Math.abs(by))}`,
    done,
    caution: null,
  };
  const ids =
    car.form.mechanism === "rack"
      ? ["rack.up"]
      : car.form.mechanism === "centre-rack"
        ? ["left.rack.eye.up", "right.rack.eye.up"]
        : [];
  if (ids.length === 0) return { adjuster, make: () => ({ why: "there is no rack to shim" }) };
  const values = Object.fromEntries(ids.map((id) => [id, car.numbers[indexOf(id)] + by]));
  return { adjuster, make: () => ({ values, rods: study.rodLengths }) };
}

function heightMade(study: Study, { rideHeight, tyre }: Amounts): readonly Made[] {
  const signed = (by: number) => (say: Say) => `${by < 0 ? "-" : "+"}${say(Math.abs(by))}`;
  return [
    {
      adjuster: {
        key: "ride-height",
        wheel: null,
        part: "ride height",
        by: "rideHeight",
        brief: signed(rideHeight),
        done: (say) => `${say(Math.abs(rideHeight))} ${rideHeight < 0 ? "lower" : "higher"}`,
        caution: "Check shocks, brake hoses and the steering shaft's joints at the new droop.",
      },
      make: () => {
        if (!study.suspended)
          return {
            why:
              study.noTravel === "fixed" ? "the king pins are fixed to the frame" : "not known: the arms are assumed",
          };
        const why = whyNotRaised(study, rideHeight);
        return why === null ? bodyRaised(study, rideHeight) : { why };
      },
    },
    {
      adjuster: {
        key: "tyre",
        wheel: null,
        part: "tyre",
        by: "tyre",
        brief: signed(tyre),
        done: (say) => `${say(Math.abs(tyre))} ${tyre < 0 ? "less" : "more"} radius`,
        caution: "Check the larger tyre against arms, rods and body at full lock and travel.",
      },
      make: () => tyreChanged(study, tyre),
    },
  ];
}

function allMade(study: Study, amounts: Amounts): readonly Made[] {
  return [
    ...wheels.flatMap((wheel) => [...rodMade(study, wheel, amounts.turns), ...armsMade(study, wheel, amounts.turns)]),
    ...beamMade(study),
    shimMade(study, amounts.shim),
    ...heightMade(study, amounts),
  ];
}

/** Where the steering is held while settings are compared: where the wheels are straight now. */
export function heldAt(study: Study): number {
  return study.zero ?? study.straightAhead;
}

/** How both wheels are set now. */
export function settingsNow(study: Study): Readonly<Record<Wheel, Settings>> {
  const input = heldAt(study);
  return { left: settingsAt(study, "left", input), right: settingsAt(study, "right", input) };
}

function rowOf(study: Study, now: Readonly<Record<Wheel, Settings>>, { adjuster, make }: Made): AdjusterRow {
  const made = make();
  if ("why" in made) return { ...adjuster, why: made.why };
  const after = studyTriedOut(study.car, made);
  if (after === null) return { ...adjuster, why: "the front end does not go together then" };
  const input = heldAt(study);
  const change = {
    left: changeOf(now.left, settingsAt(after, "left", input)),
    right: changeOf(now.right, settingsAt(after, "right", input)),
  };
  return { ...adjuster, change, after, text: made.text ?? (() => rebuiltText(study.car, made)) };
}

function* rows(study: Study, amounts: Amounts): Iterator<Piece<readonly AdjusterRow[]>, void> {
  const now = settingsNow(study);
  const made = allMade(study, amounts);
  const done: AdjusterRow[] = [];
  for (const each of made) {
    done.push(rowOf(study, now, each));
    yield { progress: done.length / made.length, best: [...done] };
  }
}

/** What each adjuster of a car does, one after the other; a piece of the job is one of them. */
export function adjustersJob(study: Study, amounts: Amounts): Job<readonly AdjusterRow[]> {
  return jobOf([], rows(study, amounts));
}
