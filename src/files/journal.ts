import { createHash } from "node:crypto";
import {
  closeSync,
  existsSync,
  fdatasync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  unlinkSync,
  writeSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { birthOf, isAlive } from "./alive.ts";
import { hashOf } from "./hash.ts";
import { readKept } from "./kept.ts";
import { largestFile } from "./largestFile.ts";
import { reasonOf } from "./reason.ts";
import { type EditLine, type Head, lineOf, readJournal } from "./record.ts";
import { spliceBetween } from "./splice.ts";
import { makeFolder, stateFolder } from "./state.ts";

/** Longer than this, bytes, a journal begins anew with the edits so far as one. */
const longest = 1024 * 1024;

/** Larger than any journal can have become, bytes: what is larger is none of ours. */
const absurd = 16 * longest;

/** More than this are never asked about one after the other; the older ones wait. */
const mostOffers = 20;

/** Edits that were never saved, left over from a run that ended before it could ask. */
export interface Leftover {
  /** The journal's own file. */
  readonly path: string;
  /** When the last edit was made, ms since 1970. */
  readonly when: number;
  /** What was edited, oldest first, in a builder's words. */
  readonly whats: readonly string[];
  /** The text that was edited, and the edits, each of the text that the one before left. */
  readonly base: string;
  readonly edits: readonly EditLine[];
  /** The car's text with all of it. */
  readonly text: string;
  /** True when the car's file is no longer what the edits started from. */
  readonly stale: boolean;
}

/** What is known of a car's journals when it is opened. */
export interface Leftovers {
  /** Newest first. */
  readonly offers: readonly Leftover[];
  /** How many other running copies of the program have the car open. */
  readonly openElsewhere: number;
  /** The files that should hold some but cannot be read. */
  readonly unread: readonly string[];
}

function folderOf(environment?: NodeJS.ProcessEnv): string | null {
  const state = stateFolder(environment);
  return state === null ? null : join(state, "journals");
}

/** One car, one name, by whatever path it was opened. */
function nameOf(car: string): string {
  let whole = car;
  try {
    whole = realpathSync(car);
  } catch {
    // A new car has no file yet; its word is its name.
  }
  return createHash("sha256").update(whole).digest("hex").slice(0, 20);
}

/** Where a journal is being written. */
interface Open {
  readonly path: string;
  readonly file: number;
  readonly size: number;
}

function written(file: number, at: number, content: string): number {
  const bytes = Buffer.from(content);
  for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done, bytes.length - done, at + done);
  return at + bytes.length;
}

/**
 * Keeps the edits of one car that is being worked on. Each edit is in its file before record() returns, so that the
 * program's own end cannot lose it, and is then brought to the disk against a power cut without being waited for.
 */
export class Journal {
  readonly #car: string;
  readonly #environment: NodeJS.ProcessEnv;
  /** What is on disk as the car, from which the edits start. */
  #base: string;
  #text: string;
  #edits = 0;
  #open: Open | null = null;
  #syncing = false;

  /** `car` is its file's whole path, or a word for a new car; `text` what is on disk of it. */
  constructor(car: string, text: string, environment: NodeJS.ProcessEnv = process.env) {
    this.#car = car;
    this.#base = text;
    this.#text = text;
    this.#environment = environment;
  }

  /** The journal's own file; null while there is nothing to keep. */
  get path(): string | null {
    return this.#open?.path ?? null;
  }

