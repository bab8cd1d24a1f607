import { existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { codeOf, reasonOf } from "./reason.ts";
import { createFile } from "./write.ts";

/** A file to be made in a folder: text, or the bytes of a document. */
export interface NewDocument {
  readonly name: string;
  readonly data: string | Uint8Array;
}

/**
 * Writes documents to a folder, which is made where it is not there. Nothing is written over: where one of the names is
 * taken, none is written. Each file is written whole or not at all.
 *
 * @returns a complaint, or null when all are written
 */
export function writeDocuments(folder: string, documents: readonly NewDocument[]): string | null {
  const taken = documents.map(({ name }) => join(folder, name)).filter((path) => existsSync(path));
  if (taken.length > 0)
    return `${taken[0]} is there already${taken.length > 1 ? `, and ${taken.length - 1} more` : ""}: nothing was written. Name another folder, or remove what is old`;
  try {
    mkdirSync(folder, { recursive: true });
    for (const { name, data } of documents) createFile(join(folder, name), data);
  } catch (error) {
    return codeOf(error) === "EEXIST"
      ? `${folder} can't be made a folder: a file has its name`
      : `${folder}: ${reasonOf(error)}`;
  }
  return null;
}
