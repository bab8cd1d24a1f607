import type { Point } from "../../kinematics/drawn.ts";
import { Side } from "../../kinematics/slots.ts";
import { sideAt } from "../../measures/points.ts";
import { type Best, searchBolt, worstSwing } from "../../measures/range/bestBolt.ts";
import { namedDirection, type RodEndInPlace, swing } from "../../measures/range/rodEnds.ts";
import type { Watched } from "../../measures/range/watched.ts";
import type { Study } from "../../measures/study.ts";
import type { DirectionName } from "../../vehicle/sections/rod-ends.ts";
import { type CheckItem, type Fact, limited } from "./item.ts";
import { PLACES, type Worst } from "./sweep.ts";

/** A rod end that is watched: what is left of its rated angle, rad; and all its shank's directions over the range. */
export interface WatchedEnd extends Watched {
  readonly end: RodEndInPlace;
  readonly shanks: Float64Array;
  /** How many of them are noted so far. */
  count: number;
}

/** Watches what is left of a rod end's rated angle. */
export function watchEnd(end: RodEndInPlace): WatchedEnd {
  return {
    wheel: end.wheel,
    end,
    shanks: new Float64Array(3 * PLACES * PLACES),
    count: 0,
    read: (poses, at) => end.end.angle - swing(end.shankIn(poses, at), end.bolt),
  };
}

/** Notes where the shank points in a pose. */
export function noteShank(watched: WatchedEnd, poses: Float64Array): void {
  const at = sideAt(watched.wheel);
  if (poses[at + Side.Blame] !== 0) return;
  const { x, y, z } = watched.end.shankIn(poses, at);
  const i = 3 * watched.count++;
  watched.shanks[i] = x;
  watched.shanks[i + 1] = y;
  watched.shanks[i + 2] = z;
}

const usual: readonly (readonly [id: string, label: string, name: DirectionName])[] = [
  ["vertical", "with an upright bolt", "vertical"],
  ["foreAndAft", "with a bolt fore and aft", "fore-and-aft"],
  ["crosswise", "with a bolt straight across", "crosswise"],
];

function upward({ x, y, z }: Point): readonly [number, number, number] {
  return z < 0 ? [-x, -y, -z] : [x, y, z];
}

function factsOf({ end }: WatchedEnd, all: Float64Array, best: Best | null): readonly Fact[] {
  const angle = (id: string, label: string, value: number): Fact => ({ id, label, kind: "angle", value });
  return [
    angle("swing", "worst angle", worstSwing(all, end.bolt)),
    angle("rated", "rated", end.end.angle),
    ...usual.map(([id, label, name]) => angle(id, `worst ${label}`, worstSwing(all, namedDirection(name, end.shank)))),
    ...(best === null
      ? []
      : [
          angle("best", "least worst there can be", best.worst),
          { id: "bestBolt", label: "with the bolt", kind: "direction", value: upward(best.bolt) } as const,
        ]),
  ];
}

function cautionsOf({ joint, end }: RodEndInPlace): readonly string[] {
  return [
    "A fork, a washer or the bolt's head may stop it before its rated angle: turn it by hand before trusting this.",
    ...(end.spacers === "yes"
      ? ["Misalignment spacers step the bolt down a size or more: the bolt is the weak part then."]
      : []),
    ...(end.shear === "single"
      ? ["Single shear bends the bolt and the tab: prefer double shear, and never leave out the safety washer."]
      : []),
    ...(joint.path[0] === "tie-rod"
      ? []
      : ["A rod end at an arm is loaded in bending by bumps and braking: its shank breaks at the first thread."]),
  ];
}

function itemOf(study: Study, watched: WatchedEnd, worst: Worst, all: Float64Array, best: Best | null): CheckItem {
  const { end } = watched;
  return limited(study, "rod-end", worst?.value ?? null, {
    id: `rod-end.${end.joint.path.join("-")}`,
    part: "rod ends",
    label: `Rod end, ${end.wheel} ${end.joint.label}: angle to spare`,
    wheel: end.wheel,
    where: worst,
    facts: factsOf(watched, all, best),
    cautions: cautionsOf(end),
  });
}

/** One item a joint: of both sides the one that has less left. */
export function* rodEndItems(
  study: Study,
  watched: readonly WatchedEnd[],
  worst: readonly Worst[],
): Generator<number, readonly CheckItem[], void> {
  const items: CheckItem[] = [];
  const names = [...new Set(watched.map(({ end }) => end.joint.path.join(".")))];
  for (const [done, name] of names.entries()) {
    const own = watched.flatMap((each, i) => (each.end.joint.path.join(".") === name ? [i] : []));
    const left = (i: number) => worst[i]?.value ?? Number.POSITIVE_INFINITY;
    const at = own.reduce((a, b) => (left(b) < left(a) ? b : a));
    const all = watched[at].shanks.subarray(0, 3 * watched[at].count);
    const search = searchBolt(all);
    let next = search.next();
    for (; !next.done; next = search.next()) yield done / names.length;
    items.push(itemOf(study, watched[at], worst[at], all, next.value));
  }
  return items;
}
