import { pieces } from "../../vehicle/units/pieces.ts";
import { htmlWords } from "./escape.ts";
import type { Block, Cell, Paper, PaperTable } from "./paper.ts";
import { plotSvg } from "./plot.ts";
import { style } from "./style.ts";

/** Words, their fractions and units kept with their numbers: "14 3/8 in" is never broken. */
function kept(text: string): string {
  return pieces(text)
    .map((each) => htmlWords(each).replaceAll(" ", "&nbsp;"))
    .join(" ");
}

function tableHtml({ heads, rows, words }: PaperTable): string {
  const kind = (i: number) => (words.includes(i) ? "" : ' class="number"');
  const cell = (each: Cell, i: number) =>
    each === null ? '<td class="blank"></td>' : `<td${kind(i)}>${kept(each)}</td>`;
  const head = heads.map((each, i) => `<th scope="col"${kind(i)}>${htmlWords(each)}</th>`).join("");
  const body = rows.map((row) => `<tr>${row.map(cell).join("")}</tr>`).join("\n");
  return `<table>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody>\n</table>`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case "words":
      return `<p>${kept(block.text)}</p>`;
    case "mind":
      return `<p class="mind"><strong>Mind:</strong> ${kept(block.text)}</p>`;
    case "list":
      return `<ul>\n${block.items.map((item) => `<li>${kept(item)}</li>`).join("\n")}\n</ul>`;
    case "table":
      return tableHtml(block);
    case "drawing":
      return `<figure>\n${plotSvg(block.plot)}\n<figcaption>${htmlWords(block.text)}</figcaption>\n</figure>`;
  }
}

/** Nothing may be fetched and nothing may run: what a title holds stays words, and the file is whole without a network. */
const policy = "default-src 'none'; style-src 'unsafe-inline'";

/** A paper as one HTML file that needs no other and prints on A4 and on Letter. */
export function paperHtml({ title, under, parts, cautions }: Paper): string {
  return `${[
    "<!DOCTYPE html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${htmlWords(title)}</title>`,
    `<style>\n${style}</style>`,
    "</head>",
    "<body>",
    `<h1>${htmlWords(title)}</h1>`,
    ...under.map((line) => `<p class="under">${htmlWords(line)}</p>`),
    ...parts.flatMap(({ heading, blocks }) => [
      "<section>",
      `<h2>${htmlWords(heading)}</h2>`,
      ...blocks.map(blockHtml),
      "</section>",
    ]),
    `<p class="cautions">${htmlWords(cautions.join(" "))}</p>`,
    "</body>",
    "</html>",
  ].join("\n")}\n`;
}
