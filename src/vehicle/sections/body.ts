import type { Worth } from "./field.ts";
import { group, number } from "./fields.ts";

const far = { kind: "length", low: -3000, high: 3000 } as const;

/** The corner of the body that swings widest. */
export const bodyField = group(
  {
    ahead: number(far, "The corner that swings widest: how far ahead of the front-axle line."),
    out: number({ ...far, low: 0 }, "The same corner: how far out from the car's centreline."),
  },
  "The front corner of body, bumper or bars that swings widest, for the circle between walls.",
);

/** The body's front corner, mm. */
export type Body = Worth<typeof bodyField>;
