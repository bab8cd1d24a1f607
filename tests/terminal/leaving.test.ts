import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { harnessForTests, openCommand, openFromShell, openTerminal, type Terminal } from "./support/terminal.ts";

const harness = harnessForTests();
const place = mkdtempSync(join(tmpdir(), "leaving-"));
afterAll(() => rmSync(place, { recursive: true, force: true }));

async function drawn(terminal: Terminal): Promise<number> {
  await terminal.until("the first frame", (text) => /pid \d+/.test(text));
  expect(terminal.isAlternate()).toBe(true);
  return pidOf(terminal);
}

function pidOf(terminal: Terminal): number {
  return Number(terminal.text().match(/pid (\d+)/)?.[1]);
}

/** What the shell's screen shows when the program is over. */
async function aftermath(terminal: Terminal): Promise<string[]> {
  expect(await terminal.ended()).toBe(0);
  await terminal.until("the shell's last word", (text) => text.includes("after"));
  expect(terminal.isAlternate()).toBe(false);
  expect(terminal.cursor().shown).toBe(true);
  return terminal.rows().filter((row) => row !== "");
}

/** The modes that were switched on are off again, each after its last switching on. */
function modesLeftOn(output: string): string[] {
  const switches = [...output.matchAll(/\x1b\[\?(\d+)([hl])/g)].map(([, mode, way]) => [mode, way] as const);
  const last = new Map(switches);
  const wanted = new Map([
    ["1049", "l"],
    ["2004", "l"],
    ["2026", "l"],
    ["25", "h"],
    ["7", "h"],
  ]);
  return [...wanted].filter(([mode, way]) => last.get(mode) !== way).map(([mode]) => mode);
}

const stopped = (reason: string) => `rackwright stopped by a fault of its own: ${reason}`;

const waysOut: readonly (readonly [string, (terminal: Terminal, pid: number) => void, readonly string[], string])[] = [
  ["quitting", (terminal) => terminal.type("q"), ["code 0"], "quit"],
  ["quitting with a code", (terminal) => terminal.type("Q"), ["code 1"], "quit"],
  ["Ctrl-C", (terminal) => terminal.type("\x03"), ["code 130"], "quit"],
  ["SIGTERM", (_, pid) => process.kill(pid, "SIGTERM"), ["code 143"], "signal"],
  ["SIGHUP", (_, pid) => process.kill(pid, "SIGHUP"), ["code 129"], "signal"],
  ["SIGINT", (_, pid) => process.kill(pid, "SIGINT"), ["code 130"], "signal"],
  ["SIGQUIT", (_, pid) => process.kill(pid, "SIGQUIT"), ["code 131"], "signal"],
  ["SIGUSR2", (_, pid) => process.kill(pid, "SIGUSR2"), ["code 140"], "signal"],
  ["SIGALRM", (_, pid) => process.kill(pid, "SIGALRM"), ["code 142"], "signal"],
  ["SIGXCPU", (_, pid) => process.kill(pid, "SIGXCPU"), ["code 152"], "signal"],
  ["a fault in a key", (terminal) => terminal.type("H"), [stopped("broken in a key"), "code 70"], "error"],
  ["a fault in a timer", (terminal) => terminal.type("T"), [stopped("broken in a timer"), "code 70"], "error"],
  ["a fault in a promise", (terminal) => terminal.type("P"), [stopped("broken in a promise"), "code 70"], "error"],
  ["a fault in a render", (terminal) => terminal.type("R"), [stopped("broken in a render"), "code 70"], "error"],
  ["a library that prints", (terminal) => terminal.type("Wq"), ["a word from a library", "code 0"], "quit"],
];

describe("leaving the terminal", () => {
  it.each(waysOut)("gives the main screen back on %s", async (name, leave, said, kind) => {
    const log = join(place, `${name.replaceAll(" ", "-")}.log`);
    const terminal = openFromShell([harness()], { env: { HARNESS_LOG: log } });
    leave(terminal, await drawn(terminal));
    expect(await aftermath(terminal)).toEqual(["before", ...said, "line as before", "after"]);
    expect(modesLeftOn(terminal.output())).toEqual([]);
    expect(terminal.output(), "a place in the program").not.toMatch(/:\d+:\d+/);
    expect(readFileSync(log, "utf8")).toBe(`${kind}\n`);
  });

  it("says nothing more to a terminal that was closed, and ends", async () => {
    const log = join(place, "hung-up.log");
    const terminal = openTerminal([harness()], { env: { HARNESS_LOG: log } });
    const pid = await drawn(terminal);
    terminal.pty.kill("SIGHUP");
    expect(await terminal.ended()).toBe(129);
    expect(() => process.kill(pid, 0)).toThrow();
    expect(readFileSync(log, "utf8")).toMatch(/^(signal|gone)\n$/);
  });

  it("ends when the line is cut without any signal", async () => {
    const log = join(place, "cut.log");
    // setsid gives the program a terminal that sends it no hang-up: it only finds that nothing can be read or written.
    const terminal = openCommand("setsid", ["--wait", process.execPath, harness()], { env: { HARNESS_LOG: log } });
    const pid = await drawn(terminal);
    (terminal.pty as unknown as { destroy(): void }).destroy();
    await expect.poll(() => readLog(log), { timeout: 10_000 }).toBe("gone\n");
    await expect.poll(() => isRunning(pid), { timeout: 10_000 }).toBe(false);
  });

  it.each([
    ["with a hang-up", []],
    ["without a signal", ["setsid", "--wait"]],
  ])("ends as by a hang-up when the line is dropped %s, and leaves no fault behind", async (_, before) => {
    for (let round = 0; round < 3; round += 1) {
      const code = join(place, `code-${before.length}-${round}`);
      const errors = join(place, `errors-${before.length}-${round}`);
      // The shell outlives the hang-up, so that it can say how the program ended.
      const script = `trap : HUP; "$@" 2>"${errors}"; echo $? >"${code}"`;
      const [command = "", ...words] = [...before, "sh", "-c", script, "sh", process.execPath, harness()];
      const terminal = openCommand(command, words);
      await drawn(terminal);
      (terminal.pty as unknown as { destroy(): void }).destroy();
      // 128 + 1: SIGHUP.
      await expect.poll(() => readLog(code), { timeout: 10_000 }).toBe("129\n");
      // A shell may say that much.
      expect(readLog(errors)).toMatch(/^(Hangup\n)?$/);
    }
  });
});

function readLog(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

describe("suspending", () => {
  it("gives a shell its screen on Ctrl-Z, and comes back on fg with the whole frame", async () => {
    const terminal = openCommand("bash", ["--norc", "--noprofile", "-i"], { env: { PS1: "ready> " } });
    await terminal.until("the prompt", (text) => text.includes("ready>"));
    terminal.type(`${process.execPath} ${harness()}\r`);
    await drawn(terminal);
    terminal.type("ab\x1a");
    await terminal.until("the shell", (text) => /Stopped/.test(text) && /ready>\s*$/.test(text.trimEnd()));
    expect(terminal.isAlternate()).toBe(false);
    expect(terminal.cursor().shown).toBe(true);
    terminal.resize(90, 30);
    terminal.type("fg\r");
    await terminal.until("the frame in the new size", (text) => text.includes("Harness 90x30"));
    terminal.type("c");
    await terminal.until("the next key", (text) => text.includes("keys a b c"));
    expect(terminal.isAlternate()).toBe(true);
    expect(terminal.rows()[29]).toBe(`╰${"─".repeat(88)}╯`);
    terminal.type("\x1a");
    await terminal.until("the shell again", (text) => (text.match(/Stopped/g)?.length ?? 0) >= 2);
    terminal.type("fg\r");
    await terminal.until("the frame again", (text) => text.includes("keys a b c"));
    terminal.type("q");
    await terminal.until("the shell's prompt", (text) => !text.includes("Harness"));
    terminal.type("exit $?\r");
    expect(await terminal.ended()).toBe(0);
  });

  it("stays where there is no shell to go back to", async () => {
    const terminal = openTerminal([harness()]);
    await drawn(terminal);
    terminal.type("a\x1ab");
    await terminal.until("both keys", (text) => text.includes("keys a b"));
    expect(terminal.isAlternate()).toBe(true);
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
  });

  it("takes the terminal anew when it was stopped and continued from outside", async () => {
    const terminal = openFromShell([harness()]);
    const pid = await drawn(terminal);
    process.kill(pid, "SIGSTOP");
    await terminal.scribble("\x1b[?1049l\x1b[?25hsomething else was here\r\n");
    process.kill(pid, "SIGCONT");
    await terminal.until("the frame", (text) => text.includes("Harness 80x24") && !text.includes("something else"));
    expect(terminal.isAlternate()).toBe(true);
    expect(terminal.cursor().shown).toBe(false);
    terminal.type("q");
    expect(await aftermath(terminal)).toContain("code 0");
  });
});
