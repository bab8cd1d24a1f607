import type { Point } from "../../kinematics/drawn.ts";
import { type Best, searchBolt, worstSwing } from "../../measures/range/bestBolt.ts";
import { namedDirection, type RodEndInPlace } from "../../measures/range/rodEnds.ts";
import type { Study } from "../../measures/study.ts";
import type { DirectionName } from "../../vehicle/sections/rod-ends.ts";
import { pairFacts } from "./boltPair.ts";
import { type CheckItem, type Fact, limited, notGiven } from "./item.ts";
import type { Worst } from "./sweep.ts";
import { shanksOf, type WatchedEnd } from "./watchedEnd.ts";

const usual: readonly (readonly [id: string, label: string, name: DirectionName])[] = [
  ["vertical", "with an upright bolt", "vertical"],
  ["foreAndAft", "with a bolt fore and aft", "fore-and-aft"],
  ["crosswise", "with a bolt straight across", "crosswise"],
];

function upward({ x, y, z }: Point): readonly [number, number, number] {
  return z < 0 ? [-x, -y, -z] : [x, y, z];
}

function factsOf({ end }: WatchedEnd, worst: Worst, all: Float64Array, best: Best | null): readonly Fact[] {
  const angle = (id: string, label: string, value: number | null): Fact => ({ id, label, kind: "angle", value });
  return [
    angle("swing", "worst angle", worst === null ? null : end.end.angle - worst.value),
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

function itemOf(study: Study, watched: WatchedEnd, worst: Worst, facts: readonly Fact[]): CheckItem {
  const { end } = watched;
  return limited(study, "rod-end", worst?.value ?? null, {
    id: `rod-end.${end.joint.path.join("-")}`,
    part: "rod ends",
    label: `Rod end, ${end.wheel} ${end.joint.label}: angle to spare`,
    wheel: end.wheel,
    where: worst,
    facts,
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
    const all = shanksOf(watched[at]);
    const search = searchBolt(all);
    let next = search.next();
    for (; !next.done; next = search.next()) yield done / names.length;
    const facts = factsOf(watched[at], worst[at], all, next.value);
    const pair = name === "tie-rod.inner" ? pairFacts(watched) : [];
    items.push(itemOf(study, watched[at], worst[at], [...facts, ...pair]));
    const [first] = own.map((i) => watched[i]);
    if (own.length === 1 && first !== undefined) items.push(otherSide(first.end));
  }
  return items.length === 0 ? [notGiven("rod ends", "Rod ends' angles", ["rod-ends"])] : items;
}

/** A joint that the file gives at one side alone. */
function otherSide({ wheel, joint }: RodEndInPlace): CheckItem {
  const other = wheel === "left" ? "right" : "left";
  const key = ["rod-ends", other, ...joint.path].join(": ");
  return notGiven("rod ends", `Rod end, ${other} ${joint.label}`, [key], `rod-end.${joint.path.join("-")}.${other}`);
}
