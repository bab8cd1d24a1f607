import type { Study } from "../../measures/study.ts";
import type { GoalName } from "../../vehicle/sections/goals.ts";
import { type Goal, goalsFor } from "../goals/goals.ts";
import { type Reading, readingOf } from "../goals/readings.ts";
import { type Job, jobOf } from "../job.ts";
import { type Found, findJob } from "./find.ts";
import { questFor, type SetQuest } from "./quest.ts";
import type { NoRoom } from "./room.ts";
import { answerText } from "./taken.ts";

/** What a search has found, and each answer as the car's text that has it. */
export interface FoundTexts {
  readonly found: Found;
  readonly quest: SetQuest;
  readonly texts: readonly (() => string)[];
  readonly readOf: ReadOf;
}

/** What the car as it stands gives of a goal; null where it cannot be told. Each is worked out once. */
export type ReadOf = (name: GoalName) => Reading | null;

function readings(study: Study): ReadOf {
  const known = new Map<GoalName, Reading | null>();
  return (name) => {
    const done = known.get(name);
    if (done !== undefined) return done;
    const reading = readingOf(name, 1, study);
    known.set(name, reading);
    return reading;
  };
}

/** What is wrong with a room that the file gives, and the goals all the same. */
export interface NoSearch extends NoRoom {
  readonly goals: readonly Goal[];
  readonly readOf: ReadOf;
}

/** The search that a car's own file asks for, its answers ready to be taken; or what is wrong with the room it gives. */
export function shownJob(study: Study): Job<FoundTexts | NoSearch> {
  const quest = questFor(study);
  const readOf = readings(study);
  if ("why" in quest) return jobOf<FoundTexts | NoSearch>({ ...quest, goals: goalsFor(study), readOf }, [].values());
  const job = findJob(quest);
  return {
    ...job,
    best: () => {
      const found = job.best();
      return {
        found,
        quest,
        readOf,
        texts: found.answers.map(
          ({ snapped }) =>
            () =>
              answerText(quest, snapped),
        ),
      };
    },
  };
}
