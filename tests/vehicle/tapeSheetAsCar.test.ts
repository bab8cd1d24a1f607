import { describe, expect, it } from "vitest";
import { blankSheet } from "../../src/vehicle/from-tape/sheet.ts";
import { readCar } from "../../src/vehicle/read.ts";

describe("a tape's sheet that is opened as a car", () => {
  it("is told to be one, with the command that makes a car of it", () => {
    const read = readCar(blankSheet("in"));
    if (!("complaints" in read)) throw new Error("a sheet was taken for a car");
    expect(read.complaints).toHaveLength(1);
    expect(read.complaints[0]?.message).toContain("rackwright new my-car --from-tape");
  });

  it("is no car file that merely names one of its words", () => {
    const read = readCar("title: king-pins-apart\nking-pins-apart: 3\nfront: { linkage: strut }\n");
    if (!("complaints" in read)) throw new Error("no car was taken for one");
    expect(read.complaints.map(({ message }) => message).join()).not.toContain("--from-tape");
  });
});
