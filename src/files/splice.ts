/** How one text becomes another: what is taken out at a place, and what is put in. */
export interface Splice {
  readonly at: number;
  readonly cut: number;
  readonly put: string;
}

/** The smallest single splice that makes `after` of `before`. */
export function spliceBetween(before: string, after: string): Splice {
  const shorter = Math.min(before.length, after.length);
  let at = 0;
  while (at < shorter && before[at] === after[at]) at += 1;
  let tail = 0;
  while (tail < shorter - at && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  return { at, cut: before.length - at - tail, put: after.slice(at, after.length - tail) };
}

/** A text after a splice. */
export function withSplice(text: string, { at, cut, put }: Splice): string {
  return text.slice(0, at) + put + text.slice(at + cut);
}
