import type { Detail } from "../../measures/leastRodAngle.ts";
import { clearanceLacks } from "../../measures/range/clearance.ts";
import { placeOf, type Span } from "../../measures/span.ts";
import { type Study, studyOf } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import { triedOut } from "../adjusters/rebuilt.ts";
import type { Job } from "../job.ts";
import { noGoOf } from "./noGo.ts";
import { standIn, type TabCell, type TabMap, type TabPlane, tabsAt } from "./tabPlane.ts";

/** What is mapped: a number of the car over where the tie-rod tabs of these wheels are, from where they stand. */
export interface TabMapOf extends TabPlane {
  /** mm from where each tab stands, out positive, along a row; and ahead or up positive, from row to row. */
  readonly outs: Span;
  readonly others: Span;
  /** What is read of each car; null where it cannot be told. */
  readonly read: (study: Study) => readonly (number | null)[];
}

/** The car with its tabs that far from where they stand, and what is read of it. */
export function tabCellAt(car: Car, map: TabMapOf, out: number, other: number, detail: Detail = "whole"): TabCell {
  const study = studyOf(triedOut(car, { values: tabsAt(car, map, out, other), rods: "as they are" }), detail);
  if ("refused" in study) return { values: [], noGo: "does not close" };
  const noGo = noGoOf(study, map.wheels, detail);
  return { values: noGo === "does not close" ? [] : map.read(study), noGo };
}

/**
 * The map of a tab's plane, as a job whose pieces are cells. All are first looked at coarsely, which no shade tells from the
 * whole, every other one each way before the rest; then each as closely as figures are told.
 */
export function tabMapJob(study: Study, map: TabMapOf): Job<TabMap> {
  const { car } = study;
  const lacks = clearanceLacks(study);
  const { outs, others } = map;
  const count = outs.rows * others.rows;
  const all = Array.from({ length: count }, (_, at) => at);
  const isFirst = (at: number) => standIn(at, outs.rows) === at;
  const order = [...all.filter(isFirst), ...all.filter((at) => !isFirst(at)), ...all];
  const cells: (TabCell | undefined)[] = all.map(() => undefined);
  let done = 0;
  return {
    step: (budget) => {
      for (const stop = Math.min(order.length, done + budget); done < stop; done++) {
        const at = order[done];
        const [out, other] = [placeOf(outs, at % outs.rows), placeOf(others, Math.floor(at / outs.rows))];
        cells[at] = tabCellAt(car, map, out, other, done < count ? "coarse" : "whole");
      }
      return done === order.length;
    },
    progress: () => (count === 0 ? 1 : done / order.length),
    best: () => ({ cells: [...cells], lacks }),
  };
}
