import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openTerminal, type Start, type Terminal } from "../terminal/support/terminal.ts";

const program = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));

const key = {
  up: "\x1b[A",
  down: "\x1b[B",
  right: "\x1b[C",
  left: "\x1b[D",
  enter: "\r",
  tab: "\t",
  escape: "\x1b",
};

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "bench-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The built program in a pseudo-terminal, its journals in a folder of the test's own. */
function openBench(words: readonly string[], start: Start = {}): Terminal {
  return openTerminal([program, ...words], { ...start, env: { XDG_STATE_HOME: folder, HOME: folder, ...start.env } });
}

const shows = (terminal: Terminal, words: string | RegExp) =>
  terminal.until(String(words), (text) => (typeof words === "string" ? text.includes(words) : words.test(text)));

describe("a task at the bench, in a pseudo-terminal", () => {
  it("moves the tab by keys and by a typed value, undoes, saves under a name, and reopens", async () => {
    const path = join(folder, "mine.yaml");
    const bench = openBench(["widened-offset-rack"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type(key.down);
    bench.type(key.right);
    await shows(bench, /> +out +19 13\/16/);
    // One write, as a paste or a slow line brings it: the field opens, is filled and is accepted.
    bench.type(`${key.enter}+1/16${key.enter}`);
    await shows(bench, /> +out +19 7\/8/);
    bench.type("u");
    await shows(bench, /> +out +19 13\/16/);
    bench.type("s");
    await shows(bench, "Save as");
    bench.type(path);
    bench.type(key.enter);
    await shows(bench, "mine.yaml, saved");
    bench.type("q");
    expect(await bench.ended()).toBe(0);
    expect(readFileSync(path, "utf8")).toContain("19.8125");

    const again = openBench([path]);
    await shows(again, /> Tie-rod tab ahead/);
    expect(again.text()).toMatch(/out +19 13\/16/);
    expect(again.text()).toContain("mine.yaml, saved");
    again.type("q");
    expect(await again.ended()).toBe(0);
  });

  it("does not lose a key of twenty bursts that open the field, type five digits and accept", async () => {
    const bench = openBench(["widened-offset-rack"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type(`${key.down}ff`);
    for (let i = 0; i < 20; i++) {
      const value = `19.${String(101 + 37 * i)}`;
      bench.type(`${key.enter}${value}${key.enter}`);
      await shows(bench, new RegExp(`> +out +${value.replace(".", "\\.")}`));
    }
    bench.type("q");
    await shows(bench, "not saved. Leave");
    bench.type("d");
    expect(await bench.ended()).toBe(0);
  });

  it("asks before unsaved changes are lost, and stays on Escape", async () => {
    const bench = openBench(["widened-offset-rack"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type(key.right);
    await shows(bench, "NOT SAVED");
    bench.type("q");
    await shows(bench, "not saved. Leave");
    bench.type(key.escape);
    await shows(bench, "q quit");
    bench.type("q");
    await shows(bench, "not saved. Leave");
    bench.type("d");
    expect(await bench.ended()).toBe(0);
    expect(bench.isAlternate()).toBe(false);
  });

  it("says which rod does not reach and by how much, and undo leads back", async () => {
    const bench = openBench(["widened-offset-rack"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type(`c${key.down}${key.down}${key.down}${key.tab}${key.enter}14${key.enter}`);
    await shows(bench, /left tie rod is[\s\d./]+in\s+too short/);
    expect(bench.text()).not.toContain("NaN");
    bench.type("u");
    await shows(bench, /RODS +15 25\/32 in, as cut/);
    bench.type("qd");
    expect(await bench.ended()).toBe(0);
  });

  it("never writes over a file unasked, and says when another program changed it", async () => {
    const path = join(folder, "a.yaml");
    writeFileSync(path, readFileSync(new URL("../../presets/balanced-two-seater.yaml", import.meta.url)));
    const bench = openBench([path]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type(key.right);
    await shows(bench, "NOT SAVED");
    const theirs = `${readFileSync(path, "utf8")}# someone else was here\n`;
    writeFileSync(path, theirs);
    bench.type("s");
    await shows(bench, "was changed by something else");
    bench.type(key.escape);
    await shows(bench, "q quit");
    expect(readFileSync(path, "utf8")).toBe(theirs);
    bench.type("S");
    await shows(bench, "Save as");
    bench.type(`${path}${key.enter}`);
    await shows(bench, /There is a file[\s\S]*already/);
    expect(readFileSync(path, "utf8")).toBe(theirs);
    bench.type("o");
    await shows(bench, "a.yaml, saved");
    bench.type("q");
    expect(await bench.ended()).toBe(0);
  });

  it("keeps a file name that is longer than the window on its one line, with the cursor in sight", async () => {
    const bench = openBench(["balanced-two-seater"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type("S");
    await shows(bench, "Save as");
    const before = bench.rows();
    const row = before.findIndex((each) => each.includes("Save as"));
    bench.type(`\x1b[200~/no-such-folder/${"a-long-way-down/".repeat(8)}car.yaml\x1b[201~`);
    await shows(bench, /Save as: ….*car\.yaml$/m);
    expect(bench.rows().filter((_, at) => at !== row)).toEqual(before.filter((_, at) => at !== row));
    expect(bench.rows()[row]?.length).toBeLessThanOrEqual(80);
    expect(bench.cursor()).toMatchObject({ shown: true, y: row, x: bench.rows()[row]?.length });
    bench.type(`${key.escape}q`);
    expect(await bench.ended()).toBe(0);
  });

  it("offers back what kill -9 interrupted, and applies it only when told to", async () => {
    const path = join(folder, "a.yaml");
    writeFileSync(path, readFileSync(new URL("../../presets/widened-offset-rack.yaml", import.meta.url)));
    const killed = openBench([path]);
    await shows(killed, /> Tie-rod tab ahead/);
    killed.type(`${key.down}${key.right}${key.right}`);
    await shows(killed, /> +out +19 7\/8/);
    killed.pty.kill("SIGKILL");
    await killed.ended();

    const again = openBench([path]);
    await shows(again, "Unsaved changes of this car were found: 2 changes");
    expect(again.text()).toMatch(/out +19 3\/4/);
    again.type("r");
    await shows(again, /out +19 7\/8/);
    again.type("qd");
    expect(await again.ended()).toBe(0);
    expect(readFileSync(path, "utf8")).not.toContain("19 7/8");
    expect(existsSync(path)).toBe(true);
  });

  it("says what size it needs in a small window, and draws once there is room", async () => {
    const bench = openBench(["balanced-two-seater"], { columns: 60, rows: 20 });
    await shows(bench, /Make it at\s+least/);
    bench.resize(120, 40);
    await shows(bench, "LOCK TO LOCK");
    bench.type("q");
    expect(await bench.ended()).toBe(0);
  });

  it("draws in ASCII and without colour where the terminal knows no more", async () => {
    const bench = openBench(["widened-offset-rack"], { env: { TERM: "vt100", LANG: "C", NO_COLOR: "1" } });
    await shows(bench, /> Tie-rod tab ahead/);
    expect(bench.text()).toMatch(/^[\n -~]+$/);
    expect(bench.text()).toContain("DANGEROUS");
    expect(bench.output()).not.toMatch(/\x1b\[[\d;]*3[1-7]m/);
    bench.type("q");
    expect(await bench.ended()).toBe(0);
  });

  it("changes the front end, puts one filled-in value right, saves, and finds the others still marked", async () => {
    const path = join(folder, "strut.yaml");
    const bench = openBench(["widened-offset-rack"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type("p");
    await shows(bench, /> \* Double A-arms/);
    bench.type(`${key.down}${key.down}${key.enter}`);
    await shows(bench, "6 STARTING VALUES TO CHECK");
    bench.type(key.enter);
    await shows(bench, /^>~Strut +top mount, ahead +-2 3\/8/m);
    bench.type(`${key.enter}-2 1/2${key.enter}`);
    await shows(bench, /^> Strut +top mount, ahead +-2 1\/2/m);
    bench.type(`S${path}${key.enter}`);
    await shows(bench, "strut.yaml, saved");
    bench.type("q");
    expect(await bench.ended()).toBe(0);
    expect(readFileSync(path, "utf8")).toMatch(/top: .*-2 1\/2.*# starting value of out, up: measure and correct/);

    const again = openBench([path]);
    await shows(again, /> Tie-rod tab ahead/);
    again.type("X");
    await shows(again, "5 STARTING VALUES TO CHECK");
    again.type(key.escape);
    await shows(again, "q quit");
    again.type("q");
    expect(await again.ended()).toBe(0);
  });

  it("leaves on Ctrl-C twice with the changes kept, says so, and offers them next time", async () => {
    const bench = openBench(["widened-offset-rack"]);
    await shows(bench, /> Tie-rod tab ahead/);
    bench.type(`${key.down}${key.right}`);
    await shows(bench, "NOT SAVED");
    bench.type("\x03");
    await shows(bench, "Ctrl-C leave, keep for next time");
    bench.type("\x03");
    expect(await bench.ended()).toBe(0);
    await shows(bench, /Not saved, but kept: open widened-offset-rack again/);
    expect(bench.isAlternate()).toBe(false);

    const again = openBench(["widened-offset-rack"]);
    await shows(again, "Unsaved changes of this car were found: 1 change");
    again.type("d");
    await shows(again, "Thrown away.");
    again.type("q");
    expect(await again.ended()).toBe(0);
  });

  it("loses no key that is typed before the first frame", async () => {
    const bench = openBench(["widened-offset-rack"]);
    bench.type(`${key.down}${key.right}${key.enter}20${key.enter}u`);
    await shows(bench, /> +out +19 13\/16/);
    bench.type("qd");
    expect(await bench.ended()).toBe(0);
  });
});
