import { type At, type Box, letters, type Shape, thin, widthOf, words } from "./flat.ts";
import type { Placed } from "./overlap.ts";

// Sizes as a drawing has them: a line between arrows, its value along it, and lines from what is measured to its ends.

const arrow = { long: 2.6, half: 0.75 };
/** What lines leave free at the thing measured, and how far they go on beyond the line of the size. */
const free = 1.5;
const beyond = 0.7;
/** Words stand so far from their line, clear of its arrows. */
const off = 2;
/** A shorter size is none, mm. */
export const nothing = 0.01;
/** Where a size is shorter, its arrows point at it from outside, by tails so long. */
const short = 9;
const tail = 6;

const add = ([x, y]: At, [dx, dy]: At, by = 1): At => [x + by * dx, y + by * dy];
const toward = (angle: number): At => [Math.cos(angle), Math.sin(angle)];
const normal = ([x, y]: At): At => [-y, x];

/** An arrowhead at a place, pointing along a unit vector. */
function head(at: At, along: At): readonly Shape[] {
  const back = add(at, along, -arrow.long);
  const side = normal(along);
  return [thin(at, add(back, side, arrow.half)), thin(at, add(back, side, -arrow.half))];
}

/** The same direction or its opposite: the one that words along it are read in, from below or from the right. */
function readable([x, y]: At): At {
  return x < -1e-9 || (Math.abs(x) <= 1e-9 && y < 0) ? [-x, -y] : [x, y];
}

/** Words that begin at a place and run along a unit vector, above their line or below it. */
function alongLine(start: At, run: At, text: string, side: 1 | -1): Shape {
  const at = add(start, normal(run), side > 0 ? off : -off - 0.8 * letters);
  return { ...words(at, text), is: "words", at, high: letters, text, turn: Math.atan2(run[1], run[0]) };
}

/** Places of words along a line between two places: in its middle, then elsewhere on it; above, then below. */
function onLine(from: At, to: At, text: string, best = 0.5): readonly (readonly Shape[])[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const wide = widthOf(text);
  if (long < wide + 2) return [];
  const run = readable([(to[0] - from[0]) / long, (to[1] - from[1]) / long]);
  const begin = (to[0] - from[0]) * run[0] + (to[1] - from[1]) * run[1] > 0 ? from : to;
  const spare = long - wide;
  const towardTo = begin === from ? best : 1 - best;
  return [towardTo, 0.5, 0.3, 0.7, 0.15, 0.85, 0, 1].flatMap((share) =>
    ([1, -1] as const).map((side) => [alongLine(add(begin, run, spare * share), run, text, side)]),
  );
}

/** Words beyond the end of a line, which goes on below them; `out` is the unit vector away from it. */
function beyondEnd(end: At, out: At, text: string): readonly (readonly Shape[])[] {
  const wide = widthOf(text);
  const run = readable(out);
  return [tail + 1, tail + 8].flatMap((gap) => {
    const last = add(end, out, gap + wide);
    const start = run[0] * out[0] + run[1] * out[1] > 0 ? add(end, out, gap) : last;
    return ([1, -1] as const).map((side) => [thin(end, last), alongLine(start, run, text, side)]);
  });
}

/**
 * The size from one place to another along a unit vector, its line through a third place: the two places are carried square
 * to that line, so that its length is the distance measured along the vector. `best` is where on it the value stands best.
 */
export function dimension(from: At, to: At, along: At, through: At, text: string, best = 0.5): Placed {
  const onto = (at: At): At => add(through, along, (at[0] - through[0]) * along[0] + (at[1] - through[1]) * along[1]);
  const [p, q] = [onto(from), onto(to)];
  const long = Math.hypot(q[0] - p[0], q[1] - p[1]);
  if (long < nothing) return { lines: [], ways: [] };
  const u: At = [(q[0] - p[0]) / long, (q[1] - p[1]) / long];
  const carried = ([place, end]: readonly [At, At]): readonly Shape[] => {
    const way = Math.hypot(end[0] - place[0], end[1] - place[1]);
    if (way < 2 * free) return [];
    const v: At = [(end[0] - place[0]) / way, (end[1] - place[1]) / way];
    return [thin(add(place, v, free), add(end, v, beyond))];
  };
  const isShort = long < short;
  const back: At = [-u[0], -u[1]];
  const arrows = isShort
    ? [...head(p, u), thin(add(p, u, -tail), p), ...head(q, back), thin(q, add(q, u, tail))]
    : [...head(p, back), ...head(q, u)];
  return {
    lines: [...[[from, p] as const, [to, q] as const].flatMap(carried), thin(p, q), ...arrows],
    ways: [
      ...onLine(p, q, text, best),
      ...beyondEnd(q, u, text),
      ...beyondEnd(p, back, text),
      ...label([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], 0, text).ways,
    ],
  };
}

/** Words that stand along a line that is drawn already. */
export function nameOfLine(from: At, to: At, text: string): Placed {
  return { lines: [], ways: [...onLine(from, to, text), ...label(from, 0, text).ways] };
}

/** The name of a place: a line leads from the ring around it to a shelf with the words, to one of those sides (rad). */
export function label(
  at: At,
  ring: number,
  text: string,
  sides: readonly number[] = [0, 30, -30, 180, 150, -150, 60, -60, 120, -120].map((each) => (each * Math.PI) / 180),
): Placed {
  const wide = widthOf(text);
  const ways = [6, 10, 15, 21, 28, 36, 45].flatMap((far) =>
    sides.map((angle): readonly Shape[] => {
      const way = toward(angle);
      const end = add(at, way, ring + far);
      const left = way[0] >= 0 ? end[0] : end[0] - wide;
      const shelf = thin([left, end[1]], [left + wide, end[1]]);
      return [thin(add(at, way, ring), end), shelf, words([left, end[1] + 1.3], text)];
    }),
  );
  return { lines: [], ways };
}

/** An arrow from a place along a unit vector, its name beside it: to the left of one to the right, else to the right. */
export function pointing(from: At, along: At, name: string): readonly Shape[] {
  const to = add(from, along, 8);
  const x = along[0] > 0 ? from[0] - 2 - widthOf(name) : Math.max(from[0], to[0]) + 3;
  return [thin(from, to), ...head(to, along), words([x, (from[1] + to[1]) / 2 - 0.3 * letters], name)];
}

/** Which way is which: arrows in a row above a drawing, to its left, up and to its right, named. */
export function ways({ left, right, high }: Box, names: { left: string; up: string; right: string }): readonly Shape[] {
  const middle = (left + right) / 2;
  const [one, two] = [widthOf(names.left), widthOf(names.right)];
  // The middle arrow's name stands to its right.
  const half = Math.max((right - left) / 2, 13 + Math.max(one, two + widthOf(names.up) + 3));
  const y = high + 8;
  return [
    ...pointing([middle - half + 8, y], [-1, 0], names.left),
    ...pointing([middle, y - 4], [0, 1], names.up),
    ...pointing([middle + half - 8, y], [1, 0], names.right),
  ];
}
