import { existsSync, mkdirSync, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { codeOf, reasonOf } from "./reason.ts";
import { createFile } from "./write.ts";

/** A file to be made in a folder: text, or the bytes of a document. */
export interface NewDocument {
  readonly name: string;
  readonly data: string | Uint8Array;
}

/**
 * Makes a folder with all that it lies in; true where it was not there. Node's own way to make them all goes round for ever
 * where a folder that is there lets none be made in it and says that it is not there, as /proc does.
 */
function madeFolder(path: string): boolean {
  try {
    mkdirSync(path);
    return true;
  } catch (error) {
    const code = codeOf(error);
    if (code === "EEXIST" && statSync(path).isDirectory()) return false;
    const above = dirname(path);
    if (code !== "ENOENT" || above === path || existsSync(above)) throw error;
    madeFolder(above);
    mkdirSync(path);
    return true;
  }
}

/**
 * Writes documents to a folder, which is made where it is not there. Nothing is written over: where one of the names is
 * taken, none is written. Each file is written whole or not at all.
 *
 * @returns a complaint, or whether the folder was made for them
 */
export function writeDocuments(
  folder: string,
  documents: readonly NewDocument[],
): { readonly isNew: boolean } | { readonly complaint: string } {
  const taken = documents.map(({ name }) => join(folder, name)).filter((path) => existsSync(path));
  if (taken.length > 0) {
    const more = taken.length > 1 ? `, and ${taken.length - 1} more` : "";
    return {
      complaint: `${taken[0]} is there already${more}: nothing was written. Name another folder, or remove what is old`,
    };
  }
  try {
    const isNew = madeFolder(resolve(folder));
    for (const { name, data } of documents) createFile(join(folder, name), data);
    return { isNew };
  } catch (error) {
    const complaints: Readonly<Record<string, string>> = {
      EEXIST: `${folder} can't be made a folder: a file has its name`,
      ENOENT: `${folder} can't be made: the system lets no folder be made there. Name one in your own folders`,
    };
    return { complaint: complaints[codeOf(error)] ?? `${folder}: ${reasonOf(error)}` };
  }
}
