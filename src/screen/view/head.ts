import { isUnsaved } from "../bench.ts";
import type { Model } from "../model.ts";

/** The first line: what is worked on, and how it stands, from the longest way of saying that to the shortest. */
export interface Head {
  readonly title: string;
  readonly rights: readonly string[];
}

/** The car on the bench. */
export function carHead(model: Model): Head {
  const { path } = model.origin;
  const state = isUnsaved(model) ? "NOT SAVED, s saves" : path === null ? "from an example" : "saved";
  const file = path === null ? "new car" : (path.split(/[\\/]/).at(-1) ?? path);
  return { title: model.bench.car.title, rights: [`${file}, ${state}`, state, state.replace(", s saves", "")] };
}
