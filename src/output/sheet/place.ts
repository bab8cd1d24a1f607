import { tabPlaceOf } from "../../measures/bench/tabPlace.ts";
import { pointsOf } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import { whyNoUpright } from "../../vehicle/hang.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import { uprightFields } from "../../vehicle/upright-fields.ts";
import { type Cell, list, type PaperPart, tableOf, words } from "../paper/paper.ts";
import { uprightValue } from "../upright.ts";
import { placesOf } from "../ways.ts";
import { degrees, fixed, inputOffMiddle } from "../words.ts";
import { leanWords, type SideRow, sideTable, type Writing, wayWords } from "./writing.ts";

const NOT_GIVEN = "not given";

/** The uprights on the jig table. */
export function uprightPart(study: Study, { cut }: Writing): PaperPart {
  const heading = "Jig: uprights";
  const why = whyNoUpright(study.car);
  if (why !== null) return { heading, blocks: [words(why)] };
  const rows = uprightFields
    .filter(({ is }) => is === "of the upright")
    .map((field): SideRow => {
      const say = (value: number) => (field.kind === "angle" ? degrees(value) : cut(value));
      return { label: `${field.name} (${field.help})`, of: (wheel) => say(uprightValue(study, wheel, field)) };
    });
  return {
    heading,
    blocks: [
      words("The king-pin line, through both joints, held upright on the table; the spindle points straight out."),
      sideTable("Upright", rows),
    ],
  };
}

/** Where the tie rod's hole goes on the upright. */
export function tabPart(study: Study, { cut, length }: Writing): PaperPart {
  const places = { left: tabPlaceOf(study, "left"), right: tabPlaceOf(study, "right") };
  const upper = study.car.form.linkage === "strut" ? "strut's top mount" : "upper joint's centre";
  const line = study.car.form.linkage === "strut" ? "lower joint to strut's top mount" : "through both joints";
  const { tab } = study.car.sections.hardware ?? { tab: null };
  const given = (key: "thickness" | "hole" | "end-radius" | "foot" | "reach", label: string): SideRow => ({
    label,
    of: (wheel) => {
      const value = tab?.[wheel]?.[key] ?? null;
      return value === null ? NOT_GIVEN : length(value);
    },
  });
  const row = (label: string, say: (place: (typeof places)["left"]) => Cell): SideRow => ({
    label,
    of: (wheel) => say(places[wheel]),
  });
  return {
    heading: "Weld: the tie rod's tab",
    blocks: [
      sideTable("From the middle of the hole", [
        row(`Square to the king-pin line (${line})`, ({ toKingPin }) => cut(toKingPin)),
        row("Straight to the lower joint's centre", ({ toLower }) => cut(toLower)),
        row(`Straight to the ${upper}`, ({ toUpper }) => cut(toUpper)),
        row("Square to the spindle's centre line", ({ toSpindle }) => cut(toSpindle)),
        row("Along the spindle from the rim's inner edge", ({ insideRim }) =>
          insideRim === null ? "needs rim: width" : wayWords(insideRim, "inboard of it", "outboard of it", cut),
        ),
      ]),
      sideTable("On the car, level, at ride height, wheels straight", [
        row("The hole above the ground", ({ up }) => cut(up)),
        row("The hole from the axle line", ({ ahead }) => wayWords(ahead, "ahead", "behind", cut)),
        row("The hole from the car's centreline", ({ out }) => cut(out)),
        row("Lower joint to hole, from level", ({ rise }) => leanWords(rise, "up", "down")),
        row(
          "The same seen from above",
          ({ inboard, behind }) =>
            `${leanWords(inboard, "inboard", "outboard")} of straight ${behind ? "back" : "ahead"}`,
        ),
        row("A plate square to the king-pin line, from the side", ({ frontHigher }) =>
          leanWords(frontHigher, "up at its front", "down at its front"),
        ),
        row("The same plate from the front", ({ outerHigher }) =>
          leanWords(outerHigher, "up at its outer edge", "down at its outer edge"),
        ),
      ]),
      sideTable("The plate itself", [
        given("thickness", "Thickness"),
        given("hole", "Hole"),
        given("end-radius", "Round end, from the hole's middle"),
        given("reach", "Hole's middle square to the edge that is welded on"),
        given("foot", "Length of that edge"),
      ]),
      words(
        "The hole's middle is here the centre of the rod end's ball. In double shear that is half way between the plates. In single shear the plate lies above or below it, its middle by half the ball's width and half the plate's thickness, spacers added: move the plate by so much, never the ball.",
      ),
      words(
        "Tack it, put the rod on, turn lock to lock through the travel, and measure again before it is welded out.",
      ),
    ],
  };
}

