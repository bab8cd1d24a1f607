import { sayReading } from "./reading.ts";
import { type Reading, readings, type Tape } from "./readings.ts";

/** Two readings or more that cannot both be right, or hardly. */
export interface Clash {
  /** The last of them to be read: where it is complained of. */
  readonly at: string;
  /** What is wrong, with both readings by their names, in a sentence without its full stop. */
  readonly words: string;
}

/** A rule about readings together: it holds its tongue while one of them is missing. */
interface Rule {
  readonly keys: readonly string[];
  readonly isBroken: (...values: readonly number[]) => boolean;
  /** What would have to be so, after the readings with their values: "… : the king pins would stand outside the tyres". */
  readonly means: string;
}

const order = new Map(readings.map((each, i) => [each.key, { each, i }]));

function rule(keys: readonly string[], isBroken: Rule["isBroken"], means: string): Rule {
  return { keys, isBroken, means };
}

const sides = ["left", "right"] as const;

/** How far a side's tie-rod hole stands from its inner eye, across the car, the rack on its middle. */
const reach = (eye = 0, apart = 0, tabIn = 0) => apart / 2 - tabIn - eye;

/** Nothing that is built can be so. */
const never: readonly Rule[] = [
  rule(
    ["over-tyres", "king-pins-apart"],
    (over = 0, apart = 0) => apart >= over,
    "the king pins would stand outside the tyres",
  ),
  rule(
    ["over-tyres", "tyre-width"],
    (over = 0, width = 0) => 2 * width >= over,
    "the two tyres would be wider than the car",
  ),
  rule(
    ["king-pins-apart", "tab-in"],
    (apart = 0, tabIn = 0) => 2 * tabIn >= apart,
    "the hole would be across the centreline",
  ),
  ...sides.map((side) =>
    rule(
      [`${side}-eye`, "king-pins-apart", "tab-in"],
      (eye, apart, tabIn) => reach(eye, apart, tabIn) <= 0,
      "the inner eye would stand outside the tie-rod hole",
    ),
  ),
  rule(
    ["left-eye", "right-eye"],
    (left = 0, right = 0) => left + right < 0,
    "the left eye would be right of the right one",
  ),
  ...sides.map((side) =>
    rule(
      ["king-pins-apart", "tab-in", `${side}-eye`, "stroke"],
      (apart, tabIn, eye, stroke = 0) => {
        const across = reach(eye, apart, tabIn);
        return across > 0 && across <= stroke / 2;
      },
      "the eye would pass the hole before the rack is at its stop, and the car could not steer",
    ),
  ),
  rule(
    ["stroke", "left-stop"],
    (stroke = 0, left = 0) => left > stroke,
    "the rack cannot go further to one stop than from stop to stop",
  ),
  ...(["lower", "upper"] as const).map((arm) =>
    rule(
      [`${arm}-pivot-out`, `${arm}-joint-out`],
      (pivot = 0, joint = 0) => pivot >= joint,
      "the arm's pivots would stand outside its joint",
    ),
  ),
  rule(
    ["lower-joint-height", "upper-joint-height"],
    (lower = 0, upper = 0) => upper - lower < 25,
    "the upper joint would not be above the lower one",
  ),
  ...(["lower", "upper"] as const).map((arm) =>
    rule(
      ["over-tyres", `${arm}-joint-out`],
      (over = 0, out = 0) => out >= over / 2,
      "the joint would stand outside the tyre",
    ),
  ),
  rule(["shock-closed", "shock-open"], (closed = 0, open = 0) => closed >= open, "a shock is longer open than closed"),
  rule(
    ["shock-closed", "shock-now"],
    (closed = 0, now = 0) => now < closed,
    "a shock at ride height cannot be shorter than closed",
  ),
  rule(
    ["shock-open", "shock-now"],
    (open = 0, now = 0) => now > open,
    "a shock at ride height cannot be longer than open",
  ),
];

/** A tyre's radius as a share of the wheelbase, beyond which it is asked about: a kart's is an eighth, a buggy's a sixth (common practice). */
const largestTyre = 1 / 4;

