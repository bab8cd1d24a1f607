import type { Car } from "../car.ts";
import { endOfValue, lineStart, lineStop } from "../edits/spans.ts";
import { quantitiesOf } from "../quantities.ts";
import type { Quantity } from "../quantity.ts";
import { spotAt, type Tree } from "../tree.ts";
import { readYaml } from "../yaml.ts";

/** The comment on the line of a starting value; it names the values where it does not mean all that the line holds. */
export const mark = "# starting value: measure and correct";

/** Behind it, on the line of a wheel travel that was reckoned from a shock's lengths: assumed, yet good enough for tables. */
export const reckoned = "(reckoned by the shock's taped ratio)";

const pattern = / *# starting value(?: of ([\w.-]+(?:, [\w.-]+)*))?: measure and correct(?: \(reckoned[^)]*\))?/;

/** A car's text, and the names of its linkage and mechanism. */
interface Written {
  readonly text: string;
  readonly form: Pick<Car["form"], "linkage" | "mechanism">;
}

/** A quantity whose value stands on a line that has the comment. */
interface Marked {
  readonly quantity: Quantity;
  /** Where its value stands, which may be where both sides' does. */
  readonly path: readonly string[];
  /** Whether the comment means it. */
  readonly meant: boolean;
}

/** The line of a text that has the comment. */
interface MarkedLine {
  readonly start: number;
  readonly stop: number;
  readonly values: readonly Marked[];
}

function isNamed(path: readonly string[], names: string | undefined): boolean {
  if (names === undefined) return true;
  const whole = `.${path.join(".")}.`;
  return names.split(", ").some((name) => whole.includes(`.${name}.`));
}

function placeOf(tree: Tree, { path, shared }: Quantity) {
  for (const at of [path, shared]) {
    const node = at === null ? null : (spotAt(tree, at)?.node ?? null);
    if (at !== null && node !== null) return { path: at, node };
  }
  return null;
}

function markedLines({ text, form }: Written): readonly MarkedLine[] {
  if (!pattern.test(text)) return [];
  const tree = readYaml(text);
  if ("complaints" in tree) return [];
  const lines = new Map<number, MarkedLine>();
  for (const quantity of quantitiesOf(form)) {
    const place = placeOf(tree, quantity);
    if (place === null) continue;
    const at = endOfValue(text, place.node);
    const [start, stop] = [lineStart(text, at), lineStop(text, at)];
    const found = pattern.exec(text.slice(start, stop));
    if (found === null) continue;
    const value = { quantity, path: place.path, meant: isNamed(place.path, found[1]) };
    lines.set(start, { start, stop, values: [...(lines.get(start)?.values ?? []), value] });
  }
  return [...lines.values()];
}

const known = new WeakMap<object, ReadonlySet<string>>();

/** The ids of the quantities of a car that are starting values still: guesses that are to be measured. */
export function startingValues(car: Written): ReadonlySet<string> {
  const found = known.get(car);
  if (found !== undefined) return found;
  const marked = markedLines(car).flatMap(({ values }) => values.filter(({ meant }) => meant));
  const ids = new Set(marked.map(({ quantity }) => quantity.id));
  known.set(car, ids);
  return ids;
}

/** The shortest end of a path that no other value on the line has. */
function nameOf(path: readonly string[], others: readonly (readonly string[])[]): string {
  const whole = path.join(".");
  const ends = path.map((_, at) => path.slice(path.length - 1 - at).join("."));
  const clear = ends.find((end) => others.every((other) => other.join(".") === whole || !isNamed(other, end)));
  return clear ?? whole;
}

/** A line's comment without some of its values; nothing of it once none is left. */
function lineWithout(text: string, { start, stop, values }: MarkedLine, ids: ReadonlySet<string>): string {
  const left = values.filter(({ quantity, meant }) => meant && !ids.has(quantity.id));
  const all = values.map(({ path }) => path);
  const names = [...new Set(left.map(({ path }) => nameOf(path, all)))];
  const tail = text.slice(start, stop).includes(reckoned) ? ` ${reckoned}` : "";
  const comment = names.length === 0 ? "" : `  ${mark.replace(":", ` of ${names.join(", ")}:`)}${tail}`;
  return text.slice(0, start) + text.slice(start, stop).replace(pattern, comment) + text.slice(stop);
}

/** A car's text in which these quantities are starting values no more: they were measured, or put right. */
export function withoutMarks(car: Written, ids: ReadonlySet<string>): string {
  return markedLines(car)
    .filter(({ values }) => values.some(({ quantity, meant }) => meant && ids.has(quantity.id)))
    .sort((a, b) => b.start - a.start)
    .reduce((text, line) => lineWithout(text, line, ids), car.text);
}

/** A text with the comment at the end of the line of the value at a path; unchanged where the line has one already. */
export function withMark(text: string, path: readonly string[]): string {
  const tree = readYaml(text);
  const node = "complaints" in tree ? null : (spotAt(tree, path)?.node ?? null);
  if (node === null) return text;
  const stop = lineStop(text, endOfValue(text, node));
  const line = text.slice(lineStart(text, stop), stop);
  return line.includes(mark) ? text : `${text.slice(0, stop)}  ${mark}${text.slice(stop)}`;
}
