import { inflateSync } from "node:zlib";
import DxfParser, { type IArcEntity, type ICircleEntity, type ILineEntity, type ITextEntity } from "dxf-parser";
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { writingIn } from "../../src/output/sheet/writing.ts";
import { drawingDxf } from "../../src/output/template/dxf.ts";
import { boxOf, type Drawing } from "../../src/output/template/flat.ts";
import { drawingsPdf } from "../../src/output/template/pdf.ts";
import { drawingSvg } from "../../src/output/template/svg.ts";
import { templatesOf } from "../../src/output/template/templates.ts";
import { presetText, studyFrom } from "./studies.ts";

const study = studyFrom(presetText("check-before-welding"));
const writing = writingIn("in");
const { drawings, wanting } = templatesOf(study, writing);

function named(name: string): Drawing {
  const found = drawings.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no ${name} among ${drawings.map((each) => each.name).join(", ")}`);
  return found;
}

type Vector = readonly [number, number, number];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const size = (a: Vector) => Math.sqrt(dot(a, a));

// As the file has them, inches: ahead, out, up.
const lower: Vector = [0.3, 24, 7.5];
const upper: Vector = [-0.9, 22.6, 16.5];
const hole: Vector = [-4.75, 22.375, 9.5];
const along = minus(upper, lower);
/** From the king-pin line square to the hole, mm: the area of the parallelogram over its base. */
const arm = (size(cross(minus(hole, lower), along)) / size(along)) * 25.4;

interface Flat {
  readonly x: number;
  readonly y: number;
}
const apart = (a: Flat, b: Flat) => Math.hypot(a.x - b.x, a.y - b.y);
const one = <T>(items: readonly T[]): T => {
  const [first] = items;
  if (first === undefined || items.length !== 1) throw new Error(`found ${items.length}, expected one`);
  return first;
};

describe("the drawings", () => {
  it("are those of the car, once where both sides are mirrored, and ask by key for what is not given", () => {
    expect(drawings.map(({ name }) => name)).toEqual([
      "tab-left",
      "tab-right",
      "upright-from-behind",
      "upright-from-the-side",
      "rack-plate",
      "brackets",
    ]);
    expect(wanting.map(({ what }) => what)).toEqual(["Outline of the right tab (drawn without it)"]);
    expect(wanting[0]?.needs).toMatch(/^hardware: tab: right: end-radius \(.+\), foot \(.+\), reach \(.+\)$/);
    expect(named("tab-right").shapes.filter((each) => each.is === "arc")).toEqual([]);
  });

  it("are there for every example, without a number that is none, and say what is wanting", () => {
    for (const name of presetNames()) {
      const made = templatesOf(studyFrom(presetText(name)), writing);
      expect(made.drawings.length + made.wanting.length, name).toBeGreaterThan(3);
      for (const drawing of made.drawings) {
        const box = Object.values(boxOf(drawing.shapes));
        expect(box.every(Number.isFinite), `${name}, ${drawing.name}`).toBe(true);
        expect(drawingDxf(drawing)).not.toMatch(/NaN|Infinity|undefined/);
        expect(drawingSvg(drawing)).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  });

  it("have no outline whose welded edge would cut through the hole, and say why", () => {
    const text = presetText("check-before-welding").replace(/reach: "3 1\/4"/, "reach: 1/8");
    const made = templatesOf(studyFrom(text), writing, ["tab"]);
    expect(made.wanting.map(({ needs }) => needs).join()).toContain("would cut through the hole");
    expect(made.drawings.flatMap(({ shapes }) => shapes.filter((each) => each.is === "arc"))).toEqual([]);
  });

  it("show the upright from two sides that agree with the joints: heights along the king-pin line, and the arm", () => {
    const placeIn = (name: string, said: string): Flat => {
      const { shapes } = named(name);
      const label = one(shapes.filter((each) => each.is === "words" && each.text === said));
      if (label.is !== "words") throw new Error("no words");
      return { x: label.at[0] - 8, y: label.at[1] - 1.5 };
    };
    const [behind, side] = ["upright-from-behind", "upright-from-the-side"].map((name) =>
      placeIn(name, "tie-rod hole"),
    );
    if (behind === undefined || side === undefined) throw new Error("two views were expected");
    const up = (dot(minus(hole, lower), along) / size(along)) * 25.4;
    expect(behind.y).toBeCloseTo(up, 9);
    expect(side.y).toBeCloseTo(up, 9);
    expect(Math.hypot(behind.x, side.x)).toBeCloseTo(arm, 9);
    // The left one from behind: inboard is to the right; from its own side: behind is to the right.
    expect(behind.x).toBeGreaterThan(0);
    expect(side.x).toBeGreaterThan(0);
    expect(placeIn("upright-from-behind", "upper joint").y).toBeCloseTo(size(along) * 25.4, 9);
  });

  it("have an outline that closes, runs tangent into its round end, and keeps the reach", () => {
    const cut = named("tab-left").shapes.filter((each) => each.is !== "words" && each.layer === "cut");
    const arc = one(cut.filter((each) => each.is === "arc"));
    const lines = cut.filter((each) => each.is === "line");
    const on = (angle: number): Flat => ({
      x: arc.at[0] + arc.radius * Math.cos(angle),
      y: arc.at[1] + arc.radius * Math.sin(angle),
    });
    const flat = ([x, y]: readonly [number, number]): Flat => ({ x, y });
    const ends = [...lines.flatMap(({ from, to }) => [flat(from), flat(to)]), on(arc.from), on(arc.to)];
    for (const end of ends) expect(ends.filter((other) => apart(end, other) < 1e-9)).toHaveLength(2);
    expect(arc.radius).toBeCloseTo(0.625 * 25.4, 9);
    const middle = flat(arc.at);
    for (const { from, to } of lines) {
      const [a, b] = [flat(from), flat(to)];
      const off = Math.abs((b.x - a.x) * (a.y - middle.y) - (a.x - middle.x) * (b.y - a.y)) / apart(a, b);
      const isFoot = Math.abs(apart(a, b) - 2 * 25.4) < 1e-9;
      // The sides touch the round end: their lines are its radius away from its middle.
      expect(off).toBeCloseTo(isFoot ? 3.25 * 25.4 : 0.625 * 25.4, 9);
    }
    expect(lines).toHaveLength(3);
  });
});

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

/** The straight lines of a PDF's pages, points, by its own operators (ISO 32000-1, 8.5.2: m begins a path, l draws on). */
function linesIn(pdf: Uint8Array): readonly (readonly number[])[] {
  const file = Buffer.from(pdf);
  const lines: number[][] = [];
  for (let at = file.indexOf("stream\n"); at >= 0; at = file.indexOf("stream\n", at + 1)) {
    if (file.toString("latin1", at - 3, at) === "end") continue;
    let text = "";
    try {
      text = inflateSync(file.subarray(at + 7, file.indexOf("endstream", at))).toString("latin1");
    } catch {
      continue;
    }
    const drawn = /([-\d.]+) ([-\d.]+) m\s+(?:[-\d.]+ [-\d.]+ m\s+)?([-\d.]+) ([-\d.]+) l\s+S/g;
    for (const found of text.matchAll(drawn)) lines.push(found.slice(1).map(Number));
  }
  return lines;
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
    expect(within((arm / 25.4) * 72)).toBe(1);
  });

  it("go over neighbouring pages with the same crosses on them, at the same places of the drawing", async () => {
    const long: Drawing = {
      name: "long",
      title: "long",
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

  it("are the same bytes twice", async () => {
    const twice = [await drawingsPdf("x", drawings, "A4"), await drawingsPdf("x", drawings, "A4")];
    expect(Buffer.from(twice[0] ?? []).equals(Buffer.from(twice[1] ?? []))).toBe(true);
  });
});
