/** What a builder reads with the car on stands. */
export interface Reading {
  /** Its key on a sheet. */
  readonly key: string;
  readonly page: 1 | 2;
  readonly kind: "length" | "angle" | "number" | "word";
  /** What is read, in at most 30 columns. */
  readonly name: string;
  /** The question at the bench. */
  readonly ask: string;
  /** More, for the sheet and for who asks. */
  readonly help: string;
  /** Whether a car can be drawn without it. */
  readonly required: boolean;
  /** What no front end is less or more than, mm, rad or bare: beyond it the tape was read or written wrong. */
  readonly from: number;
  readonly to: number;
  /** The answers to one that is a word. */
  readonly words: readonly string[];
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
  rods: "Rods to fit, or as cut",
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
  "shock-closed": "Shock, fully closed",
  "shock-open": "Shock, fully open",
  "shock-now": "Shock, at ride height",
  "shock-ratio": "Shock's way for 1 of wheel",
  "shock-on": "Shock's foot is on",
  "shock-top-ahead": "Shock's top, ahead of the hub",
  "shock-top-out": "Shock's top, out",
  "shock-top-height": "Shock's top above floor",
  "shock-foot-ahead": "Shock's foot, ahead of the hub",
  "shock-foot-out": "Shock's foot, out",
  "shock-foot-height": "Shock's foot above floor",
} as const;

const degree = Math.PI / 180;

/** What is sensible: wider than any car that is built, so that only slips of tape or pen are outside. */
const ranges = {
  wheelbase: [500, 6000],
  "hub-height": [75, 760],
  "over-tyres": [500, 3000],
  "tyre-width": [40, 600],
  "king-pins-apart": [250, 2500],
  "tab-back": [-400, 400],
  "tab-in": [-300, 300],
  "tab-height": [25, 1200],
  "left-eye": [-1000, 1200],
  "right-eye": [-1000, 1200],
  "eye-height": [25, 1500],
  "eye-behind": [-700, 700],
  stroke: [10, 600],
  turns: [0.1, 12],
  "left-stop": [0, 600],
  "left-rod": [25, 1500],
  "right-rod": [25, 1500],
  inclination: [-15 * degree, 30 * degree],
  caster: [-15 * degree, 30 * degree],
  camber: [-12 * degree, 12 * degree],
  toe: [-3 * degree, 3 * degree],
  "lower-pivot-out": [-500, 1500],
  "lower-pivot-height": [25, 1500],
  "lower-joint-out": [100, 1500],
  "lower-joint-height": [25, 1500],
  "upper-pivot-out": [-500, 1500],
  "upper-pivot-height": [25, 1500],
  "upper-joint-out": [100, 1500],
  "upper-joint-height": [25, 1500],
  bump: [0, 600],
  droop: [0, 600],
  "shock-closed": [75, 1500],
  "shock-open": [75, 1500],
  "shock-now": [75, 1500],
  "shock-ratio": [0.1, 3],
  "shock-top-ahead": [-1000, 1000],
  "shock-top-out": [-500, 1500],
  "shock-top-height": [25, 2000],
  "shock-foot-ahead": [-1000, 1000],
  "shock-foot-out": [-500, 1500],
  "shock-foot-height": [25, 1500],
} as const satisfies Partial<Record<keyof typeof names, readonly [number, number]>>;

type Measured = keyof typeof ranges;

function reading(
  page: 1 | 2,
  key: Measured,
  kind: "length" | "angle" | "number",
  required: boolean,
  ask: string,
  help = "",
): Reading {
  const [from, to] = ranges[key];
  return { key, page, kind, name: names[key], required, ask, help, from, to, words: [] };
}

/** A reading that is one of some words. */
function choice(
  page: 1 | 2,
  key: Exclude<keyof typeof names, Measured>,
  words: readonly string[],
  required: boolean,
  ask: string,
  help: string,
): Reading {
  return { key, page, kind: "word", name: names[key], required, ask, help, from: 0, to: 0, words };
}

