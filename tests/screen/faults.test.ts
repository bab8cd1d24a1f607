import { spawnSync } from "node:child_process";
import {
  chmodSync,
  copyFileSync,
  cpSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { birthOf, isAlive } from "../../src/files/alive.ts";
import { openCommand, openFromShell, openTerminal, type Start, type Terminal } from "../terminal/support/terminal.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const program = join(root, "bin/rackwright.js");
const preset = join(root, "presets/widened-offset-rack.yaml");
const [right, backOut] = ["\x1b[C", "\x1b"];

let folder = "";
let car = "";
const text = () => readFileSync(car, "utf8");
const before = readFileSync(preset, "utf8");
const edited = before.replace("ahead: -4.5, out: 19.75", "ahead: -4.4375, out: 19.75");

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "rackwright-faults-"));
  car = join(folder, "car.yaml");
  copyFileSync(preset, car);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const surroundings = (): Record<string, string> => ({ XDG_STATE_HOME: join(folder, "state"), HOME: folder });

function openCar(path = car, start: Start = {}): Terminal {
  return openTerminal([program, path], { ...start, env: { ...surroundings(), ...start.env } });
}

const shows = (terminal: Terminal, words: RegExp) => terminal.until(String(words), (seen) => words.test(seen));
const stands = (terminal: Terminal) => shows(terminal, /> Tie-rod tab ahead/);

/** Moves the tab by a sixteenth, unsaved. */
async function edit(terminal: Terminal): Promise<void> {
  await stands(terminal);
  terminal.type(right);
  await shows(terminal, /NOT SAVED/);
}

/** The process that has unsaved changes: its number is in the name of what keeps them. */
function editorOf(): number {
  const [journal = ""] = readdirSync(join(folder, "state/rackwright/journals"));
  return Number(journal.split("-")[1]);
}

describe("a line that drops", () => {
  it.each([
    ["with a hang-up", []],
    ["without a signal", ["setsid", "--wait"]],
  ])("leaves the file as it was, and the change to be had again: %s", async (_, before_) => {
    const [command = "", ...words] = [...before_, process.execPath, program, car];
    const first = openCommand(command, words, { env: surroundings() });
    await edit(first);
    const pid = editorOf();
    const birth = birthOf(pid);
    (first.pty as unknown as { destroy(): void }).destroy();
    await expect.poll(() => isAlive(pid, birth), { timeout: 10_000 }).toBe(false);
    expect(text()).toBe(before);
    const again = openCar();
    await shows(again, /Unsaved changes of this car were found: 1 change/);
    again.type("r");
    await shows(again, /NOT SAVED/);
    again.type("sq");
    expect(await again.ended()).toBe(0);
    expect(text()).toBe(edited);
  });
});

describe("two copies open on one car", () => {
  it("are told of each other, and the second to save is asked", async () => {
    const one = openCar();
    await edit(one);
    const other = openCar();
    await shows(other, /also open in another window/);
    await edit(other);
    other.type(`${right}s`);
    await shows(other, /car\.yaml, saved/);
    const theirs = text();
    expect(theirs).not.toBe(before);
    one.type("s");
    await shows(one, /was changed by something else/);
    one.type(backOut);
    await shows(one, /q quit/);
    expect(text()).toBe(theirs);
    // The first ends with its changes kept, and they are offered beside what the other saved.
    one.type("\x03");
    await shows(one, /leave, keep for next time/);
    one.type("\x03");
    expect(await one.ended()).toBe(0);
    other.type("q");
    expect(await other.ended()).toBe(0);
    const third = openCar();
    await shows(third, /Unsaved changes of this car were found: 1 change/);
    third.type("\x03\x03");
    await third.ended();
    expect(text()).toBe(theirs);
  });
});

