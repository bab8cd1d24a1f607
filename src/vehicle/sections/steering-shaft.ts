import { samePlace } from "../places.ts";
import { formatAngle } from "../units/format.ts";
import { degree } from "../value.ts";
import type { Worth } from "./field.ts";
import { carPoint, type FieldFault, group, number, optional, otherwise, sound, word } from "./fields.ts";

const phase = { kind: "angle", low: -180 * degree, high: 180 * degree } as const;

const phaseHelp =
  "degrees about the shaft from the fork at its upper end to the fork at its lower end: 0 where both lie in one plane. Left out, 0.";

const whole = group(
  {
    wheel: carPoint("Upper end of the column, on its centre line, at the steering wheel."),
    "upper-joint": optional(
      carPoint("Centre of the first universal joint below the column, where there is more than one."),
    ),
    "middle-joint": optional(carPoint("Centre of the second universal joint, where there are three.")),
    "lower-joint": carPoint("Centre of the last universal joint, next to the pinion."),
    pinion: carPoint("A place on the centre line of the pinion or the steering box's input, beyond the last joint."),
    phase: otherwise(number(phase, `Forks of the shaft below the first joint: ${phaseHelp}`), 0),
    "second-phase": otherwise(number(phase, `Forks of the shaft above the last of three joints: ${phaseHelp}`), 0),
    "support-bearing": otherwise(
      word(["yes", "no"], "Whether a bearing supports the shaft between the joints. Left out, no."),
      "no",
    ),
  },
  "The steering shaft and its universal joints.",
);

/** A universal joint bends no further than this by far: what does was measured or written wrongly. */
const mostBend = 80 * degree;

const inOrder = ["wheel", "upper-joint", "middle-joint", "lower-joint", "pinion"] as const;

/** What keeps places from being a shaft: two that coincide, or a joint that doubles back. */
function faultOf(shaft: Worth<typeof whole>): FieldFault | null {
  if (shaft["upper-joint"] === null && shaft["middle-joint"] !== null)
    return {
      key: "middle-joint",
      message: "found a middle joint without upper-joint: of two joints the first is upper-joint",
    };
  const places = inOrder.flatMap((key) => {
    const at = shaft[key];
    return at === null ? [] : [{ key, place: [at.ahead, at.offset, at.up] as const }];
  });
  const runs = places.slice(1).map((to, i) => {
    const from = places[i] ?? to;
    const span = to.place.map((each, k) => each - (from.place[k] ?? each));
    return { from: from.key, to: to.key, span, length: Math.hypot(...span) };
  });
  const point = runs.find(({ length }) => length < samePlace);
  if (point !== undefined)
    return { key: point.to, message: `found it at the same place as ${point.from}, expected a shaft between the two` };
  for (const [i, next] of runs.slice(1).entries()) {
    const run = runs[i] ?? next;
    const along = run.span.reduce((sum, each, k) => sum + each * (next.span[k] ?? 0), 0);
    const bend = Math.acos(Math.max(-1, Math.min(1, along / run.length / next.length)));
    if (bend > mostBend)
      return {
        key: run.to,
        message: `found a joint bent by ${formatAngle(bend, 0)} degrees, expected no more than 80: no universal joint turns beyond that; look at its place and its neighbours'`,
      };
  }
  return null;
}

/** The shaft from the steering wheel to the rack's pinion or the steering box, with its universal joints. */
export const steeringShaftField = sound(whole, faultOf);

/** The steering shaft: points in the vehicle's frame, mm; phases rad. */
export type SteeringShaft = Worth<typeof steeringShaftField>;
