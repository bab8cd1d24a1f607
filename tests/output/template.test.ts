import { spawnSync } from "node:child_process";
import { inflateSync } from "node:zlib";
import DxfParser, { type IArcEntity, type ICircleEntity, type ILineEntity, type ITextEntity } from "dxf-parser";
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { writingIn } from "../../src/output/sheet/writing.ts";
import { drawingDxf } from "../../src/output/template/dxf.ts";
import { boxOf, type Drawing, type Sketch } from "../../src/output/template/flat.ts";
import { drawingsPdf } from "../../src/output/template/pdf.ts";
import { drawingSvg } from "../../src/output/template/svg.ts";
import { tabDrawing } from "../../src/output/template/tab.ts";
import { templatesOf } from "../../src/output/template/templates.ts";
import { uprightDrawings } from "../../src/output/template/upright.ts";
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
  it("are those of the car, for each side, and ask by key for what is not given", () => {
    expect(drawings.map(({ name }) => name)).toEqual([
      "tab-left",
      "tab-right",
      "upright-from-behind-left",
      "upright-from-the-side-left",
      "upright-from-behind-right",
      "upright-from-the-side-right",
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
    const up = (dot(minus(hole, lower), along) / size(along)) * 25.4;
    /** The ringed place at a height, of which there is one. */
    const placeIn = (name: string, height: number): Flat => {
      const rings = named(name).shapes.filter((each) => each.is === "circle" && each.layer === "mark");
      const at = rings.flatMap((each) => (each.is === "circle" ? [{ x: each.at[0], y: each.at[1] }] : []));
      return one(at.filter(({ y }) => Math.abs(y - height) < 1e-6));
    };
    const [behind, side] = [placeIn("upright-from-behind-left", up), placeIn("upright-from-the-side-left", up)];
    expect(Math.hypot(behind.x, side.x)).toBeCloseTo(arm, 9);
    // The left one from behind: inboard is to the right; from its own side: behind is to the right.
    expect(behind.x).toBeGreaterThan(0);
    expect(side.x).toBeGreaterThan(0);
    expect(placeIn("upright-from-behind-left", size(along) * 25.4).x).toBeCloseTo(0, 9);
    // The right one is the left one mirrored.
    expect(placeIn("upright-from-behind-right", up).x).toBeCloseTo(-behind.x, 9);
    expect(placeIn("upright-from-the-side-right", up).x).toBeCloseTo(-side.x, 9);
  });

  it("say which way is which", () => {
    const said = (name: string) => named(name).shapes.flatMap((each) => (each.is === "words" ? [each] : []));
    const x = (name: string, text: string) => one(said(name).filter((each) => each.text === text)).at[0];
    for (const name of ["tab", "upright-from-behind"]) {
      expect(x(`${name}-left`, "outboard"), name).toBeLessThan(x(`${name}-left`, "inboard"));
      expect(x(`${name}-right`, "outboard"), name).toBeGreaterThan(x(`${name}-right`, "inboard"));
    }
    expect(x("upright-from-the-side-left", "ahead")).toBeLessThan(x("upright-from-the-side-left", "behind"));
    expect(x("upright-from-the-side-right", "ahead")).toBeGreaterThan(x("upright-from-the-side-right", "behind"));
    expect(x("rack-plate", "driver's left")).toBeLessThan(x("rack-plate", "driver's right"));
    for (const name of ["tab-left", "rack-plate", "brackets"])
      expect(
        said(name).some(({ text }) => text.startsWith("ahead")),
        name,
      ).toBe(true);
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

/** The first length that words name, mm; null where they name none. Decimals in brackets are closer than a fraction. */
function lengthIn(text: string): number | null {
  const decimals = /\((-?\d+\.\d+)\)/.exec(text);
  if (decimals) return Number(decimals[1]) * 25.4;
  const metric = /(\d+\.\d+) mm/.exec(text);
  if (metric) return Number(metric[1]);
  const found = /(?:(\d+) )?(\d+)\/(\d+) in|(\d+) in/.exec(text);
  if (!found) return null;
  const [, whole = "0", top = "0", bottom = "1", plain = "0"] = found;
  return (Number(whole) + Number(top) / Number(bottom) + Number(plain)) * 25.4;
}

/** Sizes as another program reads them from a DXF: words that lie along a line, and the line nearest to them of that length. */
function sizesRead(drawing: Drawing, unit: "in" | "mm") {
  const dxf = new DxfParser().parseSync(drawingDxf(drawing));
  const lines = (dxf?.entities ?? []).filter(
    (each): each is ILineEntity => each.type === "LINE" && each.layer === "mark",
  );
  const texts = (dxf?.entities ?? []).filter((each): each is ITextEntity => each.type === "TEXT");
  return texts
    .filter((each) => each.rotation !== undefined && lengthIn(each.text) !== null)
    .map(({ text, startPoint, rotation }) => {
      const value = lengthIn(text) ?? 0;
      // A third decimal of an inch, a 64th where there is none, half a tenth of a mm.
      const exact = unit === "mm" ? 0.05 : text.includes("(") ? 0.0005 * 25.4 : 25.4 / 64;
      const measured = lines.filter(({ vertices: [a, b] }) => {
        if (a === undefined || b === undefined) return false;
        const [x, y] = [b.x - a.x, b.y - a.y];
        const turn = ((rotation ?? 0) * Math.PI) / 180;
        const long = Math.hypot(x, y);
        const isAlong = Math.abs(x * Math.sin(turn) - y * Math.cos(turn)) < 1e-6 * Math.max(1, long);
        const off = Math.abs((startPoint.x - a.x) * Math.sin(turn) - (startPoint.y - a.y) * Math.cos(turn));
        return isAlong && off < 6 && Math.abs(long - value) <= exact + 1e-9;
      });
      return { text, value, found: measured.length };
    });
}

const unlike = studyFrom(
  presetText("check-before-welding").replace(
    /^ {2}both:\n/m,
    "  right:\n    tie-rod: { outer: { ahead: 4.5, out: 23.5, up: 9 } }\n  both:\n",
  ),
);

type Drawn = Sketch["shapes"][number];

/**
 * Words of a drawing that something lies on, walked along in small steps: letters are half as wide as high, and reach from a
 * fifth below their foot to three quarters up.
 */
function overlapping({ shapes }: Sketch): readonly string[] {
  const lies = ({ at, high, text, turn = 0 }: Extract<Drawn, { is: "words" }>, [x, y]: readonly [number, number]) => {
    const [dx, dy] = [x - at[0], y - at[1]];
    const [u, v] = [dx * Math.cos(turn) + dy * Math.sin(turn), dy * Math.cos(turn) - dx * Math.sin(turn)];
    return u > 0 && u < 0.5 * high * text.length && v > -0.2 * high && v < 0.75 * high;
  };
  const steps = Array.from({ length: 201 }, (_, i) => i / 200);
  const walked = (each: Drawn): readonly (readonly [number, number])[] => {
    if (each.is === "line") {
      const [[x, y], [toX, toY]] = [each.from, each.to];
      return steps.map((t) => [x + t * (toX - x), y + t * (toY - y)]);
    }
    const [x, y] = each.at;
    if (each.is === "words") {
      const [long, turn] = [0.5 * each.high * each.text.length, each.turn ?? 0];
      return steps.map((t) => [x + t * long * Math.cos(turn), y + t * long * Math.sin(turn)]);
    }
    const [from, to] = each.is === "arc" ? [each.from, each.to] : [0, 2 * Math.PI];
    const angles = steps.map((t) => from + t * (to - from));
    return angles.map((angle) => [x + each.radius * Math.cos(angle), y + each.radius * Math.sin(angle)]);
  };
  const paths = shapes.map((each) => ({ each, path: walked(each) }));
  return shapes.flatMap((said) =>
    said.is === "words" && paths.some(({ each, path }) => each !== said && path.some((at) => lies(said, at)))
      ? [said.text]
      : [],
  );
}

describe("the sizes on the drawings", () => {
  it.each([
    ["in", "check-before-welding"],
    ["mm", "check-before-welding"],
    ["in", "twin-beam-relay"],
    ["mm", "fixed-kingpin-yard-kart"],
    ["mm", "strut-hatchback-corners"],
    ["in", "sides unlike"],
  ] as const)("are, in %s, what is measured on the drawing: %s", (unit, name) => {
    const car = name === "sides unlike" ? unlike : studyFrom(presetText(name));
    const made = templatesOf(car, writingIn(unit), ["tab", "upright", "rack"]).drawings;
    if (name === "sides unlike") expect(JSON.stringify(made[1]?.shapes)).toMatch(/in \(\d+\.\d+\) ahead/);
    for (const drawing of made) {
      const sizes = sizesRead(drawing, unit);
      expect(sizes.length, drawing.name).toBeGreaterThanOrEqual(2);
      for (const { text, found } of sizes) expect(found, `${drawing.name}: ${text}`).toBeGreaterThanOrEqual(1);
    }
  });

  it("are the main ones, as the joints give them", () => {
    const said = (name: string) => named(name).shapes.flatMap((each) => (each.is === "words" ? [each.text] : []));
    const inches = (mm: number) => `(${(mm / 25.4).toFixed(3)})`;
    const up = (dot(minus(hole, lower), along) / size(along)) * 25.4;
    expect(said("tab-left").join("|")).toContain(inches(arm));
    for (const each of ["reach 3 1/4 in", "foot 2 in", "end radius 5/8 in", "tie-rod hole, drill 1/2 in"])
      expect(said("tab-left")).toContain(each);
    for (const name of ["upright-from-behind-left", "upright-from-the-side-right"]) {
      expect(said(name).join("|")).toContain(inches(size(along) * 25.4));
      expect(said(name).join("|")).toContain(inches(up));
    }
    expect(said("rack-plate").filter((each) => each === "3 1/2 in (3.500)")).toHaveLength(2);
    expect(said("rack-plate")).toContain("rack's line, level");
    const tilted = presetText("check-before-welding").replace(/^( *)rack: \{/m, "$1rack: { tilt: 3,");
    const [plate] = templatesOf(studyFrom(tilted), writing, ["rack"]).drawings;
    expect(JSON.stringify(plate?.shapes)).toContain("rack's line, 3.0° from level, its left end up");
  });

  it("overlap nothing, nor do names, on any example", () => {
    for (const car of [unlike, ...presetNames().map((name) => studyFrom(presetText(name)))])
      for (const unit of ["in", "mm"] as const)
        for (const drawing of templatesOf(car, writingIn(unit)).drawings)
          expect(overlapping(drawing), `${car.car.title}, ${drawing.name}`).toEqual([]);
  });

  it.each([
    ["a short arm, its hole nearly straight out", { ahead: 6, out: 30, up: 20 }, 80, 0.3],
    ["a hole ahead and below the lower joint", { ahead: 90, out: 12, up: -25 }, 150, 6],
    ["a hole far back, at the spindle's height", { ahead: -150, out: -60, up: 60 }, 120, 0],
    ["a hole straight behind, above the upper joint", { ahead: -110, out: 0.02, up: 140 }, 90, -14],
  ] as const)("overlap nothing on an upright with %s", (_, hole, upper, ahead) => {
    const upright = {
      upper,
      hole,
      spindle: { ahead, out: 0, up: 58 },
      wheelCenter: { ahead, out: 70, up: 52 },
    };
    const tab = { thickness: 6, hole: 12, "end-radius": 16, foot: 32, reach: 24 };
    for (const wheel of ["left", "right"] as const)
      for (const unit of ["in", "mm"] as const)
        for (const drawing of [
          tabDrawing(wheel, upright, null, writingIn(unit)),
          tabDrawing(wheel, upright, tab, writingIn(unit)),
          ...uprightDrawings(wheel, upright, writingIn(unit)),
        ]) {
          expect(overlapping(drawing), `${wheel}, ${unit}, ${drawing.name}`).toEqual([]);
          expect(JSON.stringify(drawing)).not.toContain("null");
        }
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
