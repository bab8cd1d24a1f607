import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { listPresets } from "../../src/files/presets.ts";
import { listCars } from "../../src/screen/files.ts";
import { blankSheet } from "../../src/vehicle/from-tape/sheet.ts";
import { presetText } from "../measures/carTexts.ts";

const folder = mkdtempSync(join(tmpdir(), "rackwright-list-"));
afterAll(() => rmSync(folder, { recursive: true }));

describe("the cars that can be opened", () => {
  it("are the car files of the folder and the examples, but no sheet of readings, which is no car", () => {
    const text = presetText("balanced-two-seater");
    writeFileSync(join(folder, "buggy.yaml"), text);
    writeFileSync(join(folder, "older.yml"), `# king-pins-apart: 42 in the notes makes no sheet of it\n${text}`);
    writeFileSync(join(folder, "buggy-tape.yaml"), blankSheet("in"));
    writeFileSync(join(folder, "mm-tape.yml"), blankSheet("mm"));
    writeFileSync(join(folder, "notes.txt"), text);
    const names = listCars(folder).map(({ name }) => name);
    expect(names).toEqual(["buggy.yaml", "older.yml", ...listPresets().map(({ name }) => name)]);
  });
});
