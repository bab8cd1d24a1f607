import { Text } from "ink";
import { type Adjustable, adjustables, quantitiesOn, valueNow } from "../adjust.ts";
import { isStarting } from "../frontEnd.ts";
import { bareValue } from "../lengths.ts";
import type { Model } from "../model.ts";

const markColumns = 2;
const groupColumns = 12;
/** A value with the letter of its side before it, such as "R -14 31/32". */
const valueColumns = 12;

/** The part of the list that is seen: `rows` lines, the selected one among them and the ends filled. */
export function windowOf(
  count: number,
  selected: number,
  rows: number,
): { readonly from: number; readonly to: number } {
  const from = Math.max(0, Math.min(selected - Math.floor(rows / 2), count - rows));
  return { from, to: Math.min(count, from + rows) };
}

/** What can be adjusted, with its values; marks tell which line is selected, and where the list goes on. */
export function AdjustList({
  model,
  columns,
  rows,
}: {
  readonly model: Model;
  readonly columns: number;
  readonly rows: number;
}) {
  const list = adjustables(model.bench.car);
  const selected = list.findIndex((each) => each.pair === model.selected);
  const { from, to } = windowOf(list.length, selected, rows);
  return list.slice(from, to).map((line, index) => {
    const isFirst = index === 0 || list[from + index - 1]?.group !== line.group;
    const isSelected = line.pair === model.selected;
    const isMore = (index === 0 && from > 0 && "↑") || (from + index === to - 1 && to < list.length && "↓");
    const mark = (isSelected ? ">" : isMore || " ") + (isStarting(model.bench.car, line) ? "~" : " ");
    return (
      <Text key={line.pair} bold={isSelected} inverse={isSelected} wrap="truncate">
        {mark + lineText(model, line, isFirst, isSelected, columns - markColumns)}
      </Text>
    );
  });
}

function lineText(model: Model, line: Adjustable, withGroup: boolean, isSelected: boolean, columns: number): string {
  const values = valuesText(model, line, isSelected);
  const room = columns - values.length;
  return headText(line, withGroup, room).padEnd(Math.max(groupColumns, room)) + values;
}

/** A line's group and name; where both sides' values leave less room, in fewer words: "front pivot, ahead" is "front ahead". */
function headText({ group, name }: Adjustable, withGroup: boolean, room: number): string {
  const indent = group.length < groupColumns ? groupColumns : group.length + 1;
  const whole = `${(withGroup ? group : "").padEnd(indent)}${name}`;
  if (whole.length <= room) return whole;
  const [first = "", last = ""] = [/^[\w-]+/.exec(name)?.[0], /[\w-]+$/.exec(name)?.[0]];
  if (withGroup) return `${group} ${first} ${last}`.length <= room ? `${group} ${first} ${last}` : `${group} ..${last}`;
  const short = `${first} ${last}`;
  return short.padStart(Math.min(room, groupColumns + short.length));
}

/** One value where both sides are alike, else both with their letters; ">" stands at the one that the arrows change. */
function valuesText(model: Model, line: Adjustable, isSelected: boolean): string {
  const { bench, display, sides } = model;
  const changed = isSelected && sides !== "both" ? quantitiesOn(line, sides) : [];
  const values = line.quantities.map((each) => bareValue(valueNow(bench, each), each, display));
  const alike = values.every((value) => value === values[0]);
  if (alike && changed.length === line.quantities.length) return (values[0] ?? "").padStart(valueColumns);
  if (alike && changed.length === 0) return (values[0] ?? "").padStart(valueColumns);
  return line.quantities
    .map((quantity, index) => {
      const letter = quantity.wheel === "left" ? "L" : "R";
      const mark = changed.includes(quantity) ? ">" : " ";
      return ` ${mark}${letter}${(values[index] ?? "").padStart(valueColumns - 3)}`.padEnd(valueColumns);
    })
    .join("");
}
