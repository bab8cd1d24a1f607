import { spawnSync } from "node:child_process";
import { chmodSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import pack from "../../package.json";
import { commandNames } from "../../src/cli/commandNames.ts";
import { studyOf } from "../../src/measures/study.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { readLength } from "../../src/vehicle/units/length.ts";
import { prepareProducts } from "../../src/vehicle/units/products.ts";
import { openTerminal, type Terminal } from "../terminal/support/terminal.ts";
import { folder } from "./run.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const bin = join(root, "bin/rackwright.js");
const file = join(root, "README.md");
const readme = readFileSync(file, "utf8");
const place = folder();
afterAll(() => place.remove());

/** What a shell shows of a line and its exit code; `rackwright` is what the README says it stands for. */
function shell(line: string, cwd = place.path) {
  const { status, stdout } = spawnSync("sh", ["-c", `exec 2>&1\n${line}`], {
    cwd,
    encoding: "utf8",
    env: { PATH: `${place.path}${delimiter}${process.env.PATH}`, HOME: place.path, LANG: "C.UTF-8" },
  });
  return { status, text: stdout.replaceAll("\r\n", "\n") };
}

const named: Readonly<Record<string, string>> = {
  Down: "\u001b[B",
  Right: "\u001b[C",
  Enter: "\r",
  Space: " ",
  "Ctrl-N": "\u000e",
  End: "\u001b[F",
};

/** All commands and screens of the page, ms, also where other work is under way: how long they take is not what is tested. */
const longest = 900_000;

/** Long enough for the rest of a frame, or the next one, to arrive on a busy machine. */
const settling = 300;

/** Waits until the screen stays as it is. */
async function settled(terminal: Terminal): Promise<void> {
  for (let before = ""; before !== terminal.text(); ) {
    before = terminal.text();
    await new Promise((resolve) => setTimeout(resolve, settling));
  }
}

/** Whether more is to come without a key. */
function isAtWork(text: string): boolean {
  return /CHECKING|Esc stops|brought together/i.test(text);
}

/** What the screen shows of an example after some keys. */
async function screen(car: string, keys: readonly string[]): Promise<string> {
  const terminal = openTerminal([bin, car], { env: { XDG_STATE_HOME: join(place.path, "state"), LANG: "C.UTF-8" } });
  await terminal.until("the first frame", (text) => /\? help|Esc bench/.test(text) && !isAtWork(text));
  for (const key of keys) {
    const [name, times = "1"] = key.split("*");
    for (let i = 0; i < Number(times); i++) {
      const before = terminal.text();
      terminal.type(named[name] ?? name);
      await terminal.until(`an answer to ${name}`, (text) => text !== before);
    }
  }
  await terminal.until("the end of long work", (text) => !isAtWork(text));
  await settled(terminal);
  const rows = terminal.rows().map((row) => row.trimEnd());
  const isChanged = terminal.text().includes("NOT SAVED");
  if (terminal.text().includes("Esc bench")) {
    terminal.type("\u001b");
    await terminal.until("the bench", (text) => text.includes("? help"));
  }
  terminal.type("q");
  if (isChanged) {
    await terminal.until("the question", (text) => text.includes("drop the changes"));
    terminal.type("d");
  }
  await terminal.ended();
  return `${rows.join("\n").trimEnd()}\n`;
}

/** Every command shown with its output, in the order of the page, with its exit code. */
const ran: { line: string; status: number | null }[] = [];

function commands(block: string): string {
  const lines = block.split("\n").filter((line) => line.startsWith("$ "));
  return lines
    .map((line) => {
      const { status, text } = shell(line.slice(2));
      ran.push({ line: line.slice(2), status });
      return `${line}\n${text}`;
    })
    .join("");
}

/** The README with all that the program prints in it made anew. */
async function madeAnew(): Promise<string> {
  const made: string[] = [];
  for (const piece of readme.split(/((?:<!-- screen [^\n]* -->\n```text\n|```console\n).*?```\n)/s)) {
    const shot = piece.match(/^<!-- screen ([\w-]+):(.*?) -->\n/);
    if (shot) {
      const keys = shot[2].split(" ").filter((key) => key !== "");
      made.push(`${shot[0]}\`\`\`text\n${await screen(shot[1], keys)}\`\`\`\n`);
    } else made.push(piece.startsWith("```console\n") ? `\`\`\`console\n${commands(piece)}\`\`\`\n` : piece);
  }
  return made.join("");
}

describe("the README", () => {
  let anew = "";
  beforeAll(async () => {
    const command = place.put("rackwright", `#!/bin/sh\nexec "${process.execPath}" "${bin}" "$@"\n`);
    chmodSync(command, 0o755);
    anew = await madeAnew();
  }, longest);

  it("shows what the program prints: `npm test -- tests/cli/readme -u` writes it anew", async () => {
    await expect(anew).toMatchFileSnapshot(file);
  });

  it("shows commands that work, but for those that show a mistake", () => {
    expect(ran.filter(({ status }) => status !== 0)).toEqual([
      { line: "rackwright typo.yaml", status: 2 },
      { line: "rackwright pose widened-offset-rack --rack=3", status: 3 },
      { line: "rackwright check widened-offset-rack", status: 1 },
      { line: "rackwright new offset-car", status: 2 },
    ]);
    for (const name of commandNames.filter((each) => each !== "help"))
      expect(
        ran.some(({ line }) => line.startsWith(`rackwright ${name}`)),
        name,
      ).toBe(true);
  });

  it("shows how to start it: the lines that need no fresh installation are run, of the others the scripts", () => {
    const lines = [...readme.matchAll(/```sh\n(.*?)```/gs)].flatMap(([, block]) => block.trim().split("\n"));
    expect(lines).toContain("npm ci && npm start");
    expect(lines).toContain("npm ci && npm test");
    expect(Object.keys(pack.scripts)).toEqual(expect.arrayContaining(["start", "test"]));
    const car = place.put("own.yaml", readFileSync(join(root, "presets/rack-ahead.yaml"), "utf8"));
    // The one file is built and run by tests/packaging.
    const runnable = lines.filter((line) => !line.startsWith("npm ci") && !line.startsWith("node rackwright.mjs"));
    expect(runnable.length).toBe(3);
    for (const line of ["npm start", ...runnable]) {
      const { status, text } = shell(line.replace("path/to/car.yaml", car), root);
      expect({ line, status }).toEqual({ line, status: 0 });
      expect(text).toContain("DEAD POINT");
    }
  });

  it("shows a car file that is one", () => {
    const [, text = ""] = readme.match(/```yaml\n(.*?)```/s) ?? [];
    const car = readCar(text);
    if ("complaints" in car) throw new Error(car.complaints.map(({ message }) => message).join("\n"));
    expect(car.warnings).toEqual([]);
    expect("refused" in studyOf(car)).toBe(false);
  });

  it("lists lengths that can be typed", async () => {
    await prepareProducts();
    const [, table = ""] = readme.match(/### Lengths you can type(.*?)\nDecimals/s) ?? [];
    const typed = [...table.matchAll(/^\| (`.*?) \|/gm)].flatMap(([, cell]) => [...cell.matchAll(/`([^`]+)`/g)]);
    expect(typed.length).toBeGreaterThan(10);
    for (const [, text] of typed) expect("mm" in readLength(text, "in", 100), text).toBe(true);
  });
});
