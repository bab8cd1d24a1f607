import { bumpProof, proofPlaces, steerProof } from "../../measures/bench/proof.ts";
import type { Study } from "../../measures/study.ts";
import type { ProofSpread, Within } from "../../solve/tolerance/proofSpread.ts";
import { written } from "../numbers.ts";
import { type Block, type PaperPart, tableOf, words } from "../paper/paper.ts";
import { heldWords } from "../toleranceWords.ts";
import { degrees, inputPlace, noTravelWords, travelPlace } from "../words.ts";
import type { Writing } from "./writing.ts";

/** "31.8° left"; a dash where it cannot be told. */
function turnedWords(angle: number | null): string {
  if (angle === null) return "-";
  const size = degrees(Math.abs(angle));
  return size === degrees(0) ? size : `${size} ${angle > 0 ? "left" : "right"}`;
}

/** How far ordinary building moves a reading; a dash where it cannot be told. */
function withinWords(within: Within | undefined, say: (value: number) => string): string {
  return within === undefined || within === null ? "-" : say(within);
}

/** Turn plates, and a board for who has none, from stop to stop. */
function steerBlocks(study: Study, spread: ProofSpread | null, { unit, length }: Writing): readonly Block[] {
  const places = proofPlaces(study, unit);
  const { board } = places;
  const rows = steerProof(study, places);
  if (rows.length === 0) return [words("No readings: the wheels cannot be set straight within reach of the steering.")];
  const boarded = (mm: number | null) => (mm === null ? "-" : length(Math.abs(mm)));
  const at = ({ input }: (typeof rows)[number]) =>
    `${inputPlace(study, input, length)}${input === study.zero ? ": straight ahead" : ""}`;
  return [
    words("Turn plates set to nothing with the wheels straight; the car at ride height."),
    tableOf(
      ["Turn plates", "left wheel", "read", "right wheel", "read", "+-"],
      rows.map((row, i) => [
        at(row),
        turnedWords(row.turned.left),
        null,
        turnedWords(row.turned.right),
        null,
        withinWords(spread?.steer[i]?.turned, degrees),
      ]),
      [0, 1, 3],
    ),
    words(
      `Without turn plates: a straight board of ${length(board)} held level against each wheel, and the distance of both its ends from a string along the car, once with the wheels straight and once turned. So much the difference of the two has changed:`,
    ),
    tableOf(
      ["Board", "left wheel", "read", "right wheel", "read", "+-"],
      rows.map((row, i) => [
        at(row),
        boarded(row.board.left),
        null,
        boarded(row.board.right),
        null,
        withinWords(spread?.steer[i]?.board, length),
      ]),
    ),
  ];
}

/** Toe over the travel, springs out. */
function bumpBlocks(study: Study, { unit, length }: Writing): readonly Block[] {
  const places = proofPlaces(study, unit);
  const rows = bumpProof(study, places);
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
      `Springs out, the steering held straight, each wheel moved through its travel with the board of ${length(places.board)} on its hub. Toe is the change from ride height, toe-in positive; camber as it stands, top outward positive.`,
    ),
    side("Left wheel", "left"),
    side("Right wheel", "right"),
  ];
}

/** The most that ordinary building moves a reading over the travel; null where it cannot be told. */
function most(spread: ProofSpread, key: "toe" | "board" | "acrossTyre" | "camber"): Within {
  const all = spread.bump.map(({ [key]: within }) => within);
  return all.length === 0 || all.includes(null) ? null : Math.max(...all.map((within) => within ?? 0));
}

/** What is an ordinary difference, and what is a reason to stop: one rule for everything that is read. */
function ruleBlocks(study: Study, spread: ProofSpread | null, { unit, length }: Writing): readonly Block[] {
  const stop = "stop and find out why before the car is driven";
  const match = "rackwright match says from what was read which part is most likely off";
  if (spread === null)
    return [
      words(
        `No car comes out exactly so, and how far ordinary building moves these readings cannot be told, since the car as drawn cannot be set: rackwright tolerance says why. Where one differs by more than half a degree or a tape's mark, ${stop}; ${match}.`,
      ),
    ];
  const [toe, board, tyre, camber] = (["toe", "board", "acrossTyre", "camber"] as const).map((key) =>
    most(spread, key),
  );
  const bump =
    toe === null || camber === null
      ? []
      : [
          words(
            `Over the travel +- is at most ${degrees(toe, 2)} of toe (${withinWords(board, length)} over the board, ${withinWords(tyre, length)} across the tyre) and ${degrees(camber, 2)} of camber, less toward ride height.`,
          ),
        ];
  return [
    words(
      `No car comes out exactly so. +- is what ordinary building moves a reading: 95 of 100 cars are nearer, built to ${heldWords(spread.held, unit)}, the wheels set again as above.`,
    ),
    ...(study.suspended ? bump : []),
    words(
      `Where what is read differs by more than its +- and what the gauge itself is good to (half a degree on turn plates, a mark of the tape), ${stop}. Within it the car is built as well as that: if the lock or the Ackermann effect is to come nearer, ${match}, and rackwright tolerance what to hold better.`,
    ),
  ];
}

/** What the finished car should read, with room for what it does read, and how far off is far off. */
export function proofPart(study: Study, spread: ProofSpread | null, writing: Writing): PaperPart {
  return {
    heading: "Prove it",
    blocks: [
      ...steerBlocks(study, spread, writing),
      ...bumpBlocks(study, writing),
      ...ruleBlocks(study, spread, writing),
    ],
  };
}
