import { studyOf } from "../measures/study.ts";
import type { CheckReport } from "../solve/check/report.ts";
import type { Job } from "../solve/job.ts";
import { readCar } from "../vehicle/read.ts";

/** What a desk answers: the checks of a car's text, or why there are none. */
export type CheckAnswer =
  | { readonly text: string; readonly report: CheckReport }
  | { readonly text: string; readonly failed: string };

/** Where this module stands, for the thread that is to load it. */
export const address = import.meta.url;

/** Pieces between two looks at the clock. */
const pieces = 5;

/**
 * Checks one car at a time, the last one asked for, and leaves the event loop its turn in between. `null` asks for none.
 *
 * @param slice ms of work before whatever else waits on this thread has its turn
 */
export function checkDesk(answer: (answer: CheckAnswer) => void, slice: number): (text: string | null) => void {
  let wanted: string | null = null;

  function go(text: string, job: Job<CheckReport | null>): void {
    if (wanted !== text) return;
    const until = performance.now() + slice;
    let done = false;
    while (!done && performance.now() < until) done = job.step(pieces);
    const report = job.best();
    if (!done) setImmediate(guarded, text, () => go(text, job));
    else if (report !== null) answer({ text, report });
  }

  function guarded(text: string, work: () => void): void {
    try {
      work();
    } catch (error) {
      answer({ text, failed: String(error) });
    }
  }

  async function begin(text: string): Promise<void> {
    const car = readCar(text);
    const study = "complaints" in car ? null : studyOf(car);
    if (study === null || "refused" in study) return;
    const { checkJob } = await import("../solve/check/check.ts");
    guarded(text, () => go(text, checkJob(study)));
  }

  return (text) => {
    wanted = text;
    if (text !== null) begin(text).catch((error: unknown) => answer({ text, failed: String(error) }));
  };
}
