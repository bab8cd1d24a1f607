/** What is given to a cause of each of some numbers; null where it cannot be told. */
export type Part<Key extends string> = { readonly [K in Key]: number | null };

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}

/**
 * Splits numbers over `count` causes: a cause's share is the mean, over all orders in which the causes can be taken away,
 * of what its going takes off; the rest is what is left without any of them. Shapley, L. S., "A value for n-person
 * games", Contributions to the Theory of Games II (1953) [recalled, not looked up again]: for cause i and the sets S of
 * causes that are still there beside it, the sum of |S|! (n − |S| − 1)! / n! × (v(S and i) − v(S)). Shares and rest add
 * up to the number with every cause there.
 *
 * `evaluate` gives the numbers with some causes gone, or null where there are none. A number that any set of causes
 * lacks has no shares: all of its parts are null.
 */
export function shapley<Key extends string>(
  count: number,
  evaluate: (gone: readonly boolean[]) => Part<Key> | null,
  keys: readonly Key[],
): { readonly shares: readonly Part<Key>[]; readonly rest: Part<Key> } {
  const all = 2 ** count - 1;
  // Bit i of a set tells whether cause i is still there.
  const values = Array.from({ length: all + 1 }, (_, there) =>
    evaluate(Array.from({ length: count }, (_, i) => ((there >> i) & 1) === 0)),
  );
  const sizeOf = (set: number) => Array.from({ length: count }, (_, i) => (set >> i) & 1).reduce((a, b) => a + b, 0);
  const told = (key: Key, set: number) => values[set]?.[key] ?? null;
  const partOf = (read: (key: Key, known: (set: number) => number) => number) =>
    Object.fromEntries(
      keys.map((key) => {
        const numbers = values.map((_, set) => told(key, set));
        const whole = numbers.every((number): number is number => number !== null);
        return [key, whole ? read(key, (set) => numbers[set] ?? 0) : null];
      }),
    ) as Part<Key>;
  const shares = Array.from({ length: count }, (_, i) =>
    partOf((_, known) => {
      let sum = 0;
      for (let set = 0; set <= all; set++) {
        if ((set >> i) & 1) continue;
        const size = sizeOf(set);
        const weight = (factorial(size) * factorial(count - size - 1)) / factorial(count);
        sum += weight * (known(set | (1 << i)) - known(set));
      }
      return sum;
    }),
  );
  return { shares, rest: partOf((_, known) => known(0)) };
}
