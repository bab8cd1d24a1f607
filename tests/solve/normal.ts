import { randomFrom } from "../../src/solve/search/random.ts";

/**
 * Normal deviates by Box and Muller. The first numbers of that generator grow with a small seed, so the seed is spread out
 * and some are thrown away.
 */
export function normalFrom(seed: number): () => number {
  const random = randomFrom(1 + ((seed * 1_000_003) % 2147483645));
  for (let i = 0; i < 4; i++) random();
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}
