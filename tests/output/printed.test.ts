import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { folder, run } from "../cli/run.ts";

const work = folder();
afterAll(work.remove);

const has = (name: string, ...argv: readonly string[]) => spawnSync(name, argv).error === undefined;
const printer = has("chromium", "--version") && has("pdftotext", "-v") && has("pdfinfo", "-v");

/** Width and height in points: ISO 216, and ANSI/ASME Y14.1 for Letter; browsers round to a pixel of 3/4 pt. */
const papers = { A4: [595.28, 841.89], Letter: [612, 792] } as const;

/** A page printed by a browser on a paper, and where its words stand. */
function printed(name: string, html: string, paper: keyof typeof papers) {
  const page = work.put(`${name}-${paper}.html`, html.replace("<style>", `<style>@page { size: ${paper}; }`));
  const pdf = join(work.path, `${name}-${paper}.pdf`);
  const asked = ["--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", `--print-to-pdf=${pdf}`];
  const { status } = spawnSync("chromium", [...asked, `--user-data-dir=${work.path}/profile`, `file://${page}`]);
  expect(status).toBe(0);
  const boxes = join(work.path, "boxes.html");
  spawnSync("pdftotext", ["-bbox", pdf, boxes]);
  const { stdout } = spawnSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" });
  return { text: stdout, boxes: readFileSync(boxes, "utf8") };
}

describe.skipIf(!printer)("a build sheet as a browser prints it (needs chromium and poppler-utils)", () => {
  it.each(["A4", "Letter"] as const)(
    "keeps every word on %s, and loses no letter",
    async (paper) => {
      const { out } = await run(["sheet", "check-before-welding", "--html"]);
      const { text, boxes } = printed("sheet", out, paper);
      const [wide, high] = papers[paper];
      const pages = [...boxes.matchAll(/<page width="([\d.]+)" height="([\d.]+)"/g)];
      expect(pages.length).toBeGreaterThan(2);
      for (const [, width, height] of pages) {
        expect(Math.abs(Number(width) - wide)).toBeLessThan(1);
        expect(Math.abs(Number(height) - high)).toBeLessThan(1);
      }
      const words = [...boxes.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)"/g)];
      expect(words.length).toBeGreaterThan(500);
      for (const [, left, top, right, bottom] of words) {
        expect(Number(left)).toBeGreaterThan(0);
        expect(Number(top)).toBeGreaterThan(0);
        expect(Number(right)).toBeLessThan(wide);
        expect(Number(bottom)).toBeLessThan(high);
      }
      const flat = text.replace(/\s+/g, " ");
      for (const said of [
        "14 15/16 in (14.928)",
        "17.8° inboard of straight back",
        "-0.50°",
        "This is geometry, not a strength check.",
      ])
        expect(flat).toContain(said);
    },
    120_000,
  );
});
