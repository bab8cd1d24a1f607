import { loadText } from "../files/load.ts";
import { loadSheet, type SheetKind, sheetNames } from "../files/sheets.ts";
import { printable } from "../output/printable.ts";
import { nearest } from "../vehicle/nearest.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { isCar, isNamed, refusal } from "./car.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";

/** A sheet's text, and what the sheet is called. */
export interface SheetText {
  readonly text: string;
  readonly source: string;
}

/** The text of the sheet that a name stands for. A file of that name wins over an example. Ends the command where there is none. */
export async function sheetText(desk: Desk, kind: SheetKind, name: string): Promise<SheetText> {
  const file = loadText(name);
  const isExample = "complaints" in file && sheetNames(kind).includes(name);
  if ("complaints" in file && !isExample && name !== "" && !isNamed(name)) throw nothingCalled(kind, name);
  const loaded = isExample ? loadSheet(kind, name) : file;
  const source = printable(name);
  if ("complaints" in loaded) throw refusal(source, loaded.complaints);
  if (isExample) desk.note(`note: the example sheet "${source}"; there is no file of that name here.`);
  if (mayHoldProducts(loaded.text)) await prepareProducts();
  return { text: loaded.text, source };
}

const kinds: Readonly<Record<SheetKind, string>> = {
  sheets: "tape sheet",
  readings: "file of readings on a built car",
};

function nothingCalled(kind: SheetKind, name: string): Ended {
  const [said, what, all] = [printable(name), kinds[kind], sheetNames(kind)];
  if (isCar(name)) return new Ended(Exit.badInput, `"${said}" is a car, not a ${what}. ${listOf(all)}`);
  const meant = nearest(name, all);
  const advice = meant === null ? listOf(all) : `Did you mean "${meant}"?`;
  return new Ended(Exit.badInput, `there is no file "${said}", and no example of a ${what} of that name. ${advice}`);
}

function listOf(names: readonly string[]): string {
  return `The examples are:\n${names.map((each) => `  ${each}`).join("\n")}`;
}
