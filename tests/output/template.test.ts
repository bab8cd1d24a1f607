import { describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { drawingDxf } from "../../src/output/template/dxf.ts";
import { boxOf } from "../../src/output/template/flat.ts";
import { drawingSvg } from "../../src/output/template/svg.ts";
import { templatesOf } from "../../src/output/template/templates.ts";
import { presetText, studyFrom } from "./studies.ts";
import {
  along,
  apart,
  arm,
  dot,
  drawings,
  type Flat,
  hole,
  lower,
  minus,
  named,
  one,
  size,
  wanting,
  writing,
} from "./templates.ts";

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
