/** What a builder reads with the car on stands. */
export interface Reading {
  /** Its key on a sheet. */
  readonly key: string;
  readonly page: 1 | 2;
  readonly kind: "length" | "angle" | "number" | "way";
  /** What is read, in at most 30 columns. */
  readonly name: string;
  /** The question at the bench. */
  readonly ask: string;
  /** More, for the sheet and for who asks. */
  readonly help: string;
  /** Whether a car can be drawn without it. */
  readonly required: boolean;
}

const names = {
  wheelbase: "Wheelbase",
  "hub-height": "Hub centre to floor",
  "over-tyres": "Outside over front tyres",
  "tyre-width": "One front tyre's width",
  "king-pins-apart": "King-pin lines, left to right",
  "tab-back": "Hole behind king-pin line",
  "tab-in": "Hole inboard of that line",
  "tab-height": "Hole above floor",
  "left-eye": "Left eye from centreline",
  "right-eye": "Right eye from centreline",
  "eye-height": "Eyes above floor",
  "eye-behind": "Eyes behind the holes",
  stroke: "Rack, stop to stop",
  turns: "Wheel's turns, stop to stop",
  "rack-goes": "Wheel left: the rack goes",
  "left-stop": "Straight: rack still goes left",
  "left-rod": "Left rod, eye to eye",
  "right-rod": "Right rod, eye to eye",
  inclination: "King-pin inclination",
  caster: "Caster",
  camber: "Camber",
  toe: "Toe",
  "lower-pivot-out": "Lower pivots, out",
  "lower-pivot-height": "Lower pivots above floor",
  "lower-joint-out": "Lower joint, out",
  "lower-joint-height": "Lower joint above floor",
  "upper-pivot-out": "Upper pivots, out",
  "upper-pivot-height": "Upper pivots above floor",
  "upper-joint-out": "Upper joint, out",
  "upper-joint-height": "Upper joint above floor",
  bump: "Wheel up to its stop",
  droop: "Wheel down to its stop",
} as const;

function reading(
  page: 1 | 2,
  key: keyof typeof names,
  kind: Reading["kind"],
  required: boolean,
  ask: string,
  help = "",
): Reading {
  return { key, page, kind, name: names[key], required, ask, help };
}

/** Every reading, in the order of a walk around the car: sheet, questions and help are made from this list. */
export const readings: readonly Reading[] = [
  reading(1, "wheelbase", "length", true, "Wheelbase", "front hub to rear hub, the mean of both sides"),
  reading(1, "hub-height", "length", true, "Hub centre to the floor", "as it will stand: the tyre's loaded radius"),
  reading(1, "over-tyres", "length", true, "Outside width over the front tyres", "at hub height"),
  reading(
    1,
    "tyre-width",
    "length",
    false,
    "Width of one front tyre",
    "left out, a third of the hub's height is assumed",
  ),
  reading(
    1,
    "king-pins-apart",
    "length",
    true,
    "King-pin line to king-pin line, left to right, at the height of the tie-rod holes",
    "lay a straight edge along both joints of each upright",
  ),
  reading(
    1,
    "tab-back",
    "length",
    true,
    "Tie-rod hole behind the king-pin line",
    "at the hole's own height, straight back; ahead of the line is negative",
  ),
  reading(
    1,
    "tab-in",
    "length",
    true,
    "Tie-rod hole inboard of the king-pin line",
    "at the same height; outboard is negative",
  ),
  reading(1, "tab-height", "length", true, "Tie-rod hole above the floor"),
  reading(
    1,
    "left-eye",
    "length",
    true,
    "Left inner eye from the car's centreline, the rack on its middle",
    "half of the stroke from either stop; an eye across the centreline is negative",
  ),
  reading(1, "right-eye", "length", true, "Right inner eye from the centreline, the rack on its middle", "likewise"),
  reading(1, "eye-height", "length", true, "Inner eyes above the floor"),
  reading(
    1,
    "eye-behind",
    "length",
    true,
    "Inner eyes behind the tie-rod holes",
    "wheels straight; ahead of them is negative",
  ),
  reading(1, "stroke", "length", true, "The rack's stroke, stop to stop"),
  reading(1, "turns", "number", false, "Turns of the steering wheel, stop to stop"),
  reading(
    1,
    "rack-goes",
    "way",
    true,
    "Which way the rack goes when you turn the steering wheel left",
    "left or right",
  ),
  reading(
    1,
    "left-stop",
    "length",
    true,
    "With the wheels straight, how far the rack can still go to the driver's left",
    "half of the stroke is a rack on its middle",
  ),
  reading(1, "left-rod", "length", false, "Left tie rod, eye to eye", "a cross-check only"),
  reading(1, "right-rod", "length", false, "Right tie rod, eye to eye", "a cross-check only"),
  reading(
    1,
    "inclination",
    "angle",
    false,
    "King-pin inclination, top inboard",
    "degrees, or from a plumb line outboard of the king-pin line: gap at the bottom, gap at the top, over their distance",
  ),
  reading(
    1,
    "caster",
    "angle",
    false,
    "Caster, king pin's top rearward",
    "degrees, or from a plumb line ahead of the king-pin line: gap at the bottom, gap at the top, over their distance",
  ),
  reading(
    1,
    "camber",
    "angle",
    false,
    "Camber, top outward",
    "degrees, or from a plumb line outside the wheel: gap at the top, gap at the bottom, over their distance",
  ),
  reading(
    1,
    "toe",
    "angle",
    false,
    "Toe of each wheel, toe-in",
    "degrees a wheel, or between boards on the wheels: front, rear over the boards' length; or inches across the tyre: 1/8 total",
  ),
  ...(["lower", "upper"] as const).flatMap((arm) =>
    (["pivot", "joint"] as const).flatMap((part) => {
      const what = `${arm === "lower" ? "Lower" : "Upper"} arm's ${part === "pivot" ? "pivots on the frame" : "joint on the upright"}`;
      return [
        reading(2, `${arm}-${part}-out`, "length", false, `${what}: out from the centreline`),
        reading(2, `${arm}-${part}-height`, "length", false, `${what}: above the floor`),
      ];
    }),
  ),
  reading(2, "bump", "length", false, "The wheel's way up from ride height, to its stop"),
  reading(2, "droop", "length", false, "The wheel's way down from ride height, to its stop"),
];

/** What a sheet says: mm, rad, a number or a way, by a reading's key; what it leaves out is not there. */
export interface Tape {
  readonly title: string | null;
  readonly units: "in" | "mm";
  readonly numbers: ReadonlyMap<string, number>;
  readonly rackGoes: "left" | "right";
}