describe("a disk that takes nothing more", () => {
  it("is said with the first change and with a save; the car stays, and is saved once there is room", async () => {
    const words = ["-c", 'ulimit -S -f 0; exec "$0" "$@"', process.execPath, program, car];
    const bench = openCommand("bash", words, { env: surroundings() });
    await edit(bench);
    await shows(bench, /Unsaved edits cannot be kept safe: the disk takes no file of that size/);
    bench.type("s");
    await shows(bench, /It cannot be saved: the disk takes no file of that size/);
    expect(text()).toBe(before);
    expect(readdirSync(folder).sort()).toEqual(["car.yaml", "state"]);
    expect(readdirSync(join(folder, "state/rackwright/journals"))).toEqual([]);
    // Leaving with the changes kept would be a promise that cannot be held.
    bench.type("\x03");
    await shows(bench, /Leave without them/);
    bench.type("\x03");
    await shows(bench, /could not be kept safe: save them/);
    bench.type(backOut);
    await shows(bench, /q quit/);
    const { status } = spawnSync("prlimit", ["--pid", String(bench.pty.pid), "--fsize=unlimited:unlimited"]);
    expect(status).toBe(0);
    bench.type("s");
    await shows(bench, /car\.yaml, saved/);
    bench.type("q");
    expect(await bench.ended()).toBe(0);
    expect(text()).toBe(edited);
  });
});

describe("a folder in which nothing can be made", () => {
  it("keeps its file as it is, and the change is kept elsewhere", async () => {
    // Whoever may write everywhere is not kept from it, so that the program is run as somebody else.
    const installed = join(folder, "installed");
    for (const part of ["bin/rackwright.js", "dist", "presets", "package.json"])
      cpSync(join(root, part), join(installed, part), { recursive: true });
    const [shelf, home] = [join(folder, "shelf"), join(folder, "home")];
    for (const each of [shelf, home]) mkdirSync(each);
    copyFileSync(preset, join(shelf, "car.yaml"));
    chmodSync(folder, 0o755);
    chmodSync(home, 0o777);
    chmodSync(join(shelf, "car.yaml"), 0o666);
    chmodSync(shelf, 0o555);
    const isRoot = process.getuid?.() === 0;
    const nobody = isRoot ? ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"] : [];
    const [command = "", ...words] = [...nobody, process.execPath, join(installed, "bin/rackwright.js")];
    const bench = openCommand(command, [...words, join(shelf, "car.yaml")], { env: { HOME: home } });
    await edit(bench);
    bench.type("s");
    await shows(bench, /It cannot be saved: its permissions do not allow it/);
    bench.type("\x03");
    await shows(bench, /Leave without them/);
    bench.type("\x03");
    expect(await bench.ended()).toBe(0);
    expect(bench.text()).toContain("Not saved, but kept");
    expect(readFileSync(join(shelf, "car.yaml"), "utf8")).toBe(before);
    expect(readdirSync(shelf)).toEqual(["car.yaml"]);
    expect(readdirSync(join(home, ".local/state/rackwright/journals"))).toHaveLength(1);
    chmodSync(shelf, 0o755);
  });
});

describe("a car behind a link", () => {
  it("is saved where it is, and the link stays", async () => {
    const link = join(folder, "link.yaml");
    symlinkSync("car.yaml", link);
    const bench = openCar(link);
    await edit(bench);
    bench.type("s");
    await shows(bench, /link\.yaml, saved/);
    bench.type("q");
    expect(await bench.ended()).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(text()).toBe(edited);
  });
});

describe("a window that is dragged about", () => {
  it("is drawn right at the end of a storm of sizes, with keys in it, and given back", async () => {
    const terminal = openFromShell([program, car], { env: surroundings() });
    await shows(terminal, /CHECKS +1 BROKEN/);
    terminal.type("2");
    await shows(terminal, /LOCK TO LOCK/);
    terminal.type("1");
    // The last row comes last.
    await shows(terminal, /> Tie-rod tab ahead[\s\S]*ik travel {2}\? help {2}q quit/);
    const seen = () => terminal.rows().map((row) => row.trimEnd());
    const still = seen();
    for (let step = 0; step < 150; step += 1) {
      terminal.resize(1 + ((step * 37) % 210), 1 + ((step * 23) % 70));
      if (step % 10 === 0) terminal.type(step % 20 === 0 ? "2" : "1");
      if (step % 5 === 0) await new Promise((resolve) => setTimeout(resolve, 4));
    }
    terminal.type("1");
    terminal.resize(80, 24);
    await terminal.until("the frame as before", () => seen().join("\n") === still.join("\n"));
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
    expect(terminal.isAlternate()).toBe(false);
    expect(terminal.rows().filter((row) => row !== "")).toEqual(["before", "code 0", "line as before", "after"]);
    expect(text()).toBe(before);
  });
});

