/**
 * Characters that act instead of showing: they move a terminal's cursor, change its colours, end a line or turn it round, so
 * that it reads otherwise than it is. A name from a stranger's file may hold them.
 */
const acting = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\uffff]/gu;

/** A line with nothing in it but what is seen: what would act is written out. */
export function printable(line: string): string {
  return line.replace(acting, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}

/** The same of a text of several lines, which it keeps. */
export function printableText(text: string): string {
  return text.split("\n").map(printable).join("\n");
}

/** The same of JSON, whose own escapes lose nothing: outside of its texts it has none of these but line ends. */
export function printableJson(json: string): string {
  return json.replace(acting, (character) =>
    character === "\n" ? character : `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}

/**
 * The same text for a terminal or a printer that knows ASCII only, character for character, so that columns and line ends
 * stay: a degree sign is a `d`, as on the screen. What it cannot write is a question mark.
 */
export function toAscii(text: string): string {
  return text
    .replaceAll("°", "d")
    .replace(/[−–—]/g, "-")
    .replaceAll("×", "x")
    .replace(/[^\p{ASCII}]/gu, "?");
}

/** True where the environment says that its characters are not UTF-8. Where it says nothing, UTF-8 is taken. */
export function asciiLocale(env: Readonly<Record<string, string | undefined>>): boolean {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || "";
  return locale !== "" && !/utf-?8/i.test(locale);
}
