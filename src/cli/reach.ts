import type { Blame } from "../measures/blame.ts";
import type { Study } from "../measures/study.ts";
import { type Length, outOfReach } from "../output/words.ts";
import type { Desk } from "./desk.ts";
import { Exit } from "./exit.ts";

/** How far over its end a rack place or a travel may be by rounding alone, mm. */
const ROUNDING = 1e-9;

/** A rack place beyond the file's travel is computed all the same: the builder may be asking what a longer rack does. */
export function warnOfRack(desk: Desk, study: Study, racks: readonly number[], length: Length): void {
  const { left, right } = study.rackTravel;
  const over = (rack: number) => Math.max(rack - left, -right - rack);
  const worst = racks.reduce((a, b) => (over(b) > over(a) ? b : a));
  if (over(worst) > ROUNDING) {
    const [size, way] = worst > 0 ? [left, "left"] : [right, "right"];
    desk.note(
      `warning: rack at ${length(Math.abs(worst))} to the ${way} is beyond the file's travel of ${length(size)} that way.`,
    );
  }
}

/** Likewise a wheel's travel. */
export function warnOfTravel(desk: Desk, study: Study, travels: readonly number[], length: Length): void {
  const { bump, droop } = study.wheelTravel;
  const over = (travel: number) => Math.max(travel - bump, -droop - travel);
  const worst = travels.reduce((a, b) => (over(b) > over(a) ? b : a));
  if (over(worst) > ROUNDING) {
    const [size, way] = worst > 0 ? [bump, "bump"] : [droop, "droop"];
    desk.note(`warning: ${length(Math.abs(worst))} of ${way} is beyond the file's travel of ${length(size)}.`);
  }
}

/** Names each link that does not reach where a row asked it to, and ends the command with the exit code for it. */
export function tellUnreached(desk: Desk, blames: readonly (Blame | null)[], length: Length): void {
  const told = blames.filter((blame) => blame !== null);
  if (told.length === 0) return;
  const worst = told.reduce((a, b) => (Math.abs(b.gap) > Math.abs(a.gap) ? b : a));
  const rows = told.length === 1 ? "1 row" : `${told.length} rows`;
  desk.note(`rackwright: ${rows} out of reach; the farthest ${outOfReach(worst, length)}.`);
  desk.exit = Exit.doesNotClose;
}
