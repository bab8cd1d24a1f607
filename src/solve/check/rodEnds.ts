import type { Point } from "../../kinematics/drawn.ts";
import { type Best, searchBolt, worstSwing } from "../../measures/range/bestBolt.ts";
import { namedDirection, type RodEndInPlace } from "../../measures/range/rodEnds.ts";
import type { Study } from "../../measures/study.ts";
import { limitKinds, limitOf } from "../../vehicle/sections/limits.ts";
import type { DirectionName } from "../../vehicle/sections/rod-ends.ts";
import { pairFacts } from "./boltPair.ts";
import { type CheckItem, type Fact, limited, notGiven, otherFacts, sidesOf, stateOf } from "./item.ts";
import type { Worst } from "./sweep.ts";
import { shanksOf, type WatchedEnd } from "./watchedEnd.ts";

/** The bolts that a builder drills for without thinking. */
interface UsualBolt {
  readonly id: string;
  readonly with: string;
  readonly turn: string;
  readonly name: DirectionName;
}

const usual: readonly UsualBolt[] = [
  { id: "vertical", with: "with an upright bolt", turn: "set the bolt upright", name: "vertical" },
  { id: "foreAndAft", with: "with a bolt fore and aft", turn: "set the bolt fore and aft", name: "fore-and-aft" },
  { id: "crosswise", with: "with a bolt straight across", turn: "set the bolt straight across", name: "crosswise" },
];

/** The usual bolt that mends an end which is short of angle, if one brings it to a better state. */
function mendFacts(study: Study, { end }: WatchedEnd, worst: Worst, all: Float64Array): readonly Fact[] {
  const limit = { ...limitOf(study.car.sections.limits, "rod-end"), bad: limitKinds["rod-end"].bad };
  const rank = (spare: number | null) => ["pass", "close", "broken"].indexOf(stateOf(spare, limit));
  const now = rank(worst?.value ?? null);
  const spares = usual.map((bolt) => {
    const angle = worstSwing(all, namedDirection(bolt.name, end.shank));
    return { bolt, spare: angle === null ? null : end.end.angle - angle };
  });
  const best = spares.reduce((a, b) => ((b.spare ?? -1) > (a.spare ?? -1) ? b : a));
  if (now <= 0 || best.spare === null || rank(best.spare) >= now) return [];
  return [{ id: "mended", label: `${best.bolt.turn}: angle to spare is then`, kind: "angle", value: best.spare }];
}

function upward({ x, y, z }: Point): readonly [number, number, number] {
  return z < 0 ? [-x, -y, -z] : [x, y, z];
}

function factsOf(
  study: Study,
  watched: WatchedEnd,
  worst: Worst,
  all: Float64Array,
  best: Best | null,
): readonly Fact[] {
  const { end } = watched;
  const angle = (id: string, label: string, value: number | null): Fact => ({ id, label, kind: "angle", value });
  return [
    ...mendFacts(study, watched, worst, all),
    angle("swing", "worst angle", worst === null ? null : end.end.angle - worst.value),
    angle("rated", "rated", end.end.angle),
    ...usual.map((bolt) => angle(bolt.id, `worst ${bolt.with}`, worstSwing(all, namedDirection(bolt.name, end.shank)))),
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

function itemOf(
  study: Study,
  { end }: WatchedEnd,
  worst: Worst,
  other: number | null,
  facts: readonly Fact[],
): CheckItem {
  const { wheel, joint } = end;
  const value = worst?.value ?? null;
  const sides = sidesOf(`Rod end, ${joint.label}: angle to spare`, value, other);
  const rest = {
    id: `rod-end.${joint.path.join("-")}`,
    part: "rod ends" as const,
    label: `Rod end, ${sides.alike ? "each" : wheel} ${joint.label}: angle to spare`,
    wheel,
    where: worst,
    facts: [...otherFacts(wheel, sides, "angle"), ...facts],
    cautions: cautionsOf(end),
  };
  return limited(study, "rod-end", value, rest, sides);
}

/** One item a joint: of both sides the one that has less left, and what the other has. */
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
    const facts = factsOf(study, watched[at], worst[at], all, next.value);
    const pair = name === "tie-rod.inner" ? pairFacts(watched) : [];
    const other = own.find((i) => i !== at);
    const others = other === undefined ? null : (worst[other]?.value ?? null);
    items.push(itemOf(study, watched[at], worst[at], others, [...facts, ...pair]));
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
