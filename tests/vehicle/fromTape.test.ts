import { describe, expect, it } from "vitest";
import { readBenchAngle } from "../../src/vehicle/from-tape/angle.ts";
import { readings } from "../../src/vehicle/from-tape/readings.ts";
import { blankSheet, readSheet } from "../../src/vehicle/from-tape/sheet.ts";
import { expectClose } from "../close.ts";

const plain = { shared: false, diameter: null };

function degrees(text: string, how: Parameters<typeof readBenchAngle>[2] = plain): number {
  const read = readBenchAngle(text, "in", how);
  if ("complaint" in read) throw new Error(read.complaint);
  return (read.rad * 180) / Math.PI;
}

describe("an angle read at the bench", () => {
  it("is in degrees, or the sine of two readings over a board", () => {
    expectClose(degrees("6 1/2"), 6.5, { abs: 1e-12 });
    // asin(1/2) is 30 degrees, asin(1.5/12) by a table of sines 7.1808 degrees.
    expectClose(degrees("1, 7 over 12"), 30, { abs: 1e-10 });
    expectClose(degrees("1/2, 2 over 1 ft"), 7.1808, { abs: 5e-5 });
    expectClose(degrees("2, 1/2 over 12"), -7.1808, { abs: 5e-5 });
  });

  it("between boards on both wheels is half of it a wheel", () => {
    expectClose(degrees("50, 62 over 12", { shared: true, diameter: null }), 30, { abs: 1e-10 });
  });

  it("is toe as inches across the tyre, total", () => {
    // 1/8 in total on 28 in tyres is 0.255786 degrees total, taken as one sine; as two halves it is
    // 1e-6 less.
    expectClose(2 * degrees("1/8 total", { shared: true, diameter: 28 * 25.4 }), 0.255786, { abs: 2e-6 });
  });

  it("is refused where no board can show it", () => {
    for (const text of ["1, 20 over 12", "1, 2 over 0", "steep", "1/8 total", "1, two over 12"])
      expect(readBenchAngle(text, "in", plain), text).toHaveProperty("complaint");
  });
});

const answers: Readonly<Record<string, string>> = {
  wheelbase: "68",
  "hub-height": "10 3/4",
  "over-tyres": "56",
  "tyre-width": "7",
  "king-pins-apart": "42 1/2",
  "tab-back": "4 1/2",
  "tab-in": "1 1/2",
  "tab-height": "8 1/2",
  "left-eye": "4",
  "right-eye": "9",
  "eye-height": "8 5/8",
  "eye-behind": "1",
  stroke: "4",
  turns: "2 1/2",
  "rack-goes": "right",
  "left-stop": "2",
  caster: "1/4, 2 over 14",
  toe: "1/8 total",
};

function filled(changes: Readonly<Record<string, string>> = {}): string {
  return Object.entries({ ...answers, ...changes }).reduce(
    (text, [key, value]) => text.replace(new RegExp(`^${key}:$`, "m"), `${key}: ${value}`),
    blankSheet("in"),
  );
}

describe("the sheet of readings", () => {
  it("asks for every reading once, in lines that a page holds", () => {
    const blank = blankSheet("in");
    for (const { key } of readings) expect(blank.match(new RegExp(`^${key}:`, "gm")), key).toHaveLength(1);
    for (const line of blank.split("\n")) expect(line.length, line).toBeLessThanOrEqual(78);
  });

  it("is read as it was filled in", () => {
    const tape = readSheet(filled());
    if ("complaints" in tape) throw new Error(JSON.stringify(tape.complaints));
    expect(tape.rackGoes).toBe("right");
    expectClose(tape.numbers.get("tab-back"), 4.5 * 25.4, { abs: 1e-12 });
    expect(tape.numbers.get("turns")).toBe(2.5);
    expect(tape.numbers.has("left-rod")).toBe(false);
    expectClose(((tape.numbers.get("caster") ?? 0) * 180) / Math.PI, (Math.asin(1.75 / 14) * 180) / Math.PI, {
      abs: 1e-12,
    });
    expectClose(tape.numbers.get("toe"), Math.asin(0.0625 / 21.5), { abs: 1e-12 });
  });

  it("complains with the line of what is missing, misspelt or no reading", () => {
    const blank = readSheet(blankSheet("in"));
    if (!("complaints" in blank)) throw new Error("a blank sheet was taken for a filled one");
    expect(blank.complaints.length).toBe(readings.filter(({ required }) => required).length);
    expect(blank.complaints[0]).toMatchObject({ line: 9, part: "wheelbase" });
    const wrong = readSheet(filled({ stroke: "long" }).replace("tab-in:", "tabin:"));
    if (!("complaints" in wrong)) throw new Error("a wrong sheet was taken");
    const words = wrong.complaints.map(({ part, message }) => `${part}: ${message}`);
    expect(words.some((each) => each.startsWith('tabin: no reading is called "tabin": did you mean "tab-in"'))).toBe(
      true,
    );
    expect(words.some((each) => each.startsWith('stroke: found "long", which is not a length'))).toBe(true);
  });
});
