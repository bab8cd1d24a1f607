import { describe, expect, it } from "vitest";
import { labelNames, labelsOf, withLabel } from "../../src/vehicle/labels.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { presetText } from "../measures/carTexts.ts";

const offset = presetText("widened-offset-rack");

describe("title, job, date and as-built", () => {
  it("are written into the file and read back as they were typed, whatever they are", () => {
    for (const words of ["2026-05-02", "12", "null", "left tab: bent # 2 mm", 'the "blue" one', "- a dash"])
      for (const name of labelNames) {
        const text = withLabel({ text: offset }, name, words);
        expect(labelsOf({ text })[name], `${name} ${words}`).toBe(words);
        expect(readCar(text), `${name} ${words}`).not.toHaveProperty("complaints");
      }
  });

  it("go with their key when they are emptied, and all else of the file stays", () => {
    for (const name of ["job", "date", "as-built"] as const)
      expect(withLabel({ text: withLabel({ text: offset }, name, "x") }, name, " ").trimEnd()).toBe(offset.trimEnd());
    expect(withLabel({ text: offset }, "title", " ")).toBe(offset);
  });

  it("are nothing where the file says nothing", () => {
    expect(labelsOf({ text: offset })).toEqual({
      title: "Rail two-seater, front widened, offset rack",
      job: "",
      date: "",
      "as-built": "",
    });
  });
});
