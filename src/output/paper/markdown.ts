import { type Block, type Cell, type Paper, type PaperTable, writtenParts } from "./paper.ts";

/** What is written into later by hand. */
const BLANK = "\\_\\_\\_\\_\\_\\_\\_\\_";

/** Words as Markdown (CommonMark, and tables as GitHub has them) that shows them as they stand. */
export function markdownWords(text: string): string {
  return text
    .replace(/[\\`*_[\]<>|~#]/g, "\\$&")
    .replaceAll("&", "&amp;")
    .replace(/\s*[\r\n]+\s*/g, " ")
    .replace(/^([-+=])/, "\\$1")
    .replace(/^(\d+)([.)])/, "$1\\$2");
}

function tableLines({ heads, rows, words }: PaperTable): readonly string[] {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  const cell = (each: Cell) => (each === null ? BLANK : markdownWords(each));
  return [
    line(heads.map(markdownWords)),
    line(heads.map((_, i) => (words.includes(i) ? "---" : "---:"))),
    ...rows.map((row) => line(row.map(cell))),
  ];
}

function blockLines(block: Block): readonly string[] {
  switch (block.kind) {
    case "words":
      return [markdownWords(block.text)];
    case "mind":
      return [`> **Mind:** ${markdownWords(block.text)}`];
    case "list":
      return block.items.map((item) => `- ${markdownWords(item)}`);
    case "table":
      return tableLines(block);
    case "drawing":
      return [];
  }
}

/** A paper as lines of Markdown; drawings are left out. */
export function paperMarkdown({ title, under, parts, cautions }: Paper): readonly string[] {
  const paragraph = (lines: readonly string[]) => (lines.length === 0 ? [] : ["", ...lines]);
  return [
    `# ${markdownWords(title)}`,
    ...under.flatMap((line) => paragraph([markdownWords(line)])),
    ...writtenParts(parts).flatMap(({ heading, blocks }) => [
      "",
      `## ${markdownWords(heading)}`,
      ...blocks.flatMap((block) => paragraph(blockLines(block))),
    ]),
    "",
    `**${markdownWords(cautions.join(" "))}**`,
  ];
}
