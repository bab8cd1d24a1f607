import type { OnUpright, StandingUpright } from "../../measures/bench/onUpright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Tab } from "../../vehicle/sections/hardware.ts";
import { type Writing, wayWords } from "../sheet/writing.ts";
import type { Length } from "../words.ts";
import { dimension, label, nameOfLine, nothing, ways } from "./dimension.ts";
import { type At, boxOf, crossAt, holeAt, line, type Shape, type Sketch } from "./flat.ts";
import { arranged, type Placed } from "./overlap.ts";

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
): Sketch {
  const right = wheel === "left" ? -1 : 1;
  const at: At = [right * hole.out, hole.ahead];
  const arm = Math.hypot(...at);
  const given = outlineOf(tab);
  const whole = given !== null && whyNoOutline(given) === null ? given : null;
  const drawn = whole === null ? [] : outline(at, whole);
  const spindleLine = [[right * 40, spindle.ahead] as const, [right * -25, spindle.ahead] as const] as const;
  const fixed: readonly Shape[] = [
    ...drawn,
    ...holeAt(at, tab?.hole ?? null),
    ...crossAt([0, 0], 8),
    { is: "circle", layer: "mark", at: [0, 0], radius: 3 },
    line("mark", [0, 0], at),
    line("mark", ...spindleLine),
  ];
  const parts: readonly Placed[] = [
    ...sizesOf(at, right, whole, fixed, { arm: cut(arm), ...holeWays(hole, cut), outline: length }),
    label(at, (tab?.hole ?? 0) / 2, tab?.hole == null ? "tie-rod hole" : `tie-rod hole, drill ${length(tab.hole)}`),
    label([0, 0], 3, "king-pin line"),
    nameOfLine(...spindleLine, "spindle's line"),
  ];
  const shapes = arranged(fixed, parts);
  const [one, other] = right < 0 ? ["outboard", "inboard"] : ["inboard", "outboard"];
  return {
    name: "tab",
    title: "Tie-rod tab on its upright",
    notes: [
      "Seen from above along the king-pin line; ahead is up the paper.",
      `The hole is ${wayWords(hole.up, "above", "below", cut)} the lower joint along the king-pin line.`,
      ...(tab?.thickness == null ? [] : [`Plate ${length(tab.thickness)} thick.`]),
      ...(drawn.length === 0
        ? []
        : [
            "The edge that is welded on is drawn square to the line to the hole: trim it to the upright, never move the hole.",
          ]),
    ],
    shapes: [...shapes, ...ways(boxOf(shapes), { left: one, up: "ahead", right: other })],
  };
}

/** How far the hole is ahead or behind and out or in, in words; null where it is nothing. */
function holeWays(hole: OnUpright, cut: Length) {
  const way = (mm: number, more: string, less: string) =>
    cut(Math.abs(mm)) === cut(0) ? null : wayWords(mm, more, less, cut);
  return { ahead: way(hole.ahead, "ahead", "behind"), out: way(hole.out, "outboard", "inboard") };
}

interface Said {
  readonly arm: string;
  readonly ahead: string | null;
  readonly out: string | null;
  readonly outline: Length;
}

/**
 * The sizes of a tab: along its arm on the outboard side, ahead or behind on the inboard side, in or out beyond the hole; of
 * its outline, reach beside the arm, foot before its edge, and the round end. `right` is +1 where outboard is to the right.
 */
function sizesOf(at: At, right: 1 | -1, whole: Outline | null, fixed: readonly Shape[], said: Said): readonly Placed[] {
  const arm = Math.hypot(...at);
  if (arm < nothing) return [];
  const u: At = [at[0] / arm, at[1] / arm];
  const side = -u[1] * right >= 0 ? 1 : -1;
  const n: At = [-u[1] * side, u[0] * side];
  const to = (along: number, aside: number): At => [u[0] * along + n[0] * aside, u[1] * along + n[1] * aside];
  const wide = whole === null ? 0 : Math.max(whole.foot / 2, whole.radius);
  const box = boxOf([...fixed.filter((each) => each.is !== "words" && each.layer === "cut"), ...crossAt(at, 5)]);
  const beyond = at[1] < 0 ? box.low - 9 : box.high + 9;
  const inner = right < 0 ? Math.max(box.right, 0) + 9 : Math.min(box.left, 0) - 9;
  const footFrom = arm - (whole?.reach ?? 0);
  return [
    ...(whole === null
      ? []
      : [
          dimension(to(footFrom, wide), at, u, to(0, wide + 7), `reach ${said.outline(whole.reach)}`),
          dimension(
            to(footFrom, -whole.foot / 2),
            to(footFrom, whole.foot / 2),
            n,
            to(footFrom > 16 ? footFrom - 7 : footFrom + 7, 0),
            `foot ${said.outline(whole.foot)}`,
          ),
          label(
            at,
            whole.radius,
            `end radius ${said.outline(whole.radius)}`,
            [0, 25, -25, 50, -50].map((each) => Math.atan2(u[1], u[0]) + (each * Math.PI) / 180),
          ),
        ]),
    dimension([0, 0], at, u, to(0, whole === null ? 9 : wide + 16), said.arm),
    ...(said.ahead === null ? [] : [dimension([0, 0], at, [0, 1], [inner, 0], said.ahead)]),
    ...(said.out === null ? [] : [dimension([0, 0], at, [1, 0], [0, beyond], said.out)]),
  ];
}
