import { cutRods } from "../../vehicle/edit.ts";
import { setValues } from "../../vehicle/edits/values.ts";
import { inch } from "../../vehicle/units/length.ts";
import { degree } from "../../vehicle/value.ts";
import { descend } from "../least-squares/descend.ts";
import { only } from "../least-squares/equations.ts";
import { equationsOf } from "./equations.ts";
import type { Matched, PartRow } from "./matched.ts";
import { isRod } from "./unknowns.ts";

/**
 * The car's text as it most likely is. Only what stands out is written, with both rods as cut, and settled once more with all
 * else where the file has it: a hundredth of an inch in twenty places would say what nobody has measured, and look as if
 * somebody had. A value is written to the decimal below a quarter of its deviation.
 */
export function matchedText(matched: Matched): string {
  const { car, rodLengths } = matched.onFile;
  const chosen = matched.parts.filter(({ standsOut, unknown }) => standsOut || unknown.quantities.some(isRod));
  const values: Record<string, number> = {};
  const rods = { ...rodLengths };
  settledAlone(matched, chosen).forEach((value, j) => {
    const { unknown, deviation } = chosen[j];
    for (const quantity of unknown.quantities) {
      const unit = quantity.kind === "angle" ? degree : car.form.units === "in" ? inch : 1;
      const step = 10 ** Math.floor(Math.log10(deviation / 4 / unit)) * unit;
      const rounded = Math.round(value / step) * step;
      if (isRod(quantity) && quantity.wheel !== null) rods[quantity.wheel] = rounded;
      else values[quantity.id] = rounded;
    }
  });
  return cutRods({ text: setValues(car, values), form: car.form }, rods);
}

/** The values of these parts, mm or rad, that fit the sound readings best with every other part as on file. */
function settledAlone({ onFile, readings }: Matched, chosen: readonly PartRow[]): readonly number[] {
  const unknowns = chosen.map(({ unknown }) => unknown);
  const sound = readings.filter(({ wrong }) => wrong === null).map(({ prediction }) => prediction);
  const equations = equationsOf(onFile, unknowns, sound);
  // The place on file of a part that is off says nothing of where it is.
  const kept = Array.from({ length: equations.readings }, (_, i) => i).filter(
    (i) => i < sound.length || chosen[i - sound.length].off === null,
  );
  const start = Float64Array.from(chosen, ({ moved, unknown }) => moved / (unknown.tolerance / 2));
  const x = descend(only(equations, kept), start)?.x ?? start;
  return unknowns.map(({ onFile: value, tolerance }, j) => value + (x[j] * tolerance) / 2);
}
