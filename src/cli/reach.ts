import type { Blame } from "../measures/blame.ts";
import type { Study } from "../measures/study.ts";
import { degrees, inputPlace, type Length, offMiddle, outOfReach } from "../output/words.ts";
import type { Desk } from "./desk.ts";
import { Exit } from "./exit.ts";

/** How far over its end a place may be by rounding alone, mm or rad. */
const ROUNDING = 1e-9;

/** A place of the steering beyond the file's travel is computed all the same: the builder may be asking what a longer rack does. */
export function warnOfInput(desk: Desk, study: Study, inputs: readonly number[], length: Length): void {
  const { left, right } = study.inputTravel;
  const over = (input: number) => Math.max(input - left, -right - input);
  const worst = inputs.reduce((a, b) => (over(b) > over(a) ? b : a));
  if (over(worst) > ROUNDING) {
    const [size, way] = worst > 0 ? [left, "left"] : [right, "right"];
    const said = (place: number) => (study.inputKind === "rack" ? length(place) : degrees(place));
    const asked = said(Math.abs(worst));
    const place = asked === said(size) ? `just over ${asked}` : asked;
    desk.note(
      `warning: ${study.inputKind} at ${place} to the ${way} is beyond the file's travel, ${said(size)} to that side.`,
    );
  }
}

/**
 * Said where no place of the steering was asked for, and straight ahead is not in its middle: the wheels of the answer then
 * are turned.
 */
export function noteOfMiddle(desk: Desk, study: Study, isAsked: boolean, length: Length): void {
  const { zero, inputKind } = study;
  if (isAsked || zero === null || Math.abs(zero) < offMiddle[inputKind]) return;
  const option = inputKind === "rack" ? `--rack='${length(zero)}'` : `--column=${degrees(zero, 2).replace("°", "")}`;
  desk.note(
    `note: this is with the ${inputPlace(study, 0, length)}, where the wheels of this car do not stand straight: they do with the ${inputPlace(study, zero, length)}, ${option}.`,
  );
}

/** Likewise a wheel's travel. */
export function warnOfTravel(desk: Desk, study: Study, travels: readonly number[], length: Length): void {
  const { bump, droop } = study.wheelTravel;
  const over = (travel: number) => Math.max(travel - bump, -droop - travel);
  const worst = travels.reduce((a, b) => (over(b) > over(a) ? b : a));
  if (over(worst) > ROUNDING) {
    const [size, way] = worst > 0 ? [bump, "bump"] : [droop, "droop"];
    desk.note(`warning: ${length(Math.abs(worst))} of ${way} is beyond the file's travel, ${length(size)}.`);
  }
}

/** Names each link that does not reach where a row asked it to, and ends the command with the exit code for it. */
export function tellUnreached(desk: Desk, study: Study, blames: readonly (Blame | null)[], length: Length): void {
  const told = blames.filter((blame) => blame !== null);
  if (told.length === 0) return;
  const worst = told.reduce((a, b) => (Math.abs(b.gap) > Math.abs(a.gap) ? b : a));
  const rows = told.length === 1 ? "1 row" : `${told.length} rows`;
  desk.note(`rackwright: ${rows} out of reach; the farthest ${outOfReach(study, worst, length)}.`);
  desk.exit = Exit.doesNotClose;
}

/** Said where travel is asked of a car whose wheels have none. */
export function noTravelOf({ noTravel }: Study): string {
  return noTravel === "assumed"
    ? "this car's arms and wheel travel are assumed, not measured: nothing can be told of its travel. Measure pivots, joints, bump and droop."
    : "this car's king pins are fixed to its frame: there is no suspension, and so no travel.";
}
