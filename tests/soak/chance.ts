import { randomFrom } from "../../src/solve/search/random.ts";

/** What is drawn at random, the same for the same seed. */
export interface Chance {
  /** In (0, 1). */
  readonly share: () => number;
  /** A whole number from 0 to below `below`. */
  readonly below: (below: number) => number;
  readonly one: <T>(of: readonly T[]) => T;
}

/** `seed`: any whole number from 0 on. */
export function chanceOf(seed: number): Chance {
  const share = randomFrom(1 + ((seed * 7919) % 2147483645));
  // The first numbers of neighbouring seeds are alike.
  for (let i = 0; i < 5; i += 1) share();
  const below = (count: number) => Math.min(Math.floor(share() * count), count - 1);
  return { share, below, one: (of) => of[below(of.length)] as (typeof of)[number] };
}
