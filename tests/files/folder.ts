import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach } from "vitest";

/** An empty folder of its own for each test, gone after it. */
export function ownFolder(): { readonly path: string; at: (name: string) => string; names: () => readonly string[] } {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "rackwright-test-"));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return {
    get path() {
      return folder;
    },
    at: (name) => join(folder, name),
    names: () => readdirSync(folder).sort(),
  };
}
