import type { Question } from "./model.ts";

/** A question in words; its answers are in the list of keys. */
export function questionWords(question: Question): string {
  switch (question.about) {
    case "unsaved":
      return `This car has changes that are not saved. ${question.next.do === "quit" ? "Leave" : "Open the other car"} without them?`;
    case "exists":
      return `There is a file ${question.path} already. Write over it?`;
    case "changed":
      return `${question.path} was changed by something else since it was opened here. Write over it?`;
    case "recover":
      return question.offer.stale
        ? `Unsaved changes were found: ${question.offer.what}. But the car's file has changed since they were made.`
        : `Unsaved changes of this car were found: ${question.offer.what}.`;
  }
}
