/** A text in lines of at most `width` columns, broken between words; a word that is longer is broken where it must. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
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

/** The first of several ways to say something that fits, else the last cut between words, with dots that say so. */
export function fitting(texts: readonly string[], width: number): string {
  const fits = texts.find((text) => text.length <= width);
  if (fits !== undefined) return fits;
  const last = texts.at(-1) ?? "";
  const cut = wrapped(last, Math.max(1, width - 3))[0] ?? "";
  return `${/^\s*/.exec(last)?.[0] ?? ""}${cut}...`.slice(0, width);
}