  /** A journal's file with these lines, put in the place of the one before in one step. */
  #begin(folder: string, lines: readonly EditLine[]): Open {
    makeFolder(folder);
    const { pid } = process;
    const began = Date.now();
    const path = this.#open?.path ?? join(folder, `${nameOf(this.#car)}-${pid}-${began.toString(36)}.journal`);
    const text = this.#base;
    const head: Head = { format: 1, car: this.#car, base: hashOf(text), text, pid, birth: birthOf(pid), began };
    // Nothing that stands there by this name, a link to another file least of all, is written into.
    discardLeftover(`${path}.new`);
    const file = openSync(`${path}.new`, "wx", 0o600);
    try {
      const size = written(file, 0, [head, ...lines].map(lineOf).join(""));
      renameSync(`${path}.new`, path);
      if (this.#open !== null) closeSync(this.#open.file);
      return { path, file, size };
    } catch (error) {
      closeSync(file);
      discardLeftover(`${path}.new`);
      throw error;
    }
  }

  #sync(file: number): void {
    if (this.#syncing) return;
    this.#syncing = true;
    fdatasync(file, () => {
      this.#syncing = false;
    });
  }

  /**
   * Keeps an edit: the car's text after it, and what it did in a builder's words. Gives back null, or why it could not be
   * kept, as the whole of a sentence; the edits before it are kept all the same.
   */
  record(text: string, what: string): string | null {
    const line: EditLine = { ...spliceBetween(this.#text, text), what };
    const folder = this.#open === null ? folderOf(this.#environment) : dirname(this.#open.path);
    if (folder === null) return "Unsaved edits cannot be kept safe: there is no folder for them.";
    try {
      if (this.#open === null || this.#open.size > longest) {
        const before = { ...spliceBetween(this.#base, this.#text), what: `${this.#edits} edits before` };
        this.#open = this.#begin(folder, this.#edits === 0 ? [line] : [before, line]);
      } else this.#open = { ...this.#open, size: written(this.#open.file, this.#open.size, lineOf(line)) };
      this.#text = text;
      this.#edits += 1;
      this.#sync(this.#open.file);
      return null;
    } catch (error) {
      return `Unsaved edits cannot be kept safe: ${reasonOf(error)}.`;
    }
  }

  /** The car's file now holds `text`, and nothing is unsaved: what was kept goes, and further edits start from there. */
  saved(text: string): void {
    this.close();
    this.#base = text;
    this.#text = text;
  }

  /** Nothing is left that is worth keeping: the car was saved, or its edits were given up. */
  close(): void {
    this.#edits = 0;
    if (this.#open === null) return;
    const { path, file } = this.#open;
    this.#open = null;
    discardLeftover(path);
    closeSync(file);
  }
}

function leftoverAt(path: string, hash: string): Leftover | "open" | "unread" | null {
  const kept = readKept(path, absurd);
  const found = kept === null ? null : readJournal(kept.text);
  if (kept === null || found === null || found.head.text.length > largestFile || found.text.length > largestFile)
    return existsSync(path) ? "unread" : null;
  if (isAlive(found.head.pid, found.head.birth)) return found.head.pid === process.pid ? null : "open";
  const { whats, edits, text, head } = found;
  return { path, when: kept.when, whats, base: head.text, edits, text, stale: head.base !== hash };
}

/**
 * What earlier runs left unsaved of a car whose file now holds `text`. Journals of copies that still run are left alone;
 * those with no edit in them, or whose edits came to nothing, are cleared away.
 */
export function findLeftovers(car: string, text: string, environment?: NodeJS.ProcessEnv): Leftovers {
  const folder = folderOf(environment);
  const paths = folder === null ? [] : journalsIn(folder, car);
  const found = paths.map((path) => leftoverAt(path, hashOf(text)));
  const left = found.filter((each) => each !== null && typeof each !== "string");
  for (const each of left) if (each.text === text || each.whats.length === 0) discardLeftover(each.path);
  const worth = left.filter((each) => each.text !== text && each.whats.length > 0);
  return {
    offers: worth.sort((a, b) => b.when - a.when).slice(0, mostOffers),
    openElsewhere: found.filter((each) => each === "open").length,
    unread: paths.filter((_, i) => found[i] === "unread"),
  };
}

/** The journals of one car. Where there is none at all, its name is not worked out: that loads Node's cryptography. */
function journalsIn(folder: string, car: string): readonly string[] {
  try {
    const journals = readdirSync(folder).filter((file) => file.endsWith(".journal"));
    if (journals.length === 0) return [];
    const name = nameOf(car);
    return journals.filter((file) => file.startsWith(`${name}-`)).map((file) => join(folder, file));
  } catch {
    return [];
  }
}

/** Clears a journal away: its edits were taken back, or turned down by the builder. */
export function discardLeftover(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // Gone already.
  }
}
