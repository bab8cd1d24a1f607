import type { Pairing } from "../../measures/range/clearance.ts";
import type { Study } from "../../measures/study.ts";
import { type CheckItem, limited, otherFacts, sidesOf } from "./item.ts";
import type { Worst } from "./sweep.ts";

function upperFirst(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** One item a pair of parts: of both sides the one that comes nearer, and what the other comes to. */
export function clearanceItems(study: Study, pairs: readonly Pairing[], worst: readonly Worst[]): readonly CheckItem[] {
  const ids = [...new Set(pairs.map(({ id }) => id))];
  return ids.map((id) => {
    const own = pairs.flatMap((pair, i) => (pair.id === id ? [{ pair, worst: worst[i] ?? null }] : []));
    const nearness = (each: (typeof own)[number]) => each.worst?.value ?? Number.POSITIVE_INFINITY;
    const nearer = own.reduce((a, b) => (nearness(b) < nearness(a) ? b : a));
    const value = nearer.worst?.value ?? null;
    const other = own.find((each) => each !== nearer)?.worst?.value ?? null;
    const { wheel, label } = nearer.pair;
    const sides = sidesOf(upperFirst(label), value, other);
    const rest = {
      id: `clearance.${id}`,
      part: "clearance" as const,
      label: sides.alike ? `${sides.name}, both sides` : upperFirst(`${wheel} ${label}`),
      wheel,
      where: nearer.worst,
      facts: otherFacts(wheel, sides, "length"),
      cautions: nearer.pair.id.endsWith("tyre")
        ? ["A tyre grows with speed, bulges under load and carries mud: leave more than this."]
        : ["Between straight tubes and round parts as given: brackets, bolt heads, brakes and welds are not in it."],
    };
    return limited(study, "clearance", value, rest, sides);
  });
}
