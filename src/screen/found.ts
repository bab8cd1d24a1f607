import type { FoundTexts, NoSearch } from "../solve/find/shown.ts";
import type { Model } from "./model.ts";

/** What the search for a place on the car is called among all long work. */
export function searchKey({ bench }: Pick<Model, "bench">): string {
  return `find\n${bench.car.text}`;
}

/** What the search on the car has found so far, or why there is none; null while neither is known. */
export function searchOf(model: Pick<Model, "bench" | "work">): FoundTexts | NoSearch | null {
  const { work } = model;
  return work?.key === searchKey(model) ? (work.result as FoundTexts | NoSearch | null) : null;
}
