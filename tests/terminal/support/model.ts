import headless, { type IBufferCell } from "@xterm/headless";
import type { Cells } from "../../../src/terminal/cells.ts";
import { enter } from "../../../src/terminal/modes.ts";

/** One cell as a terminal shows it: its text, and how it looks, in words. */
export interface Seen {
  readonly text: string;
  readonly look: string;
}

/** A model terminal that was entered as the session enters one, on a screen full of rubbish. */
export class ModelTerminal {
  private readonly emulator;

  constructor(
    private readonly columns: number,
    private readonly rows: number,
  ) {
    this.emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
  }

  async start(): Promise<this> {
    await this.write(`\x1b[?1049h${"\x1b[41mrubbish ".repeat(this.columns)}${enter}`);
    return this;
  }

  write(bytes: string): Promise<void> {
    return new Promise((resolve) => {
      this.emulator.write(bytes, resolve);
    });
  }

  cursor(): { x: number; y: number } {
    const { cursorX: x, cursorY: y } = this.emulator.buffer.active;
    return { x, y };
  }

  /** The rows, with every change of look in braces. */
  seen(): string[] {
    return this.cells().map(inWords);
  }

  cells(): Seen[][] {
    const { active } = this.emulator.buffer;
    return Array.from({ length: this.rows }, (_, y) => {
      const line = active.getLine(active.viewportY + y);
      return Array.from({ length: this.columns }, (_, x) => seenOf(line?.getCell(x)));
    });
  }
}

function seenOf(cell: IBufferCell | undefined): Seen {
  if (cell === undefined) return { text: "", look: "no cell" };
  if (cell.getWidth() === 0) return { text: "", look: "" };
  const text = cell.getChars() || " ";
  const words: [string, boolean | number][] = [
    ["bold", cell.isBold()],
    ["dim", cell.isDim()],
    ["italic", cell.isItalic()],
    ["underline", cell.isUnderline()],
    ["inverse", cell.isInverse()],
    ["struck", cell.isStrikethrough()],
    [`fg ${cell.getFgColor()}`, !cell.isFgDefault()],
    [`bg ${cell.getBgColor()}`, !cell.isBgDefault()],
  ];
  const on = words.filter(([, isOn]) => isOn).map(([word]) => word);
  return { text, look: lookOf(text, on) };
}

/** On a blank only some of a look can be seen. */
function lookOf(text: string, words: readonly string[]): string {
  if (text !== " ") return words.join(" ");
  const seen = words.filter((word) => /^(underline|inverse|struck|bg)/.test(word));
  const showsInk = seen.some((word) => !word.startsWith("bg"));
  return [...seen, ...words.filter((word) => showsInk && word.startsWith("fg"))].join(" ");
}

function inWords(row: readonly Seen[]): string {
  let look = "";
  let words = "";
  for (const cell of row) {
    if (cell.text !== "" && cell.look !== look) {
      look = cell.look;
      words += `{${look}}`;
    }
    words += cell.text === "" ? "_" : cell.text;
  }
  return words;
}

/** A frame's cells in the same words. */
export function expected(cells: Cells): string[] {
  return expectedCells(cells).map(inWords);
}

export function expectedCells(cells: Cells): Seen[][] {
  return Array.from({ length: cells.rows }, (_, y) =>
    Array.from({ length: cells.columns }, (_, x) => {
      const at = y * cells.columns + x;
      const text = cells.glyphs[at] ?? "";
      if (text === "") return { text, look: "" };
      const style = cells.styles[at] ?? 0;
      const foreground = style & 31;
      const background = (style >> 5) & 31;
      const words = ["bold", "dim", "italic", "underline", "inverse", "struck"].filter(
        (_, bit) => (style >> (10 + bit)) & 1,
      );
      if (foreground > 0) words.push(`fg ${foreground - 1}`);
      if (background > 0) words.push(`bg ${background - 1}`);
      return { text, look: lookOf(text, words) };
    }),
  );
}
