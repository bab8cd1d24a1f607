import type { Wheel } from "../vehicle/car.ts";
import { numberAt } from "./drawn/places.ts";
import type { Pair } from "./span.ts";

/** Turns of the left and the right wheel, as inner and as outer wheel, at which something holds it, rad; 0 is nothing. */
export interface WheelStops {
  readonly inner: Pair<number>;
  readonly outer: Pair<number>;
}

/** What a car file gives beside the ends of the rack or the column. */
export interface Stops {
  /** What a collar takes off the rack's travel to each side, mm; 0 is no collar. */
  readonly collar: Pair<number>;
  readonly upright: WheelStops;
  readonly tyreRub: WheelStops;
}

const none: Pair<number> = { left: 0, right: 0 };

/** A car without any stop but the ends of its rack or column. */
export const noStops: Stops = {
  collar: none,
  upright: { inner: none, outer: none },
  tyreRub: { inner: none, outer: none },
};

/** What ends the steering's travel one way. */
export type StopKind = "end" | "collar" | "upright" | "tyreRub";

/** What ends the steering's travel one way, and where: mm of rack or rad of column from the middle, positive. */
export interface Stop {
  readonly kind: StopKind;
  /** Whose upright or tyre it is; null for the rack's end and a collar. */
  readonly wheel: Wheel | null;
  readonly at: number;
}

function pairAt(key: string): (numbers: Float64Array) => Pair<number> {
  const left = numberAt(`left.stops.${key}`);
  const right = numberAt(`right.stops.${key}`);
  return (numbers) => ({ left: left(numbers), right: right(numbers) });
}

function turnsAt(key: string): (numbers: Float64Array) => WheelStops {
  const inner = pairAt(`${key}.inner`);
  const outer = pairAt(`${key}.outer`);
  return (numbers) => ({ inner: inner(numbers), outer: outer(numbers) });
}

const collar = pairAt("collar");
const upright = turnsAt("upright");
const tyreRub = turnsAt("tyre-rub");

/** The stops that a car file gives. */
export function stopsOf(numbers: Float64Array): Stops {
  return { collar: collar(numbers), upright: upright(numbers), tyreRub: tyreRub(numbers) };
}

/** Whether anything stops a wheel by its turn, so that how far the steering goes depends on the travel. */
export function turnsStop({ upright, tyreRub }: Stops): boolean {
  return [upright, tyreRub].some(({ inner, outer }) =>
    [inner, outer].some(({ left, right }) => left !== 0 || right !== 0),
  );
}
