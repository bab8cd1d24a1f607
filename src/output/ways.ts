/** Which way a change of a quantity goes, by the last word of its path: more, and less. */
const ways: Readonly<Record<string, readonly [more: string, less: string]>> = {
  ahead: ["farther forward", "farther back"],
  out: ["farther out", "farther in"],
  up: ["higher", "lower"],
  offset: ["to the driver's left", "to the driver's right"],
  "straight-ahead": ["to the driver's left", "to the driver's right"],
  "eye-to-eye": ["wider", "narrower"],
  tilt: ["more, left end up", "less, left end down"],
  length: ["longer", "shorter"],
  camber: ["out at the top", "in at the top"],
};

/** Where a place is by its sign, by the last word of its path: positive, and negative. */
const places: Readonly<Record<string, readonly [positive: string, negative: string]>> = {
  ahead: ["ahead of the axle line", "behind the axle line"],
  out: ["out from the centreline", "beyond the centreline, on the other side"],
  offset: ["left of the centreline", "right of the centreline"],
  "straight-ahead": ["to the left of its middle", "to the right of its middle"],
  tilt: ["left end up", "left end down"],
  "lean-back": ["top back", "top ahead"],
  "lean-left": ["top to the left", "top to the right"],
};

/** The words for a positive and a negative place, by its path; null where its sign says all. */
export function placesOf(path: string): readonly [positive: string, negative: string] | null {
  return places[path.split(".").at(-1) ?? ""] ?? null;
}

/** The words for more and for less of a quantity, by its path; null where "more" and "less" are all there is to say. */
export function waysOf(path: string): readonly [more: string, less: string] | null {
  return ways[path.split(".").at(-1) ?? ""] ?? null;
}
