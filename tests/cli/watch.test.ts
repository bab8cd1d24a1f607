import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { appendFileSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { openCommand } from "../terminal/support/terminal.ts";
import { folder, run } from "./run.ts";

const bin = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const place = folder();
const sound = presetText("balanced-two-seater");
const retitled = (title: string) => sound.replace(/^title: .*$/m, `title: ${title}`);
const running: ChildProcess[] = [];
afterEach(() => {
  for (const each of running.splice(0)) each.kill("SIGKILL");
});
afterAll(() => place.remove());

/** The built program in pipes. */
function piped(...words: string[]) {
  const child = spawn(process.execPath, [bin, ...words], { stdio: ["ignore", "pipe", "pipe"] });
  running.push(child);
  let [out, err] = ["", ""];
  child.stdout.on("data", (data) => {
    out += String(data);
  });
  child.stderr.on("data", (data) => {
    err += String(data);
  });
  const until = async (what: string, condition: () => boolean) => {
    for (const end = Date.now() + 15_000; !condition(); await new Promise((resolve) => setTimeout(resolve, 20)))
      if (Date.now() > end) throw new Error(`waited in vain for ${what}: ${out}${err}`);
  };
  const ended = new Promise<number | null>((resolve) => child.on("close", resolve));
  return { child, out: () => out, err: () => err, until, ended };
}

const rule = `\n${"-".repeat(78)}\n\n`;

/** From a shell that outlives the Ctrl-C and says what it finds: the exit code, and whether the line's settings are as they were. */
function fromShell(file: string, rows: number) {
  const script = `trap : INT; old=$(stty -g); "$@"; echo "code $?"; [ "$old" = "$(stty -g)" ] && echo "line as before"`;
  return openCommand("sh", ["-c", script, "sh", process.execPath, bin, "steer", file, "--watch"], { rows });
}

/** Ways in which programs write a file that is there. */
const saves: readonly (readonly [way: string, save: (file: string, text: string) => void])[] = [
  ["over itself", (file, text) => writeFileSync(file, text)],
  [
    "beside it and renamed over it",
    (file, text) => {
      writeFileSync(`${file}.new`, text);
      renameSync(`${file}.new`, file);
    },
  ],
  [
    "anew, the old one renamed away",
    (file, text) => {
      renameSync(file, `${file}~`);
      writeFileSync(file, text);
    },
  ],
  [
    "anew, the old one removed",
    (file, text) => {
      rmSync(file);
      writeFileSync(file, text);
    },
  ],
];

describe("--watch in a pipe", () => {
  it("prints one report after the other, however the file is saved, and ends by Ctrl-C's signal with 130", async () => {
    const file = place.put("piped.yaml", retitled("Save 0"));
    const { child, out, err, until, ended } = piped("steer", file, "--watch");
    await until("the first report", () => out().includes("Save 0") && out().includes("Right lock"));
    for (const [i, [way, save]] of saves.entries()) {
      save(file, retitled(`Save ${i + 1}`));
      await until(`a file written ${way}`, () => out().includes(`Save ${i + 1}`));
    }
    child.kill("SIGINT");
    expect(await ended).toBe(130);
    const reports = out().split(rule);
    expect(reports.map((each) => each.split("\n")[0])).toEqual(["Save 0", "Save 1", "Save 2", "Save 3", "Save 4"]);
    expect(reports[4]).toBe((await run(["steer", file])).out);
    expect(err()).toBe("");
  });

  it("waits out a file that is still being written", async () => {
    const file = place.put("slow.yaml", retitled("Whole"));
    const { out, err, until } = piped("steer", file, "--watch");
    await until("the first report", () => out().includes("Whole"));
    const text = retitled("Slowly written");
    writeFileSync(file, "");
    for (let at = 0; at < text.length; at += text.length / 10) {
      appendFileSync(file, text.slice(at, at + text.length / 10));
      await new Promise((resolve) => setTimeout(resolve, 30));
    }
    writeFileSync(file, text);
    await until("the report of the whole file", () => out().includes("Slowly written"));
    expect(err()).toBe("");
  });

  it("prints what is wrong with a save and goes on", async () => {
    const file = place.put("broken.yaml", retitled("Before"));
    const { out, err, until } = piped("bump", file, "--watch");
    await until("the first report", () => out().includes("Before"));
    writeFileSync(file, retitled("Broken").replace(/^wheelbase: .*$/m, "wheelbase: wide"));
    await until("the complaint", () => err().includes("wheelbase"));
    expect(err()).toContain("broken.yaml:");
    rmSync(file);
    await until("the file gone", () => err().includes("there is no file"));
    writeFileSync(file, retitled("Mended"));
    await until("the next report", () => out().includes("Mended"));
    expect(out()).not.toContain("Broken");
  });

  it("watches the car that a sheet begins from as well", async () => {
    const file = place.put("new.yaml", sound);
    const old = place.put("old.yaml", sound);
    const { out, until } = piped("sheet", file, "--from", old, "--watch");
    await until("the first sheet", () => out().length > 2000);
    expect(out()).not.toContain(rule);
    writeFileSync(old, sound.replace(/^wheelbase: .*$/m, "wheelbase: 70"));
    await until("the second sheet", () => out().includes(rule));
  });

  it("ends when its reader has gone, with the next save", async () => {
    const file = place.put("headless.yaml", retitled("One"));
    const { child, out, until, ended } = piped("check", file, "--watch");
    await until("the first report", () => out().includes("One"));
    child.stdout?.destroy();
    writeFileSync(file, retitled("Two"));
    await until("the end", () => child.exitCode !== null);
    expect(await ended).toBe(0);
  });

  it("is refused for a preset, with what other programs read, and where no save could help", () => {
    const file = place.put("fine.yaml", sound);
    const ends = (...words: string[]) => spawnSync(process.execPath, [bin, ...words, "--watch"], { encoding: "utf8" });
    expect(ends("steer", "rack-ahead")).toMatchObject({
      status: 2,
      stderr: expect.stringContaining("--from rack-ahead"),
    });
    expect(ends("steer", file, "--json")).toMatchObject({ status: 2, stderr: expect.stringContaining("--json") });
    expect(ends("sheet", file, "--pdf")).toMatchObject({ status: 2, stderr: expect.stringContaining("--pdf") });
    expect(ends("steer", file, "--from=wide")).toMatchObject({ status: 2, stderr: expect.stringContaining("--from") });
    expect(ends("steer", "no-such.yaml")).toMatchObject({ status: 2, stderr: expect.stringContaining("no-such") });
  });
});

describe("--watch on a terminal", () => {
  it("draws over what stood there without wiping it, and gives the terminal back", async () => {
    const file = place.put("seen.yaml", retitled("First title"));
    const terminal = fromShell(file, 50);
    await terminal.until("the first report", (text) => text.includes("First title") && text.includes("Ctrl-C ends"));
    expect(terminal.rows()[0]).toContain("First title");
    const rows = terminal.rows().length;
    writeFileSync(file, retitled("Second"));
    await terminal.until("the second", (text) => text.includes("Second"));
    expect(terminal.rows()[0]).toBe("Second");
    expect(terminal.text()).not.toContain("First title");
    expect(terminal.rows()).toHaveLength(rows);
    expect(terminal.output()).not.toContain("\u001b[2J");
    writeFileSync(file, `${readFileSync(file, "utf8")}\n nonsense: [`);
    await terminal.until("the complaint", (text) => text.includes("seen.yaml:") && !text.includes("Right lock"));
    writeFileSync(file, retitled("Third"));
    await terminal.until("the third", (text) => text.includes("Third") && text.includes("Right lock"));
    terminal.type("\u0003");
    await terminal.until("the shell", (text) => text.includes("code 130") && text.includes("line as before"));
    expect(terminal.cursor().shown).toBe(true);
    expect(terminal.isAlternate()).toBe(false);
  });

  it("leaves the end of a long report in sight where the screen is short", async () => {
    const file = place.put("short.yaml", retitled("Long one"));
    const terminal = fromShell(file, 24);
    await terminal.until("the end of the report", (text) => text.includes("Right lock") && text.includes("Ctrl-C"));
    writeFileSync(file, retitled("Longer"));
    await terminal.until("the report anew", () => terminal.output().split("Right lock").length === 3);
    await terminal.until("its end", (text) => text.includes("Right lock") && text.includes("Ctrl-C"));
    terminal.type("\u0003");
    await terminal.until("the shell", (text) => text.includes("code 130"));
  });
});
