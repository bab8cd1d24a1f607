import type { Place } from "./cells.ts";

/** Where the terminal's cursor is; the column is undefined after characters of which terminals disagree how wide they are. */
export interface CursorPlace {
  readonly x: number | undefined;
  readonly y: number;
}

function sequence(count: number, final: string): string {
  return count === 1 ? `\x1b[${final}` : `\x1b[${count}${final}`;
}

/** The shortest bytes that bring the cursor from one place to another. */
export function motion(from: CursorPlace | undefined, to: Place): string {
  const straight = absolute(to);
  if (from === undefined) return straight;
  const rows = to.y - from.y;
  const vertical = rows === 0 ? "" : sequence(Math.abs(rows), rows > 0 ? "B" : "A");
  const stepwise = vertical + horizontal(from.x, to.x);
  return stepwise.length < straight.length ? stepwise : straight;
}

function absolute({ x, y }: Place): string {
  if (x === 0) return y === 0 ? "\x1b[H" : `\x1b[${y + 1}H`;
  return y === 0 ? `\x1b[;${x + 1}H` : `\x1b[${y + 1};${x + 1}H`;
}

function horizontal(from: number | undefined, to: number): string {
  if (from === to) return "";
  if (to === 0) return "\r";
  const column = `\x1b[${to + 1}G`;
  if (from === undefined) return column;
  const step = to > from ? sequence(to - from, "C") : sequence(from - to, "D");
  const relative = to < from && from - to < step.length ? "\b".repeat(from - to) : step;
  return relative.length <= column.length ? relative : column;
}
