import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cells, cellsOf, unknownCells } from "../../src/terminal/cells.ts";
import { cursorMark } from "../../src/terminal/cursor.ts";
import { diff, freshPen, type Pen } from "../../src/terminal/diff.ts";
import { frames } from "./support/frames.ts";
import { expected, expectedCells, ModelTerminal } from "./support/model.ts";

const look = { color: "16", unicode: true } as const;
const size = { columns: 24, rows: 6 };

function cells(frame: string, in80 = size): Cells {
  return cellsOf(frame, in80, look);
}

/** Bytes without the marks around an update. */
function bytesOf(from: string, to: string, pen: Pen = freshPen): string {
  return diff(cells(from), cells(to), pen).bytes.replace(/^\x1b\[\?2026h|\x1b\[\?2026l$/g, "");
}

describe("diff", () => {
  it("turns what a terminal shows into the next frame, whatever the frames, from a screen full of rubbish on", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(frames(size.columns, size.rows), { minLength: 1, maxLength: 6 }), async (sequence) => {
        const terminal = await new ModelTerminal(size.columns, size.rows).start();
        let shown = unknownCells(size);
        let pen = freshPen;
        for (const frame of sequence) {
          const next = cells(frame);
          const update = diff(shown, next, pen);
          await terminal.write(update.bytes);
          expect(terminal.seen()).toEqual(expected(next));
          shown = next;
          pen = update.pen;
        }
      }),
      { numRuns: 250 },
    );
  });

  it("knows where it left the cursor and the pen: the next frame is right without saying either again", async () => {
    const terminal = await new ModelTerminal(size.columns, size.rows).start();
    const first = cells("\x1b[31mred\x1b[39m", size);
    const drawn = diff(unknownCells(size), first, freshPen);
    await terminal.write(drawn.bytes);
    const second = cells("\x1b[31mredder\x1b[39m", size);
    await terminal.write(diff(first, second, drawn.pen).bytes);
    expect(terminal.seen()).toEqual(expected(second));
  });

  it("sends nothing when nothing changed", () => {
    expect(bytesOf("toe 0.10°", "toe 0.10°")).toBe("");
  });

  it("sends one changed digit as an address and the digit", () => {
    expect(bytesOf("\ntoe 0.10", "\ntoe 0.12")).toBe("\x1b[2;8H2");
  });

  it("puts the marks of a synchronised update around whatever is drawn", () => {
    const { bytes } = diff(cells("a"), cells("b"), freshPen);
    expect(bytes).toBe("\x1b[?2026h\x1b[Hb\x1b[?2026l");
  });

  it("writes a few unchanged cells once more rather than address the next", () => {
    expect(bytesOf("25 in 25", "37 in 37")).toBe("\x1b[H37 in 37");
    expect(bytesOf("25 inch 25", "37 inch 37")).toBe("\x1b[H37\x1b[6C37");
  });

  it("erases to the end of a row, and within one, where that is shorter than blanks", () => {
    expect(bytesOf("a long line of text", "a")).toBe("\x1b[;3H\x1b[K");
    expect(bytesOf("xxxxxxxxxxxxxxxxxxxx|", "                    |")).toBe("\x1b[H\x1b[20X");
  });

  it("does not take the column for known after a character beyond ASCII", () => {
    expect(bytesOf("0.10", "0.1° in")).toBe("\x1b[;4H°\x1b[6Gin");
  });

  it("shows the terminal's cursor where a field has its mark, and hides it when the field is gone", () => {
    const plain = cells("14 3/8");
    const field = cells(`14 3/${cursorMark}8`);
    const shown = diff(plain, field, freshPen);
    expect(shown.bytes).toBe("\x1b[;5H\x1b[?25h");
    expect(shown.pen.cursorShown).toBe(true);
    const moved = diff(field, cells(`14 3${cursorMark}/8`), shown.pen);
    expect(moved.bytes).toBe("\b");
    expect(diff(field, plain, shown.pen).bytes).toBe("\x1b[?25l");
  });

  it("fills the last column and the last cell without scrolling", async () => {
    const terminal = await new ModelTerminal(size.columns, size.rows).start();
    const next = cells(Array(size.rows).fill("x".repeat(size.columns)).join("\n"));
    await terminal.write(diff(unknownCells(size), next, freshPen).bytes);
    expect(terminal.seen()).toEqual(expected(next));
  });

  it("keeps what stands after a picture in place, though terminals disagree about its width", async () => {
    const terminal = await new ModelTerminal(size.columns, size.rows).start();
    const next = cells("a😀b 👩‍🔧c ⌚d e✂️f");
    await terminal.write(diff(unknownCells(size), next, freshPen).bytes);
    const row = terminal.cells()[0] ?? [];
    const wanted = expectedCells(next)[0] ?? [];
    for (const letter of "abcdef") {
      expect(row.findIndex(({ text }) => text === letter)).toBe(wanted.findIndex(({ text }) => text === letter));
    }
  });
});
