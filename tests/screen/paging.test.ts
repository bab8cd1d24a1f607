import { describe, expect, it } from "vitest";
import { restWords, seenFrom, turned } from "../../src/screen/paging.ts";

const lines = Array.from({ length: 25 }, (_, at) => `line ${at}`);
const seen = { room: 10, lines: lines.length };

describe("a page that is longer than the window", () => {
  it("goes by a line, by all that is seen, and neither above its first nor past its last line", () => {
    expect(turned(0, 1, "down", seen)).toBe(1);
    expect(turned(1, 1, "space", seen)).toBe(11);
    expect(turned(11, 1, "pageDown", seen)).toBe(15);
    expect(turned(4, -1, "pageUp", seen)).toBe(0);
    expect(turned(0, 1, "space", { room: 10, lines: 3 })).toBe(0);
  });

  it("shows every line once from page to page, and says where it ends", () => {
    const first = seenFrom(lines, 0, 10);
    expect(first).toEqual({ shown: lines.slice(0, 10), isMore: true });
    expect(restWords(first.isMore)).toContain("more below");
    // A window that has grown meanwhile is filled from the end.
    expect(seenFrom(lines, 20, 10)).toEqual({ shown: lines.slice(15), isMore: false });
    expect(restWords(false)).toBe("the end");
  });
});
