import type { Drawn } from "../kinematics/drawn.ts";
import type { Car } from "../vehicle/car.ts";
import { linkageOf as carLinkageOf } from "../vehicle/linkages.ts";
import { mechanisms } from "../vehicle/mechanisms.ts";
import { cornerOf } from "./drawn/corner.ts";
import { linkageOf } from "./drawn/linkages.ts";
import { mechanismOf } from "./drawn/mechanisms.ts";
import { numberAt } from "./drawn/places.ts";
import type { Pair } from "./span.ts";
import { type Stops, stopsOf } from "./stops.ts";

/** What the builder moves to steer: the rack, mm, or the steering column, rad. Positive to the driver's left. */
export type InputKind = "rack" | "column";

/** What a car's front end is used over: its ranges, and what the measures need beside the linkage. Lengths mm. */
export interface Setting {
  readonly wheelbase: number;
  /** Loaded radius of the tyre. */
  readonly tireRadius: number;
  /** What every `input` of this front end is: a place of the rack, mm, or of the column, rad. */
  readonly inputKind: InputKind;
  /** How far the input goes from its middle (mid-travel, or the column's 0) to each side, both positive. */
  readonly inputTravel: Pair<number>;
  /** What stops it sooner. */
  readonly stops: Stops;
  /** Why there is nothing to say of travel: king pins fixed to the frame, or arms that are assumed; null where there is. */
  readonly noTravel: "fixed" | "assumed" | null;
  /** False where there is nothing to say of travel. */
  readonly suspended: boolean;
  /** Of the wheel centre from ride height, both positive; 0 without suspension. */
  readonly wheelTravel: { readonly bump: number; readonly droop: number };
}

const wheelbase = numberAt("wheelbase");
const tireRadius = numberAt("tire.radius");
const bump = numberAt("wheel-travel.bump");
const droop = numberAt("wheel-travel.droop");

/** Of each mechanism, by its own name: what moves it, and how to read how far. */
const inputs = new Map(
  mechanisms.map(({ name, section, input }) => [
    name,
    { kind: input, left: numberAt(`left.${section}.travel`), right: numberAt(`right.${section}.travel`) },
  ]),
);

function inputOf({ numbers, form }: Pick<Car, "numbers" | "form">): Pick<Setting, "inputKind" | "inputTravel"> {
  const input = inputs.get(form.mechanism);
  if (input === undefined) throw new Error(`no mechanism is called ${form.mechanism}`);
  return { inputKind: input.kind, inputTravel: { left: input.left(numbers), right: input.right(numbers) } };
}

/** A car's ranges and its numbers beside the linkage. */
export function settingOf(car: Pick<Car, "numbers" | "form">): Setting {
  const { numbers, form } = car;
  const noTravel =
    carLinkageOf(form.linkage).noTravel !== undefined ? "fixed" : form.travelIsAssumed ? "assumed" : null;
  return {
    wheelbase: wheelbase(numbers),
    tireRadius: tireRadius(numbers),
    ...inputOf(car),
    stops: stopsOf(numbers),
    noTravel,
    suspended: noTravel === null,
    wheelTravel: noTravel === null ? { bump: bump(numbers), droop: droop(numbers) } : { bump: 0, droop: 0 },
  };
}

/** A car's front end as the kernel takes it. A tie rod counts as cut where the file gives its length. */
export function drawnOf(car: Pick<Car, "numbers" | "form">): Drawn {
  const { numbers, form } = car;
  const { inputTravel, wheelTravel } = settingOf(car);
  return {
    linkage: linkageOf(form.linkage, numbers),
    mechanism: mechanismOf(form, numbers),
    left: cornerOf.left(numbers, form.rods),
    right: cornerOf.right(numbers, form.rods),
    range: {
      inputLow: -inputTravel.right,
      inputHigh: inputTravel.left,
      travelLow: -wheelTravel.droop,
      travelHigh: wheelTravel.bump,
    },
  };
}
