import { describe, expect, it } from "vitest";
import { presetText, studied } from "./carTexts.ts";

const worstToe = (text: string) => {
  const { left, right } = studied(text).worst.toe;
  return { left: Math.abs(left?.toeChange ?? Number.NaN), right: Math.abs(right?.toeChange ?? Number.NaN) };
};

/** A car's text with a number of it put in another's place, as a builder would write it. */
function edited(text: string, from: string | RegExp, to: string): string {
  const now = text.replace(from, to);
  expect(now).not.toBe(text);
  return now;
}

describe("which way a rod's inner end has to go for less toe change", () => {
  it.each([
    ["tab-to-place", "out", edited(presetText("tab-to-place"), "eye-to-eye: 15", "eye-to-eye: 15.5")],
    ["centre-take-off", "out", edited(presetText("centre-take-off"), /out: 2.5/g, "out: 3.5")],
  ] as const)("is %s's: %s, and the file written so has less", (name, way, better) => {
    const text = presetText(name);
    expect(studied(text).innerEnds).toEqual({ left: way, right: way });
    const [before, after] = [worstToe(text), worstToe(better)];
    expect(after.left).toBeLessThan(before.left);
    expect(after.right).toBeLessThan(before.right);
  });

  it.each([
    ["balanced-two-seater", 'up: "9 7/16"', 9, 9.25, 9.75, 10],
    ["rack-ahead", 'up: "8 9/16"', 8, 8.25, 8.75, 9],
    ["strut-hatchback-corners", "up: 304", 292, 297, 312, 318],
    ["twin-beam-relay", /up: 13\.25/g, 12.75, 13, 13.5, 13.75],
  ] as const)("turns over with the height of it: %s", (name, height, tooLow, lowNearer, highNearer, tooHigh) => {
    const at = (up: number) => edited(presetText(name), height, `up: ${up}`);
    expect(studied(at(tooLow)).innerEnds).toEqual({ left: "up", right: "up" });
    expect(worstToe(at(lowNearer)).left).toBeLessThan(worstToe(at(tooLow)).left);
    expect(studied(at(tooHigh)).innerEnds).toEqual({ left: "down", right: "down" });
    expect(worstToe(at(highNearer)).left).toBeLessThan(worstToe(at(tooHigh)).left);
  });

  it("goes each wheel's own way on a centre link, whose eyes are both told from the middle outward", () => {
    const linked = (left: number, right: number) =>
      presetText("twin-beam-relay")
        .replace(/(left-eye: .*out: )-5/, (_, head) => `${head}${left}`)
        .replace(/(right-eye: .*out: )-5/, (_, head) => `${head}${right}`);
    const text = linked(3, -5);
    expect(text).toMatch(/left-eye: .*out: 3,/);
    expect(text).toMatch(/right-eye: .*out: -5,/);
    expect(studied(text).innerEnds.left).toBe("in");
    expect(worstToe(linked(2.5, -5)).left).toBeLessThan(worstToe(text).left);
    const mirrored = linked(-5, 3);
    expect(studied(mirrored).innerEnds.right).toBe("in");
    expect(worstToe(linked(-5, 2.5)).right).toBeLessThan(worstToe(mirrored).right);
  });

  it("asks for in where it is too wide", () => {
    const wide = edited(presetText("tab-to-place"), "eye-to-eye: 15", "eye-to-eye: 20");
    expect(studied(wide).innerEnds).toEqual({ left: "in", right: "in" });
    expect(worstToe(edited(wide, "eye-to-eye: 20", "eye-to-eye: 19")).left).toBeLessThan(worstToe(wide).left);
  });

  it("is one move of a whole rack that stands off the middle: one end out, the other in", () => {
    const text = presetText("widened-offset-rack");
    expect(studied(text).innerEnds).toEqual({ left: "out", right: "in" });
    const [before, after] = [worstToe(text), worstToe(edited(text, "offset: -2.5", "offset: -2"))];
    expect(after.left).toBeLessThan(before.left);
    expect(after.right).toBeLessThan(before.right);
  });

  it("is none where neither height nor width of it takes a quarter off: a plate's eyes on trailing arms", () => {
    const text = presetText("torsion-beam-steering-plate");
    expect(studied(text).innerEnds).toEqual({ left: null, right: null });
    const now = worstToe(text).left;
    for (const by of [-3, -2, -1, 1, 2, 3]) {
      const up = edited(text, /up: 8\.5/g, `up: ${8.5 + by}`);
      const out = edited(text, /out: 1\.25/g, `out: ${1.25 + by}`);
      expect(worstToe(up).left, `up by ${by}`).toBeGreaterThan(0.75 * now);
      expect(worstToe(out).left, `out by ${by}`).toBeGreaterThan(0.75 * now);
    }
  });

  it("still tells the way of a sixteenth of an inch", () => {
    const low = edited(presetText("balanced-two-seater"), 'up: "9 7/16"', 'up: "9 3/8"');
    expect(studied(low).innerEnds).toEqual({ left: "up", right: "up" });
  });

  it("is left where it is where the best place is nearer than a tape reads", () => {
    expect(studied(presetText("balanced-two-seater")).innerEnds).toEqual({ left: "here", right: "here" });
    expect(worstToe(edited(presetText("balanced-two-seater"), "9 7/16", "9 15/32")).left).toBeGreaterThan(
      worstToe(presetText("balanced-two-seater")).left,
    );
  });

  it("is nobody's without suspension", () => {
    expect(studied(presetText("fixed-kingpin-yard-kart")).innerEnds).toEqual({ left: null, right: null });
  });
});
