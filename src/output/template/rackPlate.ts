import type { Study } from "../../measures/study.ts";
import { numberIn } from "../../vehicle/starting/place.ts";
import { leanWords, type Writing, wayWords } from "../sheet/writing.ts";
import { dimension, label, nameOfLine, ways } from "./dimension.ts";
import { type At, boxOf, crossAt, holeAt, line, type Shape, type Sketch } from "./flat.ts";
import { arranged, type Placed } from "./overlap.ts";

const rad = (angles: readonly number[]) => angles.map((each) => (each * Math.PI) / 180);
/** Sides for names that keep the drawing narrow. */
const towardRight = rad([60, -60, 120, -120, 0, 180]);
const towardLeft = rad([120, -120, 60, -60, 180, 0]);

/** The plate under the rack, from above: ahead (or up) is up the paper, the driver's left to the left. Null where no holes are given. */
export function rackPlateDrawing({ car }: Study, { length, cut }: Writing): Sketch | null {
  const plate = car.sections.hardware?.rack ?? null;
  const holes = [...(plate?.holes ?? [])];
  if (holes.length === 0) return null;
  const rack = (key: string) => numberIn(car.numbers, `rack.${key}`);
  const [offset, tilt] = [rack("offset"), rack("tilt")];
  // The plate lies along the rack: level distances are longer there by 1 / cos tilt.
  const middle = offset / Math.cos(tilt);
  const isNone = (value: number) => cut(Math.abs(value)) === cut(0);
  const slope = leanWords(tilt, "from level, its left end up", "from level, its right end up");
  const level = leanWords(tilt, "", "") === leanWords(0, "", "");
  const reach = Math.max(...holes.map(([, { along }]) => Math.abs(along)), Math.abs(middle)) + 15;
  const fixed: readonly Shape[] = [
    line("mark", [-reach, 0], [reach, 0]),
    ...crossAt([0, 0], 10),
    line("mark", [middle, -22], [middle, 22]),
    ...holes.flatMap(([, { along, aside, diameter }]) => holeAt([-along, aside], diameter)),
  ];
  const box = boxOf(fixed);
  const places = holes.map(([name, { along, aside, diameter }]) => ({ name, at: [-along, aside] as At, diameter }));
  // The farther hole's size lies the farther out, so that none crosses another; left and right may share a line.
  const lane = (x: number) =>
    new Set(places.map(({ at }) => at[0]).filter((each) => each * x > 0 && Math.abs(each) < Math.abs(x))).size;
  const across = places.filter(({ at: [x] }, i) => !isNone(x) && places.findIndex(({ at }) => at[0] === x) === i);
  const parts: readonly Placed[] = [
    ...across.map(({ at }) => dimension([0, 0], at, [1, 0], [0, box.low - 6 - 9 * lane(at[0])], cut(Math.abs(at[0])))),
    ...places
      .filter(({ at: [, y] }) => !isNone(y))
      .map(({ at: [x, y] }) =>
        dimension([x, 0], [x, y], [0, 1], [x + (x < 0 ? -12 : 12), 0], wayWords(y, "ahead", "behind", cut)),
      ),
    ...(isNone(middle)
      ? []
      : [dimension([0, 0], [middle, 0], [1, 0], [0, box.high + 4], `${cut(Math.abs(middle))} to the centreline`)]),
    ...places.map(({ name, at, diameter }) =>
      label(at, diameter / 2, `${name}: drill ${length(diameter)}`, at[0] < 0 ? towardRight : towardLeft),
    ),
    label(
      [0, 0],
      0,
      "rack's middle",
      [60, 120, -60, -120].map((each) => (each * Math.PI) / 180),
    ),
    nameOfLine([-reach, 0], [reach, 0], level ? "rack's line, level" : `rack's line, ${slope}`),
    nameOfLine([middle, -22], [middle, 22], "car's centreline"),
  ];
  const shapes = arranged(fixed, parts);
  const from = (value: number, more: string, less: string, name: string) =>
    isNone(value) ? `on ${name}` : `${wayWords(value, more, less, cut)} ${name}`;
  return {
    name: "rack-plate",
    title: "Rack's mounting plate",
    notes: [
      "Seen from above, ahead up the paper; on a plate that stands, from behind, up the paper is up.",
      `The rack's middle, half way between its inner eyes, is ${from(offset, "left of", "right of", "the car's centreline")}, ${cut(rack("up"))} above the ground at ride height and ${from(rack("ahead"), "ahead of", "behind", "the axle line")}.`,
      `Seen from ahead or behind the rack's line, and the plate with it, stands ${level ? "level" : slope}.`,
      "The file does not say how the plate stands from ahead to behind: set it so that the inner eyes are at their height.",
      ...(plate?.thickness == null ? [] : [`Plate ${length(plate.thickness)} thick; its outline is yours.`]),
    ],
    shapes: [
      ...shapes,
      ...ways(boxOf(shapes), { left: "driver's left", up: "ahead (or up)", right: "driver's right" }),
    ],
  };
}
