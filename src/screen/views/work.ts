import type { Model, Work } from "../model.ts";
import { turn } from "../turn.ts";
import type { ViewKey } from "./view.ts";

/** The key that stops the long work of the view that is seen; what is done stays. */
export function stopKey(what: string): ViewKey {
  return {
    keys: ["escape"],
    shown: "Esc",
    footer: null,
    help: `stop working ${what} out; what is done stays`,
    off: ({ work }) => (work?.state === "running" ? null : "Nothing is being worked out."),
    act: (model: Model) => {
      const { work } = model;
      return work === null ? turn(model) : turn({ ...model, work: { ...work, state: "stopped" } }, { do: "halt" });
    },
  };
}

/** How far the work is, as the end of a heading: ", 34 %, Esc stops"; "" once it is done. */
export function progressWords(work: Work | null): string {
  if (work?.state === "running") return `, ${Math.round(work.progress * 100)} %, Esc stops`;
  return work?.state === "stopped" ? ", stopped" : "";
}
