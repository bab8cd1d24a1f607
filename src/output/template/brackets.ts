import type { PivotLine } from "../../measures/bench/pivotLines.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { leanWords } from "../sheet/writing.ts";
import { degrees } from "../words.ts";
import { pointing } from "./dimension.ts";
import { type At, line, type Shape, type Sketch, words } from "./flat.ts";

/** How long a gauge is, how deep at its least, and the room to the next, mm. */
const gauge = { long: 150, deep: 40, apart: 12 };

/** Above this a card would be as high as it is long, rad. */
const steepest = Math.PI / 4;

/** A card with its lower edge on the reference and its upper edge at an angle to it, rising to the right where positive. */
function card(
  low: number,
  angle: number,
  said: string,
  edge: string,
  up: string,
): { readonly shapes: readonly Shape[]; readonly top: number } {
  const rise = gauge.long * Math.tan(angle);
  const [left, right] = [gauge.deep + Math.max(0, -rise), gauge.deep + Math.max(0, rise)];
  const corners: readonly At[] = [
    [0, low],
    [gauge.long, low],
    [gauge.long, low + right],
    [0, low + left],
  ];
  const sides = corners.map((each, i) => line("cut", each, corners[(i + 1) % corners.length] ?? each));
  return {
    shapes: [
      ...sides,
      words([4, low + 16], said, 3),
      words([4, low + 4], edge, 3),
      ...pointing([gauge.long - 12, low + 26], [1, 0], "ahead"),
      ...pointing([8, low + 24], [0, 1], up),
    ],
    top: low + Math.max(left, right),
  };
}

/** Gauges for the brackets of the arms, to be cut from card and held to the bracket; null where none is needed. */
export function bracketDrawing(wheel: Wheel, lines: readonly PivotLine[]): Sketch | null {
  const all = lines.flatMap(({ arm, outward, upward }) => [
    {
      angle: outward,
      said: `${arm}, from above: ${leanWords(outward, "outward", "inward")} going ahead`,
      up: "outboard",
      edge: "this edge straight ahead, its right end the front one",
    },
    {
      angle: upward,
      said: `${arm}, from the side: ${leanWords(upward, "up", "down")} going ahead`,
      up: "up",
      edge: "this edge level, its right end the front one",
    },
  ]);
  const steep = all.filter(({ angle }) => Math.abs(angle) > steepest);
  const straight = all.filter(({ angle }) => degrees(Math.abs(angle)) === degrees(0));
  const cards = all.filter((each) => !steep.includes(each) && !straight.includes(each));
  if (cards.length === 0) return null;
  const shapes: Shape[] = [];
  let low = 0;
  for (const { angle, said, edge, up } of cards) {
    const made = card(low, angle, said, edge, up);
    shapes.push(...made.shapes);
    low = made.top + gauge.apart;
  }
  return {
    name: "brackets",
    title: "Gauges for the arms' brackets",
    notes: [
      "Cut from card. The upper edge of each runs as the line through the arm's two pivots: sight the bolts or a rod through both brackets along it.",
      `Seen from above, the ${wheel} side's gauges lie ${wheel === "left" ? "as they are drawn" : "turned over"}.`,
      ...straight.map(({ said }) => `${said}: no gauge, it runs along the reference.`),
      ...steep.map(({ said, angle }) => `${said}: ${degrees(Math.abs(angle))}, too steep for a gauge.`),
    ],
    shapes,
  };
}
