import type { Plot } from "./plotShapes.ts";

/** A cell of a table: words or a number as they stand, or null for one that is to be filled in by hand. */
export type Cell = string | null;

/** A table on paper. */
export interface PaperTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** The columns (from 0) that hold words; the others hold numbers. */
  readonly words: readonly number[];
}

/** One piece of a paper. */
export type Block =
  | { readonly kind: "words"; readonly text: string }
  | { readonly kind: "list"; readonly items: readonly string[] }
  /** Something to beware of: a number in sight of it could hurt someone. */
  | { readonly kind: "mind"; readonly text: string }
  | ({ readonly kind: "table" } & PaperTable)
  /** A plot, for the forms that can show one; `text` says what there is to see. */
  | { readonly kind: "drawing"; readonly plot: Plot; readonly text: string };

/** A part of a paper under its own heading. */
export interface PaperPart {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

/** What is printed or handed on, as plain data: text, Markdown and HTML are made from the same one. */
export interface Paper {
  readonly title: string;
  readonly under: readonly string[];
  readonly parts: readonly PaperPart[];
  /** What must be said beside numbers that can hurt someone; stands at the end of every form. */
  readonly cautions: readonly string[];
}

export function words(text: string): Block {
  return { kind: "words", text };
}

export function mind(text: string): Block {
  return { kind: "mind", text };
}

export function list(items: readonly string[]): Block {
  return { kind: "list", items };
}

/** A table whose first column holds words, unless others are named. */
export function tableOf(heads: readonly string[], rows: PaperTable["rows"], ofWords: readonly number[] = [0]): Block {
  return { kind: "table", heads, rows, words: ofWords };
}

/** The parts that have something to say without drawings. */
export function writtenParts(parts: readonly PaperPart[]): readonly PaperPart[] {
  return parts.filter(({ blocks }) => blocks.some(({ kind }) => kind !== "drawing"));
}
