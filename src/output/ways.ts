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

/** The words for more and for less of a quantity, by its path; null where "more" and "less" are all there is to say. */
export function waysOf(path: string): readonly [more: string, less: string] | null {
  return ways[path.split(".").at(-1) ?? ""] ?? null;
}
