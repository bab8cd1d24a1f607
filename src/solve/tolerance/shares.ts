import type { Sample } from "./sample.ts";

/** Classes of equal chance that a size's error is sorted into. */
const CLASSES = 20;

/** The class of an error, by the share of all errors that is less than it. */
export function classOf(share: number): number {
  return Math.min(CLASSES - 1, Math.floor(share * CLASSES));
}

/**
 * How much of a figure's variance one size carries: what would go if that size were held exactly, from 0 to 1. It is the
 * correlation ratio η² = Var(E[f | q]) / Var(f) (Pearson 1905; the first-order index of variance-based sensitivity), the
 * means taken over classes of equal chance, freed of what k classes of n builds show by chance alone: ε² = 1 − (1 − η²)(n −
 * 1)/(n − k) (Kelley 1935, quoted from memory): about nothing, and so below it as often as above, for what carries nothing.
 * It asks for no straight line. `classes[i]` is the class of build i. Null where nothing varies.
 */
export function shareOf({ values, told }: Sample, count: number, classes: Uint8Array): number | null {
  const sums = new Float64Array(CLASSES);
  const sizes = new Float64Array(CLASSES);
  let [all, n] = [0, 0];
  for (let i = 0; i < count; i++) {
    if (told[i] === 0) continue;
    sums[classes[i]] += values[i];
    sizes[classes[i]]++;
    all += values[i];
    n++;
  }
  if (n <= CLASSES) return null;
  const mean = all / n;
  let [whole, between] = [0, 0];
  for (let i = 0; i < count; i++) if (told[i] === 1) whole += (values[i] - mean) ** 2;
  for (let k = 0; k < CLASSES; k++) if (sizes[k] > 0) between += sizes[k] * (sums[k] / sizes[k] - mean) ** 2;
  if (!(whole > 1e-18 * n * (1 + mean * mean))) return null;
  return 1 - ((1 - between / whole) * (n - 1)) / (n - CLASSES);
}

/** The variance of what was told among the first `count`; 0 where that is less than two. */
export function varianceOf({ values, told }: Sample, count: number): number {
  let [n, mean, squares] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    if (told[i] === 0) continue;
    n++;
    const off = values[i] - mean;
    mean += off / n;
    squares += off * (values[i] - mean);
  }
  return n < 2 ? 0 : squares / (n - 1);
}
