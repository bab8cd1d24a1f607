import { defineConfig } from "vitest/config";
import whole from "../vitest.config.ts";

/**
 * The tests that hold the kernel and the formulas, without a build: each mutant runs those that reach it. The ones that
 * follow a generic Newton take half a minute a mutant: they are left for what the others let live.
 */
export default defineConfig({
  ...whole,
  test: {
    ...whole.test,
    globalSetup: [],
    include: ["tests/{kinematics,measures,published}/**/*.test.ts"],
    exclude: process.env.RACKWRIGHT_NEWTON ? [] : ["**/*AgainstNewton.test.ts"],
  },
});
