import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { openTerminal } from "../terminal/support/terminal.ts";

const program = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "lines-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What is said after each typed line, the greeting first. */
function talk(...lines: readonly string[]): readonly string[] {
  const { stdout, status } = spawnSync(process.execPath, [program, "--plain", "widened-offset-rack"], {
    input: `${lines.join("\n")}\n`,
    encoding: "utf8",
    env: { PATH: process.env.PATH, XDG_STATE_HOME: folder, HOME: folder, LANG: "en_US.UTF-8" },
  });
  expect(status).toBe(0);
  return stdout.split("> ");
}

describe("line mode", () => {
  it("says everything once, then only what a line changed", () => {
    const [greeting, moved, back] = talk("tab out +1/16", "undo", "quit");
    expect(greeting).toContain("Turn the wheels lock to lock through full travel on stands before driving.");
    expect(greeting).toContain("Tie-rod tab, out: 19 3/4.");
    expect(greeting).toContain("Both steer right 0.9° at 3 in droop.");
    expect(moved).toContain("Tie-rod tab, out: 19 13/16.");
    expect(moved).not.toContain("Rack offset");
    expect(back).toContain("Tie-rod tab, out: 19 3/4.");
  });

  it("asks for the readings of a new car one after the other, and writes it", () => {
    const path = join(folder, "from-tape.yaml");
    const page1 = ["", "68", "10 3/4", "56", "7", "42 1/2", "4 1/2", "1 1/2", "8 1/2", "4", "9", "8 5/8", "1", "four"];
    const rest = ["4", "2 1/2", "right", "2", "", "12", "", "", "", ""];
    const said = talk("from tape", path, ...page1, ...rest, "", "quit");
    expect(said[1]).toContain("Name of the new car's file: What to call the new car's file");
    expect(said[3]).toContain("Wheelbase: Wheelbase (front hub to rear hub, the mean of both sides).");
    expect(said.join("")).toContain('"four" is not');
    expect(said.join("")).toContain("The right rod was taped 12 in, and the other readings make it 10 13/16 in");
    expect(said.join("")).toContain("Enter writes the car's file and opens it. Assumed");
    expect(readFileSync(path, "utf8")).toContain('title: "from-tape"');
  });

  it("asks for readings between points one after the other, says what is wrong with one, and keeps them", () => {
    const head = ["Yard donor", "", "", "", "", "", "", ""];
    const said = talk(
      "from tape",
      "page 2",
      "page 3",
      ...head,
      "81/4",
      "8 1/4",
      "back",
      "end",
      "back",
      "",
      "cancel",
      "quit",
    );
    const all = said.join("");
    expect(said[3]).toContain("Title:");
    expect(all).toContain("height of left lower-arm.front: above the floor or the jig table.");
    expect(all).toContain('Found "81/4", which is not clear');
    expect(all).toContain("It stands as 8 1/4; Enter keeps it.");
    expect(all).toContain("Name of the sheet's file:");
    expect(readFileSync(join(folder, "rackwright", "survey.json"), "utf8")).toContain("left lower-arm.front: 8 1/4");
    const again = talk("from tape", "page 3", "points", "cancel", "quit").join("");
    expect(again).toContain("height of left lower-arm.rear: above the floor or the jig table.");
  });

  it("takes one side, asks when a name may be two, and complains of what it does not know", () => {
    const [, left, two, none, odd] = talk("left tab up = 9", "tab = 9", "wing = 9", "tab up = much", "undo", "quit");
    expect(left).toContain("Tie-rod tab, up, left: 9.");
    expect(left).toContain("Tie-rod tab, up, right: 8 1/2.");
    expect(two).toContain("may be Tie-rod tab, ahead or Tie-rod tab, out or Tie-rod tab, up");
    expect(none).toContain('Nothing that can be adjusted is called "wing"');
    expect(odd).toContain("not understood");
  });

  it("saves under a name and leaves", () => {
    const path = join(folder, "mine.yaml");
    const said = talk("rack offset = 0", "save as", path, "quit").join("");
    expect(said).toContain(`Saved to ${path}.`);
    expect(readFileSync(path, "utf8")).toMatch(/offset: 0\b/);
  });

  it("changes the front end, names what was filled in, and takes that it was checked", () => {
    const said = talk("parts", "strut", "checked strut top up", "undo", "undo", "parts", "cancel", "quit");
    expect(said[1]).toContain("3: Strut, a lower arm, and a strut up to its top mount");
    expect(said[1]).toContain("1: Double A-arms, two arms a side, each on two pivots, on this car");
    expect(said[2]).toContain("Strut instead of double A-arms");
    expect(said[2]).toContain("These starting values were not measured on the car.");
    expect(said[2]).toContain("Strut, top mount, up: 27, a starting value.");
    expect(said[3]).toContain("Strut, top mount, up: 27.");
    expect(said[4]).toContain("Strut, top mount, up: 27, a starting value.");
    expect(said[5]).toContain("Taken back: Strut instead of double A-arms");
  });

  it("checks the car as it now is", () => {
    const [, before, , after] = talk("checks", "rack offset = 0", "checks", "undo", "quit");
    expect(before).toMatch(/BROKEN +Right tie rod, least rod-to-arm angle: 17.5°/);
    expect(after).toMatch(/CLOSE +Right tie rod, least rod-to-arm angle/);
    expect(after).not.toContain("BROKEN");
  });

  it("breaks sentences between words in a terminal, never within one", async () => {
    const terminal = openTerminal([program, "--plain", "widened-offset-rack"], { env: { XDG_STATE_HOME: folder } });
    await terminal.until("the prompt", (text) => /^> *$/m.test(text));
    terminal.type("help\r");
    await terminal.until("the help", (text) => text.includes("quit: leave"));
    const rows = terminal.rows().map((row) => row.trimEnd());
    expect(rows.every((row) => row.length < 80)).toBe(true);
    expect(rows.join(" ").replaceAll(/ +/g, " ")).toContain("every number shows its change from it; b again lets go");
    terminal.type("quit\r");
    expect(await terminal.ended()).toBe(0);
  });

  it("moves a plain number", () => {
    const said = talk("parts", "relay", "steering box ratio = 15 1/2", "quit", "go on");
    expect(said[3]).toContain("Steering box ratio: 15.5.");
  });

  it("asks of unsaved changes last of all that it says, and can be left with them kept", () => {
    talk("tab out +1/16");
    const asked = /Unsaved changes of this car were found: 1 change[\s\S]*restore: restore[\s\S]*cancel: [^\n]*$/;
    const [greeting = "", odd = "", left = ""] = talk("what", "quit");
    expect(greeting.trimEnd()).toMatch(asked);
    expect(greeting).toContain("Tie-rod tab, out: 19 3/4.");
    expect(odd.trimEnd()).toMatch(asked);
    expect(left).not.toContain("no answer");
    expect(talk("restore", "quit", "go on")[1]).toContain("Tie-rod tab, out: 19 13/16.");
  });

  it("asks before changes are lost, with the answers in words", () => {
    const said = talk("tab out +1/16", "quit", "go on");
    expect(said[2]).toContain("Leave without them?");
    expect(said[2]).toContain("go on: go on without saving");
    // Whatever else is typed, the question and its answers are heard again, last.
    const again = talk("tab out +1/16", "quit", "what", "", "help", "quit", "go on");
    for (const answer of again.slice(3, 7))
      expect(answer.trimEnd()).toMatch(/Leave without them\?[\s\S]*cancel: stay with this car/);
    expect(again[3]).toContain('"what" is no answer');
    expect(again[5]).toContain("Name a value");
  });
});
