import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { list, type Paper, tableOf, words } from "../../src/output/paper/paper.ts";
import { paperPdf } from "../../src/output/paper/pdf.ts";
import { sheetPaper } from "../../src/output/sheet/sheet.ts";
import { writingIn } from "../../src/output/sheet/writing.ts";
import { checkJob } from "../../src/solve/check/check.ts";
import { finished } from "../../src/solve/job.ts";
import { folder } from "../cli/run.ts";
import { presetText, studyFrom } from "./studies.ts";

const work = folder();
afterAll(work.remove);

const readers = ["pdftotext", "pdffonts"].every((name) => spawnSync(name, ["-v"]).error === undefined);

/** What a builder or a title may hold: minus, degree, fractions, dashes, letters of Europe. */
const letters = "−3.5° 14⅜ ⅛ ⅝ ⅞ ½ ¼ ¾ ± × – — “Größe” Łódź Ωμέγα Жук fi ffl";

const paper: Paper = {
  title: letters,
  under: [letters],
  parts: [
    {
      heading: letters,
      blocks: [
        words(letters),
        list([letters]),
        tableOf(
          [letters, "number"],
          Array.from({ length: 90 }, (_, i) => [`row ${i + 1} ${letters}`, i % 2 ? null : "-1/8"]),
        ),
      ],
    },
  ],
  cautions: ["Look twice."],
};

const study = studyFrom(presetText("check-before-welding"));
const checks = finished(checkJob(study)) ?? { items: [] };
const sheet = sheetPaper({ study, checks, missed: [], unjudged: [], spread: null, from: null }, writingIn("in"));

function boxesOf(bytes: Uint8Array): readonly string[] {
  return [
    ...Buffer.from(bytes)
      .toString("latin1")
      .matchAll(/\/MediaBox \[ ([^\]]*?) \]/g),
  ].map(([, box = ""]) => box);
}

describe("a paper as a PDF", () => {
  it.each([
    // ISO 216 and ANSI/ASME Y14.1, in points of 1/72 in.
    ["A4", [(210 / 25.4) * 72, (297 / 25.4) * 72]],
    ["Letter", [8.5 * 72, 11 * 72]],
  ] as const)("is on %s, with its pages' size in points", async (size, [wide, high]) => {
    const boxes = boxesOf(await paperPdf(sheet, size));
    expect(boxes.length).toBeGreaterThan(2);
    for (const box of boxes) {
      const [left, foot, right, top] = box.split(" ").map(Number);
      expect([left, foot]).toEqual([0, 0]);
      expect(right).toBeCloseTo(wide, 1);
      expect(top).toBeCloseTo(high, 1);
    }
  });

  it("is the same bytes twice, without a date", async () => {
    const [one, two] = [await paperPdf(sheet, "A4"), await paperPdf(sheet, "A4")];
    expect(Buffer.compare(one, two)).toBe(0);
    expect(Buffer.from(one).toString("latin1")).not.toMatch(/CreationDate|ModDate/);
  });
});

describe.skipIf(!readers)("a PDF as another program reads it (needs poppler-utils)", () => {
  function read(bytes: Uint8Array, name: string) {
    const file = join(work.path, name);
    writeFileSync(file, bytes);
    const { stdout: text } = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    const { stdout: fonts } = spawnSync("pdffonts", [file], { encoding: "utf8" });
    spawnSync("pdftotext", ["-bbox", file, `${file}.html`]);
    return { text, fonts, boxes: readFileSync(`${file}.html`, "utf8") };
  }

  it("loses no letter, carries its fonts, and repeats a table's heads on every page", async () => {
    const { text, fonts } = read(await paperPdf(paper, "A4"), "letters.pdf");
    const flat = text.normalize("NFKC").replace(/\s+/g, "");
    for (const word of letters.normalize("NFKC").split(" ")) expect(flat, word).toContain(word);
    for (let i = 1; i <= 90; i++) expect(text).toMatch(new RegExp(`row ${i} `));
    const pages = text.split("\f").length - 1;
    expect(pages).toBeGreaterThan(2);
    for (const page of text.split("\f").slice(0, pages - 1)) expect(page).toContain("number");
    for (const line of fonts.trim().split("\n").slice(2)) expect(line).toMatch(/ yes +(?:yes|no) +yes /);
  });

  it("writes out a character that its fonts have not, and never drops it", async () => {
    const { text } = read(await paperPdf({ ...paper, under: ["車"] }, "A4"), "missing.pdf");
    expect(text).toContain("\\u{8eca}");
  });

  it("keeps every word of a build sheet within the margins, and says all of its numbers", async () => {
    const { text, boxes } = read(await paperPdf(sheet, "Letter"), "sheet.pdf");
    const places = [...boxes.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)"/g)];
    expect(places.length).toBeGreaterThan(500);
    for (const [, left, top, right, foot] of places) {
      expect(Number(left)).toBeGreaterThan(18);
      expect(Number(top)).toBeGreaterThan(18);
      expect(Number(right)).toBeLessThan(612 - 18);
      expect(Number(foot)).toBeLessThan(792 - 9);
    }
    const flat = text.replace(/\s+/g, "");
    const cells = sheet.parts.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === "table" ? block.rows.flatMap((row) => row.slice(1)) : [])),
    );
    const short = cells.filter((cell) => cell !== null && cell.length < 16);
    expect(short.length).toBeGreaterThan(50);
    for (const cell of short) expect(flat).toContain((cell ?? "").replace(/\s+/g, ""));
    for (const caution of sheet.cautions) expect(flat).toContain(caution.replace(/\s+/g, ""));
  });
});
