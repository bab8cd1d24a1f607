import { pointAt } from "../measures/drawn/places.ts";
import type { Variable } from "../solve/find/room.ts";
import type { Car, Wheel } from "../vehicle/car.ts";
import type { Body } from "../vehicle/linkage.ts";
import { linkageOf } from "../vehicle/linkages.ts";
import type { Length } from "./words.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** The points, by their paths below a corner, that an answer moves. */
function movedPoints(variables: readonly Variable[], moves: Float64Array): ReadonlySet<string> {
  const pairs = variables.filter((_, i) => Math.abs(moves[i]) > 1e-9).map(({ pair }) => pair);
  return new Set(pairs.map((pair) => pair.split(".").slice(0, -1).join(".")));
}

/** From one place of a corner to another, mm, at each wheel. */
function lengthOn({ numbers }: Car, wheel: Wheel, from: string, to: string): number {
  const [a, b] = [pointAt(`${wheel}.${from}`)(numbers), pointAt(`${wheel}.${to}`)(numbers)];
  return Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
}

function reachWords(car: Car, from: string, to: string, length: Length): string {
  const said = wheels.map((wheel) => length(lengthOn(car, wheel, from, to)));
  const ends = [from, to].map((each) => (each.split(".").at(-1) ?? each).replaceAll("-", " ")).join(" to ");
  return said[0] === said[1] ? `${ends} ${said[0]}` : `${ends} left ${said[0]}, right ${said[1]}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What has to be made anew where an answer moves pivots and joints: the lengths of the arms that reach from where pivots then
 * are to where joints then are, and uprights whose joints lie elsewhere on them. Nothing where none is moved.
 */
export function madeAnew(
  variables: readonly Variable[],
  moves: Float64Array,
  car: Car,
  length: Length,
): readonly string[] {
  const moved = movedPoints(variables, moves);
  const bodies: readonly Body[] = linkageOf(car.form.linkage).bodies;
  const arms = bodies.flatMap(({ label, tubes }) => {
    const changed = tubes.filter((ends) => ends.some((end) => moved.has(end)));
    const said = changed.map(([from, to]) => reachWords(car, from, to, length));
    return said.length === 0 ? [] : [`${capital(label)}, made to reach: ${said.join(", ")}.`];
  });
  const onUpright = bodies.flatMap(({ moves: by }) => (by === "with the upright" ? [] : [by.joint]));
  const isOther = [...onUpright, "king-pin.lower", "king-pin.upper"].some((point) => moved.has(point));
  return isOther
    ? [...arms, "The uprights are others then: rackwright upright measures those of the car that --write writes."]
    : arms;
}
