import { type At, type Box, boxOf, cornersOf, type Shape } from "./flat.ts";

/** Into so many straight pieces a circle is taken. */
const chords = 24;

/** The convex figures that a shape covers on paper: a line's two ends, the corners of words, the chords of a circle or arc. */
function figures(shape: Shape): readonly (readonly At[])[] {
  if (shape.is === "line") return [[shape.from, shape.to]];
  if (shape.is === "words") return [cornersOf(shape)];
  const [from, to] = shape.is === "arc" ? [shape.from, shape.to] : [0, 2 * Math.PI];
  const { at, radius } = shape;
  const on = (i: number): At => {
    const angle = from + ((to - from) * i) / chords;
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
  };
  return Array.from({ length: chords }, (_, i) => [on(i), on(i + 1)]);
}

/**
 * Whether two convex figures come nearer than a gap: they are apart where their shadows on a line along or square to a side
 * of one of them are (separating axis theorem, elementary).
 */
function meet(a: readonly At[], b: readonly At[], gap: number): boolean {
  for (const figure of [a, b])
    for (const [i, [x, y]] of figure.entries()) {
      const [nextX, nextY] = figure[(i + 1) % figure.length] ?? [x, y];
      const long = Math.hypot(nextX - x, nextY - y);
      if (long === 0) continue;
      const [ux, uy] = [(nextX - x) / long, (nextY - y) / long];
      for (const [dx, dy] of [
        [ux, uy],
        [-uy, ux],
      ] as const) {
        const shadow = (points: readonly At[]) => points.map(([px, py]) => px * dx + py * dy);
        const [first, second] = [shadow(a), shadow(b)];
        if (Math.max(...first) + gap < Math.min(...second) || Math.max(...second) + gap < Math.min(...first))
          return false;
      }
    }
  return true;
}

/** Whether two boxes are farther apart than a gap. */
export function areApart(a: Box, b: Box, gap = 0): boolean {
  return a.right + gap < b.left || b.right + gap < a.left || a.high + gap < b.low || b.high + gap < a.low;
}

/** Whether two shapes come nearer to each other than a gap, mm. */
export function overlap(a: Shape, b: Shape, gap = 0): boolean {
  if (areApart(boxOf([a]), boxOf([b]), gap)) return false;
  return figures(a).some((one) => figures(b).some((other) => meet(one, other, gap)));
}

/** Whether a shape comes into a box. */
export function reaches(shape: Shape, { left, right, low, high }: Box): boolean {
  const corners: readonly At[] = [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ];
  return figures(shape).some((each) => meet(each, corners, 0));
}

/** Words keep so far from everything else, mm. */
const clearance = 0.4;

/**
 * How badly new shapes lie on those that are there: words on anything, or a line through words, are ten lines crossed.
 * Counted on from `sum` until it is enough to be worse than what is known.
 */
function clash(added: readonly Shape[], there: readonly Shape[], sum: number, enough: number): number {
  let cost = sum;
  for (const one of added)
    for (const other of there) {
      const isRead = one.is === "words" || other.is === "words";
      if (overlap(one, other, isRead ? clearance : 0)) cost += isRead ? 10 : 1;
      if (cost >= enough) return cost;
    }
  return cost;
}

/** A drawing that grows by so much, mm, is as bad as one line crossed: paper is narrow. */
const grown = 8;

/** How much wider and higher a box gets by what is put to it. */
function growth(whole: Box, added: Box): number {
  const wider = Math.max(0, whole.left - added.left) + Math.max(0, added.right - whole.right);
  return wider + Math.max(0, whole.low - added.low) + Math.max(0, added.high - whole.high);
}

/** A part of a drawing whose words may stand in several places, the best first. */
export interface Placed {
  readonly lines: readonly Shape[];
  readonly ways: readonly (readonly Shape[])[];
}

/** Shapes with parts put among them, the words of each where they lie on nothing and make the drawing no larger, or nearly so. */
export function arranged(fixed: readonly Shape[], parts: readonly Placed[]): readonly Shape[] {
  const there = [...fixed, ...parts.flatMap(({ lines }) => lines)];
  for (const { ways } of parts) {
    const whole = boxOf(there);
    let best: { readonly way: readonly Shape[]; readonly cost: number } | null = null;
    for (const way of ways) {
      const cost = clash(way, there, growth(whole, boxOf(way)) / grown, best?.cost ?? Number.POSITIVE_INFINITY);
      if (best === null || cost < best.cost) best = { way, cost };
      if (cost === 0) break;
    }
    there.push(...(best?.way ?? []));
  }
  return there;
}
