import { Side } from "../../kinematics/slots.ts";
import { blameWords } from "../../measures/blame.ts";
import { sideAt } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import { leverArm, transmissionAngle } from "../../measures/tieRod.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { sayLength } from "../../vehicle/units/format.ts";
import { type CheckItem, type Fact, limited, notGiven, stated, upperSide } from "./item.ts";

const wheels: readonly Wheel[] = ["left", "right"];

function factsOf(study: Study, wheel: Wheel, input: number, travel: number): readonly Fact[] {
  const at = sideAt(wheel);
  const lever = leverArm(study.pose(input, travel, travel), at);
  const atLock = (lock: Wheel): Fact => {
    const row = study.locks[lock];
    const poses = row === null ? null : study.pose(row.input, 0, 0);
    const closes = poses !== null && poses[at + Side.Blame] === 0;
    return {
      id: `at${lock === "left" ? "Left" : "Right"}Lock`,
      label: `at ${lock} lock, ride height`,
      kind: "angle",
      value: closes ? transmissionAngle(poses, at) : null,
    };
  };
  return [{ id: "leverArm", label: "lever left there", kind: "length", value: lever }, atLock("left"), atLock("right")];
}

function rodToArm(study: Study, wheel: Wheel): CheckItem {
  const least = study.worst.rodAngle[wheel];
  return limited(study, "rod-to-arm", least?.angle ?? null, {
    id: `rod-to-arm.${wheel}`,
    part: "steering",
    label: `${upperSide(wheel)} tie rod, least rod-to-arm angle`,
    wheel,
    where: least === null ? null : { input: least.input, travel: least.travel },
    facts: least === null ? [] : factsOf(study, wheel, least.input, least.travel),
    cautions: [
      "At 0° the rod is at its dead point: the wheel can flip over to the other lock, and the steering is gone.",
    ],
  });
}

/** What of its range a car is moved over: travel that was never measured is not in it. */
function coveredWords({ noTravel }: Study): string {
  return noTravel === "assumed" ? "all steering, at ride height only" : "the whole range";
}

/** Whether the front end goes together everywhere in its range. */
function reached(study: Study): CheckItem {
  const { blame } = study.worst;
  const unit = study.car.form.units;
  const length = (mm: number) => sayLength(mm, unit === "in" ? { unit, fraction: 32 } : { unit });
  return {
    id: "range",
    part: "steering",
    label: `Goes together over ${coveredWords(study)}`,
    state: blame === null ? "pass" : "broken",
    kind: "length",
    value: blame === null ? 0 : Math.abs(blame.gap),
    limit: null,
    sides: null,
    wheel: blame?.wheel ?? null,
    where: blame === null ? null : { input: blame.input, travel: blame.travel },
    facts: [],
    cautions: blame === null ? [] : [`There the ${blameWords(blame, length)}: it binds or breaks before that.`],
  };
}

/** Whether the road wheels turn the way the steering wheel does. */
function followsWheel({ steersBackwards }: Study): CheckItem {
  const label = "Turns the way the steering wheel is turned";
  if (steersBackwards === null) return notGiven("steering", label, ["rack: wheel-left-moves"], "steers");
  const wrong = "STEERS BACKWARDS: steering wheel left turns the road wheels right";
  return stated(
    { id: "steers", part: "steering", label: steersBackwards ? wrong : label },
    steersBackwards ? "broken" : "pass",
  );
}

/** Which way it steers, dead points, and places that cannot be reached. */
export function steeringItems(study: Study): readonly CheckItem[] {
  return [followsWheel(study), reached(study), ...wheels.map((wheel) => rodToArm(study, wheel))];
}
