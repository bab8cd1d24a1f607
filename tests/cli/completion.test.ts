import { spawnSync } from "node:child_process";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { commandNames } from "../../src/cli/commandNames.ts";
import { openCommand } from "../terminal/support/terminal.ts";
import { folder, run } from "./run.ts";

const place = folder();
place.put("my car.yaml", "");
afterAll(() => place.remove());
const scripts = new Map<string, string>();
beforeAll(async () => {
  for (const shell of ["bash", "zsh", "fish"])
    scripts.set(shell, place.put(`rackwright.${shell}`, (await run(["completion", shell])).out));
});

const isPresent = (shell: string) => spawnSync(shell, ["--version"]).status === 0;

/** What a real bash offers for the last word. */
function bash(...words: string[]): string[] {
  const script = `source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _rackwright; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const asked = ["-u", "-c", script, "bash", scripts.get("bash") ?? "", "rackwright", ...words];
  const { stdout, stderr } = spawnSync("bash", asked, { cwd: place.path, encoding: "utf8" });
  expect(stderr).toBe("");
  return stdout.split("\n").filter((line) => line !== "");
}

/** What a real fish offers at the end of a line. */
function fish(line: string): string[] {
  const asked = ["--no-config", "-c", `source $argv[1]; complete -C $argv[2]`, scripts.get("fish") ?? "", line];
  const { stdout, stderr } = spawnSync("fish", asked, {
    cwd: place.path,
    encoding: "utf8",
    env: { PATH: process.env.PATH, HOME: place.path, TERM: "dumb" },
  });
  expect(stderr).toBe("");
  return stdout.split("\n").flatMap((each) => (each === "" ? [] : [each.split("\t")[0]]));
}

/** Every long option that a command's help shows. */
async function optionsOf(name: string): Promise<string[]> {
  const { out } = await run([name, "--help"]);
  return [...out.matchAll(/^ {2}(?:-\w, )?(--[\w-]+)/gm)].map(([, flag]) => flag).sort();
}

const commands = commandNames.filter((name) => name !== "help");

const offers: readonly (readonly [line: string, offered: readonly string[]])[] = [
  ["ste", ["steer"]],
  ["--pla", ["--plain"]],
  ["steer widened-off", ["widened-offset-rack"]],
  ["steer my", ["my car.yaml"]],
  ["steer rack-ahead --wa", ["--watch"]],
  ["find rack-ahead --rods ", ["follow", "keep"]],
  ["completion ", ["bash", "fish", "zsh"]],
  ["match rack-ahead as", ["as-built"]],
  ["help sen", ["sensitivity"]],
  ["steer rack-ahead --from ", []],
  ["sheet rack-ahead --from widened-off", ["widened-offset-rack"]],
  ["sheet rack-ahead --from my", ["my car.yaml"]],
  ["template rack-ahead --draw ", ["brackets", "rack", "tab", "upright"]],
  ["template rack-ahead --out my", ["my car.yaml"]],
];

describe.skipIf(!isPresent("bash"))("completion in bash (needs bash)", () => {
  it("offers every command first", () => {
    expect(bash("")).toEqual(expect.arrayContaining([...commandNames, "rack-ahead", "my car.yaml"]));
  });

  it.each(commands)("offers the options of %s that its help shows", async (name) => {
    expect(bash(name, "--").sort()).toEqual(await optionsOf(name));
  });

  it.each(offers)("offers after rackwright %s: %s", (line, offered) => {
    expect(bash(...line.split(" ")).sort()).toEqual(offered);
  });

  it("offers values after an equals sign, at which bash parts words", () => {
    expect(bash("steer", "--units", "=", "m")).toEqual(["mm"]);
    expect(bash("steer", "--units", "=")).toEqual(["in", "mm"]);
  });
});

describe.skipIf(!isPresent("fish"))("completion in fish (needs fish)", () => {
  it.each(commands)("offers the options of %s that its help shows", async (name) => {
    const found = fish(`rackwright ${name} --`).map((each) => each.replace(/=$/, ""));
    expect(found.sort()).toEqual(await optionsOf(name));
  });

  it.each(offers)("offers after rackwright %s: %s", (line, offered) => {
    const plain = fish(`rackwright ${line}`).map((each) => each.replaceAll("\\ ", " "));
    expect(plain.sort()).toEqual(offered);
  });
});

describe.skipIf(!isPresent("zsh"))("completion in zsh (needs zsh)", () => {
  it.each([
    ["ste", "steer"],
    ["--pla", "--plain"],
    ["steer widened-off", "widened-offset-rack"],
    ["steer my", "my\\ car.yaml"],
    ["steer rack-ahead --wa", "--watch"],
    ["steer rack-ahead --units m", "mm"],
    ["find rack-ahead --rods=f", "follow"],
    ["completion z", "zsh"],
    ["match rack-ahead as", "as-built"],
    ["help sen", "sensitivity"],
  ])("completes rackwright %s to %s", async (typed, whole) => {
    const terminal = openCommand("zsh", ["-f", "-i"], { env: { HOME: place.path, PS1: "> " } });
    await terminal.until("the prompt", (text) => text.includes("> "));
    terminal.type(
      `cd ${place.path}; autoload -Uz compinit; compinit -u -D; source rackwright.zsh; clear; echo re\\ady\r`,
    );
    await terminal.until("the script read", (text) => text.includes("ready\n> ") || text.startsWith("ready"));
    terminal.type(`rackwright ${typed}\t`);
    const words = typed.split(" ").slice(0, -1);
    const [, before = ""] = /^(--\w+=)/.exec(typed.split(" ").at(-1) ?? "") ?? [];
    const line = ["rackwright", ...words, before + whole].join(" ");
    await terminal.until(line, (text) => text.includes(line));
    terminal.pty.kill();
  });
});
