const MODULUS = 2147483647;
const MULTIPLIER = 16807;

/**
 * Numbers in (0, 1) that look random and are the same for the same seed, everywhere: the "minimal standard" generator,
 * s ← 16807 s mod 2³¹ − 1 (Park and Miller, Random number generators: good ones are hard to find, Communications of the ACM
 * 31, 1988). `seed`: a whole number from 1 to 2³¹ − 2.
 */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * MULTIPLIER) % MODULUS;
    return state / MODULUS;
  };
}
