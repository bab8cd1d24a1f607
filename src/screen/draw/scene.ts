import type { Place } from "../../measures/points.ts";
import { across, type Canvas, down, line, type Stroke } from "./canvas.ts";

/** A way to look at the car: where a place is to the right and upward, mm. Dots are as high as they are wide. */
export type Look = (place: Place) => readonly [right: number, up: number];

/** From above, the car's nose up: the driver's left is on the left. */
export const fromAbove: Look = ([x, y]) => [-y, x];

/** From behind, so that the driver's left is on the left here too. */
export const fromBehind: Look = ([, y, z]) => [-y, z];

/** What is to be seen, mm to the right and upward. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** The frame around places, with a margin, mm. */
export function frameOf(look: Look, places: readonly Place[], margin: number): Frame {
  const seen = places.map(look);
  const [rights, ups] = [seen.map(([right]) => right), seen.map(([, up]) => up)];
  return {
    left: Math.min(...rights) - margin,
    right: Math.max(...rights) + margin,
    low: Math.min(...ups) - margin,
    high: Math.max(...ups) + margin,
  };
}

/** Where a place is on a canvas, in dots: the whole frame fits, and is in the middle. */
export function placer(canvas: Canvas, look: Look, frame: Frame): (place: Place) => readonly [number, number] {
  const [width, height] = [canvas.columns * across, canvas.rows * down];
  const scale = Math.min(width / (frame.right - frame.left), height / (frame.high - frame.low));
  const middle = [(frame.left + frame.right) / 2, (frame.low + frame.high) / 2] as const;
  return (place) => {
    const [right, up] = look(place);
    return [width / 2 + (right - middle[0]) * scale, height / 2 - (up - middle[1]) * scale];
  };
}

/** A line from place to place. */
export function path(
  canvas: Canvas,
  places: readonly Place[],
  to: (place: Place) => readonly [number, number],
  stroke?: Stroke,
): void {
  for (let i = 1; i < places.length; i++) line(canvas, to(places[i - 1]), to(places[i]), stroke);
}
