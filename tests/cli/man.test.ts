import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import pack from "../../package.json";
import { commandNames } from "../../src/cli/commandNames.ts";
import { folder, run } from "./run.ts";

const place = folder();
afterAll(() => place.remove());
const { out: page } = await run(["man"]);
const file = place.put("rackwright.1", page);

const isPresent = (tool: string) => spawnSync("sh", ["-c", `command -v ${tool}`]).status === 0;

function said(tool: string, ...words: string[]) {
  const { status, stdout, stderr } = spawnSync(tool, words, {
    encoding: "utf8",
    env: { PATH: process.env.PATH, LC_ALL: "C", MANWIDTH: "80", MANROFFSEQ: "", TERM: "dumb" },
  });
  return { status, stdout, stderr };
}

/** What is read, however its lines are broken and its words are struck over to look bold. */
const plain = (text: string) =>
  text
    .replace(/.\u0008/g, "")
    .replace(/\u001b\[[\d;]*m/g, "")
    .replace(/\s+/g, " ");

describe("the manual page", () => {
  it("is plain ASCII, without a date, and in the package as the program prints it", () => {
    expect(page).toMatch(/^[\n -~]+$/);
    const [installed] = pack.man;
    expect(readFileSync(fileURLToPath(new URL(`../../${installed}`, import.meta.url)), "utf8")).toBe(page);
  });

  it.skipIf(!isPresent("groff"))("is read by groff without a warning (needs groff)", () => {
    expect(said("groff", "-ww", "-man", "-Tascii", "-z", file)).toEqual({ status: 0, stdout: "", stderr: "" });
  });

  it.skipIf(!isPresent("mandoc"))("is read by mandoc without a warning but for the date (needs mandoc)", () => {
    const { stdout } = said("mandoc", "-T", "lint", "-W", "warning", file);
    const lines = stdout.split("\n").filter((line) => line !== "" && !line.includes("missing date"));
    expect(lines).toEqual([]);
  });

  it.skipIf(!isPresent("groff"))("shows all that the help of every command shows (needs groff)", async () => {
    const read = plain(said("groff", "-man", "-Tascii", "-rLL=200n", "-rHY=0", file).stdout);
    for (const name of commandNames.filter((each) => each !== "help")) {
      const { out } = await run([name, "--help"]);
      for (const [, flag] of out.matchAll(/^ {2}(?:-\w, )?(--[\w-]+)/gm)) expect(read).toContain(flag);
      const [, examples = ""] = out.split("Examples:\n");
      for (const line of examples.split("\n")) expect(read).toContain(line.trim().replace(/\s+/g, " "));
    }
    expect(read).toContain("EXIT STATUS");
  });

  it.skipIf(!isPresent("man"))("opens in man (needs man)", () => {
    const { status, stdout } = said("man", "-l", file);
    expect(status).toBe(0);
    expect(plain(stdout)).toContain("rackwright - Steering and front suspension geometry");
  });
});
