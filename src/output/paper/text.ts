import { table, WIDTH, wrap } from "../table.ts";
import type { Block, Cell, Paper, PaperTable } from "./paper.ts";

/** What is written into later by hand. */
const BLANK = "________";

const textOf = (cell: Cell) => cell ?? BLANK;

/** A table; where it is wider than the page the first cell of every row stands on a line of its own. */
function tableLines({ heads, rows, words }: PaperTable): readonly string[] {
  const cells = rows.map((row) => row.map(textOf));
  const whole = table([heads], cells, words);
  if (whole.every((line) => line.length <= WIDTH)) return whole;
  const narrow = (row: readonly string[]) => ["", ...row.slice(1)];
  const lines = table([narrow(heads)], cells.map(narrow), words);
  const [head = "", rule = "", ...below] = lines;
  return [
    ...wrap(heads[0] ?? "", WIDTH),
    head,
    rule,
    ...below.flatMap((line, i) => [...wrap(cells[i]?.[0] ?? "", WIDTH, "", 2), line]),
  ].map((line) => line.trimEnd());
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
    ...parts.flatMap(({ heading, blocks }) => [
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
