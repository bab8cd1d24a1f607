import type { CheckReport } from "../solve/check/report.ts";
import type { Job } from "../solve/job.ts";
import type { Model } from "./model.ts";
import type { Message } from "./turn.ts";

/** How long a car has to stand unchanged before it is checked, ms: while a key is held down nothing is begun. */
const pause = 120;
/** Pieces at a time, and ms before keys and frames have their turn: with both a key is answered within a frame. */
const pieces = 5;
const slice = 2;

/** Keeps the checks of the car on the bench up to date, between keys. */
export interface Checker {
  /** The model as it now is: a car that is not yet checked will be. */
  readonly see: (model: Model) => void;
  readonly end: () => void;
}

/** A checker that sends what it finds. The checks are loaded when first needed: the first frame does not wait for them. */
export function checker(send: (message: Message) => void): Checker {
  let wanted: string | null = null;
  let timer: NodeJS.Timeout | null = null;

  function end(): void {
    wanted = null;
    if (timer !== null) clearTimeout(timer);
  }

  function failed(error: unknown): void {
    send({ is: "failed", words: `The checks failed: ${String(error)}.` });
  }

  function go(text: string, job: Job<CheckReport | null>): void {
    try {
      goOn(text, job);
    } catch (error) {
      failed(error);
    }
  }

  function goOn(text: string, job: Job<CheckReport | null>): void {
    if (wanted !== text) return;
    const until = performance.now() + slice;
    let done = false;
    while (!done && performance.now() < until) done = job.step(pieces);
    const report = job.best();
    if (!done) setImmediate(go, text, job);
    else if (report !== null) send({ is: "checked", checked: { text, report } });
  }

  async function begin({ bench: { car, study } }: Model): Promise<void> {
    if ("refused" in study) return;
    const { checkJob } = await import("../solve/check/check.ts");
    go(car.text, checkJob(study));
  }

  function see(model: Model): void {
    const { text } = model.bench.car;
    if (text === wanted) return;
    end();
    if (text === model.check?.text) return;
    wanted = text;
    timer = setTimeout(() => {
      begin(model).catch(failed);
    }, pause);
  }

  return { see, end };
}
