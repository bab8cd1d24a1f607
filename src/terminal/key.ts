/** The keys that have a name of their own, whatever bytes a terminal sends for them. */
export type KeyName =
  | "up"
  | "down"
  | "left"
  | "right"
  | "home"
  | "end"
  | "pageUp"
  | "pageDown"
  | "insert"
  | "delete"
  | "backspace"
  | "enter"
  | "tab"
  | "escape"
  | "f1"
  | "f2"
  | "f3"
  | "f4"
  | "f5"
  | "f6"
  | "f7"
  | "f8"
  | "f9"
  | "f10"
  | "f11"
  | "f12"
  | "character"
  | "paste";

/**
 * One thing that the person at the keyboard did: one key, one character, or one paste.
 *
 * - `character`: `text` is one printable code point; with `ctrl` it is the letter, so Ctrl-C is
 *   `{ name: "character", text: "c", ctrl: true }`. A combining mark comes as a character of its own: to
 *   wait for the rest of a grapheme would hold back every letter.
 * - `paste`: `text` is the whole pasted text, lines parted by `\n`, without other control characters.
 * - every other name has an empty `text`.
 */
export interface Key {
  readonly name: KeyName;
  readonly text: string;
  readonly ctrl: boolean;
  readonly alt: boolean;
  readonly shift: boolean;
}

type Modifiers = Partial<Pick<Key, "ctrl" | "alt" | "shift">>;

/** A key with a name, and the modifiers held with it. */
export function named(name: KeyName, held: Modifiers = {}): Key {
  return { name, text: "", ctrl: held.ctrl ?? false, alt: held.alt ?? false, shift: held.shift ?? false };
}

/** A printable character as typed, or with `ctrl` the letter of a control key. */
export function character(text: string, held: Modifiers = {}): Key {
  return { ...named("character", held), text };
}

/** A bracketed paste. */
export function paste(text: string): Key {
  return { ...named("paste"), text };
}

/**
 * The key as one word for a table of key bindings: `q`, `?`, `space`, `enter`, `ctrl+c`, `shift+tab`, `paste`.
 * A capital letter is itself (`Q`), since what Shift makes of a key is the keyboard's business.
 */
export function chord(key: Key): string {
  const base = key.name === "character" ? (key.text === " " ? "space" : key.text) : key.name;
  return `${key.ctrl ? "ctrl+" : ""}${key.alt ? "alt+" : ""}${key.shift ? "shift+" : ""}${base}`;
}
