import { blameOf } from "../../src/measures/blame.ts";
import { carFigures } from "../../src/measures/carFigures.ts";
import { pointsOf } from "../../src/measures/points.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { bumpJson } from "../../src/output/bump.ts";
import { checkJson } from "../../src/output/check.ts";
import { poseJson } from "../../src/output/pose.ts";
import { steerJson } from "../../src/output/steer.ts";
import { summaryJson } from "../../src/output/summary.ts";
import { checkJob } from "../../src/solve/check/check.ts";
import { finished } from "../../src/solve/job.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { notFinite } from "../measures/notFinite.ts";
import { type Chance, chanceOf } from "./chance.ts";
import { shaken } from "./mutations.ts";
import { presetTexts } from "./presets.ts";

/** Points of one rigid upright, and the two ends of a tie rod: these stay as far apart as they are drawn. */
const kept = [
  ["lowerJoint", "tieRodOuter"],
  ["lowerJoint", "wheelCenter"],
  ["tieRodOuter", "wheelCenter"],
  ["tieRodOuter", "tieRodInner"],
] as const;

/** mm: what every pose promises. */
const promised = 1e-9;

function lengthsOf(study: Study, pose: Float64Array, side: "left" | "right"): readonly number[] {
  const points = pointsOf(pose, side, study.tireRadius);
  if (points === null) return [];
  return kept.map(([a, b]) => Math.hypot(...points[a].map((each, i) => each - (points[b][i] ?? Number.NaN))));
}

/** What is wrong with the poses at a few places of rack and travels; null where nothing is. */
function wrongPose(study: Study, { share }: Chance): string | null {
  const drawn = study.pose(study.zero ?? 0, 0, 0).slice();
  for (let i = 0; i < 6; i += 1) {
    const input = (2 * share() - 1) * 1.2 * Math.max(study.furthestInput.left, study.furthestInput.right);
    const [left, right] = study.suspended ? [150 * (2 * share() - 1), 150 * (2 * share() - 1)] : [0, 0];
    const pose = study.pose(input, left, right).slice();
    if (blameOf(pose, 0) !== null) continue;
    const unfit = notFinite(poseJson(study, { input, left, right }, pose, "mm"));
    if (unfit.length > 0) return `pose at ${input}, ${left}, ${right}: ${unfit.join(" ")}`;
    for (const side of ["left", "right"] as const) {
      const was = lengthsOf(study, drawn, side);
      const off = lengthsOf(study, pose, side).findIndex((now, k) => !(Math.abs(now - (was[k] ?? 0)) <= promised));
      if (off >= 0) return `${side} ${kept[off]?.join(" to ")} is not kept at ${input}, ${left}, ${right}`;
    }
  }
  return null;
}

/** Works out all of a shaken car. Null where all is well or the car is refused, else what is wrong. */
export function carShare(seed: number): string | null {
  const chance = chanceOf(seed);
  const car = readCar(shaken(chance.one(presetTexts), chance));
  if ("complaints" in car) return null;
  const study = studyOf(car);
  if ("refused" in study) return /\bNaN|Infinity|undefined/.test(study.refused) ? study.refused : null;
  for (const figure of carFigures) {
    const value = figure.read(study);
    if (value !== null && !Number.isFinite(value)) return `${figure.id} is ${value}`;
  }
  const bump = study.bumpTable(study.zero ?? 0);
  const told = {
    summary: summaryJson(study, "in"),
    steer: steerJson(study, study.steerTable(), "mm"),
    bump: bump === null ? null : bumpJson(study, bump, "mm"),
  };
  const unfit = notFinite(told);
  if (unfit.length > 0) return unfit.join(" ");
  // The whole range takes a hundred times as long as the rest.
  if (chance.below(50) === 0) {
    const report = finished(checkJob(study));
    const odd = report === null ? [] : notFinite(checkJson(study, report, "in"));
    if (odd.length > 0) return `check: ${odd.join(" ")}`;
  }
  return wrongPose(study, chance);
}
