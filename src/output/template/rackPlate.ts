import type { Study } from "../../measures/study.ts";
import { numberIn } from "../../vehicle/starting/place.ts";
import { type Writing, wayWords } from "../sheet/writing.ts";
import { crossAt, type Drawing, holeAt, line, words } from "./flat.ts";

/** The plate under the rack, from above: ahead (or up) is up the paper, the driver's left to the left. Null where no holes are given. */
export function rackPlateDrawing({ car }: Study, { length, cut }: Writing): Drawing | null {
  const plate = car.sections.hardware?.rack ?? null;
  const holes = [...(plate?.holes ?? [])];
  if (holes.length === 0) return null;
  const offset = numberIn(car.numbers, "rack.offset");
  const from = (value: number, positive: string, negative: string, line: string) =>
    cut(Math.abs(value)) === cut(0) ? `on ${line}` : `${wayWords(value, positive, negative, cut)} ${line}`;
  const reach = Math.max(...holes.map(([, { along }]) => Math.abs(along)), Math.abs(offset)) + 15;
  return {
    name: "rack-plate",
    title: "Rack's mounting plate",
    notes: [
      "Seen from above, ahead up the paper; on a plate that stands, from behind, up the paper is up.",
      ...holes.map(
        ([name, { along, aside, diameter }]) =>
          `Hole "${name}": ${length(diameter)}, ${from(along, "left of", "right of", "the rack's middle")}, ${from(aside, "ahead of (or above)", "behind (or below)", "the rack's line")}.`,
      ),
      `The rack's middle, half way between its inner eyes, is ${from(offset, "left of", "right of", "the car's centreline")}.`,
      ...(plate?.thickness == null ? [] : [`Plate ${length(plate.thickness)} thick; its outline is yours.`]),
    ],
    shapes: [
      line("mark", [-reach, 0], [reach, 0]),
      words([-reach, 12], "rack's line"),
      ...crossAt([0, 0], 10),
      words([3, -14], "rack's middle"),
      line("mark", [offset, -40], [offset, 40]),
      words([offset + 2, 36], "car's centreline"),
      ...holes.flatMap(([, { along, aside, diameter }]) => holeAt([-along, aside], diameter)),
    ],
  };
}
