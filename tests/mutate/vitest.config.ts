import { defineConfig } from "vitest/config";
import whole from "../vitest.config.ts";

/** The tests of the kernel and the formulas, as bundle.js puts them together. */
export default defineConfig({
  ...whole,
  test: { ...whole.test, globalSetup: [], include: ["tests/mutate/bundled/tests.js"] },
});
