/** Longest piece of a file that a message repeats. */
const longest = 40;

/** Characters that could move a terminal's cursor, change its colours or reorder a line, or that cannot be seen. */
const unseen = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}]/gu;

function escaped(character: string): string {
  if (character === "\n") return "\\n";
  if (character === "\t") return "\\t";
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}

/** Foreign text made safe to print: unseen and control characters are written out, and long text is cut. */
export function safe(text: string): string {
  const cut = text.length > longest ? `${text.slice(0, longest)}…` : text;
  return cut.replace(unseen, escaped);
}

/** What a file holds at some place, in a builder's words: the text in quotes, or what kind of thing it is. */
export function shown(value: unknown): string {
  if (value === null || value === undefined) return "nothing";
  if (typeof value === "string") return `"${safe(value)}"`;
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of keys";
  if (typeof value === "number" && !Number.isFinite(value))
    return Number.isNaN(value) ? "no number (.nan)" : "a number too large to be held (1e400, .inf)";
  return safe(String(value));
}
