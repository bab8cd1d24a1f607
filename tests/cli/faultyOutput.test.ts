import { spawn, spawnSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { everyCommand } from "../support/everyCommand.js";
import { folder } from "./run.ts";

const bin = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const place = folder();
const car = place.put("car.yaml", presetText("widened-offset-rack"));
afterAll(() => place.remove());

/** Runs the program from a shell, which has $program and $car and whose own output is no file. */
function shell(script: string) {
  const env = { PATH: process.env.PATH, HOME: place.path, program: bin, car };
  const { status, stdout, stderr } = spawnSync("bash", ["-c", script], { cwd: place.path, env, encoding: "utf8" });
  return { code: status, out: stdout, err: stderr };
}

/** The exit code without a reader, and what is said on the way. */
function withoutReader(words: readonly string[]): Promise<{ code: number | null; err: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [bin, ...words], { stdio: ["ignore", "pipe", "pipe"] });
    child.stdout.destroy();
    let err = "";
    child.stderr.on("data", (chunk) => {
      err += String(chunk);
    });
    child.on("close", (code) => resolve({ code, err }));
  });
}

describe("a reader that has gone, as in | head", () => {
  const long = ["steer", "rack-ahead", "--step=0.001", "--json"];

  it.each([...everyCommand, long])("ends no command with a fault: %s %s %s", async (...words) => {
    const { code, err } = await withoutReader(words);
    // Of these only a check ends with 1, since a limit of its example is broken.
    expect(code).toBe(words[0] === "check" ? 1 : 0);
    expect(err.split("\n").filter((line) => !/^((note|warning): |$)/.test(line))).toEqual([]);
  });

  it("is no matter to the screen in lines, which does what else it is told", () => {
    const { code, out, err } = shell(
      `cp "$car" lines.yaml; for i in $(seq 3000); do echo help; done > many; printf 'rack offset 0\\nsave\\nquit\\n' >> many
       node "$program" --plain lines.yaml < many | head -1; exit \${PIPESTATUS[0]}`,
    );
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toBe("Rail two-seater, front widened, offset rack\n");
    expect(readFileSync(join(place.path, "lines.yaml"), "utf8")).toBe(
      readFileSync(car, "utf8").replace("offset: -2.5", "offset: 0"),
    );
  });
});

describe("output that cannot be written", () => {
  const full = ["schema", "--plain", "sheet --pdf", "steer --csv"];

  it.each(full)("is said, with 2, where the disk is full: %s", (words) => {
    const [command = "", ...options] = words.split(" ");
    const typed = command === "schema" ? command : `${command} "$car" ${options.join(" ")}`;
    expect(shell(`echo quit | node "$program" ${typed} > /dev/full`)).toEqual({
      code: 2,
      out: "",
      err: "rackwright: what it prints cannot be written: the disk is full.\n",
    });
  });

  it("is said, with 2, where the disk takes a part of it: nobody is to print half a sheet for a whole one", () => {
    const { code, err } = shell(`(ulimit -f 8; node "$program" sheet "$car" --pdf > sheet.pdf)`);
    expect({ code, err }).toEqual({
      code: 2,
      err: "rackwright: what it prints cannot be written: the disk takes no file of that size.\n",
    });
    expect(statSync(join(place.path, "sheet.pdf")).size).toBe(8 * 1024);
    expect(shell(`node "$program" sheet "$car" --pdf > whole.pdf`)).toEqual({ code: 0, out: "", err: "" });
    expect(readFileSync(join(place.path, "whole.pdf"), "latin1")).toMatch(/%%EOF\s*$/);
  });

  it("leaves the exit code to say it where not even that can be said", () => {
    expect(shell(`node "$program" --plain none.yaml 2> /dev/full`)).toEqual({ code: 2, out: "", err: "" });
    expect(shell(`node "$program" steer none.yaml 2> /dev/full`)).toEqual({ code: 2, out: "", err: "" });
    expect(shell(`node "$program" schema > /dev/full 2> /dev/full`)).toEqual({ code: 2, out: "", err: "" });
  });

  it("is of no interest where it was closed beforehand", () => {
    expect(shell(`node "$program" schema >&-`)).toEqual({ code: 0, out: "", err: "" });
    expect(shell(`node "$program" schema <&- >&- 2>&-`)).toEqual({ code: 0, out: "", err: "" });
    expect(shell(`node "$program" check check-before-welding >&- 2>&-`).code).toBe(1);
  });

  it("ends a watch", () => {
    const { code, err } = shell(`timeout 20 node "$program" steer "$car" --watch > /dev/full`);
    expect({ code, err }).toEqual({
      code: 2,
      err: "rackwright: what it prints cannot be written: the disk is full.\n",
    });
  });
});

describe("files on a disk that is full", () => {
  it("are written whole or not at all, and the command says why", () => {
    const said = shell(`(ulimit -f 4; node "$program" template "$car" --draw=tab --out drawings)`);
    expect(said).toMatchObject({ code: 2, err: "rackwright: drawings: the disk takes no file of that size.\n" });
    expect(shell("ls -A drawings").out).toBe("");
    expect(shell(`(ulimit -f 0; node "$program" new car-2.yaml 2>&1 | cat; exit \${PIPESTATUS[0]})`)).toEqual({
      code: 2,
      out: "rackwright: car-2.yaml: cannot be saved: the disk takes no file of that size.\n",
      err: "",
    });
    expect(shell("ls -A | grep car-2").out).toBe("");
  });
});

describe("a folder that goes", () => {
  it("is named where a command needs it, and is no matter to others", () => {
    const gone = 'mkdir gone; cd gone; rmdir "$PWD";';
    expect(shell(`${gone} node "$program" new x`)).toEqual({
      code: 2,
      out: "",
      err: "rackwright: the folder that it was started in is no longer there: go to another one with cd.\n",
    });
    expect(shell(`${gone} node "$program" steer balanced-two-seater`).code).toBe(0);
    expect(shell(`${gone} node "$program" steer x`)).toMatchObject({ code: 2, out: "" });
  });

  it("takes no changes with it: a screen that was begun in it says where it cannot save", () => {
    const words = "rack offset 1\\nsave\\nx\\ncancel\\nquit\\nleave\\n";
    const said = shell(
      `mkdir gone; cd gone; touch ../said
       (until grep -q '^> ' ../said; do sleep 0.1; done; rmdir "$PWD"; printf '${words}') |
         timeout 20 node "$program" --plain balanced-two-seater > ../said
       code=$?; cat "$HOME/said"; exit $code`,
    );
    expect(said.out).toMatch(/It cannot be saved: the folder it should be in is not there/);
    expect(said.out).toMatch(/Not saved, but kept: .*\n$/);
    expect({ code: said.code, err: said.err }).toEqual({ code: 0, err: "" });
  });
});
