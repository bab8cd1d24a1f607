import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { harnessForTests, openTerminal, type Start, type Terminal } from "./support/terminal.ts";

const harness = harnessForTests();

async function opened(start: Start = {}): Promise<Terminal> {
  const terminal = openTerminal([harness()], start);
  await terminal.until("the first frame", (text) => text.includes("Harness"));
  return terminal;
}

async function closed(terminal: Terminal): Promise<void> {
  terminal.type("q");
  expect(await terminal.ended()).toBe(0);
}

/** The keys shown after an Escape that settles what came before. */
async function keysAfter(terminal: Terminal, count: number): Promise<string> {
  await terminal.until(`${count} keys`, (text) => text.includes(`count ${count} `));
  return terminal.text().match(/keys (.*?) *│/)?.[1] ?? "";
}

describe("keys through a session", () => {
  it("come one at a time, in order, from one packet", async () => {
    const terminal = await opened();
    terminal.type("jj\x1b[A\x1bOB1\x7f\x1b[3~\x1b[1;5P");
    expect(await keysAfter(terminal, 8)).toBe("j j up down 1 backspace delete ctrl+f1");
    await closed(terminal);
  });

  it("are whole when the network parts an escape sequence, and Escape is Escape when nothing follows", async () => {
    const terminal = await opened();
    for (const part of ["\x1b", "[", "A"]) {
      terminal.type(part);
      await pause(15);
    }
    expect(await keysAfter(terminal, 1)).toBe("up");
    terminal.type("\x1b");
    expect(await keysAfter(terminal, 2)).toBe("up escape");
    await closed(terminal);
  });

  it("are not made of a mouse, a change of focus or an answer of the terminal", async () => {
    const terminal = await opened();
    terminal.type("a\x1b[<0;3;4M\x1b[M !!\x1b[I\x1b[O\x1b[?1;2c\x1b]11;rgb:0/0/0\x07b");
    expect(await keysAfter(terminal, 2)).toBe("a b");
    await closed(terminal);
  });

  it("insert a paste as text in a field, its line feeds as blanks", async () => {
    const terminal = await opened();
    terminal.type("\r\x1b[200~14 3/8\r\nin\x1b[201~");
    await terminal.until("the text", (text) => text.includes("14 3/8 in"));
    terminal.type("\r");
    await terminal.until("the entry", (text) => text.includes("entries 14 3/8 in of 1"));
    await closed(terminal);
  });

  it("edit within a field of Ink's, and the terminal's own cursor shows where", async () => {
    const terminal = await opened();
    terminal.type("\r1238");
    await terminal.until("the cursor after the text", () => terminal.cursor().shown && terminal.cursor().x === 5);
    expect(terminal.rows()[terminal.cursor().y]).toContain("1238");
    terminal.type("\x1b[D\x7f");
    await terminal.until("the cursor within", (text) => text.includes("128") && terminal.cursor().x === 3);
    terminal.type("\x1b");
    await terminal.until("no field", (text) => text.includes("no field") && !terminal.cursor().shown);
    await closed(terminal);
  });

  it.each([
    ["in one packet", 0],
    ["a key at a time, at once", 1],
    ["a key every 2 ms", 2],
    ["a key every 11 ms", 11],
  ])("20 times open a field, type five digits, Enter: %s", async (_, pacing) => {
    const terminal = await opened();
    const bursts = Array.from({ length: 20 }, (_, burst) => `\r${10000 + burst * 37}\r`);
    if (pacing === 0) terminal.type(bursts.join(""));
    else {
      for (const key of bursts.join("")) {
        terminal.type(key);
        if (pacing > 1) await pause(pacing);
        else await new Promise(setImmediate);
      }
    }
    await terminal.until("all entries", (text) => text.includes("of 20"));
    expect(terminal.text()).toContain("entries 10592,10629,10666,10703 of 20");
    await closed(terminal);
  });

  it("that take long show frames between them, and none of a burst is lost or out of order", async () => {
    const terminal = await opened();
    const frames = () => terminal.output().split("\x1b[?2026h").length;
    const before = frames();
    terminal.type(`${"B".repeat(50)}12345678`);
    expect(await keysAfter(terminal, 58)).toBe("1 2 3 4 5 6 7 8");
    expect(frames() - before).toBeGreaterThan(20);
    await closed(terminal);
  });

  it("let Ctrl-C through, however many wait before it", async () => {
    const terminal = await opened();
    const start = performance.now();
    terminal.type(`${"B".repeat(500)}\x03`);
    expect(await terminal.ended()).toBe(130);
    // All of them would take 10 s.
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it("let Ctrl-C through when the end of a paste was lost", async () => {
    const terminal = await opened();
    terminal.type("\x1b[200~14 3/8");
    await pause(250);
    const start = performance.now();
    terminal.type("\x03");
    expect(await terminal.ended()).toBe(130);
    expect(performance.now() - start).toBeLessThan(1500);
  });

  it("are never lost at 30 a second, and the last is shown before the next would come", async () => {
    const terminal = await opened();
    const interval = 1000 / 30;
    const start = performance.now();
    for (let key = 1; key <= 100; key++) {
      await pause(Math.max(0, start + key * interval - performance.now()));
      terminal.type("j");
    }
    const typed = performance.now();
    await terminal.until("all keys", (text) => text.includes("count 100 "));
    expect(performance.now() - typed).toBeLessThan(interval);
    await closed(terminal);
  });
});
