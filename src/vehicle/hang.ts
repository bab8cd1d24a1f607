import type { Car } from "./car.ts";
import { type Edit, setQuantity } from "./edit.ts";
import type { Place } from "./places.ts";
import { numberIn, pointIn } from "./starting/place.ts";
import { axisEnds } from "./starting/steering-axis.ts";
import { inch } from "./units/length.ts";
import { type Hang, hung, type Upright, uprightOf } from "./upright.ts";
import type { LengthUnit, Wheel } from "./words.ts";

/** How an upright is to hang: signs as a car file has them, rad. */
export type Wanted = Pick<Hang, "camber" | "caster">;

/** Why a car's uprights cannot be taken to the bench, in a sentence; null where they can. */
export function whyNoUpright({ form }: Pick<Car, "form">): string | null {
  return form.linkage === "strut"
    ? "A strut's upright has no upper joint: its top mount on the frame sets caster and camber."
    : null;
}

const placeOf = (car: Pick<Car, "numbers">, id: string): Place => {
  const { ahead, side, up } = pointIn(car.numbers, id);
  return [ahead, side, up];
};

function placesOf(car: Pick<Car, "numbers" | "form">, wheel: Wheel) {
  const [lower, upper] = axisEnds[car.form.linkage];
  return {
    lower: placeOf(car, `${wheel}.${lower}`),
    upper: placeOf(car, `${wheel}.${upper}`),
    wheelCenter: placeOf(car, `${wheel}.wheel.center`),
    tab: placeOf(car, `${wheel}.tie-rod.outer`),
  };
}

const toeOf = (car: Pick<Car, "numbers">, wheel: Wheel) => numberIn(car.numbers, `${wheel}.wheel.toe`);

/** A wheel's upright as it would lie on the bench. */
export function uprightOn(car: Pick<Car, "numbers" | "form">, wheel: Wheel): Upright {
  const camber = numberIn(car.numbers, `${wheel}.wheel.camber`);
  return uprightOf(placesOf(car, wheel), { camber, toe: toeOf(car, wheel) });
}

/** How it hangs now. */
export function hangOf(car: Pick<Car, "numbers" | "form">, wheel: Wheel): Wanted {
  const { lower, upper } = placesOf(car, wheel);
  return {
    camber: numberIn(car.numbers, `${wheel}.wheel.camber`),
    caster: Math.atan2(lower[0] - upper[0], upper[2] - lower[2]),
  };
}

/** A place as it can be built and set: to a thousandth of an inch or a hundredth of a millimetre. */
function settable(mm: number, units: LengthUnit): number {
  const step = units === "in" ? inch / 1000 : 0.01;
  return Math.round(mm / step) * step;
}

/** A quantity's new values, a side each; alike ones are written once, and what stays as it is not at all. */
function editsOf(
  car: Pick<Car, "numbers" | "form">,
  pair: string,
  values: ReadonlyMap<Wheel, number>,
): readonly Edit[] {
  const [left, right] = [values.get("left"), values.get("right")];
  const isKept = [...values].every(
    ([wheel, value]) => settable(numberIn(car.numbers, `${wheel}.${pair}`), car.form.units) === value,
  );
  if (isKept) return [];
  if (left !== undefined && left === right) return [{ pair, sides: "both", value: left }];
  return [...values].map(([wheel, value]) => ({ pair, sides: wheel, value }));
}

/** What is to be otherwise of an upright and of how it hangs; what is not there stays as it is on each side. */
export type UprightChange = Partial<Upright & Wanted>;

/**
 * The car's text with its uprights, on both sides or one, changed and hung, as one change: the lower joint and the wheel's
 * toe stay, and upper joint, wheel centre and tie-rod hole go where that puts them. A complaint, in a sentence, where an
 * upright cannot hang so.
 */
export function withUpright(
  car: Pick<Car, "text" | "numbers" | "form">,
  sides: "both" | Wheel,
  change: UprightChange,
): { readonly text: string } | { readonly complaint: string } {
  const why = whyNoUpright(car);
  if (why !== null) return { complaint: why };
  const wheels: readonly Wheel[] = sides === "both" ? ["left", "right"] : [sides];
  const [, upper] = axisEnds[car.form.linkage];
  const values = new Map<string, Map<Wheel, number>>();
  for (const wheel of wheels) {
    const hang = { ...hangOf(car, wheel), ...change, lower: placesOf(car, wheel).lower, toe: toeOf(car, wheel) };
    const stand = hung({ ...uprightOn(car, wheel), ...change }, hang);
    if (stand === null)
      return { complaint: "With that lean of its spindle the upright cannot stand at that camber and caster." };
    const places = { [upper]: stand.upper, "wheel.center": stand.wheelCenter, "tie-rod.outer": stand.tab };
    for (const [id, place] of Object.entries(places))
      for (const [i, way] of (["ahead", "out", "up"] as const).entries()) {
        const pair = `${id}.${way}`;
        values.set(pair, (values.get(pair) ?? new Map()).set(wheel, settable(place[i] ?? 0, car.form.units)));
      }
  }
  const edits = [...values].flatMap(([pair, of]) => editsOf(car, pair, of));
  const camber: readonly Edit[] =
    change.camber === undefined ? [] : [{ pair: "wheel.camber", sides, value: change.camber }];
  return { text: [...edits, ...camber].reduce((text, edit) => setQuantity({ text, form: car.form }, edit), car.text) };
}
