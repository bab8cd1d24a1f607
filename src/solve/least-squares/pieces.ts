/** Long work that yields wherever it may rest, and gives its result at the end. */
export type Pieces<T> = Generator<void, T>;

/** Does all of it at once. */
export function through<T>(pieces: Pieces<T>): T {
  let next = pieces.next();
  while (next.done !== true) next = pieces.next();
  return next.value;
}
