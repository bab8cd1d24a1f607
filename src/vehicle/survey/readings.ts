/** How a reading is taken. */
export type Kind = "distance" | "height" | "out" | "ahead" | "plumb" | "angle" | "line";

/** One way to take a reading: its group on a sheet, and how its entries are written. */
export interface Way {
  readonly kind: Kind;
  /** Its key on a sheet. */
  readonly group: string;
  readonly of: "length" | "angle";
  /** How an entry names its points: one or one from another, two, or one and the two that a line goes through. */
  readonly names: "one" | "two" | "three";
  /** For the sheet and for help: what is read, and from where. */
  readonly help: string;
}

/** Every way to take a reading; what a sheet can hold is made from this list. */
export const ways: readonly Way[] = [
  {
    kind: "height",
    group: "heights",
    of: "length",
    names: "one",
    help: "above the floor or the jig table",
  },
  {
    kind: "out",
    group: "out",
    of: "length",
    names: "one",
    help: "from the centreline, square to it, out on the point's own side; of a point in the middle to the driver's left",
  },
  {
    kind: "ahead",
    group: "ahead",
    of: "length",
    names: "one",
    help: "ahead of the front-axle line, or of the datum; behind it is negative",
  },
  {
    kind: "distance",
    group: "distances",
    of: "length",
    names: "two",
    help: "straight from centre to centre",
  },
  {
    kind: "plumb",
    group: "plumb",
    of: "length",
    names: "two",
    help: "on the floor, between the marks of two plumb lines",
  },
  {
    kind: "line",
    group: "from-lines",
    of: "length",
    names: "three",
    help: "on the floor, square from a plumb mark to the line through two others",
  },
  {
    kind: "angle",
    group: "angles",
    of: "angle",
    names: "two",
    help: "degrees from level of the line from the first to the second, up to the second positive",
  },
];

/** One reading of a sheet. */
export interface SurveyReading {
  readonly kind: Kind;
  /** The points that it is taken between, by their places in the list; the last one of a `from` is what it is read from. */
  readonly points: readonly number[];
  /** mm or rad. */
  readonly value: number;
  /** How far one such reading may be off, one standard deviation, mm or rad. */
  readonly sigma: number;
  /** As it is called: "left lower-arm.joint to left lower-arm.rear", "height of left eye". */
  readonly name: string;
  /** Where it stands on the sheet; null for one that stands on none. */
  readonly line: number | null;
}

/** What a reading is called, from its points' names. */
export function readingName(kind: Kind, [first = "", second = "", third = ""]: readonly string[]): string {
  const from = second === "" ? "" : ` from ${second}`;
  switch (kind) {
    case "distance":
      return `${first} to ${second}`;
    case "height":
      return second === "" ? `height of ${first}` : `height of ${first} above ${second}`;
    case "out":
      return `${first}, out${from}`;
    case "ahead":
      return `${first}, ahead${second === "" ? "" : ` of ${second}`}`;
    case "plumb":
      return `plumb, ${first} to ${second}`;
    case "line":
      return `${first} from the line ${second} to ${third}`;
    case "angle":
      return `angle from ${first} to ${second}`;
  }
}
