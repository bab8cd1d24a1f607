import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig, type Plugin } from "vitest/config";

/** Fonts are bytes, as in the bundle. */
const fonts: Plugin = {
  name: "fonts",
  enforce: "pre",
  load: (id) =>
    id.endsWith(".ttf")
      ? `export default Uint8Array.from(Buffer.from("${readFileSync(id).toString("base64")}", "base64"));`
      : null,
};

export default defineConfig({
  plugins: [fonts],
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
