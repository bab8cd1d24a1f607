import type { SettledSheet } from "../solve/survey/settled.ts";
import type { SheetOnBench } from "./model.ts";

/** What the sheet came to when it was last brought together; null while that is nothing. */
export function settledOf({ settled }: SheetOnBench): SettledSheet | null {
  return settled === null || "complaint" in settled.outcome ? null : settled.outcome;
}

/** Whether something was written on the sheet since. */
export function isOld({ text, settled }: SheetOnBench): boolean {
  return settled !== null && settled.text !== text;
}
