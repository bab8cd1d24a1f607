import type { Job } from "../../solve/job.ts";
import type { AmountName } from "../amounts.ts";
import type { Model } from "../model.ts";
import type { Act } from "../turn.ts";
import type { Line } from "../view/Lines.tsx";

/** One page of a view that has several, of unlike kinds. */
export interface Page {
  /** In the help of the key that turns the pages. */
  readonly name: string;
  readonly title: (model: Model) => string;
  /** Places that its cursor can stand in. */
  readonly size: (model: Model) => { readonly rows: number; readonly columns: number };
  readonly lines: (model: Model, columns: number, rows: number) => readonly Line[];
  /** What is under its cursor. */
  readonly explain: (model: Model) => string;
  /** What t does, or Enter where no amount can be typed, and why it cannot just now; null where there is nothing to take. */
  readonly take: { readonly act: Act; readonly off: (model: Model) => string | null } | null;
  /** By how much what is under its cursor is tried, which can be typed; null, or absent, where there is no such. */
  readonly amount?: (model: Model) => AmountName | null;
  /** Long work that it needs just now, named by a key; null where it needs none. */
  readonly work: ((model: Model) => { readonly key: string; readonly job: () => Job<unknown> } | null) | null;
}
