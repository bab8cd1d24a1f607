/**
 * The one closeness helper of the tests: numbers, arrays (typed ones too), nested plain objects and nulls.
 *
 * Two numbers a (found) and b (expected) are close when |a - b| <= abs + rel * |b|. NaN is close to nothing. Objects must have the same
 * keys, arrays the same length; anything that is not a number must be identical.
 */
export interface Tolerance {
  readonly abs?: number;
  readonly rel?: number;
}

/** Where and by how much two values differ, in words, or null when they are close. */
export function difference(
  found: unknown,
  expected: unknown,
  { abs = 0, rel = 0 }: Tolerance,
  path = "value",
): string | null {
  if (typeof expected === "number" && typeof found === "number") {
    const allowed = abs + rel * Math.abs(expected);
    if (Object.is(found, expected) || Math.abs(found - expected) <= allowed) return null;
    return `${path}: found ${found}, expected ${expected}, off by ${found - expected}, allowed ${allowed}`;
  }
  if (isList(expected) && isList(found)) {
    if (found.length !== expected.length) return `${path}: found ${found.length} items, expected ${expected.length}`;
    return firstOf(expected.length, (i) => difference(found[i], expected[i], { abs, rel }, `${path}[${i}]`));
  }
  if (isRecord(expected) && isRecord(found)) {
    const keys = Object.keys(expected).sort();
    const foundKeys = Object.keys(found).sort();
    if (keys.join() !== foundKeys.join()) return `${path}: found the keys ${foundKeys.join()}, expected ${keys.join()}`;
    return firstOf(keys.length, (i) =>
      difference(found[keys[i]], expected[keys[i]], { abs, rel }, `${path}.${keys[i]}`),
    );
  }
  return Object.is(found, expected) ? null : `${path}: found ${String(found)}, expected ${String(expected)}`;
}

/** Throws, naming the first place that differs, unless `found` is close to `expected`. */
export function expectClose(found: unknown, expected: unknown, tolerance: Tolerance, path?: string): void {
  const words = difference(found, expected, tolerance, path);
  if (words !== null) throw new Error(words);
}

type List = { readonly length: number; readonly [index: number]: unknown };

function isList(value: unknown): value is List {
  return Array.isArray(value) || (ArrayBuffer.isView(value) && "length" in value);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !isList(value);
}

function firstOf(count: number, look: (index: number) => string | null): string | null {
  for (let i = 0; i < count; i++) {
    const words = look(i);
    if (words !== null) return words;
  }
  return null;
}
