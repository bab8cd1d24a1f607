import type { EditLine } from "./record.ts";
import { type Splice, spliceBetween, withSplice } from "./splice.ts";

/** A car's text after an edit, and what the edit did, in a builder's words. */
export interface Step {
  readonly text: string;
  readonly what: string;
}

/** The texts that edits make one after the other. */
export function stepsOf(text: string, edits: readonly EditLine[]): readonly Step[] {
  let now = text;
  return edits.map((edit) => {
    now = withSplice(now, edit);
    return { text: now, what: edit.what };
  });
}

/** Where an edit of a text goes once the same text was changed elsewhere too; null where both are of the same lines. */
function moved(text: string, edit: Splice, theirs: Splice): Splice | null {
  const start = text.lastIndexOf("\n", theirs.at - 1) + 1;
  const lineEnd = text.indexOf("\n", theirs.at + theirs.cut);
  const end = lineEnd < 0 ? text.length : lineEnd + 1;
  if (edit.at + edit.cut < start) return edit;
  const isBehind = edit.at > end || (edit.at === end && edit.cut > 0);
  return isBehind ? { ...edit, at: edit.at + theirs.put.length - theirs.cut } : null;
}

/**
 * Edits of `base` made again on another text that came of it, as far as they are of other lines than what was changed
 * there: the texts that they make one after the other, or null where one of them is not.
 */
export function replayed(base: string, edits: readonly EditLine[], onto: string): readonly Step[] | null {
  let text = base;
  let theirs = spliceBetween(base, onto);
  const again: EditLine[] = [];
  for (const edit of edits) {
    const place = moved(text, edit, theirs);
    if (place === null) return null;
    again.push({ ...edit, at: place.at });
    // What was changed elsewhere lies further on now, if it lies behind the edit.
    if (edit.at < theirs.at) theirs = { ...theirs, at: theirs.at + edit.put.length - edit.cut };
    text = withSplice(text, edit);
  }
  return stepsOf(onto, again);
}
