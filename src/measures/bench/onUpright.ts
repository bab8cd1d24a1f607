import { cross, dot, length, minus, times } from "../../kinematics/math.ts";
import { drawnSpin } from "../../kinematics/upright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { axisEnds } from "../../vehicle/starting/steering-axis.ts";
import { pointAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";

/** A place on an upright from its lower joint, mm: `up` along the king-pin line, `out` the way the spindle points square to it, `ahead` square to both. */
export interface OnUpright {
  readonly ahead: number;
  readonly out: number;
  readonly up: number;
}

/** An upright as it stands with its king-pin line upright and its spindle straight out, mm. */
export interface StandingUpright {
  /** The upper joint's height above the lower one, or that of a strut's top mount. */
  readonly upper: number;
  readonly hole: OnUpright;
  /** Where the spindle's line passes the king-pin line, and the middle of the wheel on it. */
  readonly spindle: OnUpright;
  readonly wheelCenter: OnUpright;
}

/**
 * A wheel's upright in a frame of its own, from the drawing alone (elementary vectors in the corner's frame: x ahead, y out,
 * z up). With k the unit king-pin line upward and s the unit spindle outward: out = s − (s·k)k made a unit, ahead = out × k.
 */
export function standingUpright({ car, drawn }: Pick<Study, "car" | "drawn">, wheel: Wheel): StandingUpright {
  const [lowerId, upperId] = axisEnds[car.form.linkage];
  const place = (id: string) => pointAt(`${wheel}.${id}`)(car.numbers);
  const lower = place(lowerId);
  const line = minus(place(upperId), lower);
  const k = times(line, 1 / length(line));
  const s = drawnSpin(drawn[wheel]);
  const square = minus(s, times(k, dot(s, k)));
  const o = times(square, 1 / length(square));
  const f = cross(o, k);
  const on = (id: string): OnUpright => {
    const p = minus(place(id), lower);
    return { ahead: dot(p, f), out: dot(p, o), up: dot(p, k) };
  };
  const wheelCenter = on("wheel.center");
  const along = wheelCenter.out / dot(s, o);
  const spindle = { ahead: wheelCenter.ahead, out: 0, up: wheelCenter.up - along * dot(s, k) };
  return { upper: length(line), hole: on("tie-rod.outer"), spindle, wheelCenter };
}
