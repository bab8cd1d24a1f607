import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bundleOptions } from "../../bin/bundle.js";
import { hashOf } from "../../src/files/hash.ts";
import { saveText } from "../../src/files/save.ts";
import { ownFolder } from "./folder.ts";

/** What a save may ask of the system: each is a stage before and after which the program can be killed. */
const calls = [
  ...["statSync", "readFileSync", "openSync", "writeFileSync", "fsyncSync", "closeSync", "chownSync", "chmodSync"],
  ...["linkSync", "renameSync", "readdirSync", "unlinkSync"],
];

const folder = ownFolder();
const place = mkdtempSync(join(tmpdir(), "rackwright-killed-"));
const script = join(place, "save.mjs");
const before = "what was there before\n".repeat(40);
const after = "what is there after it\n".repeat(50);

beforeAll(async () => {
  await build({
    ...bundleOptions,
    splitting: false,
    stdin: {
      contents: `
        const fs = require("node:fs");
        import { hashOf } from "./src/files/hash.ts";
        import { saveText } from "./src/files/save.ts";
        const [path, stage, moment, links] = process.argv.slice(2);
        const kill = () => process.kill(process.pid, "SIGKILL");
        let at = 0;
        for (const name of ${JSON.stringify(calls)}) {
          const real = fs[name];
          fs[name] = (...given) => {
            at += 1;
            if (at === Number(stage) && moment === "before") kill();
            if (moment === "amid" && name === "writeFileSync") {
              fs.writeSync(given[0], given[1].slice(0, 500));
              kill();
            }
            const here = at;
            try {
              if (name === "linkSync" && links === "without") throw Object.assign(new Error(), { code: "EPERM" });
              return real(...given);
            } finally {
              if (here === Number(stage) && moment === "after") kill();
            }
          };
        }
        const before = ${JSON.stringify(before)};
        const known = fs.existsSync(path) ? hashOf(before) : null;
        at = 0;
        const saved = saveText(path, ${JSON.stringify(after)}, known);
        process.stdout.write(saved.saved + " " + at);`,
      resolveDir: fileURLToPath(new URL("../..", import.meta.url)),
    },
    outfile: script,
  });
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

function save(path: string, ...words: readonly string[]): { signal: string | null; stdout: string } {
  const { signal, stdout } = spawnSync(process.execPath, [script, path, ...words], { encoding: "utf8" });
  return { signal, stdout };
}

/** How many stages a whole save has. */
function stagesOf(path: string, links: string): number {
  const { signal, stdout } = save(path, "0", "never", links);
  const [, saved, count] = /^(\w+) (\d+)$/.exec(stdout) ?? [];
  expect({ signal, saved }).toEqual({ signal: null, saved: "true" });
  return Number(count);
}

const contentOf = (path: string): string | null =>
  statSync(path, { throwIfNoEntry: false }) ? readFileSync(path, "utf8") : null;

/** Kills a save at every stage; gives what the file held after each, and checks that the next save is none the worse. */
function killedAtEvery(held: string | null, links: "with" | "without"): Set<string | null> {
  const found = new Set<string | null>();
  const path = folder.at("car.yaml");
  const restore = () => {
    for (const name of folder.names()) rmSync(join(folder.path, name));
    if (held !== null) writeFileSync(path, held);
  };
  restore();
  const stages = stagesOf(path, links);
  expect(stages).toBeGreaterThan(6);
  const moments = Array.from({ length: stages }, (_, at) => [`before ${at + 1}`, `after ${at + 1}`]).flat();
  for (const moment of ["amid 0", ...moments]) {
    restore();
    const [when = "", stage = ""] = moment.split(" ");
    expect(save(path, stage, when, links).signal, moment).toBe("SIGKILL");
    const now = contentOf(path);
    found.add(now);
    const next = saveText(path, "the next one", now === null ? null : hashOf(now));
    expect(next, moment).toMatchObject({ saved: true });
    expect(contentOf(path)).toBe("the next one");
  }
  return found;
}

describe("a save that is killed at whatever stage (kill -9)", () => {
  test("leaves the old file or the new one, whole", () => {
    expect(killedAtEvery(before, "with")).toEqual(new Set([before, after]));
  });

  test("leaves no file or the new one, whole, where there was none", () => {
    expect(killedAtEvery(null, "with")).toEqual(new Set([null, after]));
  });

  test("leaves at worst an empty file under a new name on a disk that knows no second names", () => {
    expect(killedAtEvery(null, "without")).toEqual(new Set([null, "", after]));
  });
});
