import DxfParser, { type ILineEntity, type ITextEntity } from "dxf-parser";
import { describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { writingIn } from "../../src/output/sheet/writing.ts";
import { drawingDxf } from "../../src/output/template/dxf.ts";
import type { Drawing, Sketch } from "../../src/output/template/flat.ts";
import { tabDrawing } from "../../src/output/template/tab.ts";
import { templatesOf } from "../../src/output/template/templates.ts";
import { uprightDrawings } from "../../src/output/template/upright.ts";
import { presetText, studyFrom } from "./studies.ts";
import { along, arm, dot, hole, lower, minus, named, size, writing } from "./templates.ts";

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
