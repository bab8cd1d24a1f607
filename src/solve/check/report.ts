import type { CheckItem, State } from "./item.ts";

/** All that was checked over the whole range of a car, in the order it is told. */
export interface CheckReport {
  readonly items: readonly CheckItem[];
}

/** How many of a report's items came out so. */
export function countOf({ items }: CheckReport, state: State): number {
  return items.filter((each) => each.state === state).length;
}

const rank: Readonly<Record<State, number>> = { broken: 0, close: 1, "not given": 2, pass: 3 };

/** The items with the worst first, the order kept among equals. */
export function worstFirst({ items }: CheckReport): readonly CheckItem[] {
  return [...items].sort((a, b) => rank[a.state] - rank[b.state]);
}

/** The item that a builder should look at first: broken before close, the first of equals; null where nothing is wrong. */
export function worstOf(report: CheckReport): CheckItem | null {
  const [first] = worstFirst(report);
  return first !== undefined && rank[first.state] < 2 ? first : null;
}
