import { spawnSync } from "node:child_process";
import { inflateSync } from "node:zlib";
import DxfParser, { type IArcEntity, type ICircleEntity, type ILineEntity, type ITextEntity } from "dxf-parser";
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { describe, expect, it } from "vitest";
import { drawingDxf } from "../../src/output/template/dxf.ts";
import type { Drawing } from "../../src/output/template/flat.ts";
import { drawingsPdf } from "../../src/output/template/pdf.ts";
import { drawingSvg } from "../../src/output/template/svg.ts";
import { templatesOf } from "../../src/output/template/templates.ts";
import { apart, arm, drawings, named, one, study, writing } from "./templates.ts";

describe("a drawing as DXF, read by another program", () => {
  it("is in millimetres, has its layers, and its hole where the joints say", () => {
    const text = drawingDxf(named("tab-left"));
    const dxf = new DxfParser().parseSync(text);
    if (dxf === null) throw new Error("not read");
    expect(dxf.header.$INSUNITS).toBe(4);
    expect(Object.keys(dxf.tables.layer.layers)).toEqual(expect.arrayContaining(["cut", "mark", "text"]));
    const rounds = dxf.entities.filter((each): each is ICircleEntity => each.type === "CIRCLE");
    const drilled = one(rounds.filter(({ layer }) => layer === "cut"));
    const kingPin = one(rounds.filter(({ layer }) => layer === "mark"));
    expect(2 * drilled.radius).toBeCloseTo(0.5 * 25.4, 9);
    expect(Math.abs(apart(drilled.center, kingPin.center) - arm)).toBeLessThan(0.01);
    const arc = one(dxf.entities.filter((each): each is IArcEntity => each.type === "ARC"));
    expect(apart(arc.center, drilled.center)).toBeLessThan(1e-9);
    const bars = dxf.entities.filter((each): each is ILineEntity => each.type === "LINE");
    const longs = bars.map(({ vertices: [a, b] }) => (a && b ? apart(a, b) : 0));
    for (const long of [100, 101.6]) expect(longs.filter((each) => Math.abs(each - long) < 1e-9)).toHaveLength(1);
    const said = dxf.entities.filter((each): each is ITextEntity => each.type === "TEXT").map((each) => each.text);
    expect(said.join(" ")).toContain("FULL SIZE: print at 100 %, do not scale to fit.");
    expect(said.join("")).toMatch(/^[\x20-\x7e]*$/);
  });

  it("says which car it is and what stands against cutting, off the layer that is cut", () => {
    const drawing = { ...named("tab-right"), car: "A car (its-file.yaml)", before: ["Not yet."] };
    for (const text of [drawingDxf(drawing), drawingSvg(drawing)])
      for (const said of ["A car (its-file.yaml)", "BEFORE CUTTING:", "Not yet."]) expect(text).toContain(said);
    const cut = (new DxfParser().parseSync(drawingDxf(drawing))?.entities ?? []).filter(({ layer }) => layer === "cut");
    expect(cut.map(({ type }) => type)).toEqual(["CIRCLE"]);
  });

  it("is the same bytes twice, and a hostile title writes no line of its own", () => {
    const drawing = { ...named("rack-plate"), title: "x\n0\nEOF\n\u001b[2J" };
    expect(drawingDxf(drawing)).toBe(drawingDxf(drawing));
    expect(drawingDxf(drawing)).not.toMatch(/\u001b|\nx\n/);
    expect(new DxfParser().parseSync(drawingDxf(drawing))?.entities.length).toBeGreaterThan(20);
  });
});

describe("a drawing as SVG, read by another program", () => {
  it("has one unit a millimetre, and the rack's holes as far apart as the file says", () => {
    const text = drawingSvg(named("rack-plate"));
    expect(XMLValidator.validate(text)).toBe(true);
    const { svg } = new XMLParser({ ignoreAttributes: false, isArray: (name) => name === "g" }).parse(text);
    expect(svg["@_viewBox"]).toBe(
      `0 0 ${String(svg["@_width"]).replace("mm", "")} ${String(svg["@_height"]).replace("mm", "")}`,
    );
    const cut = one((svg.g as Record<string, unknown>[]).filter((each) => each["@_id"] === "cut"));
    const [a, b] = (cut.circle as Record<string, string>[]).map((each) => ({
      x: Number(each["@_cx"]),
      y: Number(each["@_cy"]),
      radius: Number(each["@_r"]),
    }));
    if (a === undefined || b === undefined) throw new Error("two holes were expected");
    expect(Math.abs(apart(a, b) - 7 * 25.4)).toBeLessThan(0.01);
    expect(2 * a.radius).toBeCloseTo(0.375 * 25.4, 2);
    // The driver's left is to the left, seen from above.
    expect(a.x).toBeLessThan(b.x);
  });

  it("shows a hostile title as it stands", () => {
    const text = drawingSvg({ ...named("rack-plate"), title: "</title><script>x</script>" });
    expect(XMLValidator.validate(text)).toBe(true);
    expect(text).not.toContain("<script");
  });
});

/** The contents of a PDF's pages, and of what else in it is packed. */
function contentsOf(pdf: Uint8Array): readonly string[] {
  const file = Buffer.from(pdf);
  const contents: string[] = [];
  for (let at = file.indexOf("stream\n"); at >= 0; at = file.indexOf("stream\n", at + 1)) {
    if (file.toString("latin1", at - 3, at) === "end") continue;
    try {
      contents.push(inflateSync(file.subarray(at + 7, file.indexOf("endstream", at))).toString("latin1"));
    } catch {}
  }
  return contents;
}

