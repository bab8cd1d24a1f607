import { beforeAll, describe, expect, it } from "vitest";
import { buildHarness, openTerminal } from "./support/terminal.ts";

let harness = "";
beforeAll(async () => {
  harness = await buildHarness();
});

describe("a session in a pseudo-terminal", () => {
  it("draws the first frame on the alternate screen, cursor hidden", async () => {
    const terminal = openTerminal([harness]);
    await terminal.until("the first frame", (text) => text.includes("Harness 80x24"));
    expect(terminal.isAlternate()).toBe(true);
    expect(terminal.cursor().shown).toBe(false);
    expect(terminal.rows()[0]).toBe(`╭${"─".repeat(78)}╮`);
    expect(terminal.rows()[23]).toBe(`╰${"─".repeat(78)}╯`);
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
    expect(terminal.isAlternate()).toBe(false);
    expect(terminal.cursor().shown).toBe(true);
  });

  it("takes a burst of open, five digits, Enter", async () => {
    const terminal = openTerminal([harness]);
    await terminal.until("the first frame", (text) => text.includes("Harness 80x24"));
    for (let burst = 0; burst < 20; burst++) terminal.type(`\r${10000 + burst}\r`);
    await terminal.until("all", (text) => text.includes("of 20"));
    expect(terminal.text()).toContain("entries 10016,10017,10018,10019 of 20");
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
  });
});
