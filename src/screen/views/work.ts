import type { Job } from "../../solve/job.ts";
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

/** How far the work is, as the end of a heading: " (34 %, Esc stops)"; "" once it is done. */
export function progressWords(work: Work | null): string {
  if (work?.state === "running") return ` (${Math.round(work.progress * 100)} %, Esc stops)`;
  return work?.state === "stopped" ? " (stopped)" : "";
}

/** How work that was stopped goes on, on a page that Space comes round to. */
export const goOn = "Space round to this page begins it again.";

/** What stands in the place of what is not worked out yet, or will not be since it was stopped. */
export function waitingWords(work: Work | null, running: string): string {
  return work?.state === "stopped" ? `Stopped. ${goOn}` : running;
}

/** A job that is loaded when first needed, so that a start does not wait for it: nothing is done until it is there. */
export function lateJob<T>(load: () => Promise<Job<T>>): Job<T | null> {
  let job: Job<T> | null = null;
  let failed: { readonly error: unknown } | null = null;
  load().then(
    (loaded) => {
      job = loaded;
    },
    (error: unknown) => {
      failed = { error };
    },
  );
  return {
    step: (budget) => {
      if (failed !== null) throw failed.error;
      return job?.step(budget) ?? false;
    },
    progress: () => job?.progress() ?? 0,
    best: () => job?.best() ?? null,
  };
}
