import type { Held } from "./held.ts";
import type { Carrier, Chance } from "./result.ts";
import type { Sample } from "./sample.ts";
import { shareOf, varianceOf } from "./shares.ts";
import { keptOf } from "./verdict.ts";

/** The builds that a carrier is judged by: how many, and by size the class of its error in each. */
export interface Classed {
  readonly count: number;
  readonly classes: readonly Uint8Array[];
}

/** How many sizes a jig is made for. */
const JIGGED = 3;

/** What carries the spread of some samples together, by name: the shares of both sides added, weighed by variance. */
export function carriersOf(
  samples: readonly Sample[],
  { classes, count }: Classed,
  held: readonly Held[],
): readonly Carrier[] {
  const variances = samples.map((sample) => varianceOf(sample, count));
  const whole = variances.reduce((sum, each) => sum + each, 0);
  if (whole === 0) return [];
  const found = new Map<string, Carrier>();
  for (const [i, { quantity, tolerance }] of held.entries()) {
    if (tolerance === 0) continue;
    const { pair, label, kind, wheel } = quantity;
    const share = samples.reduce(
      (sum, sample, s) => sum + (variances[s] / whole) * (shareOf(sample, count, classes[i]) ?? 0),
      0,
    );
    const other = found.get(pair);
    found.set(pair, {
      pair,
      label,
      kind,
      tolerance,
      sides: other === undefined ? wheel : "both",
      share: share + (other?.share ?? 0),
    });
  }
  return [...found.values()]
    .map((each) => ({ ...each, share: Math.min(1, Math.max(0, each.share)) }))
    .sort((a, b) => b.share - a.share);
}

/** What the carriers of all that is judged come to, each judge weighed by how often what the car keeps as drawn is missed. */
export function overall(chances: readonly Chance[]): readonly Carrier[] {
  const missed = ({ judge, set, aim, limit }: Chance) => {
    const end = keptOf(judge, set);
    if (end === null || aim.of === 0) return 0;
    return 1 - (end === judge.aim ? aim : limit).met / aim.of;
  };
  const counted = chances.filter(({ carriers }) => carriers.length > 0);
  const whole = counted.reduce((sum, chance) => sum + missed(chance), 0);
  if (whole === 0) return [];
  const found = new Map<string, Carrier>();
  for (const chance of counted)
    for (const carrier of chance.carriers) {
      const share = (missed(chance) / whole) * carrier.share + (found.get(carrier.pair)?.share ?? 0);
      found.set(carrier.pair, { ...carrier, share });
    }
  return [...found.values()].sort((a, b) => b.share - a.share).slice(0, JIGGED);
}
