/** Characters that could move a terminal's cursor or change its colours: a title from a stranger's file may hold them. */
const control = /\p{Cc}/gu;

/** A line with nothing in it but what is seen: control characters are written out. */
export function printable(line: string): string {
  return line.replace(control, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}

/** The same text for a terminal or a printer that knows ASCII only; what it cannot write is a question mark. */
export function toAscii(text: string): string {
  return text
    .replaceAll("°", " deg")
    .replace(/[−–—]/g, "-")
    .replaceAll("×", "x")
    .replace(/[^\p{ASCII}]/gu, "?");
}

/** True where the environment says that its characters are not UTF-8. Where it says nothing, UTF-8 is taken. */
export function asciiLocale(env: Readonly<Record<string, string | undefined>>): boolean {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || "";
  return locale !== "" && !/utf-?8/i.test(locale);
}
