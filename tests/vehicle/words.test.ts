import fc from "fast-check";
import { expect, test } from "vitest";
import { nearest } from "../../src/vehicle/nearest.ts";
import { safe, shown } from "../../src/vehicle/shown.ts";

const keys = ["ahead", "out", "up", "camber", "toe", "wheel-left-moves", "eye-to-eye", "per-turn"];

test.each([
  ["cambr", "camber"],
  ["camebr", "camber"],
  ["CAMBER", "camber"],
  ["eye_to_eye", "eye-to-eye"],
  ["perturn", "per-turn"],
  ["wheel-left-move", "wheel-left-moves"],
  ["pu", "up"],
  ["colour", null],
  ["", null],
  ["x".repeat(10_000), null],
])("the known key nearest to %s is %s", (found, known) => {
  expect(nearest(found, keys)).toBe(known);
});

test("nothing is near to nothing", () => {
  expect(nearest("camber", [])).toBeNull();
});

test("a known key is nearest to itself", () => {
  for (const key of keys) expect(nearest(key, keys)).toBe(key);
});

test("what a file holds is named", () => {
  expect([null, undefined, "a", 3, true, [1], { a: 1 }].map(shown)).toEqual([
    "nothing",
    "nothing",
    '"a"',
    "3",
    "true",
    "a list",
    "a group of keys",
  ]);
});

test("foreign text can neither move a cursor, nor turn the reading direction, nor flood a line", () => {
  expect(safe("\u001b[2Ja\n\t")).toBe("\\u{1b}[2Ja\\n\\t");
  expect(safe("\u202eabc\u200b")).toBe("\\u{202e}abc\\u{200b}");
  expect(safe("\ud83d")).toBe("\\u{d83d}");
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 200 }), (text) => {
      expect(safe(text)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
      // 40 characters and the mark of the cut, each of them at its longest written out as \u{10ffff}.
      expect(safe(text).length).toBeLessThanOrEqual(41 * 10);
    }),
  );
});
