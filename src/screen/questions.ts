import type { LabelName } from "../vehicle/labels.ts";
import { amountWords } from "./amounts.ts";
import type { Asked, Offer, Question } from "./model.ts";

/** A question in words; its answers are in the list of keys. */
export function questionWords(question: Question): string {
  switch (question.about) {
    case "unsaved":
      return `This car has changes that are not saved. ${question.next.do === "quit" ? "Leave" : "Open the other car"} without them?`;
    case "exists":
      return `There is a file ${question.path} already. Write over it?`;
    case "changed":
      return `${question.path} was changed by something else since the changes here were begun. Write over it?`;
    case "recover":
      return recoverWords(question);
  }
}

const labelWords: Readonly<Record<LabelName, string>> = {
  title: "Title",
  job: "Job, whose it is or its number",
  date: "Date",
  "as-built": "Built otherwise than drawn",
};

/** What a line of text is asked for, and what to type, in words. */
export function askedWords(asked: Asked): { readonly label: string; readonly hint: string } {
  switch (asked.about) {
    case "trial":
      return {
        label: "Name of this trial:",
        hint: "Type a name for the car as it is now, such as tab 1/4 further out.",
      };
    case "notes":
      return { label: "Notes:", hint: "Type what is to be kept in the car's file; | begins a new line." };
    case "label":
      return { label: `${labelWords[asked.label]}:`, hint: "Enter takes it and goes on: title, job, date, as built." };
    case "section":
      return { label: `${asked.words}:`, hint: asked.hint };
    case "amount":
      return amountWords(asked.amount);
    case "trialFile":
      return {
        label: "Write the trial to:",
        hint: "Type the name of a file that is not there yet, such as trial.yaml.",
      };
  }
}

/** What restoring changes that were made on an older state of the car's file would do: said before it is chosen. */
function sinceWords({ base }: Offer): string {
  if (base === null)
    return " The car's file is newer than they are, but changed in other lines: restoring them keeps what is new in it.";
  return (
    " But the car's file is newer than they are. Restoring them puts the whole car as it was then in the place of the " +
    "newer one that is shown: what was changed in the file since is not in it, and a save then asks before it writes " +
    "over it. u takes the restoring back."
  );
}

function recoverWords({ offers, at }: Question & { about: "recover" }): string {
  const offer = offers[at];
  const which = offers.length > 1 ? ` (${at + 1} of ${offers.length}; n shows the next)` : "";
  return `Unsaved changes of this car were found${which}: ${offer?.what ?? ""}.${offer?.stale ? sinceWords(offer) : ""}`;
}
