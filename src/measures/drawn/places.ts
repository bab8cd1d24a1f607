import type { Point } from "../../kinematics/drawn.ts";
import { indexOf } from "../../vehicle/quantities.ts";

/** Where a point's three numbers stand in Car.numbers, found once. `x`, `y` and `z` are the kernel's. */
interface PointPlaces {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function pointOf(numbers: Float64Array, places: PointPlaces): Point {
  return { x: numbers[places.x], y: numbers[places.y], z: numbers[places.z] };
}

const known = new Map<string, (numbers: Float64Array) => Point>();

/** How to read the point of that id, such as "left.lower-arm.joint", in its corner's own frame. */
export function pointAt(id: string): (numbers: Float64Array) => Point {
  const read = known.get(id);
  if (read !== undefined) return read;
  const places = { x: indexOf(`${id}.ahead`), y: indexOf(`${id}.out`), z: indexOf(`${id}.up`) };
  const made = (numbers: Float64Array) => pointOf(numbers, places);
  known.set(id, made);
  return made;
}

/** How to read a point of the whole car, in the vehicle's frame: y to the driver's left. */
export function offsetPointAt(id: string): (numbers: Float64Array) => Point {
  const places = { x: indexOf(`${id}.ahead`), y: indexOf(`${id}.offset`), z: indexOf(`${id}.up`) };
  return (numbers) => pointOf(numbers, places);
}

/** How to read the number of that id. */
export function numberAt(id: string): (numbers: Float64Array) => number {
  const index = indexOf(id);
  return (numbers) => numbers[index];
}