/** Seldom so: worth another look at the tape. */
const seldom: readonly Rule[] = [
  rule(
    ["inclination"],
    (lean = 0) => lean < 0,
    "the king pins would lean outward at the top, if the two gaps are not swapped",
  ),
  rule(
    ["caster"],
    (lean = 0) => lean < 0,
    "the king pins would lean forward at the top, if the two gaps are not swapped",
  ),
  ...sides.map((side) =>
    rule(
      ["king-pins-apart", "tab-in", `${side}-eye`, "stroke"],
      (apart, tabIn, eye, stroke = 0) => {
        const across = reach(eye, apart, tabIn);
        return across > stroke / 2 && across < stroke;
      },
      "the rod would be shorter across the car than the rack's stroke",
    ),
  ),
  rule(
    ["wheelbase", "hub-height"],
    (base = 0, hub = 0) => hub > base * largestTyre,
    "the tyre would be more than half as high as the car is long between its axles",
  ),
  rule(
    ["hub-height", "upper-joint-height"],
    (hub = 0, upper = 0) => hub > upper,
    "the hub would stand above the upper joint",
  ),
  rule(
    ["hub-height", "lower-joint-height"],
    (hub = 0, lower = 0) => hub < lower,
    "the hub would stand below the lower joint",
  ),
  rule(
    ["toe"],
    (toe = 0) => toe < 0,
    "the wheels would toe out: the tape reads more in front of the tyres than behind",
  ),
  rule(["hub-height", "tab-height"], (hub = 0, tab = 0) => tab > 2 * hub, "the hole would stand above the tyre"),
  rule(
    ["tab-height", "eye-height"],
    (tab = 0, eye = 0) => Math.abs(tab - eye) > 200,
    "the rod would slope by more than 200 mm (8 in)",
  ),
  rule(
    ["over-tyres", "king-pins-apart", "hub-height"],
    (over = 0, apart = 0, hub = 0) => over - apart > 3 * hub,
    "the tyres would stand far outside the king pins",
  ),
  rule(
    ["stroke", "turns"],
    (stroke = 0, turns = 1) => stroke / turns < 10 || stroke / turns > 150,
    "one turn of the steering wheel would move the rack by less than 10 mm (3/8 in) or more than 150 mm (6 in)",
  ),
  rule(
    ["tab-back", "tab-in"],
    (back = 0, tabIn = 0) => Math.hypot(back, tabIn) < 25,
    "the steering arm would be shorter than 25 mm (1 in)",
  ),
];

function clashesOf(rules: readonly Rule[], { numbers, units }: Pick<Tape, "numbers" | "units">): readonly Clash[] {
  const said = ({ each }: { readonly each: Reading }, value: number) =>
    `"${each.name}" ${sayReading(each, value, units)}`;
  return rules.flatMap(({ keys, isBroken, means }) => {
    const found = keys.map((key) => ({ entry: order.get(key), value: numbers.get(key) }));
    const known = found.flatMap(({ entry, value }) =>
      entry === undefined || value === undefined ? [] : [{ entry, value }],
    );
    if (known.length < keys.length || !isBroken(...known.map(({ value }) => value))) return [];
    const [last] = [...known].sort((a, b) => b.entry.i - a.entry.i);
    const listed = known.map(({ entry, value }) => said(entry, value));
    return [{ at: last?.entry.each.key ?? "", words: `${listed.join(" and ")}: ${means}` }];
  });
}

/** Readings that cannot be so together: no car is made of them. */
export function impossible(tape: Tape): readonly Clash[] {
  const { numbers, rodsAsCut, shockOn } = tape;
  const noRods = rodsAsCut && !sides.every((side) => numbers.has(`${side}-rod`));
  const asCut = {
    at: "rods",
    words: 'rods "as cut" need both taped: "Left rod, eye to eye" and "Right rod, eye to eye"',
  };
  const noPlace = shockOn !== null && !shockPlaces.every((key) => numbers.has(key));
  const place = {
    at: "shock-on",
    words:
      "where the shock stands needs all of it: its top and its foot, ahead, out and height; or leave all of it out",
  };
  return [...clashesOf(never, tape), ...(noRods ? [asCut] : []), ...(noPlace ? [place] : [])];
}

/** Readings that are seldom so together: said, and taken. */
export function doubtful(tape: Pick<Tape, "numbers" | "units">): readonly Clash[] {
  return clashesOf(seldom, tape);
}

/** The places of a shock's two ends. */
export const shockPlaces: readonly string[] = ["top", "foot"].flatMap((end) =>
  ["ahead", "out", "height"].map((part) => `shock-${end}-${part}`),
);
