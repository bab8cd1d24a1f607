import type { Study } from "../../measures/study.ts";
import type { CarReadings } from "../../vehicle/car-readings/reading.ts";
import type { Job } from "../job.ts";
import { matchJob } from "./match.ts";
import type { Matched, NoMatch } from "./matched.ts";
import { matchedText } from "./written.ts";

/** A match with the text of the matched car, made when it is asked for. */
export interface MatchShown {
  readonly outcome: Matched | NoMatch;
  readonly text: () => string;
}

/** A match for who has no linear algebra of his own. */
export function shownJob(study: Study, readings: CarReadings): Job<MatchShown | null> {
  const job = matchJob(study, readings);
  return {
    ...job,
    best: () => {
      const outcome = job.best();
      if (outcome === null) return null;
      return { outcome, text: () => ("unreached" in outcome ? study.car.text : matchedText(outcome)) };
    },
  };
}