/** A quantity's value on a sheet. */
function valueWords(quantity: Quantity, value: number, { cut }: Writing): string {
  const { kind, absent, low, id } = quantity;
  if (value === absent && absent < low) return NOT_GIVEN;
  const way = kind === "ratio" ? null : placesOf(id);
  if (way !== null) return kind === "length" ? wayWords(value, ...way, cut) : leanWords(value, ...way);
  return kind === "length" ? cut(value) : kind === "angle" ? degrees(value) : fixed(value, 2);
}

/** Numbers below a key of the file, each pair once where both sides are alike. */
function quantityRows({ car }: Study, root: string, writing: Writing, all: boolean): readonly (readonly Cell[])[] {
  const own = quantitiesOf(car.form).filter(({ path }) => path[0] === root);
  const said = own.map((quantity) => {
    const value = car.numbers[quantity.index] ?? 0;
    return { quantity, value, text: valueWords(quantity, value, writing) };
  });
  const shown = said.filter(({ value }) => all || value !== 0);
  return shown.flatMap((each) => {
    const { label, wheel, pair } = each.quantity;
    const other = shown.find((one) => one !== each && one.quantity.pair === pair && one.text === each.text);
    if (wheel !== null && other !== undefined) return wheel === "right" ? [] : [[`${label}, each side`, each.text]];
    return [[wheel === null ? label : `${label}, ${wheel}`, each.text]];
  });
}

/** The rack, or what else moves the rods: where it goes, how far it goes, what stops it. */
export function rackPart(study: Study, writing: Writing): PaperPart {
  const { length, cut } = writing;
  const isRack = study.inputKind === "rack";
  const pose = study.ridePose(0);
  const inner = (wheel: "left" | "right") => pointsOf(pose, wheel, study.tireRadius)?.tieRodInner ?? null;
  const middles = { left: inner("left"), right: inner("right") };
  const eye = (label: string, say: (place: readonly [number, number, number], hand: number) => string): SideRow => ({
    label,
    of: (wheel) => {
      const { [wheel]: place } = middles;
      return place === null ? "-" : say(place, wheel === "left" ? 1 : -1);
    },
  });
  const stops = quantityRows(study, "stops", writing, false);
  const plate = study.car.sections.hardware?.rack ?? null;
  const holes = [...(plate?.holes ?? [])].map(([name, { along, aside, diameter }]) => [
    name,
    wayWords(along, "left", "right", cut),
    wayWords(aside, "ahead or up", "behind or down", cut),
    length(diameter),
  ]);
  return {
    heading: isRack ? "Mount: the rack" : "Mount: the steering",
    blocks: [
      tableOf(["From ground, axle line and centreline", ""], quantityRows(study, "steering", writing, true), [0, 1]),
      sideTable(`Inner eye of each rod, ${study.inputKind} in its middle`, [
        eye("From the car's centreline, on its own side", ([, y], hand) => wayWords(hand * y, "out", "across it", cut)),
        eye("From the axle line", ([x]) => wayWords(x, "ahead", "behind", cut)),
        eye("Above the ground", ([, , z]) => cut(z)),
      ]),
      words(`Steering: ${inputOffMiddle(study, length)}.`),
      ...(stops.length === 0
        ? [words("No collars and no stops on the uprights are in the file.")]
        : [tableOf(["Collars and stops", ""], stops, [0, 1])]),
      ...(isRack
        ? [
            words(
              `Mounting plate: ${plate?.thickness == null ? "thickness not given" : `${length(plate.thickness)} thick`}${holes.length === 0 ? "; holes not given." : "."}`,
            ),
          ]
        : []),
      ...(isRack && holes.length > 0
        ? [tableOf(["Hole", "along the rack from its middle", "from the rack's line", "diameter"], holes, [0, 1, 2, 3])]
        : []),
      ...(isRack
        ? [list(["The middle of a rack is half way between its ends, counted on the bench before it is mounted."])]
        : []),
    ],
  };
}
