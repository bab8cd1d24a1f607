/** Bisections between two places: from a few mm they go to a millionth of one. */
const HALVINGS = 22;

/**
 * The place nearest to 0 within `reach` at which a function comes to nothing, looked for outward both ways in `steps`
 * steps a way; null when there is none. Places where the function is null are not crossed.
 */
export function rootNearNothing(f: (x: number) => number | null, reach: number, steps: number): number | null {
  const first = f(0);
  if (first === null || first === 0) return first === null ? null : 0;
  const ends = { up: { at: 0, value: first, open: true }, down: { at: 0, value: first, open: true } };
  for (let i = 1; i <= steps; i++) {
    for (const way of ["up", "down"] as const) {
      const end = ends[way];
      if (!end.open) continue;
      const at = ((way === "up" ? reach : -reach) * i) / steps;
      const value = f(at);
      if (value === null) end.open = false;
      else if (value > 0 !== end.value > 0) return between(f, end.at, end.value, at);
      else ends[way] = { at, value, open: true };
    }
  }
  return null;
}

function between(f: (x: number) => number | null, from: number, fromValue: number, to: number): number | null {
  let [a, b] = [from, to];
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (a + b) / 2;
    const value = f(middle);
    if (value === null) return null;
    if (value > 0 === fromValue > 0) a = middle;
    else b = middle;
  }
  return b;
}
