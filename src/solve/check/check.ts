import { bodiesOf } from "../../measures/range/bodies.ts";
import { clearanceLacks, pairingsAt } from "../../measures/range/clearance.ts";
import { rodEndsAt } from "../../measures/range/rodEnds.ts";
import type { Study } from "../../measures/study.ts";
import { type Job, jobOf, type Piece } from "../job.ts";
import { assumedItems } from "./assumed.ts";
import { clearanceItems } from "./clearance.ts";
import { type CheckItem, notGiven } from "./item.ts";
import type { CheckReport } from "./report.ts";
import { rodEndItems } from "./rodEnds.ts";
import { shockItems, shocksAt } from "./shocks.ts";
import { sizeItems } from "./size.ts";
import { steeringItems } from "./steering.ts";
import { shaftItems } from "./steeringShaft.ts";
import { swept } from "./sweep.ts";
import { targetItems } from "./targets.ts";
import { threadItems } from "./threads.ts";
import { noteShank, watchEnd } from "./watchedEnd.ts";

function* pieces(study: Study): Generator<Piece<CheckReport | null>, void, void> {
  const corners = (["left", "right"] as const).map((wheel) => bodiesOf(study, wheel));
  const ends = corners.flatMap((bodies) => rodEndsAt(study, bodies)).map(watchEnd);
  const pairs = corners.flatMap((bodies) => pairingsAt(study, bodies));
  const note = (poses: Float64Array) => {
    for (const end of ends) noteShank(end, poses);
  };
  const shocks = corners.flatMap((bodies) => shocksAt(study, bodies));
  const sweep = swept(study, [...ends, ...pairs, ...shocks.flatMap(({ watched }) => watched)], note);
  let row = sweep.next();
  for (; !row.done; row = sweep.next()) yield { progress: 0.85 * row.value, best: null };
  const worst = row.value;
  const rods = rodEndItems(study, ends, worst);
  let end = rods.next();
  for (; !end.done; end = rods.next()) yield { progress: 0.85 + 0.1 * end.value, best: null };
  const lacks = clearanceLacks(study);
  const told = end.value;
  const inOrder: readonly (() => readonly CheckItem[])[] = [
    () => assumedItems(study),
    () => steeringItems(study),
    () => told,
    () => threadItems(study),
    () => clearanceItems(study, pairs, worst.slice(ends.length, ends.length + pairs.length)),
    () =>
      lacks.length === 0 ? [] : [notGiven("clearance", pairs.length === 0 ? "Clearance" : "Other clearances", lacks)],
    () => shaftItems(study),
    () => shockItems(study, shocks, worst.slice(ends.length + pairs.length)),
    () => targetItems(study),
    () => sizeItems(study),
  ];
  const items: CheckItem[] = [];
  for (const [done, more] of inOrder.entries()) {
    items.push(...more());
    yield { progress: 0.95 + (0.05 * done) / inOrder.length, best: null };
  }
  yield { progress: 1, best: { items } };
}

/**
 * Checks a car over its whole range: every rack position by every travel, both sides, and what needs no range. A piece is
 * one place of steering and travel, or a small part of what follows; the best is null until all is done.
 */
export function checkJob(study: Study): Job<CheckReport | null> {
  return jobOf<CheckReport | null>(null, pieces(study));
}
