import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { openCommand, type Terminal } from "../terminal/support/terminal.ts";
import { folder } from "./run.ts";

const bin = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const place = folder();
const car = place.put("car.yaml", presetText("widened-offset-rack"));
afterAll(() => place.remove());

let own = "";
beforeEach(() => {
  own = mkdtempSync(join(place.path, "run-"));
});
const read = (name: string) => (existsSync(join(own, name)) ? readFileSync(join(own, name), "utf8") : "");
const shows = (terminal: Terminal, words: RegExp) => terminal.until(String(words), (text) => words.test(text));

/** A run at a terminal whose shell outlives it, so that the shell can tell how the program ended. */
function openRun(before: readonly string[], words: readonly string[]): Terminal {
  const script = `trap : HUP; cd "${own}"; "$@" 2>errors; echo $? >code`;
  const [command = "", ...more] = [...before, "sh", "-c", script, "sh", process.execPath, bin, ...words];
  return openCommand(command, more, { env: { HOME: own } });
}

const runs: readonly (readonly [string, readonly string[], (terminal: Terminal) => Promise<void>])[] = [
  [
    "lines",
    ["--plain", car],
    async (terminal) => {
      await shows(terminal, /^> *$/m);
      terminal.type("rack offset 0\r");
      await shows(terminal, /Rack offset: set to 0/);
    },
  ],
  [
    "questions",
    ["new", "made.yaml", "--from-tape"],
    async (terminal) => {
      terminal.type("in\r68\r");
      await expect.poll(() => read("made-tape.yaml"), { timeout: 10_000 }).toMatch(/wheelbase: 68/);
      await shows(terminal, /68/);
    },
  ],
  ["watch", ["steer", car, "--watch"], (terminal) => shows(terminal, /Ctrl-C ends/)],
];

describe("a terminal that goes while a command is under way", () => {
  describe.each([
    ["with a hang-up", []],
    ["without a signal", ["setsid", "--wait"]],
  ])("%s", (_, before) => {
    it.each(runs)(
      "ends it as a hang-up does, with no fault, and what was answered is kept: %s",
      async (name, words, work) => {
        const terminal = openRun(before, words);
        await work(terminal);
        (terminal.pty as unknown as { destroy(): void }).destroy();
        // 128 + 1: SIGHUP.
        await expect.poll(() => read("code"), { timeout: 10_000 }).toBe("129\n");
        expect(read("errors")).not.toMatch(/^\s*#|Assertion|^\s+at /m);
        if (name === "questions") expect(read("made-tape.yaml")).toMatch(/wheelbase: 68/);
      },
    );
  });
});
