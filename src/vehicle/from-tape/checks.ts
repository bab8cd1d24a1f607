import type { Layout } from "./layout.ts";
import { rodsOf } from "./layout.ts";
import type { Tape } from "./readings.ts";

/** Four readings of 1/16 in each that add up in a rod come to 1/8 in together, mm: less is the tape's own doubt. */
const doubt = 3.2;

/** Where the readings do not agree with each other, in a builder's words. `say` writes a length, mm, with its unit. */
export function disagreements(tape: Tape, layout: Layout, say: (mm: number) => string): readonly string[] {
  const { numbers } = tape;
  const made = rodsOf(layout);
  const said = (["left", "right"] as const).flatMap((wheel) => {
    const taped = numbers.get(`${wheel}-rod`);
    if (taped === undefined || Math.abs(taped - made[wheel]) <= doubt) return [];
    const off = taped - made[wheel];
    return [
      `The ${wheel} rod was taped ${say(taped)}, and the other readings make it ${say(made[wheel])}: ${say(Math.abs(off))} ${off > 0 ? "longer" : "shorter"}. Measure again where the holes and the eyes are, and how far the rack is from its left stop.`,
    ];
  });
  const apart = numbers.get("king-pins-apart") ?? 0;
  const { lower, upper, tab } = layout;
  const line = 2 * (lower.out + ((tab.up - lower.up) * (upper.out - lower.out)) / (upper.up - lower.up));
  if (Math.abs(line - apart) > doubt)
    said.push(
      `The king-pin lines were taped ${say(apart)} apart, and the joints of page 2 make it ${say(line)}: the joints are taken.`,
    );
  const { rack } = layout;
  if (Math.abs(rack.straightAhead) > rack.travel)
    said.push("The rack's way to its left stop is more than its stroke, or less than nothing: measure it again.");
  return said;
}
