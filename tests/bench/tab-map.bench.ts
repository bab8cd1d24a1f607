import { readFileSync } from "node:fs";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { type TabMapOf, tabMapJob } from "../../src/solve/tab-map/tabMap.ts";
import { tabNumbers } from "../../src/solve/tab-map/tabNumbers.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { median, quantile, report } from "./pace.ts";

/**
 * The map of a tab's plane, 40 by 20 places, each a car of its own with its score, all its figures and its no-go, as a job: the
 * time until the whole plane is seen for the first time (every other place each way) and until every place has its own, looked at
 * coarsely, warm, as shares of the 150 ms that it may take; until each is as close as figures are told as well; the whole also as
 * a multiple of 800 cars studied alone, which takes turns with it; and the longest that a key may have to wait for a piece, as a share of a frame of 16 ms.
 */
function studyOfPreset(name: string): Study {
  const car = readCar(readFileSync(`presets/${name}.yaml`, "utf8"));
  if ("complaints" in car) throw new Error(`the preset ${name} is no car`);
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

const [columns, rows] = [40, 20];
const most = 150;

function mapOf(study: Study): TabMapOf {
  const [across, down] = [(columns - 1) / 2, (rows - 1) / 2];
  const step = 25.4 / 8;
  return {
    wheels: ["left", "right"],
    plane: "ahead",
    outs: { from: -across * step, to: across * step, rows: columns },
    others: { from: down * step, to: -down * step, rows },
    read: tabNumbers(study),
  };
}

for (const name of ["balanced-two-seater", "check-before-welding"]) {
  const study = studyOfPreset(name);
  const seen: number[] = [];
  const whole: number[] = [];
  const close: number[] = [];
  const alone: number[] = [];
  const pieces: number[] = [];
  for (let round = 0; round < 9; round++) {
    const job = tabMapJob(study, mapOf(study));
    const start = performance.now();
    let [done, count, last] = [false, 0, start];
    while (!done) {
      done = job.step(1);
      const now = performance.now();
      if (round > 1) pieces.push(now - last);
      last = now;
      count++;
      if (count === (columns * rows) / 4 && round > 1) seen.push(now - start);
      if (count === columns * rows && round > 1) whole.push(now - start);
    }
    if (round > 1) close.push(last - start);
    const begun = performance.now();
    for (let i = 0; i < columns * rows; i++) studyOf(study.car);
    if (round > 1) alone.push(performance.now() - begun);
  }
  report(`tab-map-40x20-seen-${name}/150-ms`, median(seen) / most, 1);
  report(`tab-map-40x20-whole-${name}/150-ms`, median(whole) / most, 1);
  report(`tab-map-40x20-whole-${name}/800-studies`, median(whole) / median(alone));
  report(`tab-map-40x20-close-${name}/150-ms`, median(close) / most);
  report(`tab-map-piece-99th-hundredth-${name}/16-ms`, quantile(pieces, 0.99) / 16, 1);
}
