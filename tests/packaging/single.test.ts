import { spawnSync } from "node:child_process";
import { chmodSync, copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildSingle } from "../../bin/single.js";
import { commandNames } from "../../src/cli/commandNames.ts";
import { everyCommand } from "../support/everyCommand.js";
import { openCommand, openFromShell } from "../terminal/support/terminal.ts";

const packaged = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const place = mkdtempSync(join(tmpdir(), "rackwright-single-"));
/** No backslash is in this name: Node itself loads no module from a folder that has one, where that is no separator. */
const alone = join(place, "Werkstatt PC ½ #2 100%41?");
const single = join(alone, "rackwright.mjs");
const work = join(place, "work");

beforeAll(async () => {
  const built = join(place, "built.mjs");
  await buildSingle(built);
  for (const folder of [alone, work]) mkdirSync(folder);
  copyFileSync(built, single);
  // Nothing can be written beside it, unless whoever runs this test may write everywhere.
  chmodSync(alone, 0o555);
});

afterAll(() => {
  chmodSync(alone, 0o755);
  rmSync(place, { recursive: true, force: true });
});

function ran(program: string, words: readonly string[]) {
  const env = { PATH: process.env.PATH, HOME: work, TERM: "xterm-256color" };
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], { cwd: work, env });
  return { status, stdout: stdout.toString("latin1"), stderr: stderr.toString() };
}

/** The bytes of the files in a folder of the one who works with the program, by name. */
function filesIn(folder: string): Record<string, string> {
  const names = readdirSync(join(work, folder));
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(work, folder, name), "latin1")]));
}

describe("the program as one file", () => {
  it("stands alone", () => {
    expect(readdirSync(alone)).toEqual(["rackwright.mjs"]);
    expect(everyCommand.map(([name = ""]) => name).filter((name) => commandNames.includes(name))).toEqual(commandNames);
  });

  it.each(everyCommand)("says what the packaged one says: %s %s %s", (...words) => {
    const said = ran(single, words);
    expect(said).toEqual(ran(packaged, words));
    expect(said.stdout).not.toBe("");
  });

  it("gives every example, and documents to the byte", () => {
    const names: string[] = JSON.parse(ran(packaged, ["presets", "--json"]).stdout).map(
      ({ name }: { name: string }) => name,
    );
    expect(names.length).toBeGreaterThan(10);
    for (const name of names) expect(ran(single, ["presets", name]), name).toEqual(ran(packaged, ["presets", name]));
    for (const [folder, form] of [
      ["pdf", "--pdf"],
      ["dxf", "--dxf"],
    ] as const) {
      const words = (to: string) => ["template", "rack-ahead", "--draw=tab", form, `--out=${to}`];
      expect(ran(single, words(`${folder}-single`)).status).toBe(0);
      expect(ran(packaged, words(folder)).status).toBe(0);
      expect(filesIn(`${folder}-single`)).toEqual(filesIn(folder));
    }
  });

  it("runs by its own name too, where the system looks at its first line", () => {
    const { status, stdout } = spawnSync(single, ["--version"], { encoding: "utf8" });
    expect({ status, stdout }).toEqual({ status: 0, stdout: ran(packaged, ["--version"]).stdout });
  });

  it("opens the screen, checks the car, and gives the terminal back", async () => {
    const terminal = openFromShell([single, "widened-offset-rack"], { env: { HOME: work } });
    await terminal.until("the checks", (text) => text.includes("1 BROKEN (press 0)"));
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
    const rows = terminal.rows().filter((row) => row !== "");
    expect(rows).toEqual(["before", "code 0", "line as before", "after"]);
  });

  it("has checks and surveys done in threads, which load the same file and say nothing by themselves", () => {
    const text = `
      const { Worker } = require("node:worker_threads");
      const thread = "import(require('node:worker_threads').workerData).then(({ checkDesk, surveyDesk }) => console.log(typeof checkDesk, typeof surveyDesk))";
      new Worker(thread, { eval: true, workerData: ${JSON.stringify(pathToFileURL(single).href)} });`;
    const { stdout, stderr } = spawnSync(process.execPath, ["-e", text], { encoding: "utf8" });
    expect({ stdout, stderr }).toEqual({ stdout: "function function\n", stderr: "" });
  });

  it("carries its own licence and that of everything in it", () => {
    const text = readFileSync(single, "utf8");
    const others = readFileSync(new URL("../../dist/THIRD-PARTY-LICENSES", import.meta.url), "utf8");
    const own = readFileSync(new URL("../../LICENSE", import.meta.url), "utf8");
    expect(text).toContain(own.trim());
    for (const [heading] of others.matchAll(/^\S+ \d[\w.-]* \(.*\)$/gm)) expect(text).toContain(heading);
  });

  it("draws in plain ASCII in the C locale", async () => {
    const terminal = openCommand(process.execPath, [single], { env: { LANG: "C", LC_ALL: "C", HOME: work } });
    await terminal.until("the first screen", (text) => text.includes("RODS"));
    expect(terminal.text()).not.toMatch(/[^\x20-\x7e\n]/);
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
  });
});
