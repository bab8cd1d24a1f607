import { describe, expect, test } from "vitest";
import { readCarReadings } from "../../src/vehicle/car-readings/read.ts";
import { readSheet } from "../../src/vehicle/from-tape/sheet.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
import { readAngle } from "../../src/vehicle/units/angle.ts";
import { readLength } from "../../src/vehicle/units/length.ts";
import { readNumber } from "../../src/vehicle/units/number.ts";
import { prepareProducts } from "../../src/vehicle/units/products.ts";
import { carOf } from "../measures/carTexts.ts";
import { presetText } from "../soak/presets.ts";

/** What a file could try so that more than its numbers is read. Every reader is asked; each refuses in words, and soon. */

/** ms; a hundred times what the slowest takes, for busy machines. */
const soon = 2000;

function inTime<T>(read: () => T): T {
  const begun = performance.now();
  const result = read();
  expect(performance.now() - begun).toBeLessThan(soon);
  return result;
}

describe("typed values are numbers, units, signs and brackets, and nothing else", () => {
  test.each([
    "9^9^9^9",
    "2**64",
    "170!",
    "1e9!",
    "cos(1)",
    "sqrt(4)",
    "random()",
    "import({})",
    "import('node:fs')",
    "createUnit('rod')",
    "config({})",
    "evaluate('1')",
    "parse('1+1')",
    "process.exit(1)",
    "globalThis",
    "f(x) = x",
    "a = 1",
    "[1, 2]",
    "{a: 1}",
    "1; 2",
    "'x'",
    "pi",
    "i",
    "e",
    "true",
    "0x10",
    "1:5",
    "5 %",
    "1 to 2",
    "constructor",
    "1 constructor",
    "1 __proto__",
    "1 toString",
    "`1`",
  ])("%s", async (text) => {
    await prepareProducts();
    for (const read of [
      () => readLength(text, "in"),
      () => readLength(text, "mm", 5),
      () => readAngle(text),
      () => readNumber(text),
    ])
      expect(inTime<unknown>(read)).toHaveProperty("complaint");
  });

  test.each([
    ["huge", Array(14).fill("9e999").join("*")],
    ["tiny", `1e-999/${Array(13).fill("9e999").join("/")}`],
    ["deep", `${"(".repeat(49)}1${")".repeat(49)}`],
    ["signs", `1${"+-".repeat(48)}1`],
    ["long", "9".repeat(1_000_000)],
    ["fractions", Array(24).fill("1/97").join("+")],
  ])("%s is read or refused soon, and never as more than a number", async (_, text) => {
    await prepareProducts();
    const read = inTime(() => readLength(text, "in"));
    if ("mm" in read) expect(Number.isFinite(read.mm)).toBe(true);
    else expect(read.complaint.length).toBeLessThan(300);
  });
});

const car = carOf(presetText("balanced-two-seater"));

const readers = {
  car: readCar,
  readings: (text: string) => readCarReadings(text, car),
  tape: readSheet,
  survey: readSurvey,
} as const;

/** A file of each kind that is read without a complaint, or nearly so. */
const heads: Readonly<Record<keyof typeof readers, string>> = {
  car: presetText("check-before-welding"),
  readings: "units: in\ncaster: { left: 7.5 }\n",
  tape: "units: in\nhub-height: 12\n",
  survey: "units: in\nlinkage: double-arm\nmechanism: rack\nheights:\n  left wheel.center: 12\n",
};

const kinds = Object.keys(readers) as readonly (keyof typeof readers)[];

describe.each(kinds)("a file that is a trick, read as %s", (kind) => {
  const read = (text: string) => inTime(() => readers[kind](text));

  test.each(["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "valueOf"])(
    "%s is a key like any other that nobody knows, wherever it stands",
    (key) => {
      const below = `{ isTrick: true, ahead: 1, out: 1, up: 1 }`;
      const found = read(`${key}: ${below}\n${heads[kind]}`);
      expect(found).toHaveProperty("complaints");
      expect(JSON.stringify(found)).toContain(key);
      // At every depth of what stands in the file.
      for (const [head = "", indent = ""] of heads[kind].matchAll(/\n( +)[a-z]/g))
        read(heads[kind].replace(head, () => `\n${indent}${key}: ${below}${head}`));
      for (const name of ["isTrick", "ahead", "out"]) expect(name in {}).toBe(false);
      expect(Object.hasOwn(Object.prototype, "isTrick")).toBe(false);
    },
  );

  test.each(["title: !!binary aGVsbG8=\n", "%TAG ! tag:example.invalid,2026:\n---\n"])(
    "%j makes nothing but words",
    (text) => {
      const found = read(`${text}${heads[kind]}`);
      if (!("complaints" in found) && "title" in found) expect(["string", "object"]).toContain(typeof found.title);
      expect(JSON.stringify(found)).not.toContain("hello");
    },
  );

  test.each([
    ["a merged mapping", "a: &a { units: mm }\n<<: *a\n"],
    ["a tag of a class", "title: !!js/function 'function () {}'\n"],
    ["a tag of its own", "title: !include /etc/passwd\n"],
    ["a mapping as a key", "? { a: 1 }\n: 1\n"],
    ["a part that holds itself", "a: &a [*a]\n"],
    [
      "a bomb of references",
      `a0: &a0 [x, x]\n${Array.from({ length: 30 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}]\n`).join("")}`,
    ],
    ["many references to one part", `a: &a [x]\nb: [${Array(40_000).fill("*a").join(", ")}]\n`],
    ["many keys", Array.from({ length: 25_000 }, (_, i) => `k${i}:\n`).join("")],
    ["depth", `a: ${"[".repeat(100_000)}\n`],
    ["closed depth", `a: ${"[".repeat(20_000)}${"]".repeat(20_000)}\n`],
    ["50 MB of spaces", " ".repeat(50_000_000)],
    ["50 MB of lines", "a: 1\n".repeat(10_000_000)],
    ["50 MB in one word", `title: ${"x".repeat(50_000_000)}\n`],
  ])("%s is refused in words", (_, text) => {
    const found = read(`${text}${heads[kind]}`);
    expect(found).toHaveProperty("complaints");
    expect(JSON.stringify(found).length).toBeLessThan(5000);
  });
});
