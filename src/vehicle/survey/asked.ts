import { mechanismOf } from "../mechanisms.ts";
import { quantitiesOf } from "../quantities.ts";
import { pointQuantities } from "./given.ts";
import type { SurveyForm } from "./points.ts";

/** What a sheet asks of the car beside its points: a value of the car file, by its keys there. */
export interface AskedOfCar {
  readonly path: readonly string[];
  readonly help: string;
  /** What may stand there, where it is one of a few words; null for a number. */
  readonly words: readonly string[] | null;
}

/** What is asked though a car file may leave it out. */
const asked = /^(tire\.width|.*\.wheel\.(camber|toe)|.*\.straight-ahead|rack\.per-turn)$/;

/** All that no tape reads between points and a car file needs, both sides in one, in the order of the car file. */
export function askedOfCar(form: SurveyForm): readonly AskedOfCar[] {
  const points = pointQuantities(form);
  const numbers = quantitiesOf(form).flatMap(({ id, path, shared, help, absent }): readonly AskedOfCar[] =>
    points.has(id) || (absent !== null && !asked.test(id)) || id.startsWith("right.")
      ? []
      : [{ path: shared ?? path, help, words: null }],
  );
  const choices = mechanismOf(form.mechanism).choices.flatMap(({ path, help, words }) =>
    path.at(-1) === "take-off" ? [] : [{ path: ["steering", ...path], help, words }],
  );
  return [...numbers, ...choices];
}
