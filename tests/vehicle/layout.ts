import fc from "fast-check";

/** How a mapping may be laid out in a file. */
type Style = "block" | "flow" | "long flow";

/** What is decided for each mapping and each key of a text: one number for each decision, and round again. */
export interface Layout {
  readonly choices: readonly number[];
  readonly indent: number;
  readonly lineEnd: string;
  readonly mark: string;
}

export const layouts: fc.Arbitrary<Layout> = fc.record({
  choices: fc.array(fc.nat({ max: 11 }), { minLength: 5, maxLength: 80 }),
  indent: fc.constantFrom(1, 2, 4),
  lineEnd: fc.constantFrom("\n", "\n", "\r\n"),
  mark: fc.constantFrom("", "", "\ufeff", "---\n", "# a car\n\n"),
});

type Data = { readonly [key: string]: unknown };

function isData(value: unknown): value is Data {
  return typeof value === "object" && value !== null;
}

/** A mapping as YAML text in a random layout. Every comment is numbered, so that a lost one is found. */
export function laidOut(data: Data, layout: Layout): string {
  let remarks = 0;
  const remark = () => {
    remarks += 1;
    return `# remark ${remarks}: { a: [1 } "`;
  };
  let made = 0;
  const choose = <T>(...among: readonly T[]): T => {
    const choice = layout.choices[made % layout.choices.length] ?? 0;
    made += 1;
    return among[choice % among.length] as T;
  };
  const isQuoted = () => choose(false, false, false, true);
  const comments = () => choose("above", "behind", "none", "none");
  const styles = () => choose<Style>("block", "block", "flow", "long flow");
  const keyText = (key: string) => (isQuoted() ? `"${key}"` : key);
  const scalar = (value: unknown) => (isQuoted() && typeof value === "number" ? `'${value}'` : JSON.stringify(value));

  const inBraces = (map: Data): string =>
    `{ ${Object.entries(map)
      .map(([key, value]) => `${keyText(key)}: ${isData(value) ? inBraces(value) : scalar(value)}`)
      .join(", ")} }`;

  const inLongBraces = (map: Data, pad: string): string => {
    const entries = Object.entries(map);
    const lines = entries.map(([key, value], index) => {
      const last = index === entries.length - 1;
      const text = `${pad}${keyText(key)}: ${isData(value) ? inBraces(value) : scalar(value)}`;
      const comma = last && isQuoted() ? "" : ",";
      const comment = comments();
      if (comment === "above") return `${pad}${remark()}\n${text}${comma}`;
      return comment === "behind" ? `${text}${comma} ${remark()}` : `${text}${comma}`;
    });
    return `{\n${lines.join("\n")}\n${pad}}`;
  };

  const lines = (map: Data, pad: string): string[] =>
    Object.entries(map).flatMap(([key, value]) => {
      const comment = comments();
      const above = comment === "above" ? [`${pad}${remark()}`] : [];
      const behind = comment === "behind" ? ` ${remark()}` : "";
      const head = `${pad}${keyText(key)}:`;
      if (!isData(value)) return [...above, `${head} ${scalar(value)}${behind}`];
      const style = styles();
      const deeper = pad + " ".repeat(layout.indent);
      if (style === "flow") return [...above, `${head} ${inBraces(value)}${behind}`];
      if (style === "long flow") return [...above, `${head} ${inLongBraces(value, deeper)}${behind}`];
      return [...above, `${head}${behind}`, ...lines(value, deeper)];
    });

  const text = `${layout.mark}${lines(data, "").join("\n")}\n`;
  return text.replaceAll("\n", layout.lineEnd);
}

/** All comments of a text, in order. */
export function remarksIn(text: string): readonly string[] {
  return text.match(/# remark \d+:/g) ?? [];
}
