import { quantitiesOf } from "../quantities.ts";
import { inch } from "../units/length.ts";
import { drawingOf } from "./drawing.ts";
import { acrossFrom, plainName } from "./points.ts";
import type { Survey, VehiclePlace } from "./survey.ts";

/** A quantity's value, mm, rad or bare, and whether it was assumed. */
interface Worth {
  readonly value: number;
  readonly assumed: boolean;
}

/** What a survey makes of a car's quantities, by their ids; what a file may leave out and nobody said is not there. */
export type Numbers = ReadonlyMap<string, Worth>;

/** Whether a point's coordinate (0 ahead, 1 sideways, 2 up) was measured. */
type Known = (point: number, axis: number) => boolean;

/** What a car has though a file may leave it out: assumed to be nothing until it is said. */
const shownAnyway = /^(left|right)\.wheel\.(camber|toe)$/;

/** The numbers of a car: what the sheet gives, what its points come to, and for the rest what the starting drawing has. */
export function numbersOf(survey: Survey, places: Float64Array, known: Known): Numbers {
  const { form, units, given } = survey;
  const drawing = drawingOf(form);
  const found = new Map<string, Worth>([...pointNumbers(survey, places, known), ...rackNumbers(survey, places, known)]);
  const radius = tyreRadius(survey, places, known);
  if (radius !== null) found.set("tire.radius", radius);
  for (const [id, value] of given) found.set(id, { value, assumed: false });
  const step = units === "in" ? inch / 16 : 1;
  for (const { id, index, kind, absent } of quantitiesOf(form)) {
    if (found.has(id) || (absent !== null && !shownAnyway.test(id))) continue;
    const drawn = drawing.numbers[index];
    const value = kind === "length" ? Math.round(drawn / step) * step : drawn;
    found.set(id, { value: absent ?? value, assumed: true });
  }
  return found;
}

function placeOf(places: Float64Array, point: number): VehiclePlace {
  return [places[3 * point], places[3 * point + 1], places[3 * point + 2]];
}

function pointNumbers({ points, form, given }: Survey, places: Float64Array, known: Known): readonly [string, Worth][] {
  return points.flatMap((point, i): readonly [string, Worth][] => {
    const { id, wheel, sideways } = point;
    if (id === null) return [];
    const at = placeOf(places, i);
    const slide = form.mechanism === "centre-rack" && id.endsWith(".rack.eye") ? slideOf(given) : { left: 0, up: 0 };
    const side = (at[1] - slide.left) * (wheel === "right" ? -1 : 1);
    return [
      [`${id}.ahead`, { value: at[0], assumed: !known(i, 0) }],
      [`${id}.${sideways}`, { value: side, assumed: !known(i, 1) }],
      [`${id}.up`, { value: at[2] - slide.up, assumed: !known(i, 2) }],
    ];
  });
}

/** How far the rack stands from its middle as the car is measured, wheels straight: to the left and up. */
function slideOf(given: Survey["given"], tilt = given.get("rack.tilt") ?? 0) {
  const along = given.get("rack.straight-ahead") ?? 0;
  return { left: along * Math.cos(tilt), up: along * Math.sin(tilt) };
}

/** Less slope between the eyes than this is the tape's own doubt, rad: an eighth of an inch over a foot. */
const leastTilt = 0.01;

/**
 * A rack's own sizes from where both its eyes were measured, the rack where it stands with the wheels straight: the inverse of
 * where the eyes of a rack are.
 */
function rackNumbers({ points, form, given }: Survey, places: Float64Array, known: Known): readonly [string, Worth][] {
  if (form.mechanism !== "rack") return [];
  const at = (wheel: string) => points.findIndex((each) => each.id === null && each.name === `${wheel} eye`);
  const [leftAt, rightAt] = [at("left"), at("right")];
  const [left, right] = [placeOf(places, leftAt), placeOf(places, rightAt)];
  const [across, rise] = [left[1] - right[1], left[2] - right[2]];
  const slope = Math.atan2(rise, across);
  const tilt = Math.abs(slope) < leastTilt ? 0 : slope;
  const slide = slideOf(given, tilt);
  const assumed = (axis: number) => !known(leftAt, axis) || !known(rightAt, axis);
  return [
    ["rack.ahead", { value: (left[0] + right[0]) / 2, assumed: assumed(0) }],
    ["rack.up", { value: (left[2] + right[2]) / 2 - slide.up, assumed: assumed(2) }],
    ["rack.eye-to-eye", { value: tilt === 0 ? across : Math.hypot(across, rise), assumed: assumed(1) }],
    ["rack.offset", { value: (left[1] + right[1]) / 2 - slide.left, assumed: assumed(1) }],
    ...(tilt === 0 ? [] : [["rack.tilt", { value: tilt, assumed: assumed(2) }] as [string, Worth]]),
  ];
}

/** A tyre's loaded radius is how high its wheel's centre stands: the mean of both. */
function tyreRadius({ points }: Survey, places: Float64Array, known: Known): Worth | null {
  const left = points.findIndex(({ name }) => plainName(name) === "left wheel center");
  const other = left < 0 ? null : acrossFrom(points[left], points);
  if (other === null) return null;
  const right = points.indexOf(other);
  const value = (places[3 * left + 2] + places[3 * right + 2]) / 2;
  return { value, assumed: !known(left, 2) && !known(right, 2) };
}
