import { guideWords } from "../guide.ts";
import type { Model } from "../model.ts";
import { questionWords } from "../questions.ts";
import type { Room } from "../views/view.ts";
import { banners } from "./banners.ts";
import { wrapped } from "./wrap.ts";

/** Wider than this, lines get too long to follow. */
const widest = 160;

/** Rows that are always there: title, left and right, checks, tabs, caution, footer. */
const fixedRows = 6;

/** Rows for words, below a small view and below one whose every number is explained. */
const fewWords = 2;
const moreWords = 3;

/** Rows of the five numbers with all that is said of them, and with only the numbers themselves. */
const allNumbers = 10;
const onlyNumbers = 5;

/** From this height on a view has room enough below all rows of the five numbers. */
const tall = 32;

interface Space {
  readonly columns: number;
  readonly numberRows: number;
  readonly wordRows: number;
  readonly room: Room;
}

/** Lines that a question, the last thing done or the guide's step takes: they are read whole. */
function saidRows(model: Model, columns: number): number {
  const { focus, notice } = model;
  const said = focus.on === "question" ? questionWords(focus.question) : (guideWords(model) ?? notice?.text ?? "");
  return Math.max(...[said, notice?.text ?? ""].map((text) => wrapped(text, columns - 2).length));
}

/** What a window has for the five numbers and for the view below them; a `small` view leaves the numbers all rows. */
export function spaceFor(model: Model, small: boolean): Space {
  const columns = Math.min(model.columns, widest);
  const warned = banners(model, columns).length;
  // In a low window a banner takes the rows of what else is said of the numbers: the list below does not move.
  const lowRows = small ? Math.max(onlyNumbers, allNumbers - warned) : onlyNumbers;
  const numberRows = model.rows >= tall ? allNumbers : lowRows;
  const wordRows = Math.max(small ? fewWords : moreWords, saidRows(model, columns));
  const rows = model.rows - fixedRows - numberRows - wordRows - warned;
  return { columns, numberRows, wordRows, room: { columns, rows } };
}
