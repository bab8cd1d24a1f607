import { Text, type TextProps } from "ink";
import { createElement } from "react";
import { tones } from "./tone.ts";
import { wrapped } from "./wrap.ts";

/** How a piece of a line is drawn. All of it is also said in words or by a mark, since colours and weights may be off. */
export type Look = "strong" | "marked" | "warn" | "bad";

/** A part of a line: plain text, or text with a look. */
export type Piece = string | { readonly text: string; readonly look: Look };

/** A line of a view. */
export type Line = string | readonly Piece[];

const looks: Readonly<Record<Look, TextProps>> = {
  strong: { bold: true },
  marked: { bold: true, inverse: true },
  warn: tones.warn,
  bad: tones.bad,
};

/** Lines as one text: a frame's time goes by the number of its nodes. */
export function Lines({ lines, columns }: { readonly lines: readonly Line[]; readonly columns: number }) {
  const pieces = joined(lines.map((line) => cut(line, columns))).map((piece) =>
    typeof piece === "string" ? piece : createElement(Text, looks[piece.look], piece.text),
  );
  return createElement(Text, { wrap: "truncate" }, ...pieces);
}

/** A line that fits: one that is too long would take the others below with it. */
function cut(line: Line, columns: number): Line {
  if (typeof line === "string") return line.slice(0, columns);
  let left = columns;
  return line.map((piece) => {
    const text = textOf(piece).slice(0, Math.max(0, left));
    left -= text.length;
    return typeof piece === "string" ? text : { ...piece, text };
  });
}

/** All lines as pieces with line ends, plain text that follows plain text put together. */
function joined(lines: readonly Line[]): readonly Piece[] {
  const pieces: Piece[] = [];
  const add = (piece: Piece) => {
    const last = pieces.at(-1);
    if (typeof piece === "string" && typeof last === "string") pieces[pieces.length - 1] = last + piece;
    else pieces.push(piece);
  };
  lines.forEach((line, index) => {
    if (index > 0) add("\n");
    // A line of nothing would take no row.
    if (line === "" || line.length === 0) add(" ");
    else if (typeof line === "string") add(line);
    else line.forEach(add);
  });
  return pieces;
}

/** Lines as many as there are rows: cut where there are more, blank where there are less. */
export function filled(lines: readonly Line[], rows: number): readonly Line[] {
  return Array.from({ length: Math.max(0, rows) }, (_, index) => lines[index] ?? "");
}

/** How many columns a line takes. */
export function widthOf(line: Line): number {
  return typeof line === "string" ? line.length : line.reduce((sum, piece) => sum + textOf(piece).length, 0);
}

function textOf(piece: Piece): string {
  return typeof piece === "string" ? piece : piece.text;
}

/** Two blocks of lines beside each other, the first `columns` wide. */
export function beside(left: readonly Line[], columns: number, right: readonly Line[]): readonly Line[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, index) => {
    const first = left[index] ?? "";
    const pad = " ".repeat(Math.max(0, columns - widthOf(first)));
    return [...piecesOf(first), pad, ...piecesOf(right[index] ?? "")];
  });
}

function piecesOf(line: Line): readonly Piece[] {
  return typeof line === "string" ? [line] : line;
}

/** Words as lines that fit, a column in from the edge. */
export function paragraph(words: string, columns: number, look?: Look): readonly Line[] {
  return wrapped(words, columns - 2).map(
    (line): Line => (look === undefined ? ` ${line}` : [{ text: ` ${line}`, look }]),
  );
}
