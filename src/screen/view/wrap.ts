import { pieces } from "../../vehicle/units/pieces.ts";

/**
 * A text in lines of at most so many columns, broken between words, never within a number, its fraction and its unit:
 * 13 9/32 in is one. A word that is longer is broken where it must. No line is narrower than one column, however narrow
 * the window.
 */
export function wrapped(text: string, columns: number): readonly string[] {
  const width = Math.max(1, columns);
  const lines: string[] = [];
  let line = "";
  for (const word of pieces(text.replace(/\s+/g, " "))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (longer.length <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = word;
    while (line.length > width) {
      lines.push(line.slice(0, width));
      line = line.slice(width);
    }
  }
  if (line !== "") lines.push(line);
  return lines;
}

/** What stands for sentences that were left out: the help page begins with all of them. */
const more = "(? tells all)";

/**
 * A text in at most `rows` lines: where it has more, its last sentences are left out whole, and `tells` says where they are.
 */
export function wholeSentences(text: string, width: number, rows: number, tells = more): readonly string[] {
  // As one word, so that no line ends within it.
  const glued = tells.replaceAll(" ", "_");
  const all = wrapped(text, width);
  if (all.length <= rows) return all;
  const sentences = text.split(/(?<=[.?!]) (?=[A-Z])/);
  for (let count = sentences.length - 1; count > 0; count--) {
    const lines = wrapped([...sentences.slice(0, count), glued].join(" "), width);
    if (lines.length <= rows) return lines.map((line) => line.replace(glued, tells));
  }
  const cut = all.slice(0, rows);
  const last = cut.at(-1) ?? "";
  return [
    ...cut.slice(0, -1),
    fitting([`${last} ${tells}`, `${last.slice(0, width - tells.length - 4)}... ${tells}`], width),
  ];
}

/** A label whole, then with its last phrase left out, and the next: "Rod end, left tie rod, inner end: angle to spare". */
export function shorterPhrases(label: string): readonly string[] {
  const ends = [...label.matchAll(/[,:]? \(|[,:] /g)].map(({ index }) => index).reverse();
  return [label, ...ends.map((end) => label.slice(0, end))];
}

/** The first of several ways to say something that fits, else the last cut between words, with dots that say so. */
export function fitting(texts: readonly string[], width: number): string {
  const fits = texts.find((text) => text.length <= width);
  if (fits !== undefined) return fits;
  const last = texts.at(-1) ?? "";
  const cut = wrapped(last, Math.max(1, width - 3))[0] ?? "";
  return `${/^\s*/.exec(last)?.[0] ?? ""}${cut}...`.slice(0, width);
}
