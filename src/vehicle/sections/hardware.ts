import type { Linkage } from "../linkage.ts";
import { readThread, type Thread } from "../threads.ts";
import type { Field, Worth } from "./field.ts";
import { group, named, number, optional, type Sides, sided, sound, text } from "./fields.ts";
import { tieRodJoints } from "./rod-ends.ts";

const size = { kind: "length", low: 0.1, high: 500 } as const;
const place = { kind: "length", low: -2000, high: 2000 } as const;

const thickness = optional(number({ ...size, high: 60 }, "How thick its plate is."));

const tab = sound(
  group(
    {
      thickness,
      hole: optional(number({ ...size, high: 60 }, "Diameter of the hole for the tie rod's bolt.")),
      "end-radius": optional(
        number({ ...size, high: 150 }, "From the middle of the hole to the edge of the rounded end around it."),
      ),
      foot: optional(number(size, "Length of the edge that is welded or bolted to the upright.")),
      reach: optional(number(size, "From the middle of the hole square to that edge.")),
    },
    "The tab for the tie rod on one upright, as a flat plate.",
  ),
  ({ hole, "end-radius": radius }, written) => {
    if (hole === null || radius === null || 2 * radius > hole) return null;
    const message = `found ${written("end-radius")}, expected more than half of the hole, ${written("hole")}: there is no metal around it`;
    return { key: "end-radius", message };
  },
);

/** A tab as a flat plate, mm; null where the file says nothing. */
export type Tab = Worth<typeof tab>;

const mountHole = group(
  {
    along: number(place, "Along the rack from the middle between its inner eyes, to the driver's left positive."),
    aside: number(place, "On the plate, square to the rack's line from it, ahead or up positive."),
    diameter: number({ ...size, high: 60 }, "Diameter of the hole."),
  },
  "A hole for the rack's mount.",
);

const rackPlate = group(
  { thickness, holes: optional(named(mountHole, "Holes for the rack's mounts, by names of your own.")) },
  "The plate that the rack is mounted on.",
);

/** The plate under the rack, mm. */
export type RackPlate = Worth<typeof rackPlate>;

/** Bolts of one corner by the joint's part and end, such as "tie-rod" and "outer"; null where not said. */
export type Bolts = Readonly<Record<string, Readonly<Record<string, Thread | null>> | null>>;

/** Wall thicknesses of one corner's tubes by the body, such as "tie-rod", mm; null where not said. */
export type Walls = Readonly<Record<string, number | null>>;

function boltsField(linked: readonly Linkage[]): Field<Sides<Bolts>> {
  const joints = [...tieRodJoints, ...linked.flatMap((each) => each.joints)];
  const parts = [...new Set(joints.map(({ path }) => path[0]))];
  const fields = parts.map((part) => {
    const own = joints
      .filter(({ path }) => path[0] === part)
      .map(({ path, label }) => {
        const help = `The bolt at the ${label}, by its thread, such as 1/2-20 or M12.`;
        return [path[1], optional(text(help, "a thread such as 1/2-20 or M12", readThread))] as const;
      });
    const ends: Readonly<Record<string, Field<Thread | null>>> = Object.fromEntries(own);
    return [part, optional(group(ends, `Bolts of the ${part.replaceAll("-", " ")}.`))] as const;
  });
  const corner = group(Object.fromEntries(fields), "The bolts of one corner.") as Field<Bolts>;
  return sided("hardware-bolts", corner, "The bolts through the joints.");
}

function wallsField(linked: readonly Linkage[]): Field<Sides<Walls>> {
  const bodies = [{ name: "tie-rod", label: "tie rod" }, ...linked.flatMap((each) => each.bodies)];
  const fields = bodies.map(
    ({ name, label }) =>
      [
        name,
        optional(number({ ...size, high: 30 }, `Wall of the ${label}'s tube, whose diameter is under tubes.`)),
      ] as const,
  );
  const corner = group(Object.fromEntries(fields), "The tubes' walls of one corner.") as Field<Walls>;
  return sided("hardware-walls", corner, "How thick the tubes' walls are; their diameters are under tubes.");
}

/** What is bought or cut beside the geometry, for the build sheet and for drawings: all of it may be left out. */
export function hardwareField(linked: readonly Linkage[]) {
  return group(
    {
      tab: optional(sided("hardware-tab", tab, "The tabs for the tie rods, as flat plates.")),
      bolts: optional(boltsField(linked)),
      walls: optional(wallsField(linked)),
      rack: optional(rackPlate),
    },
    "Plates, holes, bolts and walls: what the build sheet and drawings say of them, and never make up.",
  );
}

/** Plates, holes, bolts and walls; null where the file says nothing of them. */
export type Hardware = Worth<ReturnType<typeof hardwareField>>;
