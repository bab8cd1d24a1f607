/** The worst toe change of one wheel over the whole travel, and what the curve chiefly is. */
export interface WorstToe {
  /** The toeChange of largest size, signed, rad, toe-in positive. */
  readonly toeChange: number;
  /** Where, mm of travel, bump positive. */
  readonly travel: number;
  /** The same as toe across the tyre, mm, signed. */
  readonly acrossTyre: number;
  /** What the curve chiefly is: a slope (the inner end stands too high or too low) or a bow (too far in or out). */
  readonly chiefly: "slope" | "bow";
  /** What each part alone makes of the toe change at the longer end of the travel, rad, signed as in bump. */
  readonly slopePart: number;
  readonly bowPart: number;
}

/**
 * Toe as shops measure it, mm: the difference between the front and the back edge of the tyre, its diameter times the
 * sine of the toe. Common practice, no source; diameter twice the loaded radius.
 */
export function acrossTyre(toe: number, tireRadius: number): number {
  return 2 * tireRadius * Math.sin(toe);
}

/**
 * The worst of a toe curve that goes through nothing at travel 0: changes[i], rad, at travels[i], mm, for the first
 * `count` of each; null when there is none. The curve is split by least squares into a u + b u², u the travel as a
 * share of its longer end: a is the slope's part and b the bow's.
 */
export function worstToeOf(
  travels: Float64Array,
  changes: Float64Array,
  count: number,
  tireRadius: number,
): WorstToe | null {
  if (count === 0) return null;
  let worst = 0;
  let reach = 0;
  for (let i = 0; i < count; i++) {
    if (Math.abs(changes[i]) > Math.abs(changes[worst])) worst = i;
    reach = Math.max(reach, Math.abs(travels[i]));
  }
  let [u2, u3, u4, first, second] = [0, 0, 0, 0, 0];
  for (let i = 0; i < count && reach > 0; i++) {
    const u = travels[i] / reach;
    u2 += u * u;
    u3 += u * u * u;
    u4 += u * u * u * u;
    first += u * changes[i];
    second += u * u * changes[i];
  }
  const determinant = u2 * u4 - u3 * u3;
  const solvable = determinant > 1e-12 * u2 * u4;
  const slopePart = solvable ? (first * u4 - second * u3) / determinant : 0;
  const bowPart = solvable ? (second * u2 - first * u3) / determinant : 0;
  return {
    toeChange: changes[worst],
    travel: travels[worst],
    acrossTyre: acrossTyre(changes[worst], tireRadius),
    chiefly: Math.abs(bowPart) > Math.abs(slopePart) ? "bow" : "slope",
    slopePart,
    bowPart,
  };
}
