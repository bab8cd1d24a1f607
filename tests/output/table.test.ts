import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { table, wrap } from "../../src/output/table.ts";

describe("a table in text", () => {
  it("lines numbers up at their ends and words at their beginnings", () => {
    expect(
      table(
        [["name", "n"]],
        [
          ["a", "1.5"],
          ["long one", "-10.25"],
        ],
        [0],
      ),
    ).toEqual(["name           n", "--------  ------", "a            1.5", "long one  -10.25"]);
  });

  it("lets a remark run on after the first cell of its row", () => {
    expect(
      table(
        [["rack", "left", "right"]],
        [
          ["1.000", "2.0", "3.0"],
          ["-2.000", "the left tie rod is too short"],
        ],
      ),
    ).toEqual([
      "  rack  left  right",
      "------  ----  -----",
      " 1.000   2.0    3.0",
      "-2.000  the left tie rod is too short",
    ]);
  });
});

describe("wrapped words", () => {
  it("begins with the first words and indents the rest", () => {
    expect(wrap("one two three four", 12, "LOCK  ", 7)).toEqual([
      "LOCK  one",
      "       two",
      "       three",
      "       four",
    ]);
  });

  it("never takes a whole number from its fraction, nor a number from its unit", () => {
    expect(wrap("Inboard 1 7/32 in, droop 4 1/2 in.", 17, "- ", 2)).toEqual([
      "- Inboard",
      "  1 7/32 in,",
      "  droop 4 1/2 in.",
    ]);
  });

  it("loses no word and keeps to the width unless one word is wider", () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1 }),
        fc.integer({ min: 12, max: 60 }),
        (words, width) => {
          const lines = wrap(words.join(" "), width);
          expect(lines.join(" ").split(" ")).toEqual(words);
          for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
