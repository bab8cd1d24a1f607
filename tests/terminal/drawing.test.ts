import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { harnessForTests, openTerminal, type Start, type Terminal } from "./support/terminal.ts";

const harness = harnessForTests();

async function opened(start: Start = {}, words: readonly string[] = []): Promise<Terminal> {
  const terminal = openTerminal([harness(), ...words], start);
  await terminal.until("the first frame", (text) => text.includes("Harness"));
  return terminal;
}

async function closed(terminal: Terminal): Promise<void> {
  terminal.type("q");
  expect(await terminal.ended()).toBe(0);
}

/** The screen without the number of the process, which differs from run to run. */
function frameOf(terminal: Terminal): string[] {
  return terminal.rows().map((row) => row.replace(/pid \d+ */, ""));
}

describe("drawing through a session", () => {
  it("fills the terminal to the last row and column", async () => {
    const terminal = await opened();
    expect(terminal.rows()[0]).toBe(`╭${"─".repeat(78)}╮`);
    expect(terminal.rows()[23]).toBe(`╰${"─".repeat(78)}╯`);
    expect(terminal.isAlternate()).toBe(true);
    expect(terminal.cursor().shown).toBe(false);
    await closed(terminal);
  });

  it("sends what changed, never a clear, within the marks of a synchronised update", async () => {
    const terminal = await opened();
    const before = terminal.output().length;
    terminal.type("j");
    await terminal.until("the key", (text) => text.includes("keys j"));
    const sent = terminal.output().slice(before);
    expect(sent).toMatch(/^\x1b\[\?2026h.*\x1b\[\?2026l$/s);
    expect(sent.length).toBeLessThan(50);
    expect(terminal.output()).not.toMatch(/\x1b\[[23]J|\x1bc/);
    await closed(terminal);
  });

  it("is right in every size it is given, after a storm of them", async () => {
    const terminal = await opened();
    for (let step = 0; step < 40; step++) {
      terminal.resize(60 + ((step * 13) % 90), 12 + ((step * 7) % 40));
      if (step % 3 === 0) await pause(5);
    }
    terminal.resize(101, 31);
    await terminal.until("the last size", (text) => text.includes("Harness 101x31"));
    await terminal.until("the last row", () => terminal.rows()[30] === `╰${"─".repeat(99)}╯`);
    expect(terminal.rows()[0]).toBe(`╭${"─".repeat(99)}╮`);
    expect(
      terminal
        .rows()
        .slice(1, 30)
        .every((row) => row.startsWith("│") && row.endsWith("│")),
    ).toBe(true);
    expect(terminal.output()).not.toMatch(/\x1b\[[23]J|\x1bc/);
    await closed(terminal);
  });

  it("draws the same frame whatever the terminal is called and whether it has colour", async () => {
    const environments: Record<string, string>[] = [
      { TERM: "xterm-256color" },
      { TERM: "xterm" },
      { TERM: "screen" },
      { TERM: "tmux-256color" },
      { TERM: "linux" },
      { TERM: "vt100" },
      { TERM: "xterm", NO_COLOR: "1" },
      { TERM: "vt100", FORCE_COLOR: "1" },
      { TERM: "xterm", FORCE_COLOR: "0" },
      { TERM: "xterm", CI: "true", DEV: "true" },
    ];
    const frames: string[][] = [];
    for (const env of environments) {
      const terminal = await opened({ env });
      frames.push(frameOf(terminal));
      const isColored = /\x1b\[[\d;]*[1-9][\d;]*m/.test(terminal.output());
      expect(isColored, JSON.stringify(env)).toBe(
        env.NO_COLOR === undefined && env.FORCE_COLOR !== "0" && (env.TERM !== "vt100" || env.FORCE_COLOR === "1"),
      );
      await closed(terminal);
    }
    for (const frame of frames) expect(frame).toEqual(frames[0]);
  });

  it.each([
    ["a C locale", { LANG: "C" }, []],
    ["LC_ALL=POSIX", { LC_ALL: "POSIX" }, []],
    ["--ascii", {}, ["--ascii"]],
  ] as const)("keeps to ASCII with %s", async (_, env, words) => {
    const terminal = await opened({ env }, words);
    expect(terminal.output()).toMatch(/^[\x00-\x7f]*$/);
    expect(terminal.text()).toContain("toe 0.10d +");
    expect(terminal.rows()[0]).toBe(`+${"-".repeat(78)}+`);
    await closed(terminal);
  });

  it("shows a field's cursor without colour too", async () => {
    const terminal = await opened({ env: { NO_COLOR: "1" } });
    terminal.type("\r14");
    await terminal.until("the cursor", () => terminal.cursor().shown && terminal.cursor().x === 3);
    await closed2(terminal);
  });

  it("does not queue frames on a line that has stalled: it shows the newest when the line moves again", async () => {
    const terminal = await opened();
    terminal.pty.pause();
    const before = terminal.output().length;
    // More keys than their frames have room for between the program and a reader that does not read.
    for (let key = 0; key < 3000; key++) {
      terminal.type("j");
      if (key % 10 === 0) await new Promise(setImmediate);
    }
    await pause(500);
    terminal.pty.resume();
    await terminal.until("the newest frame", (text) => text.includes("count 3000 "));
    const sent = terminal.output().length - before;
    expect(sent).toBeLessThan(3000 * 30);
    await closed(terminal);
  });

  it("ends at once though the line has stalled", async () => {
    const terminal = await opened();
    const pid = Number(terminal.text().match(/pid (\d+)/)?.[1]);
    terminal.pty.pause();
    for (let size = 0; size < 100; size++) {
      terminal.pty.resize(80 + (size % 2) * 40, 24 + (size % 2) * 20);
      await pause(5);
    }
    process.kill(pid, "SIGTERM");
    await expect.poll(() => isRunning(pid), { timeout: 3000 }).toBe(false);
    terminal.pty.resume();
  });
});

async function closed2(terminal: Terminal): Promise<void> {
  terminal.type("\x1b");
  await terminal.until("no field", (text) => text.includes("no field"));
  await closed(terminal);
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
