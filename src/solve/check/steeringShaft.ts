import type { Point } from "../../kinematics/drawn.ts";
import { bestPhase, bestPhases, shaftRun, speedRange } from "../../measures/steeringShaft.ts";
import type { Study } from "../../measures/study.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import type { SteeringShaft } from "../../vehicle/sections/steering-shaft.ts";
import { inch } from "../../vehicle/units/length.ts";
import { type CheckItem, type Fact, limited, notGiven, stated } from "./item.ts";

const offset = indexOf("rack.offset");

/** Moved so far, two places of the shaft could coincide: then there is no bend to tell. */
function finite(bend: number | undefined): number | null {
  return bend !== undefined && Number.isFinite(bend) ? bend : null;
}

/** One joint's bend with the rack's housing, and the pinion with it, moved across the car: side by side with what it is. */
function shiftFacts(study: Study, shaft: SteeringShaft, joint: number): readonly Fact[] {
  const step = study.car.form.units === "in" ? 2 * inch : 50;
  const words = study.car.form.units === "in" ? "2 in" : "50 mm";
  const at = (id: string, label: string, shift: number): Fact => ({
    id,
    label: `with the housing ${label}`,
    kind: "angle",
    value: finite(shaftRun(shaft, shift).joints[joint]?.bend),
  });
  const off = study.car.form.mechanism === "rack" ? (study.car.numbers[offset] ?? 0) : 0;
  return [
    at("housingLeft", `${words} further left`, step),
    at("housingRight", `${words} further right`, -step),
    ...(off === 0 ? [] : [at("housingCentred", "moved so that the rack is centred", -off)]),
  ];
}

function speedFacts(shaft: SteeringShaft): readonly Fact[] {
  const { axes, slowest, fastest } = shaftRun(shaft);
  const ratio = (id: string, label: string, value: number): Fact => ({ id, label, kind: "ratio", value });
  const now = [ratio("slowest", "pinion's speed over a turn, least", slowest), ratio("fastest", "greatest", fastest)];
  const phases = phasesOf(axes);
  if (phases.length === 0) return now;
  const best = speedRange(
    axes,
    phases.map(({ value }) => value),
  );
  return [
    ...now,
    ...phases.map(({ id, label, value }): Fact => ({ id, label, kind: "angle", value })),
    ratio("bestSlowest", "speed then, least", best.slowest),
    ratio("bestFastest", "greatest", best.fastest),
  ];
}

/** The phases of the shafts between joints that are best: of one shaft, of two, or of none. */
function phasesOf([first, second, third, fourth]: readonly Point[]) {
  if (first === undefined || second === undefined || third === undefined) return [];
  if (fourth === undefined)
    return [{ id: "bestPhase", label: "forks' best phase", value: bestPhase([first, second, third]) }];
  const [upper, lower] = bestPhases([first, second, third, fourth]);
  return [
    { id: "bestPhase", label: "forks' best phase, below the first joint", value: upper },
    { id: "bestSecondPhase", label: "above the last", value: lower },
  ];
}

/** The joints of the steering shaft, and whether a long row of them is held. */
export function shaftItems(study: Study): readonly CheckItem[] {
  const shaft = study.car.sections["steering-shaft"];
  if (shaft === null) return [notGiven("steering shaft", "Steering shaft's joints", ["steering-shaft"])];
  const { joints } = shaftRun(shaft);
  const worst = joints.reduce((a, b) => (b.bend > a.bend ? b : a));
  const items = joints.map((joint, i) =>
    limited(study, "shaft-joint", joint.bend, {
      id: `shaft-joint.${joint.name}`,
      part: "steering shaft",
      label: `Steering shaft, ${joint.name} joint's bend`,
      wheel: null,
      where: null,
      facts: [...shiftFacts(study, shaft, i), ...(joint === worst ? speedFacts(shaft) : [])],
      cautions:
        joint === worst
          ? ["Moving the seat to the middle, or the rack off it, is what commonly bends these joints too far."]
          : [],
    }),
  );
  if (joints.length <= 2) return items;
  const held = shaft["support-bearing"] === "yes";
  const label = `Steering shaft, ${joints.length} joints, ${held ? "held by" : "without"} a support bearing`;
  const caution = "A shaft with more than two joints and no support bearing whips and can fold up.";
  const support = { id: "shaft-support", part: "steering shaft", label } as const;
  return [...items, stated(support, held ? "pass" : "close", held ? [] : [caution])];
}
