import { changeFrontEnd } from "../../vehicle/change.ts";
import { withoutMarks } from "../../vehicle/starting/marks.ts";
import { adjustableOf, quantitiesOn } from "../adjust.ts";
import { changed } from "../bench.ts";
import { changeWords, partsFor, startingLines } from "../frontEnd.ts";
import type { Model } from "../model.ts";
import { type Act, type Turn, turn } from "../turn.ts";

/** The list of linkages and mechanisms, the cursor on the present linkage. */
const parts: Act = (model) => {
  const cursor = partsFor(model.bench.car).findIndex(({ present }) => present);
  return turn({ ...model, focus: { on: "parts", cursor: Math.max(0, cursor) } });
};

/** The car with the chosen part, as one change; then the values that it was begun with are listed to be checked. */
export function acceptPart(model: Model): Turn {
  const { focus, bench } = model;
  const part = focus.on === "parts" ? partsFor(bench.car)[focus.cursor] : undefined;
  if (part === undefined) return turn(model);
  if (part.present)
    return turn({ ...model, focus: { on: "bench" }, notice: { text: "The car has that already.", tone: "done" } });
  const { text, filled } = changeFrontEnd(bench.car, part.change);
  const after = changed(model, text, changeWords(bench.car, part));
  const [first] = startingLines(after.model.bench.car).filter(({ quantities }) =>
    quantities.some(({ id }) => filled.includes(id)),
  );
  if (first === undefined || after.model.bench.car === bench.car) return after;
  const cursor = startingLines(after.model.bench.car).indexOf(first);
  return {
    ...after,
    model: { ...after.model, selected: first.pair, sides: "both", focus: { on: "starting", cursor } },
  };
}

/** From the list of starting values to the one under the cursor, on the bench. */
export function acceptStarting(model: Model): Turn {
  const { focus, bench } = model;
  const line = focus.on === "starting" ? startingLines(bench.car)[focus.cursor] : undefined;
  if (line === undefined) return turn({ ...model, focus: { on: "bench" } });
  return turn({ ...model, selected: line.pair, sides: "both", focus: { on: "bench" } });
}

/** The starting value that is selected is right as it is: its mark goes, and the list goes on where it was. */
const rightAsItIs: Act = (model) => {
  const { focus, bench } = model;
  const inList = focus.on === "starting" ? startingLines(bench.car)[focus.cursor] : undefined;
  const line = inList ?? adjustableOf(bench.car, model.selected);
  const ids = quantitiesOn(line, inList === undefined ? model.sides : "both").map(({ id }) => id);
  const after = changed(model, withoutMarks(bench.car, new Set(ids)), `${line.label}: checked, right as it is`);
  const left = startingLines(after.model.bench.car).length;
  if (focus.on !== "starting" || left === 0) return after;
  return { ...after, model: { ...after.model, focus: { ...focus, cursor: Math.min(focus.cursor, left - 1) } } };
};

export const frontEndActs = {
  parts,
  rightAsItIs,
  starting: (model) => turn({ ...model, focus: { on: "starting", cursor: 0 } }),
} satisfies Record<string, Act>;
