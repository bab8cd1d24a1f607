import type { Linkage } from "../linkage.ts";
import { samePlace } from "../places.ts";
import { readRate } from "../units/rate.ts";
import type { Field, Worth } from "./field.ts";
import { cornerPoint, group, number, optional, type Sides, sided, sound, text, word } from "./fields.ts";

function corner(bodies: readonly string[]) {
  const length = { kind: "length", low: 20, high: 2000 } as const;
  const shock = group(
    {
      top: cornerPoint("The shock's eye on the frame."),
      foot: cornerPoint("The shock's eye on the part that moves."),
      on: word(bodies, `What the foot is on: ${bodies.join(", ")}.`),
      "spring-rate": optional(
        text(
          'The spring\'s rate, such as "600 lb/in" or "105 N/mm"; a bare number is lb/in where units are in, N/mm where they are mm.',
          'a spring rate such as "600 lb/in" or "105 N/mm"',
          readRate,
        ),
      ),
      "free-length": optional(number(length, "The shock's length fully extended, eye to eye.")),
      stroke: optional(
        number({ kind: "length", low: 1, high: 1000 }, "How much shorter it is when fully closed, bump stop and all."),
      ),
      diameter: optional(
        number({ kind: "length", low: 5, high: 400 }, "Its outside diameter, spring included, for clearance."),
      ),
      "arms-widened": optional(
        number(
          { kind: "length", low: -1000, high: 1000 },
          "How much longer the arms are than the donor's, outboard of the shock's foot: says what that did to the shock.",
        ),
      ),
    },
    "The shock of one corner.",
  );
  return sound(shock, ({ top, foot, "free-length": free, stroke }, written) => {
    if (Math.hypot(top.ahead - foot.ahead, top.out - foot.out, top.up - foot.up) < samePlace)
      return { key: "foot", message: "found the shock's top and foot at the same place, expected two places" };
    if (free === null || stroke === null || stroke < free) return null;
    const message = `found ${written("stroke")}, expected less than the free length, ${written("free-length")}: a shock cannot close by all of its length`;
    return { key: "stroke", message };
  });
}

/** A shock: points in its corner's own frame, lengths mm, rate N/mm. */
export type Shock = Worth<ReturnType<typeof corner>>;

/** Shocks and their springs. */
export function shockField(linked: readonly Linkage[]): Field<Sides<Shock>> {
  const bodies = new Set([...linked.flatMap((each) => each.bodies.map(({ name }) => name)), "upright"]);
  const field = sided("shock", corner([...bodies]), "The shocks: where they are, their springs and their lengths.");
  const [only, ...more] = linked;
  if (only?.noTravel === undefined || more.length > 0) return field;
  const message = "king pins that are fixed to the frame have no suspension for a shock to work on: leave shock out";
  return sound(field, ({ left, right }) => (left === null && right === null ? null : { key: "", message }));
}
