import { disagreements } from "../vehicle/from-tape/checks.ts";
import type { Assumed, Layout } from "../vehicle/from-tape/layout.ts";
import type { Tape } from "../vehicle/from-tape/readings.ts";
import { lengthsIn } from "./report.ts";

const names: Readonly<Record<Assumed, string>> = {
  inclination: "king-pin inclination 9°",
  caster: "caster 7°",
  camber: "camber 0",
  toe: "toe 0",
  "tyre-width": "tyre width a third of the hub's height",
  turns: "turns of the steering wheel not known",
  arms: "arms level and parallel to the centreline",
  travel: "wheel travel",
};

/** What assuming costs, as measured on the example cars and random ones: said wherever a car is begun from a tape. */
export const priceOfAssuming =
  "Beside the same car measured whole, page 1 alone gives locks within half a degree, and Ackermann within 8 points on five cars of six and within 13 on all; with caster and inclination read as well, within 5.";

/** What has to be said of a car that was begun from a tape: what was assumed, and where readings do not agree. */
export function tapeNotes(tape: Tape, layout: Layout): readonly string[] {
  const assumed = [...layout.assumed].map((each) => names[each]);
  const length = lengthsIn(tape.units);
  return [
    ...disagreements(tape, layout, length).map((words) => `warning: ${words}`),
    ...(assumed.length === 0
      ? []
      : [`Assumed, and marked "starting value" in the file: ${assumed.join(", ")}. ${priceOfAssuming}`]),
    ...(layout.assumed.has("travel")
      ? ["Bump steer stays blank: it needs pivots, joints, bump and droop, which are page 2 of the readings."]
      : []),
  ];
}
