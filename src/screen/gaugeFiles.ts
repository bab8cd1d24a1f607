import { loadText } from "../files/load.ts";
import { newFile, pathOf } from "../files/save.ts";
import { loadSheet, sheetNames } from "../files/sheets.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import type { Message } from "./turn.ts";

/** A file of readings on a built car, or an example of one where there is no such file; or why it cannot be had. */
export async function openGauges(name: string): Promise<Message> {
  const path = pathOf(name);
  const file = loadText(path);
  const loaded = "complaints" in file && sheetNames("readings").includes(name) ? loadSheet("readings", name) : file;
  if ("complaints" in loaded)
    return { is: "failed", words: `${path}: ${loaded.complaints[0]?.message ?? "not read"}.` };
  if (mayHoldProducts(loaded.text)) await prepareProducts();
  return { is: "gaugesOpened", name, text: loaded.text, isExample: loaded !== file };
}

/** Writes readings to a file that is not there yet, or says why not. */
export function writeGauges(path: string, text: string): Message {
  const made = newFile(path, text);
  if (made.saved) return { is: "gaugesWritten", path: made.path };
  if ("complaint" in made) return { is: "failed", words: `${path} ${made.complaint}.` };
  return { is: "failed", words: `There is a file ${path} already: type another name.` };
}
