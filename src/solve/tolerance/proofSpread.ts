import { bumpProof, type ProofPlaces, steerProof } from "../../measures/bench/proof.ts";
import type { Pair } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import { deviationsHolding } from "../least-squares/chance.ts";
import { buildOf } from "./built.ts";
import { type Held, heldOf } from "./held.ts";
import { deviationsOf } from "./linear.ts";

/** How far ordinary building moves a reading each way, both wheels alike; null where that cannot be told. */
export type Within = number | null;

/** How far the readings that prove a car are moved by building it to its tolerances and setting it again. */
export interface ProofSpread {
  readonly held: readonly Held[];
  /** For each row of the steer proof: rad, and mm over the board. */
  readonly steer: readonly { readonly turned: Within; readonly board: Within }[];
  /** For each row of the bump proof: change of toe and camber, rad; over the board and across the tyre, mm. */
  readonly bump: readonly {
    readonly toe: Within;
    readonly board: Within;
    readonly acrossTyre: Within;
    readonly camber: Within;
  }[];
}

/** So many of 100 builds are nearer. */
export const BUILDS_WITHIN = 95;

const steerKeys = ["turned", "board"] as const;
const bumpKeys = ["toe", "board", "acrossTyre", "camber"] as const;

/**
 * How far 95 of 100 builds are from each reading of the proof, by straight lines (`linearBand`): every size off within its
 * tolerance, what can be set set again, read at the same places of steering and travel. Of both wheels the one that is moved
 * more. Null where even the car without errors cannot be set.
 */
export function proofSpreadOf(study: Study, places: ProofPlaces): ProofSpread | null {
  const held = heldOf(study.car);
  const build = buildOf(study, held);
  if (build(new Float64Array(held.length)) === null) return null;
  const [steerRows, bumpRows] = [steerProof(study, places).length, bumpProof(study, places).length];
  const sides = ({ left, right }: Pair<number | null>) => [left, right];
  const values = (built: Study | null): readonly (number | null)[] => {
    const steer = built === null ? [] : steerProof(built, places);
    const bump = built === null ? [] : bumpProof(built, places);
    const none: Pair<null> = { left: null, right: null };
    return [
      ...Array.from({ length: steerRows }, (_, i) => steerKeys.flatMap((key) => sides(steer[i]?.[key] ?? none))).flat(),
      ...Array.from({ length: bumpRows }, (_, i) => bumpKeys.flatMap((key) => sides(bump[i]?.[key] ?? none))).flat(),
    ];
  };
  const deviations = deviationsOf(build, held, values);
  const wide = deviationsHolding(BUILDS_WITHIN / 100);
  const within = (i: number): Within => {
    const { [2 * i]: left = null, [2 * i + 1]: right = null } = deviations;
    return left === null || right === null ? null : wide * Math.max(left, right);
  };
  const { length: per } = steerKeys;
  const after = per * steerRows;
  return {
    held,
    steer: Array.from({ length: steerRows }, (_, i) => ({ turned: within(per * i), board: within(per * i + 1) })),
    bump: Array.from({ length: bumpRows }, (_, i) => {
      const first = after + bumpKeys.length * i;
      return {
        toe: within(first),
        board: within(first + 1),
        acrossTyre: within(first + 2),
        camber: within(first + 3),
      };
    }),
  };
}
