import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { carFigures } from "../../src/measures/carFigures.ts";
import type { Study } from "../../src/measures/study.ts";
import { threadWords } from "../../src/output/lockWords.ts";
import { remediesFor } from "../../src/solve/remedies/remedies.ts";
import { notAsked, type Remedy } from "../../src/solve/remedies/remedy.ts";
import { difference, expectClose } from "../close.ts";
import { presetText, studied } from "../measures/carTexts.ts";
import { built, type Plausible, plausible, textOf } from "../measures/plausibleCars.ts";
import { seed } from "../oracles/cars.ts";

const offset = presetText("widened-offset-rack");
const cut = presetText("cut-rods-off-middle");

function figuresOf(study: Study): Record<string, number | null> {
  return Object.fromEntries(carFigures.map(({ id, read }) => [id, read(study)]));
}

const offered = new Map<string, readonly Remedy[]>();

function remedy(text: string, key: string): Remedy {
  const made = offered.get(text) ?? remediesFor(studied(text), notAsked).offered;
  offered.set(text, made);
  const found = made.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no remedy ${key}`);
  return found;
}

/** The remedy's figures are those of the file that a builder would write by hand for the same thing. */
function expectSame(made: Remedy, byHand: string): void {
  expectClose(figuresOf(made.after), figuresOf(studied(byHand)), { abs: 1e-7 });
  expectClose(figuresOf(studied(made.text)), figuresOf(made.after), {});
}

const inner = (study: Study) => ((study.locks.difference.inner ?? Number.NaN) * 180) / Math.PI;

describe("each remedy is the same as its edit by hand", () => {
  it("rods recut with the rack on its middle", () => {
    const made = remedy(cut, "recut");
    expectSame(made, cut.replace(/ {2}left: .*\n.*\n {2}right:\n.*\n/, ""));
    expect(made.after.zero).toBe(0);
    expectClose(inner(made.after), 0, { abs: 1e-9 });
  });

  it("rods recut, where the file's straight-ahead is off the middle too", () => {
    const text = offset.replace("offset: -2.5,", "offset: -2.5, straight-ahead: 1/16,");
    expectSame(remedy(text, "recut"), offset);
  });

  it("the rack shifted wholly and half way", () => {
    expectSame(remedy(offset, "shift"), offset.replace("offset: -2.5", "offset: 0"));
    expectSame(remedy(offset, "shift-half"), offset.replace("offset: -2.5", "offset: -1.25"));
  });

  it("an extender, which brings the inner eyes to the middle with a longer bar, and a bracket with a shorter one", () => {
    const middle = offset.replace("offset: -2.5", "offset: 0");
    const extender = remedy(offset, "extender");
    expectSame(extender, middle.replace("eye-to-eye: 13", "eye-to-eye: 18"));
    expect(extender.caution).toContain("bends the rack's bar");
    // The right eye stays where it was: 2.5 + 6.5 in from the middle.
    expectClose(studied(offset).rodLengths.right, extender.after.rodLengths.right, { abs: 1e-9 });
    const bracket = remedy(offset, "bracket");
    expectSame(bracket, middle.replace("eye-to-eye: 13", "eye-to-eye: 8"));
    expect(bracket.caution).toContain("bends the rack's bar");
    expectClose(studied(offset).rodLengths.left, bracket.after.rodLengths.left, { abs: 1e-9 });
  });

  it("straight ahead off the middle, for the inners and for the circles", () => {
    const made = remedy(offset, "off-middle");
    const place = made.after.straightAhead / 25.4;
    expectSame(made, offset.replace("offset: -2.5,", `offset: -2.5, straight-ahead: ${place.toFixed(3)},`));
    // A thousandth of an inch of rack, to which it is rounded, is worth 0.05 degrees of difference.
    expect(Math.abs(inner(made.after))).toBeLessThan(0.05);
    const circles = remedy(offset, "off-middle-circles");
    const now = Math.abs(studied(offset).locks.difference.turnRadius ?? 0);
    expect(Math.abs(circles.after.locks.difference.turnRadius ?? Number.NaN)).toBeLessThan(now / 50);
  });

  it("a collar, which leaves the shorter lock alone", () => {
    const made = remedy(offset, "collar");
    const length = /collar: \{ left: ([\d.]+), right: 0 \}/.exec(made.text)?.[1] ?? "";
    expectSame(made, `${offset.trimEnd()}\nstops: { collar: { left: ${length}, right: 0 } }\n`);
    expect(made.after.locks.left?.inner).toBe(studied(offset).locks.left?.inner);
    expect(made.title((mm) => `${mm} mm`)).toContain("to the driver's left: it stops the right lock sooner");
    expect(Math.abs(inner(made.after))).toBeLessThan(0.05);
  });

  it("one tab moved", () => {
    const made = remedy(offset, "tab");
    const ahead = /ahead: (-[\d.]+) \} \} \}/.exec(made.text)?.[1] ?? "";
    expectSame(made, offset.replace("steering:", `  right: { tie-rod: { outer: { ahead: ${ahead} } } }\nsteering:`));
    expect(Math.abs(inner(made.after))).toBeLessThan(0.05);
    expect(made.tradeOff).toContain("handed");
  });
});

describe("each remedy of a random car that a builder could have made", () => {
  it("is the same as its edit by hand, written anew from the changed measures", () => {
    const kinds = new Set<string>();
    for (const each of fc.sample(plausible, { numRuns: 6, seed })) {
      const now = built(each);
      if (now === null) continue;
      const middle: Plausible = { ...each, straightAhead: 0 };
      const place = (study: Study) => Number(study.straightAhead.toFixed(6));
      const apart = 2 * Math.abs(each.offset);
      for (const { key, after } of remediesFor(now, notAsked).offered) {
        const byHand: Plausible | null =
          key === "recut"
            ? middle
            : key === "shift"
              ? { ...middle, offset: 0 }
              : key === "shift-half"
                ? { ...middle, offset: each.offset / 2 }
                : key === "extender"
                  ? { ...middle, offset: 0, eyeToEye: each.eyeToEye + apart }
                  : key === "bracket"
                    ? { ...middle, offset: 0, eyeToEye: each.eyeToEye - apart }
                    : key.startsWith("off-middle")
                      ? { ...each, straightAhead: place(after) }
                      : null;
        if (byHand === null) continue;
        kinds.add(key);
        // A rod's length is written to a millionth of a mm, a place of the rack to a hundredth: nothing else is rounded.
        expectClose(figuresOf(after), figuresOf(studied(textOf(byHand))), { abs: 1e-4 });
      }
    }
    expect([...kinds].sort()).toEqual(
      ["bracket", "extender", "off-middle", "off-middle-circles", "recut", "shift", "shift-half"].sort(),
    );
  });

  it("leaves inner locks equal where it says so", () => {
    for (const each of fc.sample(plausible, { numRuns: 6, seed })) {
      const now = built(each);
      if (now === null) continue;
      for (const { key, after } of remediesFor(now, notAsked).offered)
        if (["shift", "extender", "bracket"].includes(key)) expectClose(inner(after), 0, { abs: 1e-6 });
        else if (["off-middle", "collar", "tab"].includes(key)) expect(Math.abs(inner(after)), key).toBeLessThan(0.05);
    }
  });
});

describe("remedies", () => {
  it("are ranked by the two answers, the free one always first", () => {
    const text = offset.replace("offset: -2.5,", "offset: -2.5, straight-ahead: 1/16,");
    const order = (columnCanMove: boolean | null, uprightsToMake: boolean | null) =>
      remediesFor(studied(text), { columnCanMove, uprightsToMake }).offered.map(({ key }) => key);
    expect(order(null, null)[0]).toBe("recut");
    expect(order(true, false).slice(0, 3)).toEqual(["recut", "shift", "shift-half"]);
    expect(order(true, false).at(-1)).toBe("tab");
    expect(order(false, true).slice(0, 2)).toEqual(["recut", "tab"]);
    expect(order(false, true).slice(-2)).toEqual(["shift", "shift-half"]);
  });

  it("have one line of trade-off each, and say why they are not for a car", () => {
    const { offered, not } = remediesFor(studied(offset), notAsked);
    for (const each of offered) expect(each.tradeOff.length, each.key).toBeGreaterThan(20);
    expect(not.map(({ key }) => key)).toEqual(["recut"]);
    const even = remediesFor(studied(presetText("balanced-two-seater")), notAsked);
    expect(even.offered).toEqual([]);
    for (const { why } of even.not) expect(why.length).toBeGreaterThan(10);
  });

  it("say plainly what a car that is steered by its column cannot have", () => {
    for (const name of ["twin-beam-relay", "torsion-beam-steering-plate"]) {
      const { not } = remediesFor(studied(presetText(name)), notAsked);
      expect(not.find(({ key }) => key === "shift")?.why).toBe("there is no rack to shift");
      expect(not.find(({ key }) => key === "collar")?.why).toContain("there is no rack");
    }
  });

  it("keep the builder's comments and layout", () => {
    for (const each of remediesFor(studied(offset), notAsked).offered) {
      expect(each.text).toContain("# loaded radius");
      expect(difference(each.text.split("\n").slice(0, 9), offset.split("\n").slice(0, 9), {})).toBeNull();
    }
  });
});

describe("what a remedy asks of tubes and threads", () => {
  const mm = (size: number) => `${size.toFixed(1)} mm`;
  const said = (cut: string) =>
    threadWords(
      studied(
        `${offset.trimEnd()}\nthreads: { both: { outer: { size: 1/2-20, hand: right, reach: 2.44, thread: 1.5 }, inner: { size: 1/2-20, hand: left, reach: 2.44, thread: 1.5 } }${cut} }\n`,
      ),
      mm,
    );

  it("is told where the file has them, by tube, ends and engagement added up by hand", () => {
    expect(threadWords(remedy(offset, "shift").after, mm)).toBeNull();
    expect(said("")).toMatch(/^Threads: left tube to be cut to \d+\.\d mm; right tube to be cut to \d+\.\d mm\.$/);
    // The left rod is 15.782 in: each of two ends then holds (12.5 + 2 x 2.44 - 15.782) / 2 = 0.799 in, 1.6 diameters.
    expect(said(", left: { cut: 12.5 }")).toContain("left tube stays, 1.6 diameters of thread held");
    // 0.449 in are 0.9 diameters, less than any limit; 1.549 in are more than the thread.
    expect(said(", left: { cut: 11.8 }")).toMatch(/left tube \d+\.\d mm TOO SHORT, make a new one/);
    expect(said(", left: { cut: 14 }")).toMatch(/left tube \d+\.\d mm too long, shorten it/);
  });
});

describe("the order of remedies", () => {
  it("puts last of its kind what buys equal locks with an Ackermann of 23 % on one side and 198 % on the other", () => {
    const uneven = presetText("balanced-two-seater").replace(
      'travel: "2 1/8"',
      'travel: { left: "2 1/8", right: 1.75 }',
    );
    const { offered } = remediesFor(studied(uneven), notAsked);
    const tab = offered.find(({ key }) => key === "tab");
    const { left, right } = tab?.after.locks ?? {};
    expect(Math.abs((left?.ackermann ?? 0) - (right?.ackermann ?? 0))).toBeGreaterThan(50);
    expect(offered.map(({ key }) => key).at(-1)).toBe("tab");
    expect(offered.length).toBeGreaterThan(2);
  });
});
