import { existsSync } from "node:fs";
import { relative } from "node:path";
import { pathOf } from "../files/save.ts";

/** Where to write: the name as it stands when there is something of that name, which will then be refused. */
export function target(file: string): string {
  return file.trim() === "" || existsSync(file) ? file : pathOf(file);
}

/** A path as short as it can be said from here. */
export function shortest(path: string): string {
  const fromHere = relative(process.cwd(), path);
  return fromHere.startsWith("..") ? path : fromHere;
}

/** A path as a shell takes it for one word. */
export function quoted(path: string): string {
  return /^[\w./~@%+=:,-]+$/.test(path) ? path : `"${path.replace(/(["\\$`])/g, "\\$1")}"`;
}
