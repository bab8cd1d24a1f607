import { whyUndecided } from "../output/undecided.ts";
import { whyNoUpright } from "../vehicle/hang.ts";
import { adjustableOf, isFittedRod, whyFixed } from "./adjust.ts";
import { isStarting, startingLines } from "./frontEnd.ts";
import { matchedHere } from "./gaugeMatch.ts";
import type { Model } from "./model.ts";
import { settledOf } from "./sheetState.ts";

// Why a key does nothing just now, in words to the builder; null when it works.

/** Why the selected line cannot be changed. */
export function whyNotAdjusted({ bench, selected, sides }: Model): string | null {
  return whyFixed(bench.car, adjustableOf(bench.car, selected), sides);
}

/** Why nothing can be typed for the selected line: a rod that is cut to fit takes a length, and is as cut from then on. */
export function whyNotTyped(model: Model): string | null {
  const { bench, selected, sides } = model;
  const line = adjustableOf(bench.car, selected);
  return isFittedRod(bench.car, line, sides) ? null : whyNotAdjusted(model);
}

/** Why rods cannot be made as cut or cut to fit. */
export function whyRodsStay({ bench }: Model): string | null {
  if (!("refused" in bench.study)) return null;
  const { left, right } = bench.car.form.rods;
  return left === "fit" && right === "fit"
    ? "The front end does not go together, so there is no length to cut to."
    : null;
}

/** Why what is selected cannot be said to be right as it is. */
export function whyNotStarting({ bench, selected, focus }: Model): string | null {
  if (focus.on === "starting" || isStarting(bench.car, adjustableOf(bench.car, selected))) return null;
  return "What is selected is no starting value: only lines marked ~ are.";
}

/** Why there is no list of starting values. */
export function whyNoneStarting({ bench }: Model): string | null {
  return startingLines(bench.car).length === 0 ? "There are no starting values to check." : null;
}

/** Why there is nothing to take back. */
export function whyNoOtherOffer({ focus }: Model): string | null {
  const others = focus.on === "question" && focus.question.about === "recover" ? focus.question.offers.length - 1 : 0;
  return others === 0 ? "There are no others." : null;
}

export function whyNoUndo({ bench }: Model): string | null {
  return bench.undo.length === 0 ? "There is nothing to take back." : null;
}

/** Why nothing can be read beside the car on the bench. */
export function whyNoGauges({ bench }: Model): string | null {
  return "refused" in bench.study ? "The front end does not go together: put it right first." : null;
}

/** Why there is no matched car to take. */
export function whyNoMatched(model: Model): string | null {
  const shown = matchedHere(model);
  if (shown === null) return "The match is not through yet.";
  if ("unreached" in shown.outcome) return "There is no matched car: read those again first.";
  return whyUndecided(shown.outcome);
}

/** Why there is nothing to do again. */
export function whyNoRedo({ bench }: Model): string | null {
  return bench.redo.length === 0 ? "There is nothing to do again." : null;
}

/** Why the steering cannot be moved. */
export function whyNoPlace({ bench }: Model): string | null {
  return "refused" in bench.study ? "The front end does not go together, so it cannot be moved." : null;
}

/** Why the wheels cannot go up and down. */
export function whyNoTravel(model: Model): string | null {
  const { study } = model.bench;
  if (!("refused" in study) && !study.suspended)
    return study.noTravel === "assumed"
      ? "Its arms and wheel travel are assumed, not measured: nothing is known of its travel yet."
      : "This car has no suspension, so its wheels do not travel.";
  return whyNoPlace(model);
}

/** Why there is nothing to save. */
export function whyNotSaved({ bench, origin }: Model): string | null {
  const unchanged = origin.path !== null && bench.car.text === origin.saved;
  return unchanged ? "Nothing has changed since it was last saved." : null;
}

/** Why inches are not shown another way. */
export function whyNoFractions({ display }: Model): string | null {
  return display.unit === "mm" ? "Only inches are shown as fractions. Press m for inches." : null;
}

/** Why there is nothing to swap with. */
export function whyNoSwap({ bench, pin }: Model): string | null {
  if (pin === null) return "No car is pinned. Press b to pin this one, then change it.";
  return pin.car.text === bench.car.text ? "The pinned car is the same as this one." : null;
}

/** Why there is nothing before the first reading. */
export function whyFirstPage({ focus }: Model): string | null {
  return focus.on === "tape" && focus.cursor === 0 ? "This is the top of page 1. PgDn goes to page 2." : null;
}

/** Why there is no guide to end. */
export function whyNoGuide({ guide }: Model): string | null {
  return typeof guide !== "number" ? "No guide is running. Press g to be shown round." : null;
}

/** Why the uprights cannot be taken to the bench. */
export function whyNotOnBench({ bench }: Model): string | null {
  if ("refused" in bench.study) return "The front end does not go together: put it right first.";
  return whyNoUpright(bench.car);
}

/** Why there is no page of points yet. */
export function whyNoPoints({ sheet }: Model): string | null {
  return sheet !== null && settledOf(sheet) !== null ? null : "There is no point yet: take some readings first.";
}

/** Why no reading can be named that is worth looking at next. */
export function whyNothingNext({ sheet }: Model): string | null {
  const settled = sheet === null ? null : settledOf(sheet);
  if (settled === null) return "Nothing can be told yet: take some readings first.";
  const { surveyed, next } = settled;
  return surveyed.blunders.length === 0 && next.length === 0 ? "No further reading would settle anything." : null;
}
