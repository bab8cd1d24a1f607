import { newPoses } from "../../kinematics/poses.ts";
import { Side } from "../../kinematics/slots.ts";
import { solve } from "../../kinematics/solve.ts";
import { sideAt } from "../../measures/points.ts";
import type { RangePlace, Watched } from "../../measures/range/watched.ts";
import { placeOf, type Span } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";

/** Places a way over steering and travel. */
export const PLACES = 41;
/** Each round looks at this many places a way about the worst so far, half as far apart as before. */
const NEAR = 5;
const ROUNDS = 5;

/** The worst of what is watched, and where; null where its wheel closes nowhere in the range. */
export type Worst = (RangePlace & { readonly value: number }) | null;

/** The range of a study as two spans. */
function spansOf(study: Study): { readonly inputs: Span; readonly travels: Span } {
  return {
    inputs: { from: -study.furthestInput.right, to: study.furthestInput.left, rows: PLACES },
    travels: {
      from: -study.wheelTravel.droop,
      to: study.wheelTravel.bump,
      rows: study.suspended ? PLACES : 1,
    },
  };
}

function within(place: number, span: Span): number {
  return Math.min(Math.max(place, span.from), span.to);
}

/**
 * Looks at all that is watched at every rack position by every travel, both wheels alike, and then about each worst place
 * ever closer. `each` sees every pose as well. Yields how much is done after each place, from 0 to 1; gives the worst of each.
 */
export function* swept(
  study: Study,
  watched: readonly Watched[],
  each: (poses: Float64Array) => void,
): Generator<number, readonly Worst[], void> {
  const { inputs, travels } = spansOf(study);
  const poses = newPoses(1);
  const worst: (Worst & object)[] = watched.map(() => ({ value: Number.POSITIVE_INFINITY, input: 0, travel: 0 }));
  const look = (i: number, input: number, travel: number) => {
    const at = sideAt(watched[i].wheel);
    if (poses[at + Side.Blame] !== 0) return;
    const value = watched[i].read(poses, at, worst[i].value);
    if (value < worst[i].value) worst[i] = { value, input, travel };
  };
  for (let row = 0; row < inputs.rows; row++) {
    const input = placeOf(inputs, row);
    for (let column = 0; column < travels.rows; column++) {
      const travel = placeOf(travels, column);
      solve(study.front, input, travel, travel, poses, 0);
      for (let i = 0; i < watched.length; i++) look(i, input, travel);
      each(poses);
      yield (0.9 * (row * travels.rows + column + 1)) / (inputs.rows * travels.rows);
    }
  }
  for (let i = 0; i < watched.length; i++) {
    if (worst[i].value === Number.POSITIVE_INFINITY) continue;
    let inputStep = (inputs.to - inputs.from) / (inputs.rows - 1);
    let travelStep = travels.rows < 2 ? 0 : (travels.to - travels.from) / (travels.rows - 1);
    for (let round = 0; round < ROUNDS; round++) {
      const { input: midInput, travel: midTravel } = worst[i];
      inputStep /= 2;
      travelStep /= 2;
      for (let row = 0; row < NEAR; row++) {
        const input = within(midInput + (row - 2) * inputStep, inputs);
        for (let column = 0; column < NEAR; column++) {
          const travel = within(midTravel + (column - 2) * travelStep, travels);
          solve(study.front, input, travel, travel, poses, 0);
          look(i, input, travel);
        }
      }
      yield 0.9 + (0.1 * (i + 1)) / watched.length;
    }
  }
  return worst.map((each) => (each.value === Number.POSITIVE_INFINITY ? null : each));
}
