import { writingIn } from "../../src/output/sheet/writing.ts";
import type { Drawing } from "../../src/output/template/flat.ts";
import { templatesOf } from "../../src/output/template/templates.ts";
import { presetText, studyFrom } from "./studies.ts";

export const study = studyFrom(presetText("check-before-welding"));
export const writing = writingIn("in");
export const { drawings, wanting } = templatesOf(study, writing);

export function named(name: string): Drawing {
  const found = drawings.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no ${name} among ${drawings.map((each) => each.name).join(", ")}`);
  return found;
}

export type Vector = readonly [number, number, number];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const size = (a: Vector) => Math.sqrt(dot(a, a));

// As the file has them, inches: ahead, out, up.
export const lower: Vector = [0.3, 24, 7.5];
export const upper: Vector = [-0.9, 22.6, 16.5];
export const hole: Vector = [-4.75, 22.375, 9.5];
export const along = minus(upper, lower);
/** From the king-pin line square to the hole, mm: the area of the parallelogram over its base. */
export const arm = (size(cross(minus(hole, lower), along)) / size(along)) * 25.4;

export interface Flat {
  readonly x: number;
  readonly y: number;
}
export const apart = (a: Flat, b: Flat) => Math.hypot(a.x - b.x, a.y - b.y);
export const one = <T>(items: readonly T[]): T => {
  const [first] = items;
  if (first === undefined || items.length !== 1) throw new Error(`found ${items.length}, expected one`);
  return first;
};
