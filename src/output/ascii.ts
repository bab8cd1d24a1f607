/** The same text for a terminal or a printer that knows ASCII only. */
export function toAscii(text: string): string {
  return text.replaceAll("°", " deg").replaceAll("−", "-").replaceAll("–", "-").replaceAll("×", "x");
}

/** True where the environment says that its characters are not UTF-8. Where it says nothing, UTF-8 is taken. */
export function asciiLocale(env: Readonly<Record<string, string | undefined>>): boolean {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || "";
  return locale !== "" && !/utf-?8/i.test(locale);
}
