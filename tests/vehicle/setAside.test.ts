import { describe, expect, test } from "vitest";
import { setAsideWarnings } from "../../src/vehicle/set-aside.ts";

const comment = "# Set aside: left tie rod (line 12) reads 1/4 in too much against all the others: it was left out.";

describe("a reading that a car was made without", () => {
  test("is said by its comment at the top, with its line of the car's file and not of the sheet", () => {
    expect(setAsideWarnings(`# Points from the tape.\r\n${comment}\r\ntitle: x\r\n`)).toEqual([
      {
        line: 2,
        column: 1,
        part: "",
        message: "a reading that did not fit was left out: left tie rod reads 1/4 in too much; measure it again",
      },
    ]);
    expect(setAsideWarnings(`${comment.replace(" (line 12)", "")}\n`)[0]?.message).toContain("left tie rod reads");
    expect(setAsideWarnings(`title: x\n${comment}\n`)).toEqual([]);
  });

  test("is looked for in a long line once, not from each of its words on", () => {
    expect(setAsideWarnings(`# Set aside: ${" reads x".repeat(120_000)}\n`)).toEqual([]);
  });
});
