import { expect, test } from "vitest";
import { difference, expectClose } from "./close.ts";

test("numbers are close within absolute plus relative tolerance, and no further", () => {
  expect(difference(10.5, 10, { abs: 0.5 })).toBeNull();
  expect(difference(10.51, 10, { abs: 0.5 })).toContain("found 10.51, expected 10");
  expect(difference(101, 100, { rel: 0.01 })).toBeNull();
  expect(difference(102, 100, { rel: 0.01 })).not.toBeNull();
});

test("NaN is close only to nothing a test would expect, and infinity not to a number", () => {
  expect(difference(Number.NaN, 1, { abs: 1e9 })).not.toBeNull();
  expect(difference(1, Number.NaN, { abs: 1e9 })).not.toBeNull();
  expect(difference(Number.POSITIVE_INFINITY, 1, { abs: 1e9 })).not.toBeNull();
});

test("nested objects and arrays name the place that differs", () => {
  const expected = { left: { toe: [1, 2], word: "up" }, none: null };
  expect(difference({ left: { toe: [1, 2.1], word: "up" }, none: null }, expected, { abs: 0.2 })).toBeNull();
  expect(difference({ left: { toe: [1, 2.3], word: "up" }, none: null }, expected, { abs: 0.2 })).toContain(
    "value.left.toe[1]",
  );
  expect(difference({ left: { toe: [1], word: "up" }, none: null }, expected, { abs: 0.2 })).toContain(
    "1 items, expected 2",
  );
  expect(difference({ left: { toe: [1, 2], word: "down" }, none: null }, expected, { abs: 0.2 })).toContain(
    "value.left.word",
  );
  expect(difference({ left: { toe: [1, 2], word: "up" }, none: 0 }, expected, { abs: 0.2 })).toContain("value.none");
  expect(difference({ left: { toe: [1, 2], word: "up" } }, expected, { abs: 0.2 })).toContain("keys");
});

test("typed arrays compare like arrays, and a difference throws", () => {
  expect(difference(Float64Array.of(1, 2), [1, 2], {})).toBeNull();
  expect(() => expectClose(Float64Array.of(1, 2), [1, 3], { abs: 0.5 }, "pose")).toThrow(
    "pose[1]: found 2, expected 3",
  );
});
