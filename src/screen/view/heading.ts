import { adjustableOf, valueNow } from "../adjust.ts";
import { bareValue } from "../lengths.ts";
import type { Model } from "../model.ts";
import type { Line } from "./Lines.tsx";
import { fitting } from "./wrap.ts";

/** A view's first line: what it shows, and what the keys + and - change meanwhile, with its value. */
export function heading(model: Model, columns: number, ...words: readonly string[]): Line {
  const selected = ` ${selectedWords(model)} (- + [ ]) ─`;
  const room = columns - selected.length - 4;
  const title = `─ ${fitting(words, room)} `;
  return [{ text: title.padEnd(columns - selected.length, "─") + selected, look: "strong" }];
}

/** "Tie-rod tab, ahead -4 1/2", "Tie-rod tab, out, left 19 3/4": what is about to be changed. */
function selectedWords({ bench, selected, sides, display }: Model): string {
  const line = adjustableOf(bench.car, selected);
  const values = line.quantities.map((each) => bareValue(valueNow(bench, each), each, display));
  const [left = "-", right = left] = values;
  if (line.quantities.length < 2 || (left === right && sides === "both")) return `${line.label} ${left}`;
  if (sides === "both") return `${line.label} L ${left} R ${right}`;
  return `${line.label}, ${sides} ${sides === "left" ? left : right}`;
}
