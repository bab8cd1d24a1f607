import type { OnUpright, StandingUpright } from "../../measures/bench/onUpright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Writing, wayWords } from "../sheet/writing.ts";
import { degrees, type Length } from "../words.ts";
import { dimension, label, ways } from "./dimension.ts";
import { type At, boxOf, crossAt, line, type Shape, type Sketch } from "./flat.ts";
import { arranged, type Placed } from "./overlap.ts";

const ring = 3;

/** Where on its line a height's value stands: near its upper end, where the pages of a drawing do not meet. */
const nearEnd = 0.85;

/** Room between the lines of sizes beside each other. */
const lane = 9;

/** Sizes up from the lower joint to places, on one side of the king-pin line: the longest farthest out, so that none crosses another. */
function heights(places: readonly { readonly at: At; readonly text: string }[], start: number): readonly Placed[] {
  const away = start < 0 ? -1 : 1;
  return [...places]
    .filter(({ at }) => Math.abs(at[1]) > 0.05)
    .sort((a, b) => Math.abs(a.at[1]) - Math.abs(b.at[1]))
    .map(({ at, text }, i) => dimension([0, 0], at, [0, 1], [start + away * lane * i, 0], text, nearEnd));
}

/** A size square to the king-pin line, none where it would be nothing; y is the height of its line. */
function aside(at: At, y: number, size: number, text: string, cut: Length): readonly Placed[] {
  return cut(Math.abs(size)) === cut(0) ? [] : [dimension([0, y], at, [1, 0], [0, y], text)];
}

/** The upright on the jig table, its king-pin line upright: from behind, and from the wheel's side. */
export function uprightDrawings(wheel: Wheel, upright: StandingUpright, { cut }: Writing): readonly Sketch[] {
  const { upper, hole, spindle, wheelCenter } = upright;
  const lean = Math.atan2(spindle.up - wheelCenter.up, wheelCenter.out);
  const outward = wheel === "left" ? -1 : 1;
  const along = Math.hypot(wheelCenter.out, spindle.up - wheelCenter.up);
  const foot = { ahead: 0, out: 0, up: 0 };
  const top = { ...foot, up: upper };
  const leanSaid =
    degrees(Math.abs(lean)) === degrees(0)
      ? "spindle square to the king-pin line"
      : `spindle ${degrees(Math.abs(lean))} ${lean < 0 ? "up" : "down"}`;

  const view = (
    across: (place: OnUpright) => number,
    names: { readonly left: string; readonly right: string },
    more: (at: (place: OnUpright) => At, low: number) => { lines: readonly Shape[]; parts: readonly Placed[] },
  ): readonly Shape[] => {
    const at = (place: OnUpright): At => [across(place), place.up];
    const places = [foot, top, spindle, wheelCenter, hole];
    const bare: readonly Shape[] = [
      line("mark", [-20, 0], [20, 0]),
      line("mark", [0, Math.min(0, spindle.up) - 9], [0, Math.max(upper, spindle.up) + 9]),
      line("mark", at(spindle), at(wheelCenter)),
      ...places.flatMap((place): readonly Shape[] => [
        ...crossAt(at(place), 6),
        { is: "circle", layer: "mark", at: at(place), radius: ring },
      ]),
    ];
    const { low } = boxOf(bare);
    const { lines, parts } = more(at, low);
    const side = across(hole) < 0 ? -1 : 1;
    const shapes = arranged(
      [...bare, ...lines],
      [
        ...heights(
          [
            { at: at(hole), text: cut(Math.abs(hole.up)) },
            { at: at(spindle), text: cut(Math.abs(spindle.up)) },
            { at: at(top), text: cut(upper) },
          ],
          side * (Math.max(20, Math.abs(across(hole)) + 6) + lane),
        ),
        ...parts,
        label(at(foot), ring, "lower joint"),
        label(at(top), ring, "upper joint"),
        label(at(hole), ring, "tie-rod hole"),
        label(at(wheelCenter), ring, "wheel's middle"),
        label(at(spindle), ring, "spindle's line"),
      ],
    );
    return [...shapes, ...ways(boxOf(shapes), { ...names, up: "up" })];
  };

  const named = (left: string, right: string) => (wheel === "left" ? { left, right } : { left: right, right: left });
  return [
    {
      name: "upright-from-behind",
      title: "Upright from behind",
      notes: [
        "The king-pin line stands upright; the table's line goes through the lower joint.",
        `The spindle's line passes the king-pin line ${wayWords(spindle.ahead, "ahead of it", "behind it", cut)}, and leans from square to it by what is written.`,
      ],
      shapes: view(
        ({ out }) => outward * out,
        named("outboard", "inboard"),
        (at, low) => {
          const level: At = [at(spindle)[0] + outward * 0.7 * along, spindle.up];
          const radius = 0.55 * along;
          // Where the spindle runs from its crossing with the king-pin line, and level outward beside it, rad from the right.
          const out = outward > 0 ? 0 : Math.PI;
          const run = Math.atan2(at(wheelCenter)[1] - spindle.up, at(wheelCenter)[0]);
          const [a, b] = [out, run < 0 && outward < 0 ? run + 2 * Math.PI : run].sort((one, two) => one - two);
          const mid = ((a ?? 0) + (b ?? 0)) / 2;
          return {
            lines: [
              line("mark", at(spindle), level),
              { is: "arc", layer: "mark", at: at(spindle), radius, from: a ?? 0, to: b ?? 0 },
            ],
            parts: [
              dimension(at(spindle), at(wheelCenter), [Math.cos(run), Math.sin(run)], at(spindle), cut(along)),
              ...aside(at(hole), low - 3, hole.out, wayWords(hole.out, "outboard", "inboard", cut), cut),
              label([radius * Math.cos(mid), spindle.up + radius * Math.sin(mid)], 0, leanSaid),
            ],
          };
        },
      ),
    },
    {
      name: "upright-from-the-side",
      title: "Upright from the wheel's side",
      notes: [
        `Seen from outside the car, ahead to the ${wheel}; outboard is toward you. The king-pin line stands upright.`,
        `The spindle leans ${degrees(Math.abs(lean))} ${lean < 0 ? "up" : "down"} at its end, seen from behind.`,
      ],
      shapes: view(
        ({ ahead }) => outward * ahead,
        named("ahead", "behind"),
        (at, low) => ({
          lines: [],
          parts: [
            ...aside(at(hole), low - 3, hole.ahead, wayWords(hole.ahead, "ahead", "behind", cut), cut),
            ...aside(
              at(spindle),
              upper > spindle.up ? spindle.up + 0.35 * (upper - spindle.up) : spindle.up + 12,
              spindle.ahead,
              `spindle ${wayWords(spindle.ahead, "ahead", "behind", cut)}`,
              cut,
            ),
          ],
        }),
      ),
    },
  ];
}
