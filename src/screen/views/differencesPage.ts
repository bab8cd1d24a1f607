import { differing, inputChange, inputName, labelOf, outcome, worseFirst } from "../../output/compare.ts";
import type { CheckReport } from "../../solve/check/report.ts";
import { checkRows } from "../../solve/compare/checks.ts";
import type { Car } from "../../vehicle/car.ts";
import { type Difference, differences } from "../../vehicle/differences.ts";
import { sayer } from "../lengths.ts";
import type { Model, Trial } from "../model.ts";
import { windowOf } from "../view/AdjustList.tsx";
import type { Line } from "../view/Lines.tsx";
import type { Page } from "./page.ts";
import { spotWithin } from "./spot.ts";
import { lateJob, progressWords } from "./work.ts";

const cellColumns = 18;
const changeColumns = 11;

/** What differs, before and now. */
interface Row {
  readonly label: string;
  readonly was: string;
  readonly is: string;
  /** "" where there is nothing to take away. */
  readonly change: string;
}

function keyOf(pin: Trial): string {
  return `differences\n${pin.car.text}`;
}

/** How the pinned car comes through the checks; null until that is known. */
function pinnedChecks({ work }: Model, pin: Trial): CheckReport | null {
  return work?.key === keyOf(pin) && work.state === "done" ? (work.result as CheckReport | null) : null;
}

const known = new WeakMap<Car, { readonly against: Car; readonly found: readonly Difference[] }>();

/** The same cars are looked at with every frame, and reading what differs takes both their texts. */
function differencesOf(before: Car, now: Car): readonly Difference[] {
  const last = known.get(now);
  if (last?.against === before) return last.found;
  const found = differences([before, now]);
  known.set(now, { against: before, found });
  return found;
}

function inputRows({ bench, display }: Model, pin: Trial): readonly Row[] {
  return differencesOf(pin.car, bench.car).map((each) => ({
    label: inputName(each),
    was: each.said[0]?.words ?? "",
    is: each.said[1]?.words ?? "",
    change: inputChange(each, 1, display.unit),
  }));
}

/** The checks that come out otherwise; null until both cars are checked. */
function checkedRows(model: Model, pin: Trial): readonly Row[] | null {
  const { bench, check, display } = model;
  const before = pinnedChecks(model, pin);
  if (before === null || check === null || check.text !== bench.car.text) return null;
  const length = sayer(display);
  return worseFirst(differing(checkRows([before, check.report]), display.unit, length)).map((row) => {
    const [was = "-", is = "-"] = row.items.map((item) => outcome(item, display.unit, length));
    return { label: labelOf(row), was, is, change: "" };
  });
}

function rowsOf(model: Model): readonly Row[] {
  const { pin } = model;
  return pin === null ? [] : [...inputRows(model, pin), ...(checkedRows(model, pin) ?? [])];
}

/** The page of what differs between the pinned car and the one on the bench, in the view of that name. */
export function differencesPage(view: string): Page {
  const size: Page["size"] = (model) => ({ rows: rowsOf(model).length, columns: 1 });
  return {
    name: "differences",
    title: ({ pin, work }) =>
      pin === null ? "WHAT DIFFERS" : `WHAT DIFFERS FROM ${pin.name.toUpperCase()}${progressWords(work)}`,
    size,
    lines: (model, columns, rows) => linesOf(model, columns, rows, spotWithin(model, view, size).row),
    explain: (model) => {
      const row = rowsOf(model)[spotWithin(model, view, size).row];
      return row === undefined ? "" : `${row.label}: was ${row.was}, is now ${row.is}.`;
    },
    take: null,
    work: (model) => {
      const { pin } = model;
      if (pin === null || "refused" in pin.study) return null;
      const { study } = pin;
      const load = async () => (await import("../../solve/check/check.ts")).checkJob(study);
      return { key: keyOf(pin), job: () => lateJob(load) };
    },
  };
}

function linesOf(model: Model, columns: number, rows: number, cursor: number): readonly Line[] {
  const { pin } = model;
  if (pin === null)
    return [
      "No car is pinned to hold this one against.",
      "Y pins the saved car, b the car as it is now, y a trial of the list of trials.",
    ].map((text): Line => text);
  const inputs = inputRows(model, pin);
  const checked = checkedRows(model, pin);
  const labelColumns = Math.max(20, columns - 2 * cellColumns - changeColumns - 2);
  const text = (mark: string, { label, was, is, change }: Row) =>
    `${mark} ${cell(label, labelColumns)}${cell(was, cellColumns)}${cell(is, cellColumns)}${change.padStart(changeColumns)}`;
  const row = (each: Row, at: number): Line =>
    at === cursor ? [{ text: text(">", each), look: "marked" }] : text(" ", each);
  const heading = (label: string): Line => [
    { text: text(" ", { label, was: "was", is: "now", change: "change" }), look: "strong" },
  ];
  const lines: readonly Line[] = [
    heading("As it stands in the file"),
    ...(inputs.length === 0 ? ["  Nothing: both say the same."] : inputs.map(row)),
    heading("Checks that come out otherwise"),
    ...checkLines(model, checked, (each, i) => row(each, inputs.length + i)),
  ];
  const at = cursor + (cursor < inputs.length ? 1 : 2);
  const { from, to } = windowOf(lines.length, Math.min(at, lines.length - 1), rows);
  return lines.slice(from, to);
}

function checkLines(
  { bench, pin }: Model,
  checked: readonly Row[] | null,
  row: (each: Row, i: number) => Line,
): readonly Line[] {
  if (checked !== null) return checked.length === 0 ? ["  None: every check comes out the same."] : checked.map(row);
  const stands = !("refused" in bench.study) && pin !== null && !("refused" in pin.study);
  return [stands ? "  Both cars are being checked ..." : "  A car that does not go together cannot be checked."];
}

function cell(text: string, columns: number): string {
  return text.slice(0, columns - 1).padEnd(columns);
}
