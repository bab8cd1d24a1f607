import type { Wheel } from "../../vehicle/car.ts";
import type { Place } from "../points.ts";

/** A body of the front end as it is drawn: a line through places of the vehicle's frame, mm. */
export interface Stick {
  /** Whose it is; null for what both wheels share. */
  readonly wheel: Wheel | null;
  /** "fixed" stays with the frame of the car, as an axis that something turns about does. */
  readonly part: "arm" | "upright" | "tie-rod" | "steering" | "wheel" | "fixed";
  readonly places: readonly Place[];
}
