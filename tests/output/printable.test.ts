import { describe, expect, it } from "vitest";
import { asciiLocale, printable, toAscii } from "../../src/output/printable.ts";

describe("text for a terminal", () => {
  it("writes out what could move the cursor or change colours", () => {
    expect(printable("red \u001b[31mcar\u0007\u009b1A")).toBe("red \\u{1b}[31mcar\\u{7}\\u{9b}1A");
  });

  it("says degrees and dashes in ASCII, and marks what it cannot write", () => {
    expect(toAscii("1.6° − 2 × 3")).toBe("1.6d - 2 x 3");
    expect(toAscii("Käfer 車")).toBe("K?fer ?");
  });

  it("takes the locale at its word, in the order POSIX gives", () => {
    expect(asciiLocale({ LANG: "en_US.UTF-8" })).toBe(false);
    expect(asciiLocale({ LANG: "de_DE.utf8" })).toBe(false);
    expect(asciiLocale({ LANG: "C" })).toBe(true);
    expect(asciiLocale({ LANG: "C.UTF-8", LC_CTYPE: "POSIX" })).toBe(true);
    expect(asciiLocale({ LANG: "C", LC_CTYPE: "C", LC_ALL: "C.UTF-8" })).toBe(false);
    expect(asciiLocale({})).toBe(false);
  });
});
