import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, it } from "vitest";
import { type Cells, cellsOf } from "../../src/terminal/cells.ts";
import { cursorMark, cursorRoom, fieldWindow } from "../../src/terminal/cursor.ts";
import { plainStyle, withSgr } from "../../src/terminal/style.ts";

const size = { columns: 12, rows: 3 };
const colored = { color: "16", unicode: true } as const;

function rowOf(cells: Cells, y = 0): string[] {
  return cells.glyphs.slice(y * cells.columns, (y + 1) * cells.columns);
}

function textOf(frame: string, look: Parameters<typeof cellsOf>[2] = colored): string {
  return rowOf(cellsOf(frame, size, look))
    .join("")
    .trimEnd();
}

describe("cellsOf", () => {
  it("lays out lines in cells, blank where nothing is", () => {
    const cells = cellsOf("toe\n 0.10", size, colored);
    expect(rowOf(cells).join("")).toBe("toe         ");
    expect(rowOf(cells, 1).join("")).toBe(" 0.10       ");
    expect(rowOf(cells, 2).join("")).toBe("            ");
  });

  it("cuts what lies beyond the size, a wide character on the edge among it", () => {
    const cells = cellsOf(`${"x".repeat(11)}中more\n\n\nbelow`, size, colored);
    expect(rowOf(cells).join("")).toBe("xxxxxxxxxxx ");
    expect(cells.glyphs.join("")).not.toContain("below");
  });

  it("gives a wide character two cells and an accent none", () => {
    expect(rowOf(cellsOf("中e\u0301x", size, colored)).slice(0, 5)).toEqual(["中", "", "e\u0301", "x", " "]);
  });

  it("keeps the style through the lines of a frame, and drops it altogether without colour", () => {
    const frame = "\x1b[1;31mred\nred\x1b[0m plain";
    const { styles } = cellsOf(frame, size, colored);
    const red = withSgr(plainStyle, "1;31");
    expect([styles[0], styles[2], styles[12], styles[16]]).toEqual([red, red, red, plainStyle]);
    expect(cellsOf(frame, size, { ...colored, color: "none" }).styles.every((style) => style === plainStyle)).toBe(
      true,
    );
  });

  it("passes over colours beyond sixteen without taking their numbers for something else", () => {
    expect(withSgr(plainStyle, "38;5;1;1")).toBe(withSgr(plainStyle, "1"));
    expect(withSgr(plainStyle, "48;2;4;7;9;3")).toBe(withSgr(plainStyle, "3"));
  });

  it("drops sequences that are no colours, with all they carry", () => {
    expect(textOf("a\x1b[2Jb\x1b[10;10Hc\x1b[?25hd\x1b]0;title\x07e\x1b]8;;x\x1b\\f\x1bPq#1\x1b\\g\x1bch")).toBe(
      "abcdefgh",
    );
    expect(textOf("a\x9b2Jb\x1b[1$mc\x1b[>1md")).toBe("abcd");
  });

  it("shows a blank for a character that acts instead of showing", () => {
    expect(textOf("a\tb\x07c\x7fd\u202ee\ud800f")).toBe("a b c d e f");
  });

  it("never lets anything but printable characters of a known width into a cell", () => {
    const piece = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.constantFrom("\x1b[", "\x1b]", "\x9b", "\r", "\n", "1;31m"),
    );
    fc.assert(
      fc.property(fc.array(piece), fc.boolean(), (pieces, unicode) => {
        const cells = cellsOf(pieces.join(""), size, { color: "16", unicode });
        cells.glyphs.forEach((glyph, at) => {
          expect(glyph).not.toMatch(/[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]/u);
          if (!unicode) expect(glyph).toMatch(/^[\x20-\x7e]$/);
          else if (glyph !== "") expect(stringWidth(glyph)).toBe(cells.glyphs[at + 1] === "" ? 2 : 1);
        });
      }),
      { numRuns: 500 },
    );
  });

  it("takes apart what joins to more than two columns: no cell holds it whole", () => {
    const joined = "\uff76\uff9e\u304b\uff9e";
    expect(stringWidth("\u304b\uff9e")).toBe(3);
    expect(textOf(joined)).toBe("\uff76\uff9e\u304b\uff9e");
    const { glyphs } = cellsOf(joined, size, colored);
    expect(glyphs.slice(0, 4)).toEqual(["\uff76\uff9e", "", "\u304b", ""]);
    expect(glyphs[4]).toBe("\uff9e");
  });

  it("finds the text cursor's mark, and leaves nothing of it", () => {
    const cells = cellsOf(`a\nin ${cursorMark}x`, size, colored);
    expect(cells.cursor).toEqual({ x: 2, y: 1 });
    expect(cells.glyphs.join("")).not.toContain(cursorMark);
    expect(cellsOf("in", size, colored).cursor).toBeUndefined();
  });

  it("makes the mark from the inverse character that a field of Ink's draws as its cursor", () => {
    expect(fieldWindow(80)("14 \x1b[7m3\x1b[27m/8")).toBe(`14 3${cursorMark}/8`);
    expect(fieldWindow(80)("no cursor")).toBe("no cursor");
  });

  it("reads from what a field of Ink's draws how far its cursor can go", () => {
    expect(cursorRoom("14 \x1b[7m3\x1b[27m/8", "14 3/8")).toEqual({ left: 3, right: 3 });
    expect(cursorRoom("\x1b[7m1\x1b[27m4", "14")).toEqual({ left: 0, right: 2 });
    expect(cursorRoom("14\x1b[7m \x1b[27m", "14")).toEqual({ left: 2, right: 0 });
    expect(cursorRoom("14\x1b[7m \x1b[27m", "14 ")).toEqual({ left: 2, right: 1 });
    expect(cursorRoom("\x1b[7m \x1b[27m", "")).toEqual({ left: 0, right: 0 });
    expect(cursorRoom("14", "14")).toBeNull();
  });

  it("shows of a field that is too long the part with the cursor in it, in as many columns as there are", () => {
    const text = "/home/builder/cars/räder/前輪/a-long-name.yaml ";
    for (let at = 0; at < text.length; at += 1) {
      const field = `${text.slice(0, at)}\x1b[7m${text[at]}\x1b[27m${text.slice(at + 1)}`;
      for (const columns of [3, 10, 11, 24]) {
        const window = fieldWindow(columns)(field);
        expect(window, `at ${at}`).toContain(`${text[at]}${cursorMark}`);
        expect(stringWidth(window.replace(cursorMark, "")), `at ${at} of ${columns}: ${window}`).toBeLessThanOrEqual(
          columns,
        );
      }
    }
    const atEnd = (path: string) => fieldWindow(10)(`${path}\x1b[7m \x1b[27m`).replace(cursorMark, "");
    expect(atEnd("abcdefghi")).toBe("abcdefghi ");
    expect(atEnd("abcdefghij")).toBe("…ghij ");
    expect(atEnd("abcdefghijklmn")).toBe("…ghijklmn ");
    expect(atEnd("abcdefghijklmno")).toBe("…lmno ");
  });
});
