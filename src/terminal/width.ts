import stringWidth from "string-width";

const segmenter = new Intl.Segmenter(undefined, { granularity: "grapheme" });

/** Text in which every code unit is a character of its own: ASCII, Latin, punctuation, arrows, lines, blocks, braille. */
const simple = /^[\x20-\x7e\xa1-\xac\xae-\u02ff\u2010-\u2027\u2030-\u205e\u2190-\u21ff\u2500-\u259f\u2800-\u28ff]*$/;

/**
 * The characters of a text as a reader counts them: a letter with its accents is one. What joins to more than two columns,
 * as a letter with a half-width sound mark does, comes apart into those of its characters that have a width.
 */
export function graphemes(text: string): readonly string[] {
  if (simple.test(text)) return text.split("");
  return Array.from(segmenter.segment(text), ({ segment }) =>
    widthOf(segment) > 2 ? [...segment].filter((each) => widthOf(each) > 0) : [segment],
  ).flat();
}

const widths = new Map<string, number>();
const mostWidths = 4096;

/** Columns of one grapheme, by the same library that Ink lays out with. */
export function widthOf(grapheme: string): number {
  const code = grapheme.charCodeAt(0);
  if (grapheme.length === 1 && code >= 0x20 && code < 0x7f) return 1;
  let width = widths.get(grapheme);
  if (width === undefined) {
    width = stringWidth(grapheme);
    if (widths.size >= mostWidths) widths.clear();
    widths.set(grapheme, width);
  }
  return width;
}

/** Scripts whose characters have been two columns wide in every terminal all along. */
const wideScripts = /^[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\uff01-\uff60\uffe0-\uffe6]$/;

/** One base character with accents on it. */
const accented = /^[\x20-\x7e\xa1-\u02ff][\u0300-\u036f]*$/;

/** Whether terminals disagree about the columns of this grapheme: pictures, and what is joined of several. */
export function isDoubtful(grapheme: string): boolean {
  if (grapheme.length === 1 && widthOf(grapheme) === 1) return false;
  return !wideScripts.test(grapheme) && !accented.test(grapheme);
}

/** Bytes of a grapheme in UTF-8. */
export function byteLength(grapheme: string): number {
  return grapheme.length === 1 && grapheme < "\x80" ? 1 : Buffer.byteLength(grapheme);
}
