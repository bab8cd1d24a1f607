import { boardLength, bumpProof, steerProof } from "../../measures/bench/proof.ts";
import type { Study } from "../../measures/study.ts";
import { written } from "../numbers.ts";
import { type Block, type PaperPart, tableOf, words } from "../paper/paper.ts";
import { degrees, inputPlace, noTravelWords, travelPlace } from "../words.ts";
import type { Writing } from "./writing.ts";

/** "31.8° left"; a dash where it cannot be told. */
function turnedWords(angle: number | null): string {
  if (angle === null) return "-";
  const size = degrees(Math.abs(angle));
  return size === degrees(0) ? size : `${size} ${angle > 0 ? "left" : "right"}`;
}

/** Turn plates, and a board for who has none, from stop to stop. */
function steerBlocks(study: Study, { unit, length }: Writing): readonly Block[] {
  const board = boardLength(unit);
  const rows = steerProof(study, board);
  if (rows.length === 0) return [words("No readings: the wheels cannot be set straight within reach of the steering.")];
  const boarded = (mm: number | null) => (mm === null ? "-" : length(Math.abs(mm)));
  const at = ({ input }: (typeof rows)[number]) => inputPlace(study, input, length);
  return [
    words("Turn plates set to nothing with the wheels straight; the car at ride height."),
    tableOf(
      ["Turn plates", "left wheel", "read", "right wheel", "read"],
      rows.map((row) => [at(row), turnedWords(row.turned.left), null, turnedWords(row.turned.right), null]),
      [0, 1, 3],
    ),
    words(
      `Without turn plates: a straight board of ${length(board)} held level against each wheel, and the distance of both its ends from a string along the car, once with the wheels straight and once turned. So much the difference of the two has changed:`,
    ),
    tableOf(
      ["Board", "left wheel", "read", "right wheel", "read"],
      rows.map((row) => [at(row), boarded(row.board.left), null, boarded(row.board.right), null]),
    ),
  ];
}

/** Toe over the travel, springs out. */
function bumpBlocks(study: Study, { unit, length }: Writing): readonly Block[] {
  const rows = bumpProof(study, boardLength(unit));
  if (rows.length === 0) return [words(`Travel: ${noTravelWords(study)}.`)];
  const signed = (value: number | null, kind: "angle" | "length") => {
    if (value === null) return "-";
    const text = written(value, kind, unit);
    return Number(text) > 0 ? `+${text}` : text;
  };
  const side = (head: string, wheel: "left" | "right") =>
    tableOf(
      [head, "toe, deg", `over the board, ${unit}`, `across the tyre, ${unit}`, "read", "camber, deg", "read"],
      rows.map((row) => [
        travelPlace(row.travel, length),
        signed(row.toe[wheel], "angle"),
        signed(row.board[wheel], "length"),
        signed(row.acrossTyre[wheel], "length"),
        null,
        signed(row.camber[wheel], "angle"),
        null,
      ]),
    );
  return [
    words(
      `Springs out, the steering held straight, each wheel moved through its travel with the board of ${length(boardLength(unit))} on its hub. Toe is the change from ride height, toe-in positive; camber as it stands, top outward positive.`,
    ),
    side("Left wheel", "left"),
    side("Right wheel", "right"),
  ];
}

/** What the finished car should read, with room for what it does read. */
export function proofPart(study: Study, writing: Writing): PaperPart {
  return {
    heading: "Prove it",
    blocks: [
      ...steerBlocks(study, writing),
      ...bumpBlocks(study, writing),
      words(
        "Where what is read differs by more than half a degree, or a tape's mark, stop and find out why before the car is driven.",
      ),
    ],
  };
}
