import { describe, expect, it } from "vitest";
import { linkages } from "../../src/vehicle/linkages.ts";
import { mechanisms } from "../../src/vehicle/mechanisms.ts";
import { answered, understood, withDistance } from "../../src/vehicle/survey/answer.ts";
import { blankSurvey } from "../../src/vehicle/survey/blank.ts";
import { rowsOf, type SheetRow, type SheetRows } from "../../src/vehicle/survey/rows.ts";

function sheetOf(text: string): SheetRows {
  const sheet = rowsOf(text);
  if ("complaints" in sheet) throw new Error(JSON.stringify(sheet.complaints));
  return sheet;
}

function rowOf({ rows }: SheetRows, key: string): SheetRow {
  const found = rows.find((row) => row.path.at(-1) === key);
  if (found === undefined) throw new Error(`no line for ${key}`);
  return found;
}

function written(sheet: SheetRows, row: SheetRow, typed: string): SheetRows {
  const done = answered(sheet, row, typed);
  if ("complaint" in done) throw new Error(done.complaint);
  return sheetOf(done.text);
}

/** A sheet as somebody writes it who knows how: on few lines, both sides at once, with marks and comments. */
const terse = [
  "# as found in the yard",
  "units: in",
  "linkage: double-arm",
  "mechanism: rack",
  "tolerance: 1/8",
  "datum: bolt A   # the one that is still square",
  "marks: { bolt A: left }",
  "table-height: 2",
  "heights: { left lower-arm.joint: 7 1/2, both lower-arm.rear: 8 }",
  "ahead: { left lower-arm.joint: -3 1/4 } # from the bolt",
  "distances: { left lower-arm.rear to left lower-arm.joint: 14 3/8, left eye to right: 13 }",
  "angles: { left lower-arm.rear to left lower-arm.front: 2.5 }",
  "",
].join("\n");

describe("a sheet in lines", () => {
  const forms = linkages.flatMap((linkage) => mechanisms.map((mechanism) => [linkage.name, mechanism.name] as const));

  it.each(forms)("of %s and %s takes a reading on any of them, and no other line changes", (linkage, mechanism) => {
    const sheet = sheetOf(blankSurvey({ linkage, mechanism }, "in"));
    const blank = sheet.rows.filter((row) => row.is === "reading" && row.text === "");
    expect(blank.length).toBeGreaterThan(60);
    for (let i = 0; i < blank.length; i += 13) {
      const row = blank[i];
      if (row === undefined) continue;
      const read = written(sheet, row, "9 1/4");
      expect(read.survey.readings.length).toBe(sheet.survey.readings.length + 1);
      expect(read.rows.filter(({ key, text }) => text !== sheet.rows.find((each) => each.key === key)?.text)).toEqual([
        { ...row, text: "9 1/4" },
      ]);
      const lines = sheet.text.split("\n");
      const changed = read.text.split("\n").filter((line, at) => line !== lines[at]);
      expect(changed).toEqual([`  ${row.path[1]}: 9 1/4`]);
      // And is blank again, to the letter.
      expect(written(read, { ...row, text: "9 1/4" }, "").text).toBe(sheet.text);
    }
  });

  it("has what a terse sheet has in the places of its list, whatever they are called there", () => {
    const sheet = sheetOf(terse);
    expect(rowOf(sheet, "both lower-arm.rear")).toMatchObject({ name: "height of both lower-arm.rear", text: "8" });
    // For both sides at once it is there: neither side is asked for once more.
    expect(sheet.rows.filter(({ name }) => /^height of .*lower-arm.rear/.test(name))).toHaveLength(1);
    // The ends of a distance are in any order.
    expect(rowOf(sheet, "left lower-arm.rear to left lower-arm.joint").text).toBe("14 3/8");
    expect(sheet.rows.filter(({ key }) => key.includes("left lower-arm.joint to left lower-arm.rear"))).toEqual([]);
    expect(sheet.rows.find(({ path }) => path[0] === "angles")?.text).toBe("2.5");
    // Floor marks are not on this sheet, so nothing asks for them.
    expect(sheet.rows.some(({ key }) => key.includes("floor mark"))).toBe(false);
  });

  it("is filled in as it is laid out, what is missing included", () => {
    const read = written(sheetOf(terse), rowOf(sheetOf(terse), "left lower-arm.joint to left upper-arm.joint"), "9");
    expect(read.text).toContain("left eye to right: 13, left lower-arm.joint to left upper-arm.joint: 9 }");
    const out = written(read, rowOf(read, "left eye"), "6 1/2");
    expect(rowOf(out, "left eye").text).toBe("6 1/2");
    expect(out.text).toContain("datum: bolt A   # the one that is still square");
  });

  it("asks nothing twice: a distance that is there leads to its line", () => {
    const sheet = sheetOf(terse);
    expect(withDistance(sheet, "left lower-arm.joint to rear")).toEqual({
      text: terse,
      key: "distances\0left lower-arm.rear to left lower-arm.joint",
    });
    expect(withDistance(sheet, "both lower-arm.joint to rear")).toHaveProperty("complaint");
    expect(withDistance(sheet, "left eye to left eye")).toMatchObject({
      complaint: '"left eye" stands in it twice.',
    });
  });

  it("takes no text that would make a sheet of it that cannot be read", () => {
    const sheet = sheetOf(terse);
    const eye = rowOf(sheet, "left lower-arm.joint");
    for (const typed of ["81/4", "}", "9: 8", "[9", "*x", "&a 9", "9 # not", "!!binary 9", "about 7", "\u0000", "1e9"])
      expect(answered(sheet, eye, typed), typed).toHaveProperty("complaint");
    for (const typed of ['Bob\'s "car": #1 {a}', "- x", "yes", "12", "[1, 2]", "*a"])
      expect(written(sheet, rowOf(sheet, "title"), typed).survey.title, typed).toBe(typed);
  });

  it("understands what is typed as the sheet will", () => {
    const sheet = sheetOf(terse);
    const row = rowOf(sheet, "left lower-arm.joint") as SheetRow & { is: "reading" };
    expect(understood(sheet, row, "14 3/8, 365.125 mm")).toEqual([365.125, 365.125]);
    expect(understood(sheet, row, "14 3/8 +- 1/4")).toEqual([365.125]);
    expect(understood(sheet, row, "14 3/8 and a bit")).toHaveProperty("complaint");
    const twice = written(sheet, row, "14 3/8, 14 7/16 +- 1/4");
    const readings = twice.survey.readings.filter(({ name }) => name === "height of left lower-arm.joint");
    // A table of 2 in stands under them. Exact but for the last bit of a sum.
    expect(readings.map(({ value }) => (value / 25.4).toFixed(9))).toEqual(["16.375000000", "16.437500000"]);
    expect(readings.map(({ sigma }) => sigma)).toEqual([25.4 / 16, 25.4 / 8]);
  });
});
