import type { Token } from "./literal.ts";
import type { Tree } from "./tree.ts";

type ReadTree = (tokens: readonly Token[]) => Tree | null;

let loaded: ReadTree | null = null;

/** Whether a text may hold more arithmetic than a sum of lengths, which is all that is read without preparing. */
export function mayHoldProducts(text: string): boolean {
  return /[*×✕÷()]|\d *\/ *\d+ *\/|[a-z"'] *\/ *[\d.]/i.test(text);
}

/**
 * Loads what reads products and brackets in lengths. It is large, so it stays off the disk until a text needs it;
 * call it before reading such a text, or once the first screen stands. Calling it again costs nothing.
 */
export async function prepareProducts(): Promise<void> {
  loaded ??= (await import("./arithmetic.ts")).readTree;
}

/** The tree of an expression; null where its signs and brackets do not fit, "unprepared" before prepareProducts is done. */
export function treeOf(tokens: readonly Token[]): Tree | null | "unprepared" {
  return loaded === null ? "unprepared" : loaded(tokens);
}
