import { loadText } from "../files/load.ts";
import { loadSheet, type SheetFolder, sheetNames } from "../files/sheets.ts";
import { printable } from "../output/printable.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { refusal } from "./car.ts";
import type { Desk } from "./desk.ts";

/** A sheet's text, and what the sheet is called. */
export interface SheetText {
  readonly text: string;
  readonly source: string;
}

/** The text of the sheet that a name stands for. A file of that name wins over an example. Ends the command where there is none. */
export async function sheetText(desk: Desk, folder: SheetFolder, name: string): Promise<SheetText> {
  const file = loadText(name);
  const isExample = "complaints" in file && sheetNames(folder).includes(name);
  const loaded = isExample ? loadSheet(folder, name) : file;
  const source = printable(name);
  if ("complaints" in loaded) throw refusal(source, loaded.complaints);
  if (isExample) desk.note(`note: the example sheet "${source}"; there is no file of that name here.`);
  if (mayHoldProducts(loaded.text)) await prepareProducts();
  return { text: loaded.text, source };
}
