import { readdirSync } from "node:fs";
import { relative, resolve } from "node:path";
import { findLeftovers } from "../files/journal.ts";
import { loadText } from "../files/load.ts";
import { begunFrom, listPresets, loadPreset } from "../files/presets.ts";
import { listSheets } from "../files/sheets.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { kindOf } from "../vehicle/file-kind.ts";
import { readCar } from "../vehicle/read.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import type { Choice, Source } from "./model.ts";
import { offerOf } from "./recovery.ts";
import type { Opened } from "./turn.ts";

/** A car's own word among the kept unsaved changes: its file's whole path, or the example that it began as. */
export function journalName(source: Source): string {
  return source.from === "file" ? resolve(source.path) : `new car from ${source.id}`;
}

/** All that is wrong with a file that is no car, each in a sentence with its place, the first in the file first. */
export interface Unopened {
  readonly complaints: readonly string[];
}

/** All that is wrong with a file of that name. */
export function unopened(name: string, complaints: readonly Complaint[]): Unopened {
  const words = complaints.map(({ line, part, message }) => {
    const place = line === null ? "" : `, line ${line}`;
    return `${name}${place}: ${part === "" ? "" : `${part}: `}${message}.`;
  });
  return { complaints: words };
}

/** The same where there is room for little: the first of them, and how many more there are. */
export function shortly({ complaints: [first = "This is no car file.", ...others] }: Unopened): string {
  return others.length === 0 ? first : `${first.slice(0, -1)} (and ${others.length} more).`;
}

/** Opens a car file, or an example as a new car; or why it cannot be opened. */
export async function openCar(source: Source, env: NodeJS.ProcessEnv): Promise<Opened | Unopened> {
  const name = source.from === "file" ? source.path : source.id;
  const loaded: ReturnType<typeof loadText> | ReturnType<typeof loadPreset> =
    source.from === "file" ? loadText(source.path) : loadPreset(source.id);
  if ("complaints" in loaded) return unopened(name, loaded.complaints);
  const text = "name" in loaded ? begunFrom(loaded) : loaded.text;
  if (mayHoldProducts(text)) await prepareProducts();
  const car = readCar(text);
  if ("complaints" in car) return unopened(name, car.complaints);
  const { offers, openElsewhere, unread } = findLeftovers(journalName(source), text, env);
  return {
    source,
    car,
    hash: "hash" in loaded ? loaded.hash : null,
    offers: await Promise.all(offers.map((offer) => offerOf(offer, car))),
    remark: remarkOn(openElsewhere, unread),
  };
}

function remarkOn(openElsewhere: number, unread: readonly string[]): string | null {
  const [first] = unread;
  const more = unread.length > 1 ? ` (and ${unread.length - 1} more)` : "";
  const said = [
    openElsewhere === 0
      ? []
      : "This car is also open in another window: whichever saves second is asked before it writes over the other.",
    first === undefined
      ? []
      : `Unsaved changes of this car were kept, but cannot be read: ${first}${more}. They stay there until you delete them.`,
  ].flat();
  return said.length === 0 ? null : said.join(" ");
}

/** What a file in the folder is opened as: a sheet of readings that makes a car is none itself. */
function choiceOf(path: string, name: string, where: string): Choice | null {
  const loaded = loadText(path);
  const kind = "text" in loaded ? kindOf(loaded.text) : null;
  if (kind === "readings") return null;
  const source = { from: "file", path } as const;
  if (kind === "survey") return { sheet: source, name, about: `readings between points, ${where}` };
  if (kind === "from-tape") return { sheet: source, name, about: `the short list of readings, ${where}` };
  return { source, name, about: where };
}

/** What can be opened: cars of this folder, its sheets of readings that make one, then the examples of both. */
export function listCars(folder: string): readonly Choice[] {
  const where = `in ${relative("..", folder) || folder}`;
  const files = carFilesIn(folder).flatMap((name) => choiceOf(resolve(folder, name), name, where) ?? []);
  const examples = listPresets().map(({ name, title }) => ({
    source: { from: "preset", id: name } as const,
    name,
    about: title,
  }));
  const sheets = listSheets("sheets").map(({ name, title }) => ({
    sheet: { from: "example", name } as const,
    name,
    about: `${title} (readings between points)`,
  }));
  const isSheet = (each: Choice) => "sheet" in each;
  return [...files.filter((each) => !isSheet(each)), ...files.filter(isSheet), ...examples, ...sheets];
}

function carFilesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
      .filter((name) => /\.ya?ml$/i.test(name) && !name.startsWith("."))
      .sort();
  } catch {
    return [];
  }
}
