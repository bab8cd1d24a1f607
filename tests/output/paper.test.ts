import { describe, expect, it } from "vitest";
import { htmlWords } from "../../src/output/paper/escape.ts";
import { paperHtml } from "../../src/output/paper/html.ts";
import { markdownWords, paperMarkdown } from "../../src/output/paper/markdown.ts";
import { list, mind, type Paper, tableOf, words } from "../../src/output/paper/paper.ts";
import { paperText } from "../../src/output/paper/text.ts";

const nasty = `<script>alert("x")</script> & 'y' | *z* _w_ [a](b) \`c\``;

const paper: Paper = {
  title: nasty,
  under: [nasty],
  parts: [
    {
      heading: nasty,
      blocks: [
        words(nasty),
        mind(nasty),
        list([nasty]),
        tableOf(
          [nasty, "number"],
          [
            [nasty, "1"],
            ["to be read", null],
          ],
        ),
      ],
    },
  ],
  cautions: ["Look twice."],
};

describe("a paper as HTML", () => {
  const html = paperHtml(paper);

  it("runs nothing and fetches nothing that a car's words ask for", () => {
    expect(html).not.toMatch(/<script/i);
    expect(html).not.toMatch(/\b(?:src|href)=|url\(|@import/i);
    expect(html).toContain("default-src 'none'");
  });

  it("escapes every character that HTML gives a meaning, and loses none", () => {
    const back = htmlWords(nasty)
      .replaceAll("&lt;", "<")
      .replaceAll("&gt;", ">")
      .replaceAll("&quot;", '"')
      .replaceAll("&#39;", "'")
      .replaceAll("&amp;", "&");
    expect(htmlWords(nasty)).not.toMatch(/[<>"']|&(?!(?:amp|lt|gt|quot|#39);)/);
    expect(back).toBe(nasty);
  });

  it("opens and closes every element, and says its characters", () => {
    const open: string[] = [];
    for (const [, slash, name = ""] of html.matchAll(/<(\/?)([a-z][a-z0-9]*)[^>]*>/g)) {
      if (name === "meta") continue;
      if (slash === "") open.push(name);
      else expect(open.pop()).toBe(name);
    }
    expect(open).toEqual([]);
    expect(html).toContain('<meta charset="utf-8">');
  });

  it("sets margins but no paper size, so that A4 and Letter both do", () => {
    expect(html).toMatch(/@page \{[^}]*margin/);
    expect(html).not.toMatch(/@page \{[^}]*size/);
  });

  it("leaves a place to write in", () => {
    expect(html).toContain('<td class="blank"></td>');
  });
});

describe("a paper as Markdown", () => {
  const lines = paperMarkdown(paper);

  it("keeps every row of a table to its columns", () => {
    const rows = lines.filter((line) => line.startsWith("|"));
    expect(rows.length).toBe(4);
    for (const row of rows) expect(row.replaceAll("\\|", "").match(/\|/g)).toHaveLength(3);
  });

  it("escapes what would be markup", () => {
    expect(markdownWords(nasty)).toBe(
      "\\<script\\>alert(\"x\")\\</script\\> &amp; 'y' \\| \\*z\\* \\_w\\_ \\[a\\](b) \\`c\\`",
    );
    expect(markdownWords("- no list")).toBe("\\- no list");
    expect(markdownWords("1. no list")).toBe("1\\. no list");
  });
});

describe("a paper as text", () => {
  it("breaks words within their columns where a table is too wide, keeps numbers whole, and says all", () => {
    const name = "a long name of a thing ".repeat(4).trim();
    const [one, two] = ["1".repeat(20), "2".repeat(20)];
    const wide = tableOf(
      ["What", "A", "B"],
      [
        [name, one, two],
        ["short", "3", "4"],
      ],
    );
    const lines = paperText({
      ...paper,
      title: "t",
      under: [],
      cautions: [],
      parts: [{ heading: "h", blocks: [wide] }],
    });
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(78);
    const rows = lines.slice(lines.findIndex((line) => line.startsWith("---")) + 1, -2);
    expect(rows[0]).toContain(`${one}  ${two}`);
    expect(rows.map((line) => line.slice(0, 34).trim()).join(" ")).toBe(`${name} short`);
  });

  it("has a rule to write on, and every caution", () => {
    const text = paperText(paper).join("\n");
    expect(text).toMatch(/to be read\s+_{6,}/);
    expect(text).toContain("Look twice.");
  });
});
