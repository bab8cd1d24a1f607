import type { Point } from "../../kinematics/drawn.ts";
import { length as lengthOf, minus } from "../../kinematics/math.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Body } from "../../vehicle/linkage.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { pointAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";

/** A length of an arm to cut or to jig: between two of its places, mm. */
export interface ArmLength {
  /** The arm's key in the car file. */
  readonly arm: string;
  readonly label: string;
  readonly from: string;
  readonly to: string;
  /**
   * True where it is measured square to a pivot that runs straight across the car, so that its place along that does not
   * count.
   */
  readonly square: boolean;
  readonly mm: number;
}

/** "front pivot", "joint": what a place of an arm is called, by the end of its path. */
const names: Readonly<Record<string, string>> = {
  front: "front pivot",
  rear: "rear pivot",
  pivot: "pivot",
  brace: "radius arm's frame end",
  joint: "joint",
  lower: "king pin's lower end",
  upper: "king pin's upper end",
};

/** What a place of an arm is called, by its path. */
export function placeName(path: string): string {
  const end = path.split(".").at(-1) ?? path;
  return names[end] ?? end;
}

function lengthsOf({ name, label, moves, tubes }: Body, place: (path: string) => Point): readonly ArmLength[] {
  // What is fixed to the upright slides or is welded there: it has no length between pivots.
  if (moves === "with the upright") return [];
  const length = (from: string, to: string, square = false): ArmLength => {
    const [a, b] = [place(from), place(to)];
    const mm = square ? Math.hypot(a.x - b.x, a.z - b.z) : lengthOf(minus(a, b));
    return { arm: name, label, from: placeName(from), to: placeName(to), square, mm };
  };
  if ("across" in moves) return [length(moves.across, moves.joint, true)];
  const [rear, front] = moves.about;
  return [...tubes.map(([from, to]) => length(from, to)), length(front, rear)];
}

/** The lengths of a wheel's arms between their pivots and joints, from the drawing; none for king pins fixed to the frame. */
export function armLengths({ car }: Pick<Study, "car">, wheel: Wheel): readonly ArmLength[] {
  const place = (path: string) => pointAt(`${wheel}.${path}`)(car.numbers);
  return linkageOf(car.form.linkage).bodies.flatMap((body) => lengthsOf(body, place));
}
