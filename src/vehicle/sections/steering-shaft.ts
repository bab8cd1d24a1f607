import { degree } from "../value.ts";
import type { Worth } from "./field.ts";
import { carPoint, group, number, optional, otherwise, word } from "./fields.ts";

const phase = { kind: "angle", low: -180 * degree, high: 180 * degree } as const;

const phaseHelp =
  "degrees about the shaft from the fork at its upper end to the fork at its lower end: 0 where both lie in one plane. Left out, 0.";

/** The shaft from the steering wheel to the rack's pinion or the steering box, with its universal joints. */
export const steeringShaftField = group(
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

/** The steering shaft: points in the vehicle's frame, mm; phases rad. */
export type SteeringShaft = Worth<typeof steeringShaftField>;
