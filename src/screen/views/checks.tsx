import { itemBrief, limitWords, moreWords, whereWords } from "../../output/check.ts";
import type { CheckItem, State } from "../../solve/check/item.ts";
import { worstFirst } from "../../solve/check/report.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { heading } from "../view/heading.ts";
import { filled, type Line, Lines, type Look } from "../view/Lines.tsx";
import { fitting, wrapped } from "../view/wrap.ts";
import { listKeys, spotWithin } from "./spot.ts";
import type { Room, View } from "./view.ts";

const name = "Checks";
const stateColumns = 11;
/** Lines of the list that stay beside what is told of one of them. */
const fewest = 3;

const more = "   ... more in a taller window, or by rackwright check";

const looks: Readonly<Partial<Record<State, Look>>> = { broken: "bad", close: "warn" };

function itemsOf(model: Model): readonly CheckItem[] {
  const report = model.check?.report ?? null;
  return report === null ? [] : worstFirst(report);
}

const size = (model: Model) => ({ rows: itemsOf(model).length, columns: 1 });

/** What binds, what hits and what holds too little thread, the worst first. */
export const checks: View = {
  name,
  key: "0",
  help: "what binds, what hits, what holds too little thread, over all of steering and travel; the worst first",
  keys: listKeys(name, size, "over the checks:"),
  explain,
  Body,
};

/** What to beware of; of what the file says too little for, also where it is told how that is written. */
function explain(model: Model): string {
  const item = underCursor(model);
  const where = item?.state === "not given" ? ["How such lines are written: press 7, then ?."] : [];
  return [...(item?.cautions ?? []), ...where].join(" ");
}

function underCursor(model: Model): CheckItem | undefined {
  return itemsOf(model)[spotWithin(model, name, size).row];
}

function lineOf(model: Model, item: CheckItem, isHere: boolean, columns: number): Line {
  const head = `${isHere ? ">" : " "} ${item.state.toUpperCase().padEnd(stateColumns - 1)}`;
  const words = itemBrief(item, model.display.unit, sayer(model.display));
  const text = fitting([words], columns - stateColumns - 2);
  const look = looks[item.state];
  const first = look === undefined ? head : { text: head, look };
  return isHere ? [first, { text, look: "strong" }] : [first, text];
}

/** Of the item under the cursor: its limit, where it is at its worst, and what else there is to know. */
function details(model: Model, item: CheckItem, columns: number): readonly Line[] {
  const { study } = model.bench;
  if ("refused" in study) return [];
  const { unit } = model.display;
  const length = sayer(model.display);
  const limit = limitWords(item, unit, length);
  const where = whereWords(study, item, length);
  const first = [limit, where === null ? null : `worst at ${where}`].filter((words) => words !== null).join("; ");
  return [first, ...moreWords(item, unit, length)]
    .filter((words) => words !== "")
    .flatMap((words) => wrapped(words, columns - 4).map((line) => `   ${line}`));
}

/** As many lines as there is room for; where some are left out, the last one says so. */
function asFits(lines: readonly Line[], rows: number): readonly Line[] {
  return lines.length <= rows ? lines : [...lines.slice(0, Math.max(rows - 1, 0)), [more]].slice(0, rows);
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const items = itemsOf(model);
  const { columns } = room;
  const rows = room.rows - 1;
  const at = spotWithin(model, name, size).row;
  const title = heading(model, columns, `CHECKS ${items.length === 0 ? "" : `${at + 1} of ${items.length}`}`, "CHECKS");
  const here = items[at];
  if (here === undefined) return <Lines columns={columns} lines={[title, ...filled([], rows)]} />;
  const told = asFits(details(model, here, columns), Math.max(0, rows - fewest));
  const seen = rows - told.length;
  const top = Math.max(0, Math.min(at - Math.floor(seen / 2), items.length - seen));
  const list = items
    .slice(top, top + seen)
    .flatMap((item, i) => [lineOf(model, item, top + i === at, columns), ...(top + i === at ? told : [])]);
  return <Lines columns={columns} lines={[title, ...filled(list, rows)]} />;
}
