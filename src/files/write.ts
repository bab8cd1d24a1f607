import {
  chmodSync,
  chownSync,
  closeSync,
  constants,
  copyFileSync,
  fsyncSync,
  linkSync,
  openSync,
  renameSync,
  type Stats,
  unlinkSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { codeOf } from "./reason.ts";

/** What a new file may be done with, before the user's own mask. */
const usualMode = 0o666;

/** A user who may not give files away, or a disk without owners, keeps what was saved as his own. */
function keepOwner(path: string, { uid, gid }: Stats): void {
  try {
    chownSync(path, uid, gid);
  } catch {
    // The save itself is whole, and that is what counts.
  }
}

function fill(path: string, data: string | Uint8Array, like: Stats | null): void {
  const file = openSync(path, "wx", like === null ? usualMode : 0o600);
  try {
    writeFileSync(file, data);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  if (like === null) return;
  keepOwner(path, like);
  chmodSync(path, like.mode);
}

/** Removes a file of which it does not matter whether it was there. */
function clear(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // It was not there, or the disk that failed the save also fails this; the save's own error is the one to tell.
  }
}

/** A name beside a file for what is to become it. */
function besideOf(path: string): string {
  return join(dirname(path), `.${basename(path).slice(0, 100)}.${process.pid}.${Date.now().toString(36)}.new`);
}

/**
 * Writes a file whole or not at all: a new file beside it is filled, brought to the disk and put in its place by one
 * rename. `like` is the file that it replaces, whose mode and owner it takes. Throws what the system throws; then
 * nothing has changed.
 */
export function replaceFile(path: string, text: string, like: Stats): void {
  const beside = besideOf(path);
  try {
    fill(beside, text, like);
    renameSync(beside, path);
  } catch (error) {
    clear(beside);
    throw error;
  }
}

/** Gives a filled file its own name too, unless there is a file of that name. Disks that know no second names get a copy. */
function giveName(beside: string, path: string): void {
  try {
    linkSync(beside, path);
  } catch (error) {
    if (codeOf(error) === "EEXIST") throw error;
    copyFileSync(beside, path, constants.COPYFILE_EXCL);
  }
}

/** Writes a file that must not be there yet, whole or not at all. Throws EEXIST when it is there, and then leaves it alone. */
export function createFile(path: string, data: string | Uint8Array): void {
  const beside = besideOf(path);
  try {
    fill(beside, data, null);
    giveName(beside, path);
  } finally {
    clear(beside);
  }
}
