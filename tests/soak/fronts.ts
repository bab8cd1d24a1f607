import { compile } from "../../src/kinematics/compile.ts";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import type { Front } from "../../src/kinematics/front.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Corner, Link, Pose, Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { blameOf } from "../../src/measures/blame.ts";
import { poseFigures, wheelFigures } from "../../src/measures/figures.ts";
import { drawnOf } from "../../src/measures/front.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { notFinite } from "../measures/notFinite.ts";
import { type Chance, chanceOf } from "./chance.ts";
import { otherNumbers } from "./frontEnds.ts";
import { eyeToEye, type Kept, keptOf, offBy, rodOf } from "./kept.ts";
import { mirroredFront } from "./mirror.ts";

/** mm: what every pose promises of its lengths, on a car that fits into a few metres. */
const promised = 1e-9;
const poses = 12;

const sides = ["left", "right"] as const;
const startOf = (wheel: "left" | "right") => (wheel === "left" ? Pose.Left : Pose.Right);

interface Asked {
  readonly input: number;
  readonly left: number;
  readonly right: number;
}

/** Mostly in the car's own range, now and then far beyond it. */
function asked({ range }: Drawn, suspended: boolean, { share, below }: Chance): Asked {
  const reach = below(6) === 0 ? 5 : 1.1;
  const within = (low: number, high: number) => {
    const t = (2 * share() - 1) * reach;
    return t < 0 ? -t * low : t * high;
  };
  const travel = () => (suspended ? within(range.travelLow, range.travelHigh) : 0);
  const [left, right] = [travel(), travel()];
  return { input: within(range.inputLow, range.inputHigh), left, right: below(2) === 0 ? left : right };
}

function wrongLengths(
  drawn: Drawn,
  front: Front,
  kept: Readonly<Record<"left" | "right", readonly Kept[]>>,
  pose: Float64Array,
) {
  for (const wheel of sides) {
    const at = startOf(wheel);
    if (pose[at + Side.Blame] !== Link.None) continue;
    for (const each of kept[wheel]) {
      const off = offBy(pose, at, each);
      if (!(Math.abs(off) <= promised)) return `${wheel} ${each.name} is off by ${off}`;
    }
    const length = drawn[wheel].tieRodLength ?? front[wheel].constants[Corner.RodLength] ?? Number.NaN;
    const off = rodOf(pose, at) - length;
    if (!(Math.abs(off) <= promised)) return `${wheel} tie rod is off by ${off}`;
  }
  return null;
}

/** The mirrored pose has the same bits, its sides exchanged. */
function wrongInMirror(pose: Float64Array, other: Float64Array): string | null {
  for (let slot = 0; slot < Side.Stride; slot += 1) {
    const sign = slot === Side.Input ? -1 : 1;
    const [left, right] = [pose[slot], pose[Pose.Right + slot]];
    if (left !== sign * (other[Pose.Right + slot] ?? 0))
      return `left ${slot}: ${left}, mirrored ${other[Pose.Right + slot]}`;
    if (right !== sign * (other[slot] ?? 0)) return `right ${slot}: ${right}, mirrored ${other[slot]}`;
  }
  return null;
}

function wrongFigures(study: Study, pose: Float64Array): string | null {
  for (const wheel of sides) {
    const at = startOf(wheel);
    if (pose[at + Side.Blame] !== Link.None) continue;
    for (const { id, read } of wheelFigures) {
      const value = read(pose, at, study);
      if (value !== null && !Number.isFinite(value)) return `${wheel} ${id} is ${value}`;
    }
  }
  if (blameOf(pose, 0) !== null) return null;
  for (const { id, read } of poseFigures) {
    const value = read(pose, 0, study);
    if (value !== null && !Number.isFinite(value)) return `${id} is ${value}`;
  }
  return null;
}

/** What was met so far: told at the end, since a car that is refused proves little. */
export const frontsMet = { "not a car file": 0, "no mechanism": 0, solved: 0, "poses closed": 0, "poses blamed": 0 };

/** Compiles and solves one car in its numbers alone. Null where all is well or the car is refused, else what is wrong. */
export function frontShare(seed: number): string | null {
  const chance = chanceOf(seed);
  const car = otherNumbers(chance);
  if (car === null) {
    frontsMet["not a car file"] += 1;
    return null;
  }
  const drawn = drawnOf(car);
  const front = compile(drawn);
  const mirror = compile(mirroredFront(drawn));
  if ("refused" in front || "refused" in mirror) {
    frontsMet["no mechanism"] += 1;
    return "refused" in front === "refused" in mirror ? null : "of the car and its mirrored one, only one is refused";
  }
  frontsMet.solved += 1;
  const study = studyOf(car);
  const told = "refused" in study ? [] : notFinite({ locks: study.locks, zero: study.zero, track: study.track });
  if (told.length > 0) return told.join(" ");
  const kept = { left: keptOf(drawn, "left"), right: keptOf(drawn, "right") };
  const [pose, other] = [newPoses(1), newPoses(1)];
  let eyes: number | null = null;
  for (let i = 0; i < poses; i += 1) {
    const { input, left, right } = asked(drawn, drawn.range.travelHigh > drawn.range.travelLow, chance);
    solve(front, input, left, right, pose, 0);
    const where = `${car.form.linkage}, ${car.form.mechanism} at ${input}, ${left}, ${right}`;
    const odd = pose.findIndex((value) => !Number.isFinite(value));
    if (odd >= 0) return `${where}: slot ${odd} is ${pose[odd]}`;
    solve(mirror, -input, right, left, other, 0);
    const now = eyeToEye(pose);
    const closes = blameOf(pose, 0) === null;
    const wrong =
      wrongLengths(drawn, front, kept, pose) ??
      wrongInMirror(pose, other) ??
      (closes && eyes !== null && !(Math.abs(now - eyes) <= promised) ? `eyes ${now}, were ${eyes} apart` : null) ??
      ("refused" in study ? null : wrongFigures(study, pose));
    frontsMet[closes ? "poses closed" : "poses blamed"] += 1;
    if (wrong !== null) return `${where}: ${wrong}`;
    if (closes) eyes = now;
  }
  return null;
}
