import { mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { XMLParser, XMLValidator } from "fast-xml-parser";
import { afterAll, describe, expect, test } from "vitest";
import { presetText } from "../soak/presets.ts";
import { folder, run } from "./run.ts";

/**
 * Files from strangers are data. Whatever their words are, nothing in them acts: not on a terminal, not in a browser, a
 * spreadsheet, a drawing program or a page.
 */

const place = folder();
afterAll(() => place.remove());

/** Marks that turn lines round, odd ends of lines, markup, formulas and templates: all that a title may hold. */
const words =
  "=1+1\u202e\u2066\u200e</script></text></title><script>alert(1)</script><!--\"'>$" +
  "{7*7}{{7}}`id`@SUM(A1)%n)]]> \\write end";
/** The same with escapes, control sequences of one byte and line ends: what only names and notes can still say. */
const worse = `${words}\u001b[2J\u001b]0;x\u0007\u009b31m\u2028\u0085\r\n@SUM(A1)\t\u0000\u007f`;

/** In YAML's double quotes, which have JSON's escapes. */
const quoted = (text: string) =>
  JSON.stringify(text).replace(/[\x7f-\x9f]/g, (each) => `\\u00${each.charCodeAt(0).toString(16)}`);

/** The example that says all that a file can, with other words wherever it may have words of its own. */
function carWith(title: string, names: string): string {
  const swaps = [
    [
      "title: Two-seater on the stands, to be checked",
      `title: ${quoted(title)}\nnotes: ${quoted(`${title}\n${title}`)}\njob: ${quoted(title)}`,
    ],
    ["lower-rail:", `? ${quoted(names)}\n      :`],
    ["brace:", `? ${quoted(names)}\n      :`],
    ["left:  { along: 3.5,", `${quoted(names)} : { along: 3.5,`],
  ] as const;
  return swaps.reduce((text, [found, instead]) => {
    if (!text.includes(found)) throw new Error(`the example no longer holds ${found}`);
    return text.replace(found, () => instead);
  }, presetText("check-before-welding"));
}

const car = place.put("evil.yaml", carWith(words, worse));
const refused = place.put("refused.yaml", carWith(worse, worse));
const readings = place.put(
  "readings.yaml",
  presetText_("readings/as-built").replace(/^title: .*$/m, () => `title: ${quoted(worse)}`),
);
const sheet = place.put(
  "sheet.yaml",
  presetText_("sheets/donor-front")
    .replace(/^title: .*$/m, () => `title: ${quoted(worse)}`)
    .replaceAll("left floor mark", "left =1+1 <script> mark"),
);

function presetText_(name: string): string {
  return readFileSync(new URL(`../../presets/${name}.yaml`, import.meta.url), "utf8");
}

/** What acts on a terminal, or turns a line round: everything but ends of lines, and tabs where they are printed. */
const acting = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;

async function said(argv: readonly string[]): Promise<string> {
  const { code, out, err } = await run(argv);
  expect([0, 1], `${argv.join(" ")}\n${err}`).toContain(code);
  expect(err, argv[0]).not.toMatch(acting);
  expect(err).not.toContain("a fault in the program");
  return out;
}

test("a title with control characters is refused, and told without them", async () => {
  const { code, out, err } = await run(["steer", refused]);
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain("expected text without control characters");
  expect(err).not.toMatch(acting);
});

test.each(["\u0080", "\u009b31m", "\u001b[2J", "\u0000"])(
  "%j is in no text file, in a comment neither",
  async (sequence) => {
    const path = place.put("raw.yaml", `# ${sequence}\n${presetText("rack-ahead")}`);
    const { code, err } = await run(["steer", path]);
    expect(code).toBe(2);
    expect(err).not.toMatch(acting);
  },
);

test("names that are typed are told without what acts", async () => {
  const typed = worse.replace("\0", "");
  for (const argv of [
    ["steer", typed],
    [`--${typed}`],
    ["steer", car, `--from=${typed}`],
    ["match", car, typed],
    ["tape", typed],
  ]) {
    const { code, err } = await run(argv);
    expect(code).toBe(2);
    expect(err).not.toMatch(acting);
  }
});

describe("a car file full of words that act", () => {
  const reports: readonly (readonly string[])[] = [
    ["steer", car],
    ["bump", car],
    ["pose", car],
    ["check", car],
    ["locks", car],
    ["upright", car],
    ["adjusters", car],
    ["sensitivity", car],
    ["widen", car],
    ["tolerance", car, "--builds=100"],
    ["compare", car, car],
    ["compare", car, "balanced-two-seater"],
    ["sheet", car],
    ["sheet", car, "--from", "balanced-two-seater"],
    ["template", car],
    ["--summary", car],
    ["match", "balanced-two-seater", readings],
    ["tape", sheet],
  ];

  test.each(reports)("puts none of them out: %s %s %s", async (...argv) => {
    expect(await said(argv)).not.toMatch(acting);
    expect(await said([...argv, "--ascii"])).toMatch(/^[\n -~]*$/);
    expect(await said([...argv, "--json"])).not.toMatch(acting);
  });

  test.each(["steer", "bump", "sensitivity", "tolerance"])(
    "puts none of them, and no formula, into CSV: %s",
    async (command) => {
      const out = await said([command, car, "--csv", ...(command === "tolerance" ? ["--builds=100"] : [])]);
      expect(out).not.toMatch(acting);
      for (const field of out.split(/,|\r\n/)) expect(field.replace(/^"/, "")).not.toMatch(/^[=@+]|^-(?!\d|$)/);
    },
  );

  test("is told back by JSON word for word, for programs that want it", async () => {
    expect(JSON.parse(await said(["--summary", car, "--json"])).title).toBe(words);
  });

  test.each([
    [["sheet", car], "--html"],
    [["sheet", car, "--from", "balanced-two-seater"], "--html"],
    [["compare", car, "balanced-two-seater"], "--html"],
    [["sheet", car], "--markdown"],
    [["compare", car, "balanced-two-seater"], "--markdown"],
  ] as const)("has no element of its own: %s %s", async (argv, form) => {
    const out = await said([...argv, form]);
    expect(out).not.toMatch(acting);
    expect(out).not.toMatch(/(?<!\\)<(?:\/?script|!--)/i);
  });

  test("stays words in SVG and DXF, and text in the PDF", async () => {
    for (const form of ["svg", "dxf", "pdf"]) {
      const out = join(place.path, form);
      mkdirSync(out);
      await said(["template", car, `--${form}`, "--out", out]);
      const names = readdirSync(out);
      expect(names.length).toBeGreaterThan(0);
      for (const name of names) {
        expect(name).toMatch(/^[a-z0-9 .-]+$/);
        const text = readFileSync(join(out, name), "latin1");
        if (form === "svg") {
          expect(XMLValidator.validate(text)).toBe(true);
          const elements = new Set(JSON.stringify(new XMLParser().parse(text)).match(/"[a-z]+":/g));
          expect([...elements].filter((each) => !/"(svg|title|g|line|circle|path|text)":/.test(each))).toEqual([]);
        }
        if (form === "dxf") expect(text).toMatch(/^[\r\n -~]*$/);
        if (form === "pdf") expect(text).not.toMatch(/\/(JavaScript|JS|OpenAction|AA|Launch|URI|EmbeddedFile)\b/);
      }
    }
  });
});
