const vulgar: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
};

/**
 * One spelling for what keyboards, phones and copied texts write in many: spaces, minus signs, quote marks, the
 * multiplication and division signs, and ready-made fractions such as ½ become plain characters.
 */
export function tidy(text: string): string {
  return text
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u3000]+/g, " ")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/[\u201c\u201d\u2033]/g, '"')
    .replace(/\u2044/g, "/")
    .replace(/[\u00d7\u2715]/g, "*")
    .replace(/\u00f7/g, "/")
    .replace(/(\d)?([¼-¾⅐-⅞])/g, (_, digit: string | undefined, mark: string) => {
      const fraction = vulgar[mark] ?? mark;
      return digit === undefined ? fraction : `${digit} ${fraction}`;
    })
    .trim();
}
