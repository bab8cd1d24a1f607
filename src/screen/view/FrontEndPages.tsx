import { startingValues } from "../../vehicle/starting/marks.ts";
import { type Adjustable, valueNow } from "../adjust.ts";
import { type Part, partsFor, startingLines } from "../frontEnd.ts";
import { saidValue } from "../lengths.ts";
import type { Bench, Model } from "../model.ts";
import { windowOf } from "./AdjustList.tsx";
import { filled, type Line, Lines } from "./Lines.tsx";
import { wrapped } from "./wrap.ts";

/** One row of a page. */
interface Row {
  readonly text: string;
  readonly look?: "heading" | "selected" | "bad";
}

const looks = { heading: "strong", selected: "marked", bad: "bad" } as const;

function Rows({
  rows,
  room,
  columns,
}: {
  readonly rows: readonly Row[];
  readonly room: number;
  readonly columns: number;
}) {
  const lines = rows.map(({ text, look }): Line => {
    const shown = text === "" ? "" : ` ${text}`;
    return look === undefined ? shown : [{ text: shown, look: looks[look] }];
  });
  return <Lines columns={columns} lines={filled(lines, room)} />;
}

const labelColumns = 26;

function partRow({ label, gist, present }: Part, isSelected: boolean): Row {
  const text = `${isSelected ? ">" : " "} ${present ? "*" : " "} ${label.padEnd(labelColumns)} ${gist}`;
  return isSelected ? { text, look: "selected" } : { text };
}

/** The linkages and steering mechanisms that there are; what the selected one is stands below. */
export function PartsPage({
  model,
  cursor,
  rows,
}: {
  readonly model: Model;
  readonly cursor: number;
  readonly rows: number;
}) {
  const parts = partsFor(model.bench.car);
  const list = parts.flatMap((part, at): readonly Row[] => {
    const row = partRow(part, at === cursor);
    return parts[at - 1]?.group === part.group ? [row] : [{ text: part.group, look: "heading" }, row];
  });
  const chosen = parts[cursor];
  const about = chosen === undefined ? "" : `${chosen.present ? "On this car: " : ""}${chosen.help}`;
  const intro =
    "Enter gives the car another one, as one change: u takes it back. Wheel, tab and all else that both have is kept; the rest gets starting values for you to check.";
  const lines = (text: string) => wrapped(text, model.columns - 2).map((each) => ({ text: each }));
  const all: readonly Row[] = [
    { text: "FRONT END AND STEERING (* what this car has)", look: "heading" },
    ...lines(intro),
    { text: "" },
    ...list,
    { text: "" },
    ...lines(about),
  ];
  return <Rows rows={all} room={rows} columns={model.columns} />;
}

/** "Strut, top mount, out: 20 3/8 in", or both sides' values where they differ. */
function startingText(model: Pick<Model, "display">, bench: Bench, line: Adjustable): string {
  const ids = startingValues(bench.car);
  const said = line.quantities.map((quantity) => {
    const value = valueNow(bench, quantity);
    const words = value === null ? "-" : saidValue(value, quantity, model.display);
    return { wheel: quantity.wheel, words, starting: ids.has(quantity.id) };
  });
  const open = said.filter(({ starting }) => starting);
  const alike = open.length === said.length && open.every(({ words }) => words === open[0]?.words);
  if (alike) return `${line.label}: ${open[0]?.words ?? ""}`;
  return `${line.label}: ${open.map(({ wheel, words }) => `${wheel ?? ""} ${words}`.trim()).join(", ")}`;
}

/** The values that were filled in to begin with, until each is measured and put right, or found right as it is. */
export function StartingPage({
  model,
  cursor,
  rows,
}: {
  readonly model: Model;
  readonly cursor: number;
  readonly rows: number;
}) {
  const { bench, columns, notice } = model;
  const list = startingLines(bench.car);
  const lines = (text: string) => wrapped(text, columns - 2);
  const refused = "refused" in bench.study ? lines(`DOES NOT GO TOGETHER: ${bench.study.refused}`) : [];
  const count = list.length === 1 ? "1 starting value" : `${list.length} starting values`;
  const head: readonly Row[] = [
    { text: `${count.toUpperCase()} TO CHECK`, look: "heading" },
    ...lines(
      "These were filled in so that the car can be drawn; they were not measured on it. Measure each, and correct it. They stay marked with ~ in the list until then.",
    ).map((text) => ({ text })),
    ...(notice === null ? [] : [{ text: "" }, ...lines(`${notice.text}.`).map((text) => ({ text }))]),
    ...refused.map((text): Row => ({ text, look: "bad" })),
    { text: "" },
  ];
  const room = rows - head.length;
  const { from, to } = windowOf(list.length, cursor, room);
  const shown = list.slice(from, to).map((line, index): Row => {
    const isSelected = from + index === cursor;
    const isMore = (index === 0 && from > 0 && "↑") || (from + index === to - 1 && to < list.length && "↓");
    const text = `${isSelected ? ">" : isMore || " "} ${startingText(model, bench, line)}`;
    return isSelected ? { text, look: "selected" } : { text };
  });
  return <Rows rows={[...head, ...shown]} room={rows} columns={columns} />;
}
