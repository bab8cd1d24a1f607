import { type Check, type Confidence, type Doubt, together } from "./confidence.ts";
import type { Patience } from "./descend.ts";
import { type Equations, only } from "./equations.ts";
import { type Pieces, through } from "./pieces.ts";
import { varianceAlong } from "./row.ts";
import { type Settled, settling } from "./settle.ts";

/** A reading that does not go with the others. */
export interface Blunder {
  readonly reading: number;
  /** By how much it reads too much by what the others say, in its sigmas; and how well that is known. */
  readonly by: number;
  readonly deviation: number;
  /** Readings that could as well be the wrong one instead: the sheet cannot tell which. */
  readonly or: readonly number[];
}

export interface Snooped {
  /** From the readings that are left. */
  readonly settled: Settled;
  /** The places, in the sheet, of the readings that are left. */
  readonly kept: readonly number[];
  readonly blunders: readonly Blunder[];
  /** Readings that no other reading checks: wrong or right, it would not show. */
  readonly unchecked: readonly number[];
}

/** Odds of one wrong reading against another below which they are not told apart: 95 in 100. */
const DECISIVE = 2 * Math.log(19);

/**
 * So well is settled, in sigmas, while it is plain which reading is the worst: far from where all fits, where it takes many
 * steps to come nearer, a hundredth of the readings' doubt decides nothing.
 */
const ROUGHLY = 1e-2;
/** Plain is what is clear by so many sigmas: of the critical size, and of the next to worst. */
const PLAIN = 0.2;

/**
 * Wrong readings, found one at a time (Baarda's data snooping, 1968; recalled, not looked up): the one with the greatest
 * normalised misfit is taken out while that is over the critical size, and the rest settled again; at the end one that fits
 * after all comes back. Null where the start cannot be evaluated.
 */
export function* snooping(
  equations: Equations,
  start: Float64Array,
  options: Patience & Doubt = {},
): Pieces<Snooped | null> {
  const rough = { ...options, enough: ROUGHLY };
  let kept: readonly number[] = Array.from({ length: equations.readings }, (_, i) => i);
  let settled = yield* settling(equations, start, rough);
  if (settled === null) return null;
  const out: { reading: number; or: readonly number[] }[] = [];
  const critical = settled.confidence.critical;

  for (let isRough = true; ; ) {
    if (isRough && !isPlain(settled.confidence, critical)) {
      settled = (yield* settling(only(equations, kept), settled.x, options)) ?? settled;
      isRough = false;
    }
    const worst = worstOf(settled.confidence);
    if (worst === null || Math.abs(worst.normalised) <= critical) break;
    const { confidence, x }: Settled = settled;
    const or = instead(confidence, worst.at, critical).map((other) => kept[other]);
    const reading = kept[worst.at];
    const left = kept.filter((each) => each !== reading);
    const again: Settled | null = yield* settling(only(equations, left), x, rough);
    if (again === null) break;
    [settled, kept, isRough] = [again, left, true];
    out.push({ reading, or });
  }
  for (let judged = judgedBy(equations, settled, out); judged.length > 0; ) {
    const mildest = judged.reduce((a, b) => (size(b) < size(a) ? b : a));
    if (size(mildest) > critical) break;
    const reading = mildest.reading;
    const more = [...kept, reading].sort((a, b) => a - b);
    const again: Settled | null = yield* settling(only(equations, more), settled.x, options);
    if (again === null) break;
    [settled, kept] = [again, more];
    out.splice(
      out.findIndex((each) => each.reading === reading),
      1,
    );
    judged = judgedBy(equations, settled, out);
  }
  const { checks } = settled.confidence;
  return {
    settled,
    kept,
    blunders: judgedBy(equations, settled, out),
    unchecked: kept.filter((_, i) => !checks[i].checked),
  };
}

/** The same, done at once. */
export function snoop(equations: Equations, start: Float64Array, options: Patience & Doubt = {}): Snooped | null {
  return through(snooping(equations, start, options));
}

/** Whether a rough place will do to take the worst reading out. */
function isPlain({ checks }: Confidence, critical: number): boolean {
  const [worst = 0, next = 0] = checks
    .flatMap((check) => (check.checked ? [Math.abs(check.normalised)] : []))
    .sort((a, b) => b - a);
  return worst > critical + PLAIN && worst > next + PLAIN;
}

function size({ by, deviation }: Blunder): number {
  return Math.abs(by) / deviation;
}

function worstOf({ checks }: Confidence): { at: number; normalised: number } | null {
  let worst: { at: number; normalised: number } | null = null;
  checks.forEach((check, at) => {
    if (!check.checked) return;
    if (worst === null || Math.abs(check.normalised) > Math.abs(worst.normalised))
      worst = { at, normalised: check.normalised };
  });
  return worst;
}

/**
 * The readings that could be wrong instead of that one: by the squares of the normalised misfits they are hardly less likely
 * (half their difference is the logarithm of the odds), and with them out that one would be in order.
 */
function instead(confidence: Confidence, at: number, critical: number): readonly number[] {
  const one = confidence.checks[at];
  if (!one.checked) return [];
  return confidence.checks.flatMap((other: Check, i) => {
    if (i === at || !other.checked) return [];
    if (one.normalised ** 2 - other.normalised ** 2 > DECISIVE) return [];
    const both = together(confidence, at, i);
    const left = Math.sqrt(Math.max(1 - both * both, 0));
    return Math.abs(one.normalised - both * other.normalised) <= critical * left + 1e-6 ? [i] : [];
  });
}

/** What the readings that are left say of those that were taken out. */
function judgedBy(
  equations: Equations,
  { x, confidence }: Settled,
  out: readonly { reading: number; or: readonly number[] }[],
): readonly Blunder[] {
  const { unknowns, readings } = equations;
  const misfits = new Float64Array(readings);
  const jacobian = new Float64Array(readings * unknowns);
  equations.evaluate(x, misfits, jacobian);
  return out.map(({ reading, or }) => {
    // Its own, which is 1 in its sigmas, and that of what the others make of it.
    const row = jacobian.subarray(reading * unknowns, (reading + 1) * unknowns);
    const variance = 1 + varianceAlong(confidence, row);
    const still = or.filter((other) => !out.some((each) => each.reading === other));
    return { reading, by: -misfits[reading], deviation: Math.sqrt(variance), or: still };
  });
}
