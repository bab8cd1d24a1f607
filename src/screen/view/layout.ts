import { adjustables, isFirst } from "../adjust.ts";
import type { Model } from "../model.ts";
import { hasRoom } from "../room.ts";
import { banners } from "./banners.ts";
import type { Tone } from "./readout.ts";

/** Wider than this, lines get too long to follow. */
const widest = 160;

/** Rows that are always there: title, heading, ten of numbers, rule, two of words, caution, footer. */
const fixedRows = 17;

/** Fewest rows of the list and of the tables that are of use, with the heading of the tables. */
const tableHeading = 2;
const fewestTableRows = 5;

/** How the bench is laid out in a terminal of this size. */
export interface Layout {
  readonly columns: number;
  /** Width of the names of the five numbers, and of each side's cell. */
  readonly label: number;
  readonly cell: number;
  /** Width and height of the list of things to adjust; the place panel stands beside it. */
  readonly list: { readonly columns: number; readonly rows: number };
  readonly place: { readonly columns: number };
  /** Rows of the tables below, without their heading; 0 where there is no room. */
  readonly tableRows: number;
  /** The tables that there is room for side by side. */
  readonly tables: 1 | 2;
  /** Lines above the numbers. */
  readonly banners: readonly { readonly text: string; readonly tone: Tone }[];
}

const label = 13;
const listColumns = 44;

/** The columns that one table needs. */
export const tableColumns = 58;

/** Lays the bench out, or null where the terminal is too small for it. */
export function layoutOf(model: Model): Layout | null {
  if (!hasRoom(model)) return null;
  const columns = Math.min(model.columns, widest);
  const above = banners(model, columns);
  const rows = model.rows - fixedRows - above.length;
  const list = adjustables(model.bench.car);
  // Where there is room for tables, the list keeps to what is moved first; the rest of it scrolls.
  const first = list.filter(isFirst).length;
  const withTables = rows - first - tableHeading >= fewestTableRows;
  const listRows = withTables ? first : Math.min(rows, list.length);
  const left = rows - listRows - tableHeading;
  return {
    columns,
    label,
    cell: Math.floor((columns - label) / 2),
    list: { columns: listColumns, rows: listRows },
    place: { columns: columns - listColumns - 1 },
    tableRows: left >= fewestTableRows ? Math.min(left, 21) : 0,
    tables: columns >= 2 * tableColumns + 1 ? 2 : 1,
    banners: above,
  };
}
