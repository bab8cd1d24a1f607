import { describe, expect, it } from "vitest";
import { shorterPhrases, wholeSentences, wrapped } from "../../src/screen/view/wrap.ts";

describe("a text in lines", () => {
  it("never ends a line within a number, its fraction and its unit", () => {
    expect(wrapped("Rods then 13 9/32 in left", 12)).toEqual(["Rods then", "13 9/32 in", "left"]);
    expect(wrapped("Rods 13 9/32 in", 12)).toEqual(["Rods", "13 9/32 in"]);
  });

  it("keeps what says that there is more on one line", () => {
    const lines = wholeSentences("One two three. Four five six seven eight nine ten eleven twelve.", 20, 2);
    expect(lines).toEqual(["One two three.", "(? tells all)"]);
  });

  it("leaves out whole phrases of a label, from the end", () => {
    expect(shorterPhrases("Left tie rod, thread engaged, outer end (1/2-20)")).toEqual([
      "Left tie rod, thread engaged, outer end (1/2-20)",
      "Left tie rod, thread engaged, outer end",
      "Left tie rod, thread engaged",
      "Left tie rod",
    ]);
  });
});
