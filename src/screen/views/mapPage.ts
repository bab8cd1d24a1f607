import type { Act } from "../turn.ts";
import { turn } from "../turn.ts";
import type { Page } from "./page.ts";
import { spotWithin, withSpot } from "./spot.ts";

/** A page of the map: it draws its own heading, and knows what the arrows and n do on it. */
export interface MapPage extends Page {
  /** The cursor, so many rows down and columns to the right. */
  readonly move: (down: number, right: number) => Act;
  /** The next number, or the one before. */
  readonly other: (ways: 1 | -1) => Act;
}

/** So many places or one less, one at least: odd, so that the middle has a place of its own. */
export function odd(count: number): number {
  return Math.max(1, count % 2 === 0 ? count - 1 : count);
}

/** A cursor that stays within the places of a page, counted from its first row and column. */
export function cursorMoves(name: string, size: Page["size"]): MapPage["move"] {
  return (down, right) => (model) => {
    const { rows, columns } = size(model);
    const { row, column } = spotWithin(model, name, size);
    const within = (at: number, count: number) => Math.min(Math.max(0, count - 1), Math.max(0, at));
    return turn(withSpot(model, name, { row: within(row + down, rows), column: within(column + right, columns) }));
  };
}
