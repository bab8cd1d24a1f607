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
  const leant = numbers.get("inclination");
  const lean = Math.atan2(lower.out - upper.out, upper.up - lower.up);
  if (leant !== undefined && Math.abs(lean - leant) > doubt / (upper.up - lower.up))
    said.push(
      `"King-pin inclination" ${degrees(leant)} and the joints of page 2, ${degrees(lean)}, do not agree: the joints are taken.`,
    );
  return [...said, ...joinedTo(tape, say), ...doubtful(tape).map(({ words }) => `${words}. Is that so?`)];
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