describe("a clock that is set back, again and again", () => {
  it("holds up neither the way back from a stop nor the way out", async () => {
    const clock = "let now = Date.now(); Date.now = () => (now -= 3600000);";
    const env = { ...surroundings(), NODE_OPTIONS: `--import data:text/javascript,${encodeURIComponent(clock)}` };
    const terminal = openFromShell([program, car], { env });
    await edit(terminal);
    const pid = editorOf();
    for (const round of ["first", "second"]) {
      process.kill(pid, "SIGSTOP");
      await terminal.scribble(`\x1b[?1049l\x1b[?25h${round} stranger was here\r\n`);
      process.kill(pid, "SIGCONT");
      await terminal.until(`the frame after the ${round} stop`, (seen) => /RODS/.test(seen) && !/stranger/.test(seen));
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
    terminal.type("s");
    await shows(terminal, /car\.yaml, saved/);
    terminal.type("q");
    expect(await terminal.ended()).toBe(0);
    expect(text()).toBe(edited);
  });
});

describe("a line that lags hands several keys on at once", () => {
  it("and what is typed after Ctrl-U, or over what stood in a field, keeps its order", async () => {
    const terminal = openCar();
    await stands(terminal);
    terminal.type("\r");
    await shows(terminal, /Enter take it/);
    terminal.type("12 3/4");
    await shows(terminal, /= 12 3\/4 in/);
    terminal.type("\x1531 5/16");
    await shows(terminal, /= 31 5\/16 in/);
    terminal.type("\x15");
    terminal.type("\x1b");
    await stands(terminal);
    terminal.type("M");
    await shows(terminal, /READ ON THE BUILT CAR/);
    terminal.type("12345");
    await shows(terminal, /> [^\n]* 12345/);
    terminal.type("\x1567 3/4");
    await shows(terminal, /> [^\n]* 67 3\/4/);
    terminal.pty.kill("SIGKILL");
    await terminal.ended();
  });

  it("and a digit that is put before its like goes on with what a form's line holds, where one behind all of it begins anew", async () => {
    const terminal = openCar();
    await stands(terminal);
    terminal.type("M31\r");
    await shows(terminal, /rack 1 in R: left +31 /);
    terminal.type("\x1b[A");
    await shows(terminal, /> [^\n]*rack 1 in R: left +31/);
    terminal.type("\x1b[D1");
    await shows(terminal, /> [^\n]*rack 1 in R: left +311/);
    terminal.type("\x1531\r");
    await shows(terminal, /> [^\n]*rack 1 in R: right/);
    terminal.type("\x1b[A4");
    await shows(terminal, /> [^\n]*rack 1 in R: left +4 *$/m);
    terminal.pty.kill("SIGKILL");
    await terminal.ended();
  });

  it("and a field's cursor stays within its text, so that a digit lands where the cursor was sent", async () => {
    const terminal = openCar();
    await stands(terminal);
    terminal.type("\r");
    await shows(terminal, /Enter take it/);
    // Left once more than there are digits, as a thumb does that holds the key.
    terminal.type(`31${"\x1b[D".repeat(3)}4`);
    await shows(terminal, /= 431 in/);
    // Right past the end takes nothing away from the next Backspace.
    terminal.type(`${"\x1b[C".repeat(5)}\x7f`);
    await shows(terminal, /= 43 in/);
    terminal.type("\x1b[H7\x1b[3~\x1b[F 1/2");
    await shows(terminal, /= 73 1\/2 in/);
    terminal.pty.kill("SIGKILL");
    await terminal.ended();
  });
});
