import { type Draft, keepDraft, readDraft } from "../files/draft.ts";
import { hashOf } from "../files/hash.ts";
import { loadText } from "../files/load.ts";
import { saveText } from "../files/save.ts";
import { loadSheet } from "../files/sheets.ts";
import { grownText, ofShortList } from "../vehicle/survey/grow.ts";
import { rowsOf } from "../vehicle/survey/rows.ts";
import { isBlank } from "../vehicle/survey/survey.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { type Unopened, unopened } from "./files.ts";
import type { SheetOnBench, SheetSource } from "./model.ts";
import type { KeptSheet, Message } from "./turn.ts";

/** Keeps the sheet of the form until it is thrown away; null throws it away. Gives a complaint, or null. */
export function keepSheet(sheet: SheetOnBench | null, env: NodeJS.ProcessEnv): string | null {
  return keepDraft(sheet === null ? null : draftOf(sheet), env, "survey");
}

function draftOf({ text, file, car, known }: SheetOnBench): Draft {
  return { sheet: text, file, car, ...(known === null ? {} : known) };
}

/**
 * Gives the sheet of a form that was left; null where there is none, or none that can be read. At once, but for one whose
 * lengths need the large reader.
 */
export function keptSheet(env: NodeJS.ProcessEnv, take: (kept: KeptSheet | null) => void): void {
  const draft = readDraft(env, "survey");
  const give = () => take(draft === null ? null : sheetIn(draft));
  if (mayHoldProducts(draft?.sheet ?? "")) prepareProducts().then(give, give);
  else give();
}

function sheetIn({ sheet: text = "", file = "", car = "", path, hash }: Draft): KeptSheet | null {
  const rows = rowsOf(text);
  if ("complaints" in rows) return null;
  const known = path === undefined || hash === undefined ? null : { path, hash };
  return { text, file, car, known, isSafe: isBlank(rows.survey) || hashOf(text) === known?.hash };
}

/** A sheet from its file or an example of one; a short list counts for what it says of points. */
export async function openSheet(source: SheetSource): Promise<KeptSheet | Unopened> {
  const name = source.from === "file" ? source.path : source.name;
  const loaded = source.from === "file" ? loadText(source.path) : loadSheet("sheets", source.name);
  if ("complaints" in loaded) return unopened(name, loaded.complaints);
  if (mayHoldProducts(loaded.text)) await prepareProducts();
  const grown = grownText(loaded.text, ofShortList);
  const text = grown ?? loaded.text;
  const rows = rowsOf(text);
  if ("complaints" in rows) return unopened(name, rows.complaints);
  // Neither an example nor a short list is written over by what is made of it.
  const known = grown === null && "path" in loaded ? { path: loaded.path, hash: loaded.hash } : null;
  return { text, file: known === null ? "" : known.path, car: "", known, isSafe: true };
}

/** Writes a sheet to its file, or says why not. */
export function writeSheet(path: string, text: string, known: string | null): Message {
  const outcome = saveText(path, text, known);
  if (outcome.saved) return { is: "sheetWritten", path: outcome.path, text, hash: outcome.hash };
  if ("complaint" in outcome) return { is: "failed", words: `${path} ${outcome.complaint}.` };
  if (outcome.ask === "gone") return writeSheet(path, text, null);
  const what = outcome.ask === "exists" ? "There is a file" : "Someone else has changed the file";
  return { is: "failed", words: `${what} ${path}${outcome.ask === "exists" ? " already" : ""}: type another name.` };
}
