import { formatAngle } from "../units/format.ts";
import type { Layout } from "./layout.ts";
import { rodsOf } from "./layout.ts";
import type { Tape } from "./readings.ts";
import { doubtful } from "./together.ts";

/** Four readings of 1/16 in each that add up in a rod come to 1/8 in together, mm: less is the tape's own doubt. */
const doubt = 3.2;

const degrees = (rad: number) => `${formatAngle(rad, 1)}°`;

/** Where the readings do not agree with each other, in a builder's words. `say` writes a length, mm, with its unit. */
export function disagreements(tape: Tape, layout: Layout, say: (mm: number) => string): readonly string[] {
  const { numbers } = tape;
  const made = rodsOf(layout);
  const odd = oddJoint(tape, layout, say);
  const said = (["left", "right"] as const).flatMap((wheel) => {
    const taped = numbers.get(`${wheel}-rod`);
    if (taped === undefined || Math.abs(taped - made[wheel]) <= doubt) return [];
    const off = taped - made[wheel];
    const again =
      odd === null
        ? "Measure again where the holes and the eyes are, and how far the rack is from its left stop."
        : "That may come of the joint above: measure it again first.";
    return [
      `The ${wheel} rod was taped ${say(taped)}, and the other readings make it ${say(made[wheel])}: ${say(Math.abs(off))} ${off > 0 ? "longer" : "shorter"}. ${again}`,
    ];
  });
  if (odd === null) said.push(...lineOff(tape, layout, say));
  else said.unshift(odd);
  return [...said, ...joinedTo(tape, say), ...doubtful(tape).map(({ words }) => `${words}. Is that so?`)];
}

/** The king-pin line of page 2's joints at the tab's height, out from the centreline, mm. */
function lineAtTab({ lower, upper, tab }: Layout): number {
  return lower.out + ((tab.up - lower.up) * (upper.out - lower.out)) / (upper.up - lower.up);
}

/**
 * The one joint of page 2 that stands alone against page 1: king pins apart and inclination make a line, the other joint
 * stands on it, and this one does not. Null where none does, or where no two readings agree against a third.
 */
function oddJoint({ numbers }: Tape, layout: Layout, say: (mm: number) => string): string | null {
  const [apart, leant] = [numbers.get("king-pins-apart"), numbers.get("inclination")];
  if (apart === undefined || leant === undefined || !numbers.has("lower-joint-out")) return null;
  // King pins that page 2 leaves as far apart as they were taped speak for both joints: the inclination stands alone.
  if (Math.abs(2 * lineAtTab(layout) - apart) <= doubt) return null;
  const outAt = (up: number) => apart / 2 - Math.tan(leant) * (up - layout.tab.up);
  const off = (joint: "lower" | "upper") => layout[joint].out - outAt(layout[joint].up);
  const odd = (["lower", "upper"] as const).filter((joint) => Math.abs(off(joint)) > doubt);
  const [joint] = odd;
  if (joint === undefined || odd.length > 1) return null;
  const other = joint === "lower" ? "upper" : "lower";
  return `Measure the ${joint} joint again: out it was taped ${say(layout[joint].out)}, and king pins ${say(apart)} apart with ${degrees(leant)} of inclination, which the ${other} joint agrees with, make it ${say(outAt(layout[joint].up))}. Until then the ${joint} joint is taken as it was taped.`;
}

/** Where the joints of page 2 do not stand on page 1's king-pin line, and none of them stands alone against it. */
function lineOff({ numbers }: Tape, layout: Layout, say: (mm: number) => string): readonly string[] {
  const { lower, upper } = layout;
  const [apart = 0, leant] = [numbers.get("king-pins-apart"), numbers.get("inclination")];
  const line = 2 * lineAtTab(layout);
  const lean = Math.atan2(lower.out - upper.out, upper.up - lower.up);
  const isApart = Math.abs(line - apart) > doubt;
  const isLeant = leant !== undefined && Math.abs(lean - leant) > doubt / (upper.up - lower.up);
  const again = (one: string) => (isApart && isLeant ? "measure both joints again" : `measure ${one} again`);
  const apartAgain =
    leant === undefined ? "measure it and both joints again" : again("how far apart the king-pin lines are");
  return [
    ...(isApart
      ? [
          `The king-pin lines were taped ${say(apart)} apart, and the joints of page 2 make it ${say(line)}: the joints are taken; ${apartAgain}.`,
        ]
      : []),
    ...(isLeant
      ? [
          `"King-pin inclination" ${degrees(leant)} and the joints of page 2, ${degrees(lean)}, do not agree: the joints are taken; ${again("the inclination")}.`,
        ]
      : []),
  ];
}

const inPage2 = ["lower-joint", "upper-joint", "lower-pivot", "upper-pivot"].flatMap((part) => [
  `${part}-out`,
  `${part}-height`,
]);

/** Where page 2 is not whole, or says a thing twice and not alike. */
function joinedTo({ numbers }: Tape, say: (mm: number) => string): readonly string[] {
  const said: string[] = [];
  const missing = inPage2.filter((key) => !numbers.has(key));
  if (missing.length > 0 && missing.length < inPage2.length)
    said.push(
      `Page 2 is not whole: ${missing.join(", ")} ${missing.length === 1 ? "is" : "are"} left out, and what is left out is assumed.`,
    );
  const [top, foot, now] = [shockEnd(numbers, "top"), shockEnd(numbers, "foot"), numbers.get("shock-now")];
  if (now === undefined || top === null || foot === null) return said;
  const apart = Math.hypot(top[0] - foot[0], top[1] - foot[1], top[2] - foot[2]);
  if (Math.abs(apart - now) > doubt)
    said.push(
      `The shock at ride height was taped ${say(now)}, and its two ends make it ${say(apart)}: the ends are taken. Measure again where they are.`,
    );
  return said;
}

function shockEnd(numbers: Tape["numbers"], end: "top" | "foot"): readonly [number, number, number] | null {
  const [ahead, out, up] = ["ahead", "out", "height"].map((part) => numbers.get(`shock-${end}-${part}`));
  return ahead === undefined || out === undefined || up === undefined ? null : [ahead, out, up];
}
