import { indexOf } from "../quantities.ts";

/** A place, mm: ahead of the axle line, sideways (outboard in a corner, to the driver's left on the car), up. */
export interface At {
  readonly ahead: number;
  readonly side: number;
  readonly up: number;
}

/** A starting value: a quantity's id, and its value, mm, rad or bare. */
export interface Start {
  readonly id: string;
  readonly value: number;
}

/** A corner's point, such as "left.lower-arm.joint". */
export function pointIn(numbers: Float64Array, id: string): At {
  return {
    ahead: numberIn(numbers, `${id}.ahead`),
    side: numberIn(numbers, `${id}.out`),
    up: numberIn(numbers, `${id}.up`),
  };
}

export function numberIn(numbers: Float64Array, id: string): number {
  return numbers[indexOf(id)] ?? 0;
}

/** The three starting values of a point; `sideways` is the key of its second coordinate. */
export function pointStarts(id: string, at: At, sideways: "out" | "offset" = "out"): readonly Start[] {
  return [
    { id: `${id}.ahead`, value: at.ahead },
    { id: `${id}.${sideways}`, value: at.side },
    { id: `${id}.up`, value: at.up },
  ];
}

/** The place a share of the way from a to b; beyond b where the share is over 1. */
export function between(a: At, b: At, share: number): At {
  const mix = (from: number, to: number) => from + (to - from) * share;
  return { ahead: mix(a.ahead, b.ahead), side: mix(a.side, b.side), up: mix(a.up, b.up) };
}

export function apart(a: At, b: At): number {
  return Math.hypot(a.ahead - b.ahead, a.side - b.side, a.up - b.up);
}
