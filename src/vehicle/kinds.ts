import type { QuantityKind } from "./quantity.ts";

/** What a number of each kind may be written as, for the printed schema. */
export const kindHelp: Readonly<Record<QuantityKind, string>> = {
  length: 'A number in the file\'s units, or text such as "14 3/8", "365 mm", "1 ft 2 in" or "12 1/2 + 3/8".',
  angle: 'A number of degrees, or text such as "1 1/2" or "0.1 rad".',
  ratio: 'A number, or text such as "15 1/2".',
};

/** The same in the fewest words, for complaints. */
export const kindWords: Readonly<Record<QuantityKind, string>> = {
  length: 'a length such as 14.375, "14 3/8" or "365 mm"',
  angle: "an angle in degrees, such as 0.5",
  ratio: "a number, such as 16",
};
