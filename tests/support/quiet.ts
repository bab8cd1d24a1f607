import { afterEach, beforeEach, expect, vi } from "vitest";

/** Stray console output fails the test that made it: on the screen it would tear a frame. */
const methods = ["debug", "error", "info", "log", "warn"] as const;
let said: unknown[][] = [];

beforeEach(() => {
  said = [];
  for (const method of methods) {
    vi.spyOn(console, method).mockImplementation((...words: unknown[]) => {
      said.push(words);
    });
  }
});

afterEach(() => {
  const heard = said;
  for (const method of methods) vi.mocked(console[method]).mockRestore?.();
  expect(heard, "nothing is printed to the console").toEqual([]);
});
