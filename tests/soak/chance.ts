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
  const share = randomFrom(1 + (stirred(seed) % 2147483645));
  const below = (count: number) => Math.min(Math.floor(share() * count), count - 1);
  return { share, below, one: (of) => of[below(of.length)] as (typeof of)[number] };
}

/** Neighbouring seeds, which a generator that multiplies would begin alike with, made unlike: any such mixing of bits serves. */
function stirred(seed: number): number {
  let bits = seed + 0x9e3779b9;
  for (const prime of [0x85ebca6b, 0xc2b2ae35]) bits = Math.imul(bits ^ (bits >>> 15), prime);
  return (bits ^ (bits >>> 16)) >>> 0;
}
