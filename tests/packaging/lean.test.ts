import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import * as originalStyles from "@alcalzone/ansi-tokenize";
import { build } from "esbuild";
import fc from "fast-check";
import originalWidth from "string-width";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bundleOptions } from "../../bin/bundle.js";
import { plainText } from "../../bin/lean/plain.js";

/** What the bundle holds in place of costly parts, against the parts themselves. */
interface Bundled {
  readonly stringWidth: typeof originalWidth;
  readonly styles: Pick<typeof originalStyles, "tokenize" | "styledCharsFromTokens" | "styledCharsToString">;
  readonly graphemes: (text: string) => Intl.SegmentData[];
  readonly graphemeAt: (text: string, index: number) => Intl.SegmentData | undefined;
  readonly boxWidth: () => number;
  readonly digest: (text: string) => string;
  readonly said: (words: readonly string[]) => string;
}

let bundled: Bundled;
let place = "";

beforeAll(async () => {
  place = mkdtempSync(join(tmpdir(), "rackwright-lean-"));
  const outfile = join(place, "bundled.mjs");
  await build({
    ...bundleOptions,
    splitting: false,
    stdin: {
      resolveDir: fileURLToPath(new URL("../..", import.meta.url)),
      contents: `
        import stringWidth from "string-width";
        import * as styles from "@alcalzone/ansi-tokenize";
        import Yoga from "yoga-layout";
        import { createHash } from "node:crypto";
        import children from "node:child_process";
        const segments = (text) => new Intl.Segmenter(undefined, { granularity: "grapheme" }).segment(text);
        export const graphemes = (text) => [...segments(text)];
        export const graphemeAt = (text, index) => segments(text).containing(index);
        export const boxWidth = () => {
          const node = Yoga.Node.create();
          node.setWidth(80);
          node.calculateLayout(undefined, undefined, Yoga.DIRECTION_LTR);
          return node.getComputedWidth();
        };
        export { stringWidth, styles };
        export const digest = (text) => createHash("sha256").update(text).digest("hex");
        export const said = (words) => children.execFileSync(process.execPath, words, { encoding: "utf8" });
      `,
    },
    outfile,
  });
  bundled = await import(/* @vite-ignore */ pathToFileURL(outfile).href);
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

const anything = fc.string({ unit: "grapheme", maxLength: 12 });
const screenLike = fc.array(
  fc.constantFrom("a", " ", "│", "─", "°", "±", "→", "█", "é", "½", "\u001b[31m", "\u001b[0m", "\n"),
  { maxLength: 12 },
);
const hard = fc.array(
  fc.constantFrom(
    "e",
    "\u0301",
    "👍",
    "\u{1f3fd}",
    "\u200d",
    "漢",
    "ﾞ",
    "#",
    "\ufe0f",
    "\u20e3",
    "\r",
    "\n",
    "\u00ad",
    "↔",
    "\ud800",
    "\u001b",
  ),
  { maxLength: 8 },
);
const text = fc.oneof(
  anything,
  screenLike.map((parts) => parts.join("")),
  hard.map((parts) => parts.join("")),
);
const segmenter = new Intl.Segmenter(undefined, { granularity: "grapheme" });

describe("the lean parts of the bundle", () => {
  it("take a character for plain only if it is one column wide and stands alone", () => {
    for (let code = 0; code <= 0xffff; code += 1) {
      const character = String.fromCharCode(code);
      if (!plainText.test(character)) continue;
      expect(originalWidth(character), `U+${code.toString(16)}`).toBe(1);
      expect([...segmenter.segment(`a${character}a`)], `U+${code.toString(16)}`).toHaveLength(3);
    }
  });

  it("measure every text as string-width does", () => {
    fc.assert(
      fc.property(text, (sample) => bundled.stringWidth(sample) === originalWidth(sample)),
      { numRuns: 2000 },
    );
  });

  it("take styled lines apart and put them together as Ink's own package does", () => {
    const codes = ["1", "2", "22", "7", "27", "31", "39", "1;36", "38;5;208", "48;2;1;2;3", "49", "0"];
    const styledLine = fc
      .array(fc.oneof(fc.constantFrom(...codes.map((code) => `\u001b[${code}m`)), text), { maxLength: 10 })
      .map((parts) => parts.join(""));
    fc.assert(
      fc.property(fc.array(styledLine, { minLength: 1, maxLength: 4 }), (lines) => {
        // Each twice, so that what was kept is looked at too; then all on one row, as a frame lays them side by side.
        const apart = [...lines, ...lines].map((line) => {
          const chars = bundled.styles.styledCharsFromTokens(bundled.styles.tokenize(line));
          expect(chars).toEqual(originalStyles.styledCharsFromTokens(originalStyles.tokenize(line)));
          return chars;
        });
        const row = apart.flat();
        expect(bundled.styles.styledCharsToString(row)).toBe(originalStyles.styledCharsToString(row));
      }),
      { numRuns: 1000 },
    );
  });

  it("part every text into the graphemes that Intl.Segmenter finds", () => {
    fc.assert(
      fc.property(text, fc.integer({ min: -1, max: 14 }), (sample, index) => {
        expect(bundled.graphemes(sample)).toEqual([...segmenter.segment(sample)]);
        expect(bundled.graphemeAt(sample, index)).toEqual(segmenter.segment(sample).containing(index));
      }),
      { numRuns: 2000 },
    );
  });

  it("lay out boxes with Yoga without the HTTP client that a data: URL would start", () => {
    expect(bundled.boxWidth()).toBe(80);
    const script = join(place, "loaded.mjs");
    writeFileSync(script, 'await import("./bundled.mjs"); console.log(process.moduleLoadList.join());');
    expect(execFileSync(process.execPath, [script], { encoding: "utf8" })).not.toContain("undici");
  });

  it("load Node's seldom used parts only when these are used", () => {
    const script = join(place, "seldom.mjs");
    writeFileSync(script, 'await import("./bundled.mjs"); console.log(process.moduleLoadList.join());');
    const loaded = execFileSync(process.execPath, [script], { encoding: "utf8" }).split(",");
    expect(loaded).not.toContain("NativeModule crypto");
    expect(loaded).not.toContain("NativeModule child_process");
    // FIPS 180-2, appendix B.1: the digest of "abc" [M].
    expect(bundled.digest("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    expect(bundled.said(["-p", "6 * 7"])).toBe("42\n");
  });
});
