import fc from "fast-check";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Pose, Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { carsOf, combinations } from "../oracles/combinations.ts";
import { frontOf } from "../oracles/kernel.ts";
import { median, report } from "./pace.ts";

/**
 * What a pose of each linkage and mechanism costs, as a ratio of a double arm's on a rack, which takes turns with it in this run. Each is a random
 * car that closes over its whole range; a map goes over all of the range.
 */
const places = 21;
const poses = newPoses(places * places);

function solveMap(front: ReturnType<typeof frontOf>, { range }: Drawn): void {
  const { inputLow, inputHigh, travelLow, travelHigh } = range;
  for (let row = 0; row < places; row++) {
    const input = inputLow + ((inputHigh - inputLow) * row) / (places - 1);
    for (let column = 0; column < places; column++) {
      const travel = travelLow + ((travelHigh - travelLow) * column) / (places - 1);
      solve(front, input, travel, travel, poses, (row * places + column) * Pose.Stride);
    }
  }
}

function closesAllOver(drawn: Drawn): boolean {
  solveMap(frontOf(drawn), drawn);
  for (let at = 0; at < poses.length; at += Side.Stride) if (poses[at + Side.Blame] !== Link.None) return false;
  return true;
}

function mapOf(
  linkage: (typeof combinations)[number]["linkage"],
  mechanism: (typeof combinations)[number]["mechanism"],
) {
  const [drawn] = fc.sample(carsOf(linkage, mechanism).filter(closesAllOver), { seed: 1, numRuns: 1 });
  const front = frontOf(drawn);
  /** Nanoseconds of one warm map, the median of some. */
  return (maps: number): number => {
    const took: number[] = [];
    for (let i = 0; i < maps; i++) {
      const start = process.hrtime.bigint();
      solveMap(front, drawn);
      took.push(Number(process.hrtime.bigint() - start));
    }
    return median(took);
  };
}

const reference = mapOf("double-arm", "rack");
const others = combinations.map(({ linkage, mechanism }) => ({
  name: `${linkage}+${mechanism}`,
  map: mapOf(linkage, mechanism),
}));
// Every kind has been through the optimiser before any is timed, as in a program that has seen them all.
for (let round = 0; round < 3; round++) for (const { map } of [{ map: reference }, ...others]) map(60);

for (const { name, map } of others) {
  const ratios: number[] = [];
  for (let round = 0; round < 9; round++) ratios.push(map(40) / reference(40));
  report(`${name}/double-arm+rack`, median(ratios), 1.5);
}
