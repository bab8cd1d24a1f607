import type { ReactNode } from "react";
import type { Job } from "../../solve/job.ts";
import type { Model } from "../model.ts";
import type { Act } from "../turn.ts";

/** The columns and rows that a view has below the five numbers, its heading included. */
export interface Room {
  readonly columns: number;
  readonly rows: number;
}

/** Keys, with all that is said about them: footer and help are made from this. */
export interface KeyWords {
  /** As terminal/key.ts names chords. */
  readonly keys: readonly string[];
  /** The keys as a builder reads them on his keyboard. */
  readonly shown: string;
  /**
   * What stands for it below the screen, keys included, where it goes by what is seen; null where only help or the screen
   * itself tells of it.
   */
  readonly footer: string | null | ((model: Model) => string);
  /** One line in help. */
  readonly help: string;
  /** Why it does nothing just now; null or absent when it works. */
  readonly off?: (model: Model) => string | null;
}

/** A key of a view's own. */
export interface ViewKey extends KeyWords {
  readonly act: Act;
}

/** What can be shown below the five numbers: one small file each, and a line in the list of views. */
export interface View {
  /** On its tab, in a builder's words; its spot in the model goes by it too. */
  readonly name: string;
  /** The key that shows it, from everywhere on the bench. */
  readonly key: string;
  /** One line in help: what it shows. */
  readonly help: string;
  /** True where it needs so little room that all rows of the five numbers stay in a small window. */
  readonly small?: boolean;
  /** True where it has something to show also of a front end that does not go together; absent where it never has. */
  readonly alone?: (model: Model) => boolean;
  /** Keys that mean something while it is seen; they come before the common ones. */
  readonly keys: readonly ViewKey[];
  /** Long work that it needs just now, named by a key that tells it from other work; null where it needs none. */
  readonly work?: (model: Model) => { readonly key: string; readonly job: () => Job<unknown> } | null;
  /** What is under the cursor, in a sentence or two, with its sign. */
  readonly explain: (model: Model) => string;
  readonly Body: (seen: { readonly model: Model; readonly room: Room }) => ReactNode;
}
