import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  cacheDir: "node_modules/.vite",
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    setupFiles: ["tests/support/quiet.ts"],
    globalSetup: ["tests/support/build.ts"],
    // The screen is run in real pseudo-terminals, on machines with two cores.
    testTimeout: 30_000,
    hookTimeout: 60_000,
    env: { NODE_ENV: "test" },
  },
});
