import { changeFrontEnd } from "../change.ts";
import { tapeOf } from "../from-tape/readings.ts";
import { carFromTape } from "../from-tape/text.ts";
import { mechanisms } from "../mechanisms.ts";
import { readCar } from "../read.ts";
import { eyesOf } from "../starting/eyes.ts";
import { numberIn, pointIn } from "../starting/place.ts";
import type { SurveyForm, SurveyPoint } from "./points.ts";
import type { VehiclePlace } from "./survey.ts";

/**
 * A front end of middling size to begin from, mm: hub height, outside width over the tyres, and so on, as a tape would read
 * it. What a sheet's own readings say is put in its place.
 */
const middling: Readonly<Record<string, number | string>> = {
  wheelbase: 2000,
  "hub-height": 290,
  "over-tyres": 1400,
  "tyre-width": 180,
  "king-pins-apart": 1080,
  "tab-back": 110,
  "tab-in": 25,
  "tab-height": 240,
  "left-eye": 190,
  "right-eye": 190,
  "eye-height": 240,
  "eye-behind": 25,
  stroke: 100,
  "left-stop": 50,
  "rack-goes": "right",
};

/** A front end as it could be before anything of it is known: numbers of a whole car. */
export interface Drawing {
  readonly numbers: Float64Array;
  readonly form: SurveyForm;
}

const drawings = new Map<string, Drawing>();

/** The starting drawing of a linkage and mechanism: where its points are looked for first, and what is assumed of the rest. */
export function drawingOf(form: SurveyForm): Drawing {
  const name = `${form.linkage} ${form.mechanism}`;
  const known = drawings.get(name);
  if (known !== undefined) return known;
  const worth = new Map(Object.entries(middling));
  const begun = readCar(carFromTape(tapeOf(worth, { title: null, units: "mm" })).text);
  if ("complaints" in begun) throw new Error("the front end to begin from is none");
  const steered = mechanisms.find((each) => each.name === form.mechanism) ?? mechanisms[0];
  const { word: mechanism, takeOff } = steered;
  const change = { linkage: form.linkage, mechanism, ...(takeOff === null ? {} : { takeOff }) };
  const car = readCar(changeFrontEnd(begun, change).text);
  if ("complaints" in car) throw new Error(`the front end to begin from has no ${name}`);
  const drawing = { numbers: car.numbers, form };
  drawings.set(name, drawing);
  return drawing;
}

/** Where a point of the front end is in a car's numbers, in the vehicle's frame; null for a mark. */
export function placeIn({ numbers, form }: Drawing, point: SurveyPoint): VehiclePlace | null {
  if (point.id === null) {
    if (form.mechanism !== "rack" || point.wheel === null || !point.name.endsWith(" eye")) return null;
    const eye = eyesOf(numbers, form, false)[point.wheel];
    return [eye.ahead, eye.side, eye.up];
  }
  if (point.sideways === "offset") return offsetPlace(numbers, point.id);
  const at = pointIn(numbers, point.id);
  return [at.ahead, point.wheel === "right" ? -at.side : at.side, at.up];
}

function offsetPlace(numbers: Float64Array, id: string): VehiclePlace {
  return [numberIn(numbers, `${id}.ahead`), numberIn(numbers, `${id}.offset`), numberIn(numbers, `${id}.up`)];
}
