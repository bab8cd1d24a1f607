import { describe, expect, it } from "vitest";
import { readBenchAngle } from "../../src/vehicle/from-tape/angle.ts";
import { readReading } from "../../src/vehicle/from-tape/reading.ts";
import { type Reading, readings } from "../../src/vehicle/from-tape/readings.ts";
import { answersOn, blankSheet, readSheet, sheetWith } from "../../src/vehicle/from-tape/sheet.ts";
import { kingPinSketch } from "../../src/vehicle/from-tape/sketch.ts";
import { doubtful } from "../../src/vehicle/from-tape/together.ts";
import { expectClose } from "../close.ts";

const plain = { shared: false, diameter: null, along: "board" } as const;

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

  it("is the tangent of two readings whose distance lies down a plumb line", () => {
    // The tangent of 45 degrees is 1, that of 7.1250 degrees by a table 0.125.
    expectClose(degrees("1, 7 over 6", { ...plain, along: "plumb line" }), 45, { abs: 1e-10 });
    expectClose(degrees("1/2, 2 over 1 ft", { ...plain, along: "plumb line" }), 7.125, { abs: 5e-5 });
    expect(readBenchAngle("1, 2 over 0", "in", { ...plain, along: "plumb line" })).toHaveProperty("complaint");
  });

  it("between boards on both wheels is half of it a wheel", () => {
    expectClose(degrees("50, 62 over 12", { ...plain, shared: true }), 30, { abs: 1e-10 });
  });

  it("is toe as inches across the tyre, total", () => {
    // 1/8 in total on 28 in tyres is 0.255786 degrees total, taken as one sine; as two halves it is
    // 1e-6 less.
    expectClose(2 * degrees("1/8 total", { ...plain, shared: true, diameter: 28 * 25.4 }), 0.255786, { abs: 2e-6 });
  });

  it("is toe as both distances across the tyres, the nearer one in front being toe-in, in either order", () => {
    // 1/8 in nearer in front is the 1/8 in total of above.
    const toe = { ...plain, shared: true, diameter: 28 * 25.4 };
    for (const text of ["45 7/8 front, 46 rear", "46 rear, 45 7/8 front", "45 7/8 front 46 rear"])
      expectClose(2 * degrees(text, toe), 0.255786, { abs: 2e-6 });
    expectClose(2 * degrees("46 front, 45 7/8 rear", toe), -0.255786, { abs: 2e-6 });
    expect(readBenchAngle("46 front, 45 7/8 front", "in", toe)).toHaveProperty("complaint");
    expect(readBenchAngle("46 front, 45 7/8 rear", "in", plain)).toHaveProperty("complaint");
    expect(readBenchAngle("46 front, 45 7/8 rear", "in", { ...toe, diameter: null })).toHaveProperty("complaint");
  });

  it("is refused as toe where it could be a length across the tyre, with both ways to write it", () => {
    const toe = { ...plain, shared: true, diameter: 28 * 25.4 };
    for (const text of ["1/8", "1 1/2", "1/8 in", '1/8"', "⅛"])
      expect(readBenchAngle(text, "in", toe), text).toMatchObject({
        complaint: expect.stringMatching(/ total".* deg"/),
      });
    expect(readBenchAngle("1/8 in", "in", toe)).toMatchObject({ complaint: expect.stringContaining('"1/8 total"') });
    expect(readBenchAngle("3", "mm", toe)).toHaveProperty("complaint");
    expectClose(degrees("1/8 deg", toe), 0.125, { abs: 1e-12 });
    expectClose(degrees("0.2", toe), 0.2, { abs: 1e-12 });
    expect(readBenchAngle("0", "mm", toe)).toEqual({ rad: 0 });
    expect(readBenchAngle("1/8 total", "in", { ...toe, diameter: null })).toMatchObject({
      complaint: expect.stringContaining("hub's height"),
    });
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

/** The lengths of the same in whole millimetres. */
const metric: Readonly<Record<string, string>> = {
  ...answers,
  wheelbase: "1727",
  "hub-height": "273",
  "over-tyres": "1422",
  "tyre-width": "178",
  "king-pins-apart": "1080",
  "tab-back": "114",
  "tab-in": "38",
  "tab-height": "216",
  "left-eye": "102",
  "right-eye": "229",
  "eye-height": "219",
  "eye-behind": "25",
  stroke: "102",
  "left-stop": "51",
  toe: "0.2 deg",
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
    // Its distance is down the plumb line: the tangent of 7.1250 degrees, by a table, is 0.125 = 1.75 / 14.
    expectClose(((tape.numbers.get("caster") ?? 0) * 180) / Math.PI, 7.125, { abs: 5e-5 });
    expectClose(tape.numbers.get("toe"), Math.asin(0.0625 / 21.5), { abs: 1e-12 });
  });

  it("complains with the line of what is missing, misspelt or no reading", () => {
    const blank = readSheet(blankSheet("in"));
    if (!("complaints" in blank)) throw new Error("a blank sheet was taken for a filled one");
    expect(blank.complaints.length).toBe(readings.filter(({ required }) => required).length);
    expect(blank.complaints[0]).toMatchObject({ part: "wheelbase" });
    expect(blankSheet("in").split("\n")[(blank.complaints[0]?.line ?? 0) - 1]).toBe("wheelbase:");
    const wrong = readSheet(filled({ stroke: "long" }).replace("tab-in:", "tabin:"));
    if (!("complaints" in wrong)) throw new Error("a wrong sheet was taken");
    const words = wrong.complaints.map(({ part, message }) => `${part}: ${message}`);
    expect(words.some((each) => each.startsWith('tabin: no reading is called "tabin": did you mean "tab-in"'))).toBe(
      true,
    );
    expect(words.some((each) => each.startsWith('stroke: found "long", which is not a length'))).toBe(true);
  });

  it("holds every answer it is given, and gives them back as they were typed", () => {
    const sheet = sheetWith({ ...answers, units: "in", title: 'Job 12: "rail"', toe: "0.2 deg", "tab-in": '1 1/2"' });
    expect(answersOn(sheet)).toEqual({
      ...answers,
      units: "in",
      title: 'Job 12: "rail"',
      toe: "0.2 deg",
      "tab-in": '1 1/2"',
    });
    expect(readSheet(sheet)).not.toHaveProperty("complaints");
    expect(answersOn("title: a car\nfront: { linkage: strut }\n")).toBeNull();
  });

  it.each([
    ["left-eye", "81/4", '"8 1/4", or "20 1/4"'],
    ["stroke", "15/8", '"1 5/8", or "1 7/8"'],
    ["over-tyres", "1215/16", '"12 15/16"'],
    ["hub-height", "12 1/8 ft", "145 1/2 in, more than any front end has: expected 3 in to 30 in"],
    ["wheelbase", "6", "6 in, less than any front end has"],
    [
      "toe",
      "5",
      '5.00°, more than any front end has: expected -3.00° to 3.00°; for toe across the tyres write it like "1/8 total"',
    ],
    ["rack-goes", "up", "not left or right"],
    ["rods", "longer", "not to fit or as cut"],
  ])("refuses %s: %s in that reading's own words", (key, text, words) => {
    const read = readSheet(filled({ [key]: text }));
    expect("complaints" in read && read.complaints.find(({ part }) => part === key)?.message).toContain(words);
  });

  it("takes the words that nobody minds: inches, L, lower arm, turns", () => {
    const tape = readSheet(filled({ "rack-goes": "L", turns: "3 1/2 turns" }).replace("units: in", "units: inches"));
    if ("complaints" in tape) throw new Error(JSON.stringify(tape.complaints));
    expect(tape).toMatchObject({ units: "in", rackGoes: "left" });
    expect(tape.numbers.get("turns")).toBe(3.5);
    const of = (key: string) => readings.find((each) => each.key === key) ?? { key: "", words: [] as string[] };
    const worth = (text: string) => readReading({ ...of("shock-on"), kind: "word" } as Reading, text, "in", null);
    expect(worth("Lower arm")).toBe("lower-arm");
    expect(worth("upper")).toBe("upper-arm");
    // Either of two.
    expect(worth("up")).toHaveProperty("complaint");
  });

  it("says once that another unit is meant, in the place of every line", () => {
    for (const [from, to] of [
      ["in", "mm"],
      ["mm", "in"],
    ] as const) {
      const numbers = to === "mm" ? answers : metric;
      const read = readSheet(filled(numbers).replace("units: in", `units: ${to}`));
      if (!("complaints" in read)) throw new Error("a sheet in another unit was taken");
      expect(read.complaints).toHaveLength(1);
      expect(read.complaints[0]?.part).toBe("units");
      expect(read.complaints[0]?.message).toContain(from === "in" ? "look like inches" : "look like millimetres");
      expect(read.complaints[0]?.message).toContain(`Write units: ${from}`);
    }
  });

  it("needs the tyre's width, without which there is no wheel centre", () => {
    const read = readSheet(filled({ "tyre-width": "" }));
    expect("complaints" in read && read.complaints.map(({ part }) => part)).toEqual(["tyre-width"]);
  });

  it("explains every reading by itself, and shows the king-pin line", () => {
    for (const { help, key } of readings) expect(help, key).not.toContain("likewise");
    for (const line of kingPinSketch) expect(blankSheet("in")).toContain(`# ${line}`.trimEnd());
  });

  it("takes a proper fraction, and a sum that could be nothing else, as they are", () => {
    for (const text of ["15/16", "58/2", "8 1/4", "0.75"])
      expect(
        readSheet(filled({ "tab-in": text === "58/2" ? "1" : text, "over-tyres": text === "58/2" ? "112/2" : "56" })),
        text,
      ).not.toHaveProperty("complaints");
  });

  it.each([
    [
      { "king-pins-apart": "60 1/2", "over-tyres": "58" },
      "king-pins-apart",
      ["Outside over front tyres", "58 in", "King-pin lines, left to right", "60 1/2 in", "outside the tyres"],
    ],
    [{ "tyre-width": "23", "over-tyres": "46" }, "tyre-width", ["Outside over front tyres", "One front tyre's width"]],
    [{ "tab-in": "11", "king-pins-apart": "22" }, "tab-in", ["across the centreline"]],
    [{ "left-eye": "20" }, "left-eye", ["Left eye from centreline", "outside the tie-rod hole"]],
    [{ "left-eye": "18", stroke: "4" }, "stroke", ["Rack, stop to stop", "Left eye from centreline", "pass the hole"]],
    [{ "left-eye": "-9", "right-eye": "4" }, "right-eye", ["Left eye from centreline", "Right eye from centreline"]],
    [{ "left-stop": "6" }, "left-stop", ["Rack, stop to stop", "4 in", "Straight: rack still goes left", "6 in"]],
    [
      { "lower-joint-height": "14", "upper-joint-height": "7" },
      "upper-joint-height",
      ["Lower joint above floor", "Upper joint above floor"],
    ],
    [
      { "lower-pivot-out": "22", "lower-joint-out": "21 1/2" },
      "lower-joint-out",
      ["Lower pivots, out", "Lower joint, out"],
    ],
    [{ "lower-joint-out": "30" }, "lower-joint-out", ["Outside over front tyres", "Lower joint, out"]],
    [{ "shock-closed": "16", "shock-open": "12" }, "shock-open", ["Shock, fully closed", "Shock, fully open"]],
    [
      { "shock-closed": "12", "shock-open": "18", "shock-now": "11" },
      "shock-now",
      ["Shock, fully closed", "Shock, at ride height"],
    ],
    [
      { "shock-closed": "12", "shock-open": "18", "shock-now": "19" },
      "shock-now",
      ["Shock, fully open", "Shock, at ride height"],
    ],
    [{ rods: "as cut", "left-rod": "15 3/4" }, "rods", ["Right rod, eye to eye"]],
    [{ "shock-on": "lower-arm" }, "shock-on", ["its top and its foot"]],
  ] as const)("refuses readings that cannot both be right, with both their names: %j", (changes, at, words) => {
    const read = readSheet(filled(changes));
    if (!("complaints" in read)) throw new Error("an impossible tape was taken");
    const [first] = read.complaints;
    expect(first?.part).toBe(at);
    expect(first?.line).toBeGreaterThan(1);
    for (const each of words) expect(first?.message).toContain(each);
  });

  it.each([
    [{ inclination: "2, 3/4 over 10" }, "gaps are not swapped"],
    [{ caster: "-3" }, "lean forward"],
    [{ "left-eye": "17" }, "shorter across the car than the rack's stroke"],
    [{ "tab-height": "22" }, "above the tyre"],
    [{ "hub-height": "21" }, "more than half as high"],
    [{ "hub-height": "14", "upper-joint-height": "13 1/2" }, "above the upper joint"],
    [{ "hub-height": "6", "lower-joint-height": "7" }, "below the lower joint"],
    [{ toe: "-1/8 total" }, "toe out"],
    [{ toe: "46 front, 45 7/8 rear" }, "toe out"],
    [{ turns: "12" }, "One turn of the steering wheel".toLowerCase()],
  ])("asks whether it is so, and takes it: %j", (changes, words) => {
    const tape = readSheet(filled(changes));
    if ("complaints" in tape) throw new Error(JSON.stringify(tape.complaints));
    expect(
      doubtful(tape)
        .map((each) => each.words)
        .join(),
    ).toContain(words);
  });

  it("doubts nothing of a sound tape", () => {
    const tape = readSheet(filled());
    if ("complaints" in tape) throw new Error(JSON.stringify(tape.complaints));
    expect(doubtful(tape)).toEqual([]);
  });
});
