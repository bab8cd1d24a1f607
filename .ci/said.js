/**
 * Prints what a program says to a run of every command and of every example, a line each: its exit code and fingerprints of
 * both outputs. The Node that runs this runs the program: node .ci/said.js PROGRAM
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readdirSync } from "node:fs";
import { everyCommand } from "../tests/support/everyCommand.js";

const [program = ""] = process.argv.slice(2);
const cars = readdirSync(new URL("../presets", import.meta.url)).filter((file) => file.endsWith(".yaml"));
const names = cars.map((file) => file.slice(0, -".yaml".length));
const fingerprint = (/** @type {Buffer} */ bytes) => createHash("sha256").update(bytes).digest("hex").slice(0, 16);

for (const words of [["--version"], [], ...everyCommand, ...names.map((name) => [name])]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], { timeout: 60_000 });
  console.log(status, fingerprint(stdout), fingerprint(stderr), words.join(" "));
}
