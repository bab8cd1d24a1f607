import type { Linkage } from "../linkage.ts";
import { samePlace } from "../places.ts";
import type { Field, Worth } from "./field.ts";
import { cornerPoint, group, named, number, optional, type Sides, sided, sound } from "./fields.ts";

function diameter(what: string): Field<number> {
  return number({ kind: "length", low: 1, high: 500 }, `Outside diameter of the ${what}.`);
}

const frameTube = sound(
  group(
    {
      from: cornerPoint("One end of the tube's centre line."),
      to: cornerPoint("The other end."),
      diameter: diameter("tube"),
    },
    "A tube of the frame, straight from one place to another.",
  ),
  ({ from, to }) =>
    Math.hypot(from.ahead - to.ahead, from.out - to.out, from.up - to.up) < samePlace
      ? { key: "to", message: "found both ends of the tube at the same place, expected two places" }
      : null,
);

/** A straight tube of the frame, its ends in its corner's own frame; lengths mm. */
export type FrameTube = Worth<typeof frameTube>;

/** The tubes of one corner: outside diameters by the body's name ("tie-rod", "lower-arm"), and the frame's beside it. */
export interface Tubes {
  readonly diameters: Readonly<Record<string, number | null>>;
  readonly frame: ReadonlyMap<string, FrameTube>;
}

/** Diameters of the links and the frame's tubes near them: what can meet. */
export function tubesField(linked: readonly Linkage[]): Field<Sides<Tubes>> {
  const bodies = [{ name: "tie-rod", label: "tie rod" }, ...linked.flatMap((each) => each.bodies)];
  const links = Object.fromEntries(bodies.map(({ name, label }) => [name, optional(diameter(`${label}'s tube`))]));
  const frame = optional(named(frameTube, "Tubes of the frame near the front end, by names of your own."));
  const all = group({ ...links, frame }, "The tubes of one corner.");
  const corner: Field<Tubes> = {
    ...all,
    read: (look) => {
      const read = all.read(look);
      if (read === undefined) return undefined;
      const { frame: given, ...diameters } = read as Record<string, number | null> & {
        frame: ReadonlyMap<string, FrameTube> | null;
      };
      return { diameters, frame: given ?? new Map() };
    },
  };
  return sided("tubes", corner, "Outside diameters of links and tubes, for clearance.");
}
