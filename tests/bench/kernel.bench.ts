import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { bundleOptions } from "../../bin/bundle.js";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { type SideName, sides } from "../oracles/corner.ts";
import { spatialCar } from "../oracles/known.ts";
import { cornerOf, correction, follow, type Knobs } from "../oracles/newton.ts";
import { frontOfBench, places, rackAt, solveMap, travelAt } from "./map.ts";
import { median, report, reportAtLeast } from "./pace.ts";

/**
 * The kernel's speed, as ratios of what takes turns with it in this run: a generic Newton on the loop equations by mathjs, native C, and Node doing
 * nothing. Times are medians; only the ratios mean anything on another machine.
 */
const place = mkdtempSync(join(tmpdir(), "rackwright-kernel-"));
const front = frontOfBench();
const poses = newPoses(places * places);

/** Nanoseconds of one warm map, the median of some. */
function kernelMap(maps: number): number {
  const took: number[] = [];
  for (let i = 0; i < maps; i++) {
    const start = process.hrtime.bigint();
    solveMap(front, poses);
    took.push(Number(process.hrtime.bigint() - start));
  }
  return median(took);
}

const corners = { left: cornerOf(spatialCar, "left"), right: cornerOf(spatialCar, "right") };

/** Nanoseconds of a map by Newton, from one row of it: each pose from its neighbour, until no unknown moves by 1e-8 mm. */
function newtonMap(row: number): number {
  const states: Record<SideName, readonly number[]> = { left: [], right: [] };
  const knobs = (side: SideName, travel: number): Knobs => ({ input: rackAt(row), travel, rod: corners[side].rod });
  for (const side of sides) {
    states[side] = follow(corners[side], corners[side].drawn, knobs(side, travelAt(0))).state.unknowns;
  }
  const start = process.hrtime.bigint();
  for (let column = 0; column < places; column++) {
    for (const side of sides) {
      const at = knobs(side, travelAt(column));
      let unknowns = states[side];
      for (let moved = Number.POSITIVE_INFINITY; moved > 1e-8; ) {
        const change = correction(corners[side], unknowns, at);
        if (!change) throw new Error("the generic Newton met a singular matrix");
        unknowns = unknowns.map((value, i) => value + change[i]);
        moved = Math.max(...change.map(Math.abs));
      }
      states[side] = unknowns;
    }
  }
  const took = Number(process.hrtime.bigint() - start) * places;
  const last = (row * places + places - 1) * Pose.Stride;
  for (const [side, at] of [
    ["left", last + Pose.Left],
    ["right", last + Pose.Right],
  ] as const) {
    const apart = Math.abs(states[side][6] - poses[at + Side.TieRodOuter]);
    if (!(apart < 1e-6)) throw new Error(`the generic Newton and the kernel differ by ${apart} mm`);
  }
  return took;
}

/** The native program, or null where no C compiler is. */
function compiledReference(): string | null {
  const program = join(place, "reference");
  const source = join(process.cwd(), "tests/bench/reference.c");
  const { error, status, stderr } = spawnSync("cc", ["-O3", "-o", program, source, "-lm"], { encoding: "utf8" });
  if (error) return null;
  if (status !== 0) throw new Error(stderr);
  return program;
}

/** Nanoseconds of one map in C, and what it adds up to. */
function referenceMap(program: string): { took: number; sum: number } {
  const [took, sum] = execFileSync(program, ["60"], { encoding: "utf8" }).split(" ").map(Number);
  return { took, sum };
}

/** The sum that the native program prints, of the kernel's poses: both must have solved the same. */
function kernelSum(): number {
  let sum = 0;
  for (let at = 0; at < poses.length; at += Side.Stride) {
    sum += poses[at + Side.Lower + 1] + poses[at + Side.Upper];
    sum += poses[at + Side.TieRodOuter] + poses[at + Side.TieRodOuter + 1];
    sum += poses[at + Side.WheelCenter] + poses[at + Side.WheelCenter + 1];
    sum += 100 * (poses[at + Side.Spin] + poses[at + Side.Spin + 2]);
  }
  return sum;
}

function processTime(words: readonly string[]): number {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, [...words], { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return performance.now() - start;
}

kernelMap(300);

const ours: number[] = [];
const generic: number[] = [];
for (let row = 0; row < places; row += 8) {
  ours.push(kernelMap(40));
  generic.push(newtonMap(row));
}
reportAtLeast("generic-newton-map/kernel-map", median(generic) / median(ours), 500);

const reference = compiledReference();
if (reference) {
  const own: number[] = [];
  const native: number[] = [];
  for (let round = 0; round < 15; round++) {
    own.push(kernelMap(60));
    const { took, sum } = referenceMap(reference);
    if (!(Math.abs(sum - kernelSum()) < 1e-3)) throw new Error(`the native sum is ${sum}, the kernel's ${kernelSum()}`);
    native.push(took);
  }
  report("kernel-map/native-map", median(own) / median(native), 0.6);
} else {
  process.stdout.write("kernel-map/native-map no C compiler: skipped\n");
}

const cold = join(place, "coldMap.mjs");
await build({ ...bundleOptions, splitting: false, entryPoints: ["tests/bench/coldMap.ts"], outfile: cold });
const nothing: number[] = [];
const first: number[] = [];
for (let round = 0; round < 41; round++) {
  nothing.push(processTime(["-e", "0"]));
  first.push(processTime([cold]));
}
report("cold-process-first-map-extra/node-doing-nothing", median(first) / median(nothing) - 1, 0.25);
rmSync(place, { recursive: true, force: true });
