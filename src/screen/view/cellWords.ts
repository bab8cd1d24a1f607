import type { Figure } from "../../measures/figures.ts";

/**
 * What is under the cursor, in words: where, what it is and its value, which way is positive, and what it means.
 * `was` is the value that is pinned, in words; null where nothing is.
 */
export function cellWords(
  where: string,
  { label, sign, explanation }: Pick<Figure, "label" | "sign" | "explanation">,
  value: string | null,
  was: string | null = null,
): string {
  const positive = sign === "" ? "" : ` (${sign})`;
  const pinned = was === null || was === value ? "" : `, pinned ${was}`;
  return `${where}: ${label.charAt(0).toLowerCase()}${label.slice(1)} ${value ?? "not known"}${pinned}${positive}. ${explanation}`;
}
