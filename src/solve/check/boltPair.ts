import { worstSwing } from "../../measures/range/bestBolt.ts";
import { namedDirection } from "../../measures/range/rodEnds.ts";
import type { DirectionName } from "../../vehicle/sections/rod-ends.ts";
import type { Fact } from "./item.ts";
import { shanksOf, type WatchedEnd } from "./watchedEnd.ts";

/** How builders mount a tie rod's two ends: bolts upright, or flat: level and square to the rod. */
const mounts: readonly (readonly [id: string, label: string, outer: DirectionName, inner: DirectionName])[] = [
  ["bothUpright", "both bolts upright", "vertical", "vertical"],
  ["outerUpright", "outer upright, inner flat (level, square to the rod)", "vertical", "square-flat"],
  ["innerUpright", "outer flat, inner upright", "square-flat", "vertical"],
  ["bothFlat", "both flat", "square-flat", "square-flat"],
];

/**
 * What each way of mounting both ends of a tie rod would leave of the rated angles, rad: of both ends and both sides the
 * least. One joint upright and its mate flat shares steering and articulation between them. Nothing unless both ends are
 * given.
 */
export function pairFacts(watched: readonly WatchedEnd[]): readonly Fact[] {
  const ends = (which: string) =>
    watched.filter(({ end }) => end.joint.path[0] === "tie-rod" && end.joint.path[1] === which);
  const [outer, inner] = [ends("outer"), ends("inner")];
  if (outer.length === 0 || inner.length === 0) return [];
  const left = (of: readonly WatchedEnd[], bolt: DirectionName) =>
    of.map((each) => each.end.end.angle - worstSwing(shanksOf(each), namedDirection(bolt, each.end.shank)));
  return mounts.map(([id, label, outerBolt, innerBolt], i) => ({
    id,
    label: `${i === 0 ? "angle to spare at the tighter end, " : ""}${label}`,
    kind: "angle",
    value: Math.min(...left(outer, outerBolt), ...left(inner, innerBolt)),
  }));
}
