import { nearest } from "../nearest.ts";
import { safe } from "../shown.ts";
import type { Wheel } from "../words.ts";
import { acrossFrom, plainName, type SurveyPoint } from "./points.ts";
import type { Way } from "./readings.ts";

/** The points that an entry's key names, by their places in the list: one set, or one for each side where it says both. */
export type Named = readonly (readonly number[])[];

const separators: Readonly<Record<Way["names"], { readonly pattern: RegExp; readonly like: string }>> = {
  one: { pattern: /\s+(?:from|above|ahead of)\s+/i, like: '"left eye", or "left eye from bolt A"' },
  two: { pattern: /\s+to\s+/i, like: '"left eye to left tie-rod.outer"' },
  three: { pattern: /\s+(?:from|to)\s+/i, like: '"left eye from bolt A to bolt B"' },
};

/** How many points an entry names at least and at most. */
const counts: Readonly<Record<Way["names"], readonly [number, number]>> = { one: [1, 2], two: [2, 2], three: [3, 3] };

type Found = number | { readonly complaint: string };

const indexes = new WeakMap<readonly SurveyPoint[], ReadonlyMap<string, number>>();

/** The points' places in their list by their plain names: a sheet asks for hundreds. */
function indexOf(points: readonly SurveyPoint[]): ReadonlyMap<string, number> {
  const known = indexes.get(points);
  if (known !== undefined) return known;
  const index = new Map<string, number>();
  points.forEach(({ name }, i) => {
    const plain = plainName(name);
    if (!index.has(plain)) index.set(plain, i);
  });
  indexes.set(points, index);
  return index;
}

/**
 * The point that a name means; one without its side is on `side`, one without its part is of that of the `first`, and a bare
 * "left" or "right" is the first one on that side.
 */
function pointCalled(
  text: string,
  points: readonly SurveyPoint[],
  side: Wheel | null,
  first: SurveyPoint | null,
): Found {
  const name = plainName(text);
  const index = indexOf(points);
  if (first !== null && (name === "left" || name === "right")) {
    const there = first.wheel === name ? first : acrossFrom(first, points);
    return there === null ? { complaint: `"${first.name}" has no other side` } : points.indexOf(there);
  }
  const part = plainName(first?.name.replace(/\.[^.]*$/, "") ?? "");
  const found = [name, `${side} ${name}`, `${part} ${name}`]
    .map((each) => index.get(each))
    .find((each) => each !== undefined);
  if (found !== undefined) return found;
  if (index.has(`left ${name}`))
    return { complaint: `"${safe(text)}" is on both sides: write "left ${safe(text)}", "right …" or "both …"` };
  const near = nearest(
    text,
    points.map((each) => each.name),
  );
  const advice =
    near === null ? 'a point of your own stands under marks first, as in "bolt A: left"' : `did you mean "${near}"?`;
  return { complaint: `no point is called "${safe(text)}": ${advice}` };
}

/** The points of an entry's key, such as "left lower-arm.joint to rear" names them; a complaint is a sentence's tail. */
export function pointsIn(
  key: string,
  names: Way["names"],
  points: readonly SurveyPoint[],
): Named | { readonly complaint: string } {
  const { pattern, like } = separators[names];
  const texts = key.trim().split(pattern);
  const [least, most] = counts[names];
  if (texts.length < least || texts.length > most) return { complaint: `expected points like ${like}` };
  const both = /^both\s+/i;
  const sides: readonly (Wheel | null)[] = both.test(texts[0] ?? "") ? ["left", "right"] : [null];
  const named: number[][] = [];
  for (const side of sides) {
    const set: number[] = [];
    for (const text of texts) {
      const first = points[set[0] ?? -1] ?? null;
      const found = pointCalled(text.replace(both, ""), points, side ?? first?.wheel ?? null, first);
      if (typeof found !== "number") return found;
      if (set.includes(found)) return { complaint: `"${points[found]?.name}" stands in it twice` };
      set.push(found);
    }
    named.push(set);
  }
  return named;
}
