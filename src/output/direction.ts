import { degrees } from "./words.ts";

/** A direction as shares ahead, out and up. */
type Direction = readonly [ahead: number, out: number, up: number];

/** A lean that an angle finder does not show, rad. */
const LEVEL = (0.5 * Math.PI) / 180;

/** "3.2° back" for a lean of −3.2° whose positive way is ahead; nothing for one that no angle finder shows. */
function lean(angle: number, positive: string, negative: string): readonly string[] {
  return Math.abs(angle) < LEVEL ? [] : [`${degrees(Math.abs(angle))} ${angle > 0 ? positive : negative}`];
}

/**
 * How to set a bolt with square and angle finder: the nearest of upright, fore and aft and straight across, and how far to
 * tip it from that, each lean as it is seen from the side, from ahead or from above. Of the bolt's two ends the upper,
 * the front or the outer one is meant.
 */
export function directionWords(direction: Direction): string {
  const largest = direction.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  const sign = largest < 0 ? -1 : 1;
  const [ahead, out, up] = direction.map((each) => sign * each) as unknown as Direction;
  const [base, end, leans] =
    largest === direction[2]
      ? ["upright", "top", [...lean(Math.atan2(ahead, up), "ahead", "back"), ...lean(Math.atan2(out, up), "out", "in")]]
      : largest === direction[0]
        ? [
            "fore and aft",
            "front end",
            [...lean(Math.atan2(out, ahead), "out", "in"), ...lean(Math.atan2(up, ahead), "up", "down")],
          ]
        : [
            "straight across",
            "outer end",
            [...lean(Math.atan2(ahead, out), "ahead", "back"), ...lean(Math.atan2(up, out), "up", "down")],
          ];
  return leans.length === 0 ? base : `${base}, its ${end} turned ${leans.join(" and ")}`;
}
