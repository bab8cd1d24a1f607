import {
  chmodSync,
  chownSync,
  closeSync,
  fsyncSync,
  linkSync,
  openSync,
  readdirSync,
  renameSync,
  type Stats,
  statSync,
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

/** What the names of a file's drafts begin with. */
const draftOf = (path: string) => `.${basename(path).slice(0, 100)}.`;

/** A name beside a file for what is to become it. */
function besideOf(path: string): string {
  return join(dirname(path), `${draftOf(path)}${process.pid}.${Date.now().toString(36)}.new`);
}

/** How long a draft may belong to a save that is under way, on another computer too where the drive is a network's, ms. */
const longestSave = 24 * 60 * 60 * 1000;

/** Removes what saves of a file left beside it that were killed on the way. Nothing hangs on it. */
function clearDrafts(path: string): void {
  const [folder, start] = [dirname(path), draftOf(path)];
  try {
    for (const name of readdirSync(folder)) {
      if (!name.startsWith(start) || !/^\d+\.[0-9a-z]+\.new$/.test(name.slice(start.length))) continue;
      const draft = join(folder, name);
      if (Date.now() - statSync(draft).mtimeMs > longestSave) clear(draft);
    }
  } catch {
    // What cannot be looked at stays.
  }
}

/** Whether a file is still as it was looked at. What else tells files apart is not the same twice on some drives of a network. */
function isStill(path: string, { size, mtimeMs }: Stats): boolean {
  const now = statSync(path, { throwIfNoEntry: false });
  return now?.size === size && now.mtimeMs === mtimeMs;
}

/**
 * Writes a file whole or not at all: a new file beside it is filled, brought to the disk and put in its place by one
 * rename. `like` is the file that it replaces, whose mode and owner it takes; gives false, and has changed nothing, where
 * that was written or replaced meanwhile: a slow disk takes seconds to fill the new one. Throws what the system throws; then
 * nothing has changed either.
 */
export function replaceFile(path: string, text: string, like: Stats): boolean {
  const beside = besideOf(path);
  try {
    fill(beside, text, like);
    if (isStill(path, like)) {
      renameSync(beside, path);
      clearDrafts(path);
      return true;
    }
  } catch (error) {
    clear(beside);
    throw error;
  }
  clear(beside);
  return false;
}

/**
 * Gives a filled file its own name, unless there is a file of that name. On a disk that knows no second names, as that of a
 * stick, the name is taken by an empty file first, so that what it stands for is nothing or the whole.
 */
function giveName(beside: string, path: string): void {
  try {
    linkSync(beside, path);
    return;
  } catch (error) {
    if (codeOf(error) === "EEXIST") throw error;
  }
  closeSync(openSync(path, "wx"));
  try {
    renameSync(beside, path);
  } catch (error) {
    clear(path);
    throw error;
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
