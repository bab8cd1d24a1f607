import { defineConfig } from "vitest/config";
import whole from "../vitest.config.ts";

/** Tests that take seconds, which each mutant would have to wait for: they are left for what the others let live. */
const slow = [
  "**/*AgainstNewton.test.ts",
  "tests/kinematics/properties*.test.ts",
  "tests/measures/{worst,study,lockShares,change,fromTape,steeringShaft}.test.ts",
];

/**
 * The tests that hold the kernel and the formulas, without a build: each mutant runs those that reach it.
 * RACKWRIGHT_MUTATE=all takes the slow ones too.
 */
export default defineConfig({
  ...whole,
  test: {
    ...whole.test,
    globalSetup: [],
    include: ["tests/{kinematics,measures,published}/**/*.test.ts"],
    exclude: process.env.RACKWRIGHT_MUTATE === "all" ? [] : slow,
  },
});
