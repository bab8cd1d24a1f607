import { accessSync, constants, lstatSync, readFileSync, realpathSync, type Stats, statSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join, relative, resolve } from "node:path";
import { presetsFolder } from "./examples.ts";
import { hashOf } from "./hash.ts";
import { largestFile } from "./largestFile.ts";
import { codeOf, reasonOf } from "./reason.ts";
import { createFile, replaceFile } from "./write.ts";

/** How a save went. */
export type Saved =
  | { readonly saved: true; readonly path: string; readonly hash: string }
  /** Nothing was written, and why. */
  | { readonly saved: false; readonly complaint: string }
  /**
   * Nothing was written yet: the file is there though a new one was meant ("exists"), or it is no longer what was loaded
   * ("changed"), or it is gone ("gone"). To write all the same, save again with what was `found`.
   */
  | { readonly saved: false; readonly ask: "exists" | "changed" | "gone"; readonly found: string | null };

function refused(complaint: string): Saved {
  return { saved: false, complaint };
}

/**
 * The whole path that a builder means by a name: ~ is his own folder, and a name that is not .yaml or .yml gets it, unless a
 * folder has that name.
 */
export function pathOf(typed: string): string {
  const name = typed.trim();
  const whole = name === "~" || name.startsWith("~/") ? join(homedir(), name.slice(1)) : resolve(name);
  const isWhole = /\.ya?ml$/i.test(whole) || /(^|\/)\.{0,2}$/.test(name) || name === "~" || isFolder(whole);
  return isWhole ? whole : `${whole}.yaml`;
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function isInside(path: string, folder: string): boolean {
  const between = relative(folder, path);
  return between === "" || !(between.startsWith("..") || between === resolve(between));
}

function isPreset(path: string): boolean {
  const presets = presetsFolder();
  try {
    return presets !== null && isInside(join(realpathSync(dirname(path)), "x"), realpathSync(presets));
  } catch {
    return false;
  }
}

interface Target {
  /** Where the file itself is, links followed. */
  readonly path: string;
  readonly stats: Stats | null;
}

/** Where a path leads, or why nothing can be saved there. */
function targetOf(path: string): Target | string {
  const real = realpathOf(path);
  if (real === null) return "it is a link to a file that is not there";
  if (isPreset(real)) return "example cars cannot be changed: save it under another name, in another folder";
  const stats = statsOf(real);
  if (stats === null) return { path: real, stats };
  if (stats.isDirectory()) return "it is a folder: give the name of a file in it";
  if (!stats.isFile()) return "it is a device or a pipe, not a file";
  if ((stats.mode & 0o222) === 0) return "the file is write-protected";
  accessSync(real, constants.W_OK);
  return { path: real, stats };
}

function statsOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return null;
    throw error;
  }
}

/** A path with its links followed; itself when nothing is there yet; null when it is a link to nothing. */
function realpathOf(path: string): string | null {
  try {
    return realpathSync(path);
  } catch (error) {
    if (codeOf(error) !== "ENOENT") throw error;
  }
  try {
    return lstatSync(path).isSymbolicLink() ? null : path;
  } catch {
    return path;
  }
}

/** What a file holds just now, as a fingerprint; null where there is none. */
function hashOnDisk({ path, stats }: Target): string | null {
  if (stats === null) return null;
  return stats.size > largestFile ? `${stats.size} bytes` : hashOf(readFileSync(path, "utf8"));
}

function differs(known: string | null, found: string | null): "exists" | "changed" | "gone" | null {
  if (known === found) return null;
  if (known === null) return "exists";
  return found === null ? "gone" : "changed";
}

function save(path: string, text: string, known: string | null): Saved {
  const target = targetOf(path);
  if (typeof target === "string") return refused(target);
  const found = hashOnDisk(target);
  const ask = differs(known, found);
  if (ask !== null) return { saved: false, ask, found };
  if (target.stats === null) createFile(target.path, text);
  // Someone else wrote it in the meantime: whoever saves is asked by what is there now.
  else if (!replaceFile(target.path, text, target.stats)) return save(path, text, known);
  return { saved: true, path: resolve(path), hash: hashOf(text) };
}

/**
 * Saves a car whole or not at all. `known` is the fingerprint of what the file held when it was loaded or last saved, null
 * for a file that is not to be there yet; where the disk has something else, nothing is written and the answer says so.
 * Links are followed, the file's mode and owner are kept, and example cars are never written. Never throws.
 */
export function saveText(path: string, text: string, known: string | null): Saved {
  if (path.trim() === "") return refused("cannot be saved: no file is named");
  if (/(^|[\\/])\.ya?ml$/i.test(path)) return refused("cannot be saved: a name is missing before its .yaml");
  try {
    const saved = save(path, text, known);
    return "complaint" in saved ? refused(`cannot be saved: ${saved.complaint}`) : saved;
  } catch (error) {
    if (codeOf(error) === "ENOENT") return refused("cannot be saved: the folder it should be in is not there");
    return refused(`cannot be saved: ${reasonOf(error)}`);
  }
}

/** Whether something has a path's name already. Never throws: what cannot be looked at is not there. */
export function isTaken(path: string): boolean {
  try {
    lstatSync(path);
    return true;
  } catch {
    return false;
  }
}

/** Writes a new car file; one that is there already is never touched. Never throws. */
export function newFile(path: string, text: string): Saved {
  const saved = saveText(path, text, null);
  if (saved.saved || "complaint" in saved) return saved;
  return refused("cannot be made: there is a file of that name already");
}
