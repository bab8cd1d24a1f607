import { Side } from "../../kinematics/slots.ts";
import { carFigures } from "../../measures/carFigures.ts";
import type { FigureWords } from "../../measures/figure.ts";
import { poseFigures, wheelFigures } from "../../measures/figures.ts";
import { sideAt } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type TargetName, type Targets, targetOf } from "../../vehicle/sections/targets.ts";

/** One figure as it is read of a car: of the whole car, or straight ahead at ride height, of one wheel or of both. */
export interface Reading extends FigureWords {
  /** Null where there is nothing to read. */
  readonly read: (study: Study) => number | null;
  /** The travel at which it is so, mm, for a worst value over the travel; null where it has no place. */
  readonly travel: ((study: Study) => number | null) | null;
  /** True for a worst value: its sign is that of the worse end of the travel, so only its size can be compared. */
  readonly bySize: boolean;
}

const wheels: readonly Wheel[] = ["left", "right"];

const travels: Readonly<Record<string, (study: Study) => number | null>> = {
  worstToeLeft: ({ worst }) => worst.toe.left?.travel ?? null,
  worstToeRight: ({ worst }) => worst.toe.right?.travel ?? null,
  worstToeAcrossTyreLeft: ({ worst }) => worst.toe.left?.travel ?? null,
  worstToeAcrossTyreRight: ({ worst }) => worst.toe.right?.travel ?? null,
  worstBounceSteer: ({ worst }) => worst.bounce?.travel ?? null,
};

function closesAt(poses: Float64Array, wheel: Wheel): boolean {
  return poses[sideAt(wheel) + Side.Blame] === 0;
}

/** The pose straight ahead at ride height. */
function straight(study: Study): Float64Array {
  return study.ridePose(study.zero ?? study.straightAhead);
}

function placed(reading: Omit<Reading, "travel" | "bySize">): Reading {
  const travel = travels[reading.id] ?? null;
  return { ...reading, travel, bySize: travel !== null };
}

/** Every figure, in the order of the list of outputs: those of the whole car, then those of the car as it stands straight. */
export const readings: readonly Reading[] = [
  ...carFigures.map((figure) => placed(figure)),
  ...wheelFigures.flatMap((figure) =>
    wheels.map((wheel) =>
      placed({
        ...figure,
        id: `${wheel}.${figure.id}`,
        label: `${figure.label}, ${wheel} wheel`,
        read: (study) => {
          const poses = straight(study);
          return closesAt(poses, wheel) ? figure.read(poses, sideAt(wheel), study) : null;
        },
      }),
    ),
  ),
  ...poseFigures.map((figure) =>
    placed({
      ...figure,
      read: (study) => {
        const poses = straight(study);
        return wheels.every((wheel) => closesAt(poses, wheel)) ? figure.read(poses, 0, study) : null;
      },
    }),
  ),
];

/** Which figures a target of the car judges. */
const judged: Readonly<Record<string, readonly TargetName[]>> = {
  lockDifferenceInner: ["lock-difference"],
  leftLockAckermann: ["ackermann-least", "ackermann-most"],
  rightLockAckermann: ["ackermann-least", "ackermann-most"],
  worstToeAcrossTyreLeft: ["toe-change"],
  worstToeAcrossTyreRight: ["toe-change"],
  worstBounceSteer: ["bounce-steer"],
};

/** What a target leaves a figure to play with, and who says so. */
export interface Allowed {
  /** mm, rad or percent: half the width of what counts as good. */
  readonly half: number;
  readonly from: "file" | "common practice";
}

/**
 * What the car's targets leave a figure: half the width of its good range, which is the level itself for a figure whose aim
 * is nothing. Null for a figure that no target judges, and where the levels leave no room at all.
 */
export function allowedBy(targets: Targets | null, id: string): Allowed | null {
  const [first, second] = (judged[id] ?? []).map((name) => targetOf(targets, name));
  if (first === undefined) return null;
  const half = second === undefined ? first.warn : (second.warn - first.warn) / 2;
  const from = first.from === "file" || second?.from === "file" ? "file" : "common practice";
  return half > 0 ? { half, from } : null;
}
