import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { readCar } from "../../src/vehicle/read.ts";
import { largestText } from "../../src/vehicle/yaml.ts";
import { plain } from "./cars.ts";

const folder = fileURLToPath(new URL("hard-cases", import.meta.url));

/** The one complaint that each file must get: where, and words that it must hold. */
const expected: Readonly<Record<string, readonly [place: string, words: string]>> = {
  "empty.txt": ["whole", "the file is empty"],
  "only-comments.txt": ["whole", "nothing but comments"],
  "words.txt": ["whole", "not a car file"],
  "list.txt": ["whole", "not a car file"],
  "tab-indent.txt": ["3:1", "tab"],
  "crooked-indent.txt": ["1:8", "indentation"],
  "open-brace.txt": ["3:1", "brace is not closed"],
  "open-quote.txt": ["2:9", "quote"],
  "same-key-twice.txt": ["3:1", "second time"],
  "two-documents.txt": ["2:1", "one car"],
  "tag.txt": ["2:12", "tags"],
  "old-yaml.txt": ["1:1", "YAML 1.2"],
  "unnamed-reference.txt": ["2:12", "*length"],
  "key-that-is-a-list.txt": ["2:3", "plain word"],
  "alias-bomb-of-maps.txt": ["whole", "too many times over"],
  "alias-bomb-of-lists.txt": ["whole", "too many times over"],
  "circle.txt": ["whole", "nested too deeply"],
  "deep-flow.txt": ["whole", "nested too deeply"],
  "deep-flow-closed.txt": ["whole", "nested too deeply"],
  "deep-block.txt": ["whole", "nested too deeply"],
  "deep-list.txt": ["whole", "nested too deeply"],
  "wide.txt": ["whole", "too many parts"],
  "control-character.txt": ["2:13", "not a text file"],
  "zero-byte.txt": ["2:1", "not a text file"],
  "broken-bytes.txt": ["2:9", "not a text file"],
};

/** Hard cases that are too long to be kept as files. */
const made: Readonly<Record<string, string>> = {
  "deep-flow.txt": `units: ${"[".repeat(5000)}\n`,
  "deep-flow-closed.txt": `units: ${"{a: ".repeat(400)}1${"}".repeat(400)}\n`,
  "deep-block.txt": Array.from({ length: 300 }, (_, depth) => `${" ".repeat(depth)}a:\n`).join(""),
  "deep-list.txt": `${"- ".repeat(20_000)}\n`,
  "wide.txt": Array.from({ length: 6000 }, (_, number) => `key${number}: ${number}\n`).join(""),
};

test("every hard case has its complaint", () => {
  const files = readdirSync(folder).filter((file) => file.endsWith(".txt"));
  expect([...files, ...Object.keys(made)].sort()).toEqual(Object.keys(expected).sort());
});

test.each(Object.entries(expected))("%s", (file, [place, words]) => {
  const begun = performance.now();
  const car = readCar(made[file] ?? readFileSync(`${folder}/${file}`, "utf8"));
  if (!("complaints" in car)) throw new Error("it was read as a car");
  expect(car.complaints).toHaveLength(1);
  const [{ line, column, message }] = car.complaints as [(typeof car.complaints)[number]];
  expect(line === null ? "whole" : `${line}:${column}`).toBe(place);
  expect(message).toContain(words);
  // A reader that unfolds a bomb or copies its text at each level takes minutes; a slow machine takes a second at most.
  expect(performance.now() - begun).toBeLessThan(5000);
});

test("a text too large for any car is not even looked at", () => {
  const car = readCar(plain + "#".repeat(largestText));
  expect(car).toMatchObject({ complaints: [{ line: null, message: expect.stringContaining("too large") }] });
});

test("keys that every object has are no keys of a car", () => {
  for (const key of ["__proto__", "constructor", "toString", "hasOwnProperty"]) {
    const car = readCar(`${key}: { units: in }\n${plain}`);
    expect(car).toMatchObject({ complaints: [{ line: 1, message: expect.stringContaining(`unknown key "${key}"`) }] });
    const below = readCar(plain.replace("    wheel:\n", `    wheel:\n      ${key}: 1\n`));
    expect(below).toMatchObject({ complaints: [{ line: 20, message: expect.stringContaining("unknown key") }] });
  }
});

test("a merge key is no key of a car", () => {
  const car = readCar(plain.replace("    wheel:\n", "    <<: { wheel: 1 }\n    wheel:\n"));
  expect(car).toMatchObject({ complaints: [{ line: 19, message: expect.stringContaining('unknown key "<<"') }] });
});

test("a hostile key or value comes back without control characters", () => {
  const texts = [
    ["x: 1\n", '"\\e]0;x\\a": 1\n'],
    ["units: mm\n", 'units: "\\e[2J\\u202e"\n'],
    ["wheelbase: 2000\n", "wheelbase: \u202e\u2066x\n"],
  ] as const;
  for (const [line, hostile] of texts) {
    const car = readCar(plain.replace(line, "") + hostile);
    if (!("complaints" in car)) throw new Error("it was read as a car");
    const said = car.complaints.map(({ part, message }) => part + message).join("");
    expect(said).not.toMatch(/[\p{Cc}\u202e\u2066]/u);
    expect(said).toMatch(/\\u\{/);
  }
});
