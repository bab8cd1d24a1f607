import * as z from "zod/mini";
import { type Splice, withSplice } from "./splice.ts";

/** The first line of a journal: which car, what it held when the journal began, and who writes it. */
export interface Head {
  readonly format: 1;
  /** What the car was opened from: a file's whole path, or a word for a new car. */
  readonly car: string;
  /** The fingerprint of the text on disk that the edits started from. */
  readonly base: string;
  /** That text itself, so that the edits can be given back whatever became of the file. */
  readonly text: string;
  readonly pid: number;
  readonly birth: string;
  /** When it began, ms since 1970. */
  readonly began: number;
}

/** Every other line: one edit. */
export interface EditLine extends Splice {
  /** What it did, in a builder's words. */
  readonly what: string;
}

const head = z.strictObject({
  format: z.literal(1),
  car: z.string(),
  base: z.string(),
  text: z.string(),
  pid: z.int().check(z.positive()),
  birth: z.string(),
  began: z.number(),
});

const edit = z.strictObject({ at: z.int(), cut: z.int(), put: z.string(), what: z.string() });

/** A journal's lines read back: what was edited, and the text after the last whole edit. */
export interface Journaled {
  readonly head: Head;
  /** What was edited, oldest first, in a builder's words. */
  readonly whats: readonly string[];
  /** The edits themselves: each is of the text that the one before left. */
  readonly edits: readonly EditLine[];
  readonly text: string;
}

/** One line of a journal, its line break included. */
export function lineOf(content: Head | EditLine): string {
  return `${JSON.stringify(content)}\n`;
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

/** So many characters are gone through at most, for all edits together: some ten seconds. Journals begin anew long before. */
const most = 4e9;

/**
 * Reads a journal; null when it is none, or would take too long. A last line that was torn off in the middle is left out, and
 * all after a bad one.
 */
export function readJournal(content: string, atMost = most): Journaled | null {
  const [first = "", ...rest] = content.split("\n").slice(0, -1);
  const begun = head.safeParse(parsed(first));
  if (!begun.success) return null;
  let text = begun.data.text;
  let through = 0;
  const edits: EditLine[] = [];
  for (const line of rest) {
    const next = edit.safeParse(parsed(line));
    if (!next.success || next.data.at + next.data.cut > text.length || next.data.at < 0 || next.data.cut < 0) break;
    text = withSplice(text, next.data);
    through += text.length;
    if (through > atMost) return null;
    edits.push(next.data);
  }
  return { head: begun.data, whats: edits.map(({ what }) => what), edits, text };
}