/** The straight lines of a PDF's pages, points, by its own operators (ISO 32000-1, 8.5.2: m begins a path, l draws on). */
function linesIn(pdf: Uint8Array): readonly (readonly number[])[] {
  const drawn = /([-\d.]+) ([-\d.]+) m\s+(?:[-\d.]+ [-\d.]+ m\s+)?([-\d.]+) ([-\d.]+) l\s+S/g;
  return contentsOf(pdf).flatMap((text) => [...text.matchAll(drawn)].map((found) => found.slice(1).map(Number)));
}

describe("drawings as a PDF", () => {
  it("are at full size on every page: the bars are 100 mm and 4 in, and so is the line to the hole", async () => {
    const pdf = await drawingsPdf("x", [named("tab-left")], "Letter");
    const longs = linesIn(pdf).map(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => Math.hypot(x2 - x1, y2 - y1));
    const within = (points: number) => longs.filter((each) => Math.abs(each - points) < (0.01 * 72) / 25.4).length;
    const pages =
      Buffer.from(pdf)
        .toString("latin1")
        .match(/\/Type \/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(0);
    // 72 points are an inch. A page of notes has its drawing's own bars besides.
    expect(within((100 / 25.4) * 72)).toBeGreaterThanOrEqual(pages);
    expect(within(4 * 72)).toBeGreaterThanOrEqual(pages);
    // The line to the hole, and its size beside it.
    expect(within((arm / 25.4) * 72)).toBe(2);
  });

  it("go over neighbouring pages with the same crosses on them, at the same places of the drawing", async () => {
    const long: Drawing = {
      name: "long",
      title: "long",
      car: "x",
      before: [],
      notes: [],
      shapes: [{ is: "line", layer: "cut", from: [0, 0], to: [500, 300] }],
    };
    const pdf = await drawingsPdf("x", [long], "A4");
    const slants = linesIn(pdf).filter(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => x2 - x1 > 1000 && y2 - y1 > 500);
    expect(slants.length).toBeGreaterThanOrEqual(4);
    // Each page has the whole line, moved by its place and cut off at its window: always (500, 300) mm long.
    for (const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] of slants) {
      expect(((x2 - x1) / 72) * 25.4).toBeCloseTo(500, 6);
      expect(((y2 - y1) / 72) * 25.4).toBeCloseTo(300, 6);
    }
    const steps = [...new Set(slants.map(([x1 = 0]) => Math.round(x1 * 1000) / 1000))].sort((a, b) => b - a);
    const [first = 0, second = 0] = steps;
    expect(steps.length).toBeGreaterThan(1);
    const step = first - second;
    // A ringed cross at the right of one page is the one at the left of the next: they are a step apart on paper.
    const crosses = linesIn(pdf)
      .filter(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => y1 === y2 && Math.abs(x2 - x1 - (8 / 25.4) * 72) < 1e-6)
      .map(([x1 = 0]) => x1);
    const [leftmost, rightmost] = [Math.min(...crosses), Math.max(...crosses)];
    // Steps are told apart by thousandths of a point, so a step is known to one.
    expect(Math.abs(rightmost - leftmost - step)).toBeLessThan(0.001);
  });

  it("show nothing twice: each page ends at the line through its crosses, where the next one begins", async () => {
    const long: Drawing = {
      name: "long",
      title: "long",
      car: "x",
      before: [],
      notes: [],
      shapes: [{ is: "line", layer: "cut", from: [0, 0], to: [500, 10] }],
    };
    const pages = contentsOf(await drawingsPdf("x", [long], "A4")).flatMap((text) => {
      // The window that a page is cut off at: four corners, closed, W n (ISO 32000-1, 8.5.4).
      const window = /([-\d.]+) [-\d.]+ m\s+([-\d.]+) [-\d.]+ l\s+[^W]*?h\s+W\s+n/.exec(text);
      const slant = /([-\d.]+) [-\d.]+ m\s+(?:[-\d.]+ [-\d.]+ m\s+)?([-\d.]+) [-\d.]+ l\s+S/.exec(text);
      if (!window || !slant) return [];
      const start = Number(slant[1]);
      return [{ from: Number(window[1]) - start, to: Number(window[2]) - start }];
    });
    expect(pages.length).toBeGreaterThan(1);
    for (const [i, page] of pages.entries()) {
      const next = pages[i + 1];
      if (next !== undefined) expect(next.from).toBeCloseTo(page.to, 3);
    }
  });

  it.skipIf(spawnSync("pdftotext", ["-v"]).error !== undefined)(
    "say on every page which car it is, and where the notes are (needs poppler-utils)",
    async () => {
      const heading = { car: "A car (its-file.yaml)", before: [`${"Not yet to be cut. ".repeat(30)}`] };
      const made = templatesOf(study, writing, ["tab", "upright"], heading).drawings;
      const pdf = await drawingsPdf("x", made, "A4");
      const { stdout } = spawnSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" });
      const pages = stdout.split("\f").slice(0, -1);
      expect(pages.length).toBeGreaterThan(made.length);
      for (const page of pages) expect(page).toContain("A car (its-file.yaml)");
      const notes = pages.filter((page) => page.includes("what to read before cutting"));
      const sent = pages.filter((page) => page.includes("READ FIRST: its page of notes."));
      const framed = pages.filter((page) => page.includes("BEFORE CUTTING:"));
      expect(framed).toHaveLength(made.length);
      expect(notes.length).toBeGreaterThan(0);
      expect(sent.length).toBeGreaterThanOrEqual(notes.length);
    },
  );

  it("are the same bytes twice", async () => {
    const twice = [await drawingsPdf("x", drawings, "A4"), await drawingsPdf("x", drawings, "A4")];
    expect(Buffer.from(twice[0] ?? []).equals(Buffer.from(twice[1] ?? []))).toBe(true);
  });
});