/** Every reading, in the order of a walk around the car: sheet, questions and help are made from this list. */
export const readings: readonly Reading[] = [
  reading(1, "wheelbase", "length", true, "Wheelbase", "front hub to rear hub, the mean of both sides"),
  reading(
    1,
    "hub-height",
    "length",
    true,
    "Hub centre to the floor",
    "with the car standing on its tyres, before it goes on stands: the tyre's loaded radius; on the stands set the hub that high again",
  ),
  reading(1, "over-tyres", "length", true, "Outside width over the front tyres", "at hub height"),
  reading(
    1,
    "tyre-width",
    "length",
    true,
    "Width of one front tyre",
    "at its widest: the wheel's centre is found with it",
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
  reading(
    1,
    "right-eye",
    "length",
    true,
    "Right inner eye from the car's centreline, the rack on its middle",
    "half of the stroke from either stop; an eye across the centreline is negative",
  ),
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
  choice(
    1,
    "rack-goes",
    ["left", "right"],
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
  reading(1, "left-rod", "length", false, "Left tie rod, eye to eye", "checks the other readings"),
  reading(1, "right-rod", "length", false, "Right tie rod, eye to eye", "checks the other readings"),
  choice(
    1,
    "rods",
    ["to fit", "as cut"],
    false,
    "The car's rods: to fit the other readings, or as cut",
    "to fit, or as cut: then the taped lengths are in the car and the wheels go where they put them",
  ),
  reading(
    1,
    "inclination",
    "angle",
    false,
    "King-pin inclination, top inboard",
    "degrees, or from a plumb line outboard of the king-pin line: gap at the bottom, gap at the top, over how far apart they are down the plumb line",
  ),
  reading(
    1,
    "caster",
    "angle",
    false,
    "Caster, king pin's top rearward",
    "degrees, or from a plumb line ahead of the king-pin line: gap at the bottom, gap at the top, over how far apart they are down the plumb line",
  ),
  reading(
    1,
    "camber",
    "angle",
    false,
    "Camber, top outward",
    "degrees, or from a plumb line outside the wheel: gap at the rim's top, gap at its bottom, over the rim's diameter, along the rim",
  ),
  reading(
    1,
    "toe",
    "angle",
    false,
    "Toe of each wheel, toe-in",
    "tape across both tyres at hub height, in front of them and behind: 45 7/8 front, 46 rear; or rear less front: 1/8 total; or between boards on the wheels: front, rear over the boards' length; or degrees a wheel: 0.2 deg",
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
  reading(
    2,
    "shock-closed",
    "length",
    false,
    "Shock's length, fully closed",
    "eye to eye; left out where bump and droop were read",
  ),
  reading(
    2,
    "shock-open",
    "length",
    false,
    "Shock's length, fully open",
    "eye to eye; left out where bump and droop were read",
  ),
  reading(
    2,
    "shock-now",
    "length",
    false,
    "Shock's length at ride height",
    "eye to eye; left out where bump and droop were read",
  ),
  reading(
    2,
    "shock-ratio",
    "number",
    false,
    "Shock's way for 1 of the wheel's",
    "jack the wheel up an inch: by how much of an inch the shock closes, 0.6 or 5/8; where the shock stands, below, is exact and makes this needless",
  ),
  ...(["top", "foot"] as const).flatMap((end) => {
    const what = `Shock's ${end === "top" ? "eye on the frame" : "eye on the part that moves"}`;
    return [
      reading(2, `shock-${end}-ahead`, "length", false, `${what}: ahead of the hub's centre`, "behind is negative"),
      reading(2, `shock-${end}-out`, "length", false, `${what}: out from the centreline`),
      reading(2, `shock-${end}-height`, "length", false, `${what}: above the floor`),
    ];
  }),
  choice(
    2,
    "shock-on",
    ["lower-arm", "upper-arm", "upright"],
    false,
    "What the shock's foot is bolted to",
    "lower-arm, upper-arm or upright",
  ),
];

/** What a sheet says: mm, rad or a number by a reading's key; what it leaves out is not there. */
export interface Tape {
  readonly title: string | null;
  readonly units: "in" | "mm";
  readonly numbers: ReadonlyMap<string, number>;
  readonly rackGoes: "left" | "right";
  /** Whether the rods are to be as they were taped; else they fit the other readings. */
  readonly rodsAsCut: boolean;
  /** What the shock's foot is on; null where it was not read. */
  readonly shockOn: "lower-arm" | "upper-arm" | "upright" | null;
}

/** A tape from what each reading is worth, by its key. */
export function tapeOf(
  worth: ReadonlyMap<string, number | string>,
  { title, units }: Pick<Tape, "title" | "units">,
): Tape {
  const word = <T extends string>(key: string, words: readonly T[]) => words.find((each) => each === worth.get(key));
  return {
    title,
    units,
    numbers: new Map([...worth].flatMap(([key, each]) => (typeof each === "number" ? [[key, each] as const] : []))),
    rackGoes: word("rack-goes", ["left", "right"] as const) ?? "right",
    rodsAsCut: word("rods", ["as cut"] as const) !== undefined,
    shockOn: word("shock-on", ["lower-arm", "upper-arm", "upright"] as const) ?? null,
  };
}
