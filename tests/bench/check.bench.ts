import { readFileSync } from "node:fs";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Pose } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { checkJob } from "../../src/solve/check/check.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { median, quantile, report } from "./pace.ts";

/**
 * The checks of a car that has everything a file can say, over 41 places of steering by 41 of travel, both sides, as a job:
 * the first of a cold process and the warm ones as shares of the 250 ms that they may take, the warm ones also as a multiple
 * of a map of as many solved poses, which takes turns with them in this run; and the longest that a key may have to wait for
 * a piece of the work, as a share of a frame of 16 ms, where one in a thousand pieces may be held up by the garbage collector.
 */
const text = readFileSync("presets/check-before-welding.yaml", "utf8");
const places = 41;
const poses = newPoses(places * places);

function fresh(): Study {
  const car = readCar(text);
  if ("complaints" in car) throw new Error("the preset is no car");
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

function timed(act: () => void): number {
  const start = performance.now();
  act();
  return performance.now() - start;
}

/** Runs the checks piece by piece, and notes what each took, ms. */
function check(pieces: number[]): void {
  const job = checkJob(fresh());
  let done = false;
  while (!done)
    pieces.push(
      timed(() => {
        done = job.step(1);
      }),
    );
}

const study = fresh();
function map(): void {
  for (let row = 0; row < places; row++) {
    const input = study.inputTravel.left * ((2 * row) / (places - 1) - 1);
    for (let column = 0; column < places; column++) {
      const travel = study.wheelTravel.bump * ((2 * column) / (places - 1) - 1);
      solve(study.front, input, travel, travel, poses, (row * places + column) * Pose.Stride);
    }
  }
}

const most = 250;
const first = timed(() => check([]));
const checks: number[] = [];
const maps: number[] = [];
const pieces: number[] = [];
for (let round = 0; round < 24; round++) {
  const took = timed(() => check(pieces));
  const mapped = timed(map);
  if (round < 6) continue;
  checks.push(took);
  maps.push(mapped);
}
report("check-41x41-cold/250-ms", first / most, 1);
report("check-41x41-warm/250-ms", median(checks) / most, 1);
report("check-41x41-warm/map-of-41x41-poses", median(checks) / median(maps));
report("check-piece-999th-thousandth/16-ms", quantile(pieces, 0.999) / 16, 1);
