import { WIDTH, wrap } from "../table.ts";
import { columnLines } from "./columns.ts";
import { type Block, type Cell, type Paper, type PaperTable, writtenParts } from "./paper.ts";

/** What is written into later by hand. */
const BLANK = "________";

const textOf = (cell: Cell) => cell ?? BLANK;

function tableLines({ heads, rows, words }: PaperTable): readonly string[] {
  return columnLines({ heads, rows: rows.map((row) => row.map(textOf)), words });
}

function blockLines(block: Block): readonly string[] {
  switch (block.kind) {
    case "words":
      return wrap(block.text, WIDTH);
    case "mind":
      return wrap(block.text, WIDTH, "Mind: ", 6);
    case "list":
      return block.items.flatMap((item) => wrap(item, WIDTH, "- ", 2));
    case "table":
      return tableLines(block);
    case "drawing":
      return [];
  }
}

/** A paper as lines of text; drawings are left out. */
export function paperText({ title, under, parts, cautions }: Paper): readonly string[] {
  return [
    ...wrap(title, WIDTH),
    ...under.flatMap((line) => wrap(line, WIDTH, "", 2)),
    ...writtenParts(parts).flatMap(({ heading, blocks }) => [
      "",
      heading.toUpperCase(),
      ...blocks
        .map(blockLines)
        .filter((lines) => lines.length > 0)
        .flatMap((lines, i) => (i === 0 ? lines : ["", ...lines])),
    ]),
    "",
    ...wrap(cautions.join(" "), WIDTH),
  ];
}
