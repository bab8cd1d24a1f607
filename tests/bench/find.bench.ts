import { readFileSync } from "node:fs";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { findJob } from "../../src/solve/find/find.ts";
import { type Rooms, roomsOf, usualStep, variablesOf } from "../../src/solve/find/room.ts";
import { goalsFor } from "../../src/solve/goals/goals.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { median, quantile, report } from "./pace.ts";

/**
 * A whole search, checks of its answers included, as shares of what it may take: with 4 variables 1 s, with 8 variables
 * 4 s; the processor's time, since elapsed time is also that of others. And the longest that a key may have to wait for a
 * piece of the work, as a share of a frame of 16 ms, where one in a thousand may be held up by the garbage collector.
 */
const text = readFileSync("presets/tab-to-place.yaml", "utf8");

function fresh(): Study {
  const car = readCar(text);
  if ("complaints" in car) throw new Error("the preset is no car");
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

const room = (within: number) => ({ from: null, to: null, within, sides: "each" as const });
const eight: Rooms = {
  "tie-rod.outer.ahead": room(25),
  "tie-rod.outer.out": room(15),
  "tie-rod.outer.up": room(20),
  "rack.up": room(12),
  "rack.ahead": room(12),
};

/** Runs a search piece by piece, notes what each took, ms, and gives the processor's time, ms. */
function search(rooms: Rooms | null, pieces: number[]): number {
  const study = fresh();
  const variables = variablesOf(study.car, rooms ?? roomsOf(study.car), usualStep(study.car));
  if ("why" in variables) throw new Error(variables.why);
  const job = findJob({ study, goals: goalsFor(study), variables, rods: "follow" });
  const before = process.cpuUsage();
  let done = false;
  while (!done) {
    const start = performance.now();
    done = job.step(1);
    pieces.push(performance.now() - start);
  }
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const pieces: number[] = [];
const cold = search(null, []);
const four = Array.from({ length: 5 }, () => search(null, pieces));
const more = Array.from({ length: 3 }, () => search(eight, pieces));
report("find-4-variables-cold/1-s", cold / 1000, 1);
report("find-4-variables/1-s", median(four) / 1000, 1);
report("find-8-variables/4-s", median(more) / 4000, 1);
report("find-piece-999th-thousandth/16-ms", quantile(pieces, 0.999) / 16, 1);
