import { deviationsHolding } from "../least-squares/chance.ts";

/** How many of how many builds, and between which two shares the true chance then lies, 19 times of 20. */
export interface Count {
  readonly met: number;
  readonly of: number;
  readonly between: readonly [least: number, most: number];
}

/** Standard deviations that hold 19 of 20. */
const Z = deviationsHolding(0.95);

/**
 * A count with its interval (Wilson 1927, quoted from memory: it keeps within 0 and 1, and says something of none and of
 * all).
 */
export function counted(met: number, of: number): Count {
  if (of === 0) return { met, of, between: [0, 1] };
  const share = met / of;
  const middle = share + (Z * Z) / (2 * of);
  const half = Z * Math.sqrt((share * (1 - share)) / of + (Z * Z) / (4 * of * of));
  const whole = 1 + (Z * Z) / of;
  return { met, of, between: [Math.max(0, (middle - half) / whole), Math.min(1, (middle + half) / whole)] };
}
