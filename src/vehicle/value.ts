import type { QuantityKind, Role } from "./quantity.ts";
import type { Wheel } from "./words.ts";

/** One number that a car file may hold, described once: the schema, the list of quantities and the help are made from it. */
export interface Value {
  /** Where it stands below its section: below front.both, front.left and front.right, below steering, or below the root. */
  readonly path: readonly string[];
  readonly kind: QuantityKind;
  /** A builder's words, such as "Tie-rod tab, ahead". */
  readonly label: string;
  /** One line: what it is, from where it is measured, its sign. */
  readonly help: string;
  /** The sensible range, mm or rad: beyond it a file is refused as absurd. */
  readonly low: number;
  readonly high: number;
  /** What it is worth when the file leaves it out, mm or rad; null where a file must give it. */
  readonly absent: number | null;
  readonly roles: readonly Role[];
  /** True where one number may stand for both ways and { left, right } for each: rack travel. */
  readonly eachWay?: boolean;
  /** Where the file has a key for each wheel, such as left-eye and right-eye: whose it is, and the path of both as one. */
  readonly twin?: { readonly wheel: Wheel; readonly path: readonly string[] };
}

/** What a mapping in the car file is for, by its path below the section, joined by dots. */
export type Groups = Readonly<Record<string, string>>;

/** One degree, rad. */
export const degree = Math.PI / 180;

/** How far from the axle line, from the centreline and from the ground a point of a front end can be, mm. */
const reach = { ahead: [-1500, 1500], out: [-500, 2000], offset: [-1000, 1000], up: [-500, 2000] } as const;

/** What each coordinate of a point says. */
const coordinates = {
  ahead: "ahead of the front-axle line, behind it negative",
  out: "outboard of the car's centreline, on its own side",
  offset: "to the driver's left of the car's centreline, to his right negative",
  up: "above the ground at ride height",
} as const;

/**
 * The three numbers of a point that a file must give.
 * `label` opens the builder's words ("Tie-rod tab"), `help` says what the point is, without a full stop. A point that
 * belongs to a wheel is so far `out` on that wheel's side; one of the whole car has an `offset` to the driver's left.
 */
export function pointValues(
  path: readonly string[],
  label: string,
  help: string,
  roles: readonly Role[],
  sideways: "out" | "offset" = "out",
): readonly Value[] {
  return (["ahead", sideways, "up"] as const).map((key) => ({
    path: [...path, key],
    kind: "length",
    label: `${label}, ${key}`,
    help: `${help}: how far ${coordinates[key]}.`,
    low: reach[key][0],
    high: reach[key][1],
    absent: null,
    roles,
  }));
}
