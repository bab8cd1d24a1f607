import type { StandingUpright } from "../../measures/bench/onUpright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Tab } from "../../vehicle/sections/hardware.ts";
import { type Writing, wayWords } from "../sheet/writing.ts";
import { type At, crossAt, type Drawing, holeAt, line, type Shape, words } from "./flat.ts";

/** A tab of which the outline is given. */
interface Outline {
  /** Diameter of its hole. */
  readonly hole: number;
  readonly radius: number;
  readonly foot: number;
  readonly reach: number;
}

/** The outline, null where the file does not give all of it. */
export function outlineOf(tab: Tab | null): Outline | null {
  const { hole = null, "end-radius": radius = null, foot = null, reach = null } = tab ?? {};
  return hole === null || radius === null || foot === null || reach === null ? null : { hole, radius, foot, reach };
}

/** Why an outline can't be drawn; null where it can. */
export function whyNoOutline({ hole, radius, foot, reach }: Outline): string | null {
  if (2 * reach <= hole) return "the edge that is welded on would cut through the hole";
  return Math.hypot(reach, foot / 2) > radius ? null : "the edge that is welded on lies within the rounded end";
}

/**
 * The outline: the edge that is welded on, square to the line from the king-pin line to the hole, and the round end, with
 * the tangents between them (elementary: from a point at distance d the tangent leaves the line to the middle at asin(r/d)).
 */
function outline([x, y]: At, { radius, foot, reach }: Outline): readonly Shape[] {
  const away = Math.atan2(y, x);
  const at = (along: number, aside: number): At => [
    x + along * Math.cos(away) - aside * Math.sin(away),
    y + along * Math.sin(away) + aside * Math.cos(away),
  ];
  const half = foot / 2;
  const far = Math.hypot(reach, half);
  // Seen from the hole: the corner of the edge, and how far round from it the tangent touches.
  const corner = Math.PI - Math.atan2(half, reach);
  const touch = corner - Math.acos(radius / far);
  const on = (angle: number) => at(radius * Math.cos(angle), radius * Math.sin(angle));
  return [
    line("cut", at(-reach, half), at(-reach, -half)),
    line("cut", at(-reach, half), on(touch)),
    { is: "arc", layer: "cut", at: [x, y], radius, from: away - touch, to: away + touch },
    line("cut", on(-touch), at(-reach, -half)),
  ];
}

/** The tab on its upright, seen from above along the king-pin line: ahead is up the paper. */
export function tabDrawing(
  wheel: Wheel,
  { hole, spindle }: StandingUpright,
  tab: Tab | null,
  { cut, length }: Writing,
): Drawing {
  const right = wheel === "left" ? -1 : 1;
  const at: At = [right * hole.out, hole.ahead];
  const arm = Math.hypot(...at);
  const given = outlineOf(tab);
  const drawn = given !== null && whyNoOutline(given) === null ? outline(at, given) : [];
  const [outer, inner] = [right * 60, right * -25];
  return {
    name: "tab",
    title: "Tie-rod tab on its upright",
    notes: [
      "Seen from above along the king-pin line; ahead is up the paper.",
      `From the king-pin line to the middle of the hole: ${cut(arm)}.`,
      `The hole ${wayWords(hole.ahead, "ahead of", "behind", cut)} the king-pin line, ${wayWords(hole.out, "outboard", "inboard", cut)}, and ${wayWords(hole.up, "above", "below", cut)} the lower joint along the king-pin line.`,
      ...(tab?.thickness == null ? [] : [`Plate ${length(tab.thickness)} thick.`]),
      ...(drawn.length === 0
        ? []
        : ["The edge that is welded on is drawn square to that line: trim it to the upright, never move the hole."]),
    ],
    shapes: [
      ...drawn,
      ...holeAt(at, tab?.hole ?? null),
      ...crossAt([0, 0], 8),
      { is: "circle", layer: "mark", at: [0, 0], radius: 3 },
      words([at[0] < 0 ? 6 : -30, spindle.ahead < 0 ? 4 : -7], "king-pin line"),
      line("mark", [0, 0], at),
      line("mark", [inner, spindle.ahead], [outer, spindle.ahead]),
      words([right > 0 ? 22 : outer, spindle.ahead + 2], "spindle's centre line"),
      line("mark", [0, 12], [0, 30]),
      line("mark", [0, 30], [-2, 25]),
      line("mark", [0, 30], [2, 25]),
      words([3, 25], "ahead"),
    ],
  };
}
