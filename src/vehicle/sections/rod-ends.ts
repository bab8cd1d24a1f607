import type { Joint, Linkage } from "../linkage.ts";
import { readThread, type Thread } from "../threads.ts";
import { degree } from "../value.ts";
import type { Field } from "./field.ts";
import { either, group, number, optional, otherwise, type Sides, sided, sound, text, word } from "./fields.ts";

/** A direction in a corner's own frame; of any length. */
export interface Direction {
  readonly ahead: number;
  readonly out: number;
  readonly up: number;
}

/** The directions that have a name. */
export const directions = ["vertical", "fore-and-aft", "crosswise", "square-upright", "square-flat"] as const;

export type DirectionName = (typeof directions)[number];

/** A rod end: how its bolt stands at ride height, and how far it swings. */
export interface RodEnd {
  readonly bolt: DirectionName | Direction;
  /** The body that carries the bolt; null for the joint's usual one. */
  readonly "bolt-on": string | null;
  /** The way its shank points at ride height; null for along its link. */
  readonly shank: Direction | null;
  readonly size: Thread | null;
  /** Rated swing to each side, rad. */
  readonly angle: number;
  readonly spacers: "yes" | "no";
  readonly shear: "double" | "single" | null;
}

/** The rod ends of one corner, by the joint's part and end, such as "tie-rod" and "outer"; null where there is none. */
export type RodEnds = Readonly<Record<string, Readonly<Record<string, RodEnd | null>> | null>>;

/** The two joints that every tie rod has. */
export const tieRodJoints: readonly Joint[] = [
  {
    path: ["tie-rod", "outer"],
    label: "tie rod, outer end",
    shankOn: "tie-rod",
    boltOn: "upright",
    from: ["tie-rod.inner"],
  },
  {
    path: ["tie-rod", "inner"],
    label: "tie rod, inner end",
    shankOn: "tie-rod",
    boltOn: "steering",
    from: ["tie-rod.outer"],
  },
];

const share = { kind: "ratio", low: -1000, high: 1000 } as const;

function direction(help: string): Field<Direction> {
  const part = (words: string) => number(share, `How much of it goes ${words}.`);
  return sound(
    group({ ahead: part("ahead"), out: part("outboard, inboard negative"), up: part("up, down negative") }, help),
    ({ ahead, out, up }) =>
      Math.hypot(ahead, out, up) > 0
        ? null
        : { key: "ahead", message: "found 0 for ahead, out and up, expected a way to point: at least one of them" },
  );
}

const boltHelp =
  "How the bolt through the ball stands at ride height: vertical, fore-and-aft, crosswise; square-upright (square to the shank, as upright as can be), square-flat (square to the shank and level); or { ahead, out, up } for any other direction.";

/** One rod end. Where either body of the joint may carry the bolt, the file may say which. */
function rodEnd({ label, shankOn, boltOn }: Joint): Field<RodEnd> {
  const carriers = shankOn === "tie-rod" ? [boltOn] : [boltOn, shankOn];
  return group(
    {
      bolt: either(word(directions, boltHelp), direction("The bolt's direction; only its proportions matter.")),
      "bolt-on": optional(
        word(carriers, `What the bolt is fixed to: ${carriers.join(" or ")}. Left out, the ${boltOn}.`),
      ),
      shank: optional(direction("The way the shank points at ride height, where that is not along its link.")),
      size: optional(
        text("Thread of the shank, such as 1/2-20 or M12x1.75.", "a thread such as 1/2-20 or M12", readThread),
      ),
      angle: number(
        { kind: "angle", low: degree, high: 60 * degree },
        "How far the rod end swings to each side, degrees, by its maker's table. A fork or a bolt's head may stop it before.",
      ),
      spacers: otherwise(
        word(["yes", "no"], "Whether high-misalignment spacers reduce the ball's bore. Left out, no."),
        "no",
      ),
      shear: optional(
        word(
          ["double", "single"],
          "Whether the bolt is held at both ends or at one. Left out, it counts as not known.",
        ),
      ),
    },
    `The rod end at the ${label}.`,
  );
}

/** Rod ends, by joint. */
export function rodEndsField(linked: readonly Linkage[]): Field<Sides<RodEnds>> {
  const joints = [...tieRodJoints, ...linked.flatMap((each) => each.joints)];
  const parts = [...new Set(joints.map(({ path }) => path[0]))];
  const fields = parts.map((part) => {
    const own = joints.filter(({ path }) => path[0] === part).map((joint) => [joint.path[1], optional(rodEnd(joint))]);
    const ends: Readonly<Record<string, Field<RodEnd | null>>> = Object.fromEntries(own);
    return [part, optional(group(ends, `Rod ends of the ${part.replace("-", " ")}.`))] as const;
  });
  return sided(
    "rod-ends",
    group(Object.fromEntries(fields), "The rod ends of one corner."),
    "Rod ends: how each bolt stands, and how far each may swing.",
  );
}
