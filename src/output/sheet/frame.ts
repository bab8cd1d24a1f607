import { type FramePlace, framePlaces } from "../../measures/bench/framePlaces.ts";
import type { Study } from "../../measures/study.ts";
import { type Block, type PaperPart, tableOf, words } from "../paper/paper.ts";
import { type Writing, wayWords, wheels } from "./writing.ts";

/** Where brackets, mounts and king pins go on the frame, from the axle line, the centreline and the ground. */
export function framePart(study: Study, { cut }: Writing): PaperPart {
  const rowsOf = (places: readonly FramePlace[]) =>
    places.map(({ label, ahead, out, up }) => [
      label,
      wayWords(ahead, "ahead", "behind", cut),
      wayWords(out, "out", "across it", cut),
      cut(up),
    ]);
  const [left, right] = wheels.map((wheel) => rowsOf(framePlaces(study, wheel)));
  const table = (head: string, rows: readonly (readonly string[])[]): Block =>
    tableOf([head, "from the axle line", "from the centreline", "above the ground"], rows, [0, 1, 2, 3]);
  const alike = JSON.stringify(left) === JSON.stringify(right);
  return {
    heading: "Weld: on the frame",
    blocks: [
      ...(alike ? [table("Each side", left ?? [])] : [table("Left", left ?? []), table("Right", right ?? [])]),
      words("Each place is the middle of the bolt or ball. Tack all of one side, measure its diagonals, then weld."),
    ],
  };
}
