import type { FieldCursor } from "./fieldCursor.ts";
import { encodeForInk } from "./inkKey.ts";
import type { InkKeyboard } from "./inkStreams.ts";
import type { Key } from "./key.ts";

/** Turns of the event loop that React needs to have done all of its work, a field's listener and its cursor among it. */
const turnsAfterChange = 3;

/**
 * Types keys on Ink's keyboard. React does a part of its work in turns that are queued behind the session's: one is left to it
 * before a key is typed and one after, and more where something was drawn before, or between the moves of a cursor.
 */
export interface InkTyping {
  /** True while a key waits, or React has turns to come: nothing else is done meanwhile. */
  isBusy(): boolean;
  /** A key to be typed; `hasChanged` where the field was drawn anew for it. */
  take(key: Key, hasChanged: boolean): void;
  /** One turn: left to React, or the next of what is to be typed. True where something was typed. */
  turn(): boolean;
}

export function inkTyping(keyboard: InkKeyboard, cursor: FieldCursor): InkTyping {
  let waiting: Key | undefined;
  /** What is still to be typed of the key that Ink is taking. */
  let chunks: readonly string[] = [];
  let turns = 0;
  return {
    isBusy: () => turns > 0 || waiting !== undefined || chunks.length > 0,
    take(key, hasChanged) {
      waiting = key;
      turns = hasChanged ? turnsAfterChange : 1;
    },
    turn() {
      if (turns > 0) {
        turns -= 1;
        return false;
      }
      if (waiting !== undefined) chunks = encodeForInk(waiting, cursor);
      waiting = undefined;
      const [chunk, ...rest] = chunks;
      chunks = rest;
      turns = rest.length > 0 ? turnsAfterChange : 1;
      if (chunk !== undefined) keyboard.type(chunk);
      return true;
    },
  };
}
