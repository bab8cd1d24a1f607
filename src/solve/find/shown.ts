import type { Study } from "../../measures/study.ts";
import { type Job, jobOf } from "../job.ts";
import { type Found, findJob } from "./find.ts";
import { questFor } from "./quest.ts";
import type { NoRoom } from "./room.ts";
import { answerText } from "./taken.ts";

/** What a search has found, and each answer as the car's text that has it. */
export interface FoundTexts {
  readonly found: Found;
  readonly texts: readonly (() => string)[];
}

/** The search that a car's own file asks for, its answers ready to be taken; or what is wrong with the room it gives. */
export function shownJob(study: Study): Job<FoundTexts | NoRoom> {
  const quest = questFor(study);
  if ("why" in quest) return jobOf<FoundTexts | NoRoom>(quest, [].values());
  const job = findJob(quest);
  return {
    ...job,
    best: () => {
      const found = job.best();
      return {
        found,
        texts: found.answers.map(
          ({ snapped }) =>
            () =>
              answerText(quest, snapped),
        ),
      };
    },
  };
}
