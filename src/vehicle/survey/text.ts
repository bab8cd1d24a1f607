import { flowMap } from "../edits/flow.ts";
import { shortest } from "../edits/written.ts";
import { taped } from "../from-tape/text.ts";
import { mechanismOf } from "../mechanisms.ts";
import { quantitiesOf } from "../quantities.ts";
import type { Quantity } from "../quantity.ts";
import { type Line, withLines } from "../starting/layout.ts";
import { startingValues, withoutMarks } from "../starting/marks.ts";
import { degree } from "../value.ts";
import { type Numbers, numbersOf } from "./numbers.ts";
import type { Survey } from "./survey.ts";

/** A car's text from a survey, and the ids of the quantities that were assumed. */
export interface SurveyCar {
  readonly text: string;
  readonly assumed: readonly string[];
}

const coordinates = new Set(["ahead", "out", "offset", "up"]);

/** A quantity as it will stand in the file. */
interface Entry {
  readonly path: readonly string[];
  readonly text: string;
  readonly assumed: boolean;
}

function textOf({ kind }: Quantity, value: number, units: Survey["units"]): string {
  if (kind === "length") return taped(value, units);
  return shortest(kind === "angle" ? value / degree : value, 0.0005);
}

/** What is said in one breath with a quantity: the other numbers of its point, and of that of the other side. */
function together(quantity: Quantity, other: Quantity): boolean {
  const point = (each: Quantity) =>
    coordinates.has(each.path.at(-1) ?? "") ? each.pair.replace(/\.\w+$/, "") : each.pair;
  return quantity.shared !== null && other.shared !== null && point(quantity) === point(other);
}

/**
 * Every quantity once: at the place of both sides where those are alike and known alike, a point as a whole; else at its
 * own.
 */
function entriesOf({ form, units }: Survey, numbers: Numbers): readonly Entry[] {
  const known = quantitiesOf(form).flatMap((quantity) => {
    const worth = numbers.get(quantity.id);
    return worth === undefined
      ? []
      : [{ quantity, text: textOf(quantity, worth.value, units), assumed: worth.assumed }];
  });
  const entries = new Map<string, Entry>();
  for (const { quantity, text, assumed } of known) {
    const group = known.filter((each) => together(quantity, each.quantity));
    const alike = group.every((one) =>
      group.every(
        (each) => each.quantity.pair !== one.quantity.pair || (each.text === one.text && each.assumed === one.assumed),
      ),
    );
    const path = quantity.shared !== null && alike ? quantity.shared : quantity.path;
    entries.set(path.join("\0"), { path, text, assumed });
  }
  return [...entries.values()];
}

const onOneLine = new Set(["tire", "rim", "wheel-travel"]);

/** Points, and what belongs together as closely, stand in braces on one line; anything else has a line of its own. */
function linesOf(entries: readonly Entry[]): readonly Line[] {
  const above = (path: readonly string[]) => path.slice(0, -1).join("\0");
  const isGroup = ({ path }: Entry) =>
    onOneLine.has(path.at(-2) ?? "") ||
    (coordinates.has(path.at(-1) ?? "") &&
      path.length > 3 &&
      path.at(-2) !== "rack" &&
      path.at(-2) !== "steering-plate");
  const lines = new Map<string, Line>();
  for (const entry of entries) {
    if (!isGroup(entry)) {
      lines.set(entry.path.join("\0"), { path: entry.path, text: entry.text, marked: entry.assumed });
      continue;
    }
    const group = entries.filter((each) => isGroup(each) && above(each.path) === above(entry.path));
    const text = flowMap(group.map(({ path, text: value }) => [path.at(-1) ?? "", value] as const));
    lines.set(above(entry.path), {
      path: entry.path.slice(0, -1),
      text,
      marked: group.some(({ assumed }) => assumed),
    });
  }
  return [...lines.values()];
}

/** The words that a file needs beside its numbers. */
function wordLines({ form, words }: Survey): readonly Line[] {
  const mechanism = mechanismOf(form.mechanism);
  const choices = mechanism.choices.flatMap(({ path, required, words: [first = ""] }): readonly Line[] => {
    const word = words.get(path.join(".")) ?? (required ? first : null);
    return word === null ? [] : [{ path: ["steering", ...path], text: word, marked: false }];
  });
  return [
    { path: ["front", "linkage"], text: form.linkage, marked: false },
    { path: ["steering", "mechanism"], text: mechanism.word, marked: false },
    ...choices,
  ];
}

/**
 * A car's text from a survey's places, three coordinates a point, mm. `known` says whether a point's coordinate was
 * measured; what was not is marked as a starting value. `heads` are comments for its top.
 */
export function carFromSurvey(
  survey: Survey,
  places: Float64Array,
  known: (point: number, axis: number) => boolean,
  heads: readonly string[],
): SurveyCar {
  const { form, units, title } = survey;
  const numbers = numbersOf(survey, places, known);
  const head = [
    ...heads.map((line) => `# ${line}`),
    `title: ${JSON.stringify(title ?? "Car from the tape")}`,
    `units: ${units}`,
    "",
  ].join("\n");
  const [linkage, mechanism, ...choices] = wordLines(survey);
  const lines = [linkage, ...linesOf(entriesOf(survey, numbers)), mechanism, ...choices].filter(
    (line) => line !== undefined,
  );
  const root = (line: Line) => (line.path[0] === "front" ? 1 : line.path[0] === "steering" ? 2 : 0);
  const within = (line: Line) => (line === linkage || line === mechanism ? 0 : line.path[1] === "both" ? 1 : 2);
  const order = (line: Line) => 3 * root(line) + within(line);
  const text = withLines(
    head,
    [...lines].sort((a, b) => order(a) - order(b)),
  );
  const assumed = quantitiesOf(form)
    .map(({ id }) => id)
    .filter((id) => numbers.get(id)?.assumed === true);
  const measured = [...startingValues({ text, form })].filter((id) => !assumed.includes(id));
  return { text: withoutMarks({ text, form }, new Set(measured)), assumed };
}
