import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { listPresets } from "../../src/files/presets.ts";
import { sheetNames } from "../../src/files/sheets.ts";
import { listCars } from "../../src/screen/files.ts";
import { blankSheet } from "../../src/vehicle/from-tape/sheet.ts";
import { blankSurvey } from "../../src/vehicle/survey/blank.ts";
import { presetText } from "../measures/carTexts.ts";

const folder = mkdtempSync(join(tmpdir(), "rackwright-list-"));
afterAll(() => rmSync(folder, { recursive: true }));

describe("the cars that can be opened", () => {
  it("are those of the folder and the examples; a sheet of readings is one, and is opened as a sheet", () => {
    const text = presetText("balanced-two-seater");
    writeFileSync(join(folder, "buggy.yaml"), text);
    writeFileSync(join(folder, "older.yml"), `# king-pins-apart: 42 in the notes makes no sheet of it\n${text}`);
    writeFileSync(join(folder, "buggy-tape.yaml"), blankSheet("in"));
    writeFileSync(join(folder, "mm-tape.yml"), blankSheet("mm"));
    writeFileSync(join(folder, "notes.txt"), text);
    writeFileSync(join(folder, "front.yaml"), blankSurvey({ linkage: "strut", mechanism: "rack" }, "in"));
    writeFileSync(join(folder, "gauges.yaml"), "turn-plates: { left: 31, right: 34 }\n");
    const choices = listCars(folder);
    const presets = listPresets().map(({ name }) => name);
    const sheets = ["buggy-tape.yaml", "front.yaml", "mm-tape.yml"];
    expect(choices.map(({ name }) => name)).toEqual([
      "buggy.yaml",
      "older.yml",
      ...sheets,
      ...presets,
      ...sheetNames("sheets"),
    ]);
    for (const choice of choices)
      expect("sheet" in choice, choice.name).toBe([...sheets, ...sheetNames("sheets")].includes(choice.name));
  });
});
