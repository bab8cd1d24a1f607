/**
 * Numbers rounded to so many decimals in such a way that they add up to their sum as it would be rounded: those that are
 * cut furthest from their value give way (largest remainders). For a list whose total stands below it.
 */
export function roundedToSum(values: readonly number[], digits: number): readonly number[] {
  const unit = 10 ** digits;
  const total = Math.round(values.reduce((sum, value) => sum + value, 0) * unit);
  const floors = values.map((value) => Math.floor(value * unit));
  const missing = total - floors.reduce((sum, each) => sum + each, 0);
  const byRemainder = values
    .map((value, i) => ({ i, remainder: value * unit - (floors[i] ?? 0) }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  const up = new Set(byRemainder.slice(0, missing).map(({ i }) => i));
  return floors.map((floor, i) => (floor + (up.has(i) ? 1 : 0)) / unit);
}
