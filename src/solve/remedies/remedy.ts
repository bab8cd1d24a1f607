import type { Study } from "../../measures/study.ts";

/** Writes a length, mm, as the reader likes it, unit included. */
export type Say = (mm: number) => string;

/** What is known of the car before remedies are ranked. */
export interface Answers {
  /** Whether the steering column can follow if the rack is moved sideways. */
  readonly columnCanMove: boolean | null;
  /** Whether the uprights are still to be made. */
  readonly uprightsToMake: boolean | null;
}

export const notAsked: Answers = { columnCanMove: null, uprightsToMake: null };

/** A cure for unequal locks, as a car's text that has it: shown before it is taken, and undone like any edit. */
export interface Remedy {
  /** One word or two, for choosing it. */
  readonly key: string;
  /** What is done, without a full stop. */
  readonly title: (say: Say) => string;
  /** One line: what it costs or leaves as it is. */
  readonly tradeOff: string;
  /** Where it can hurt someone; null where it adds no danger of its own. */
  readonly caution: string | null;
  readonly needs: "column" | "uprights" | null;
  readonly text: string;
  readonly after: Study;
}

/** A cure that this car cannot have or does not need, and why. */
export interface NoRemedy {
  readonly key: string;
  readonly name: string;
  readonly why: string;
}

/** The figures of the whole car by which a remedy is judged, by their ids. */
export const judgedBy: readonly string[] = [
  "leftLockInner",
  "rightLockInner",
  "lockDifferenceInner",
  "leftLockOuter",
  "rightLockOuter",
  "leftLockTurnRadius",
  "rightLockTurnRadius",
  "leftLockAckermann",
  "rightLockAckermann",
  "worstBounceSteer",
  "leastRodAngleLeft",
  "leastRodAngleRight",
  "rodLengthLeft",
  "rodLengthRight",
];
