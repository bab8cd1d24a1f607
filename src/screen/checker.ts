import type { Helper } from "./aside.ts";
import type { CheckAnswer } from "./checkDesk.ts";
import type { Model } from "./model.ts";
import type { Message } from "./turn.ts";

/** How long a car has to stand unchanged before it is checked, ms: while a key is held down nothing is begun. */
const pause = 120;

/** Keeps the checks of the car on the bench up to date, beside the keys. */
export interface Checker {
  /** The model as it now is: a car that is not yet checked will be. */
  readonly see: (model: Model) => void;
  readonly end: () => void;
}

/** A checker that sends what it finds. The checks are loaded when first needed: the first frame does not wait for them. */
export function checker(send: (message: Message) => void): Checker {
  let wanted: string | null = null;
  let timer: NodeJS.Timeout | null = null;
  let helper: Promise<Helper> | null = null;
  let ended = false;

  function failed(error: unknown): void {
    send({ is: "failed", words: `The checks failed: ${String(error)}.` });
  }

  function take(answer: CheckAnswer): void {
    if (answer.text !== wanted) return;
    if ("failed" in answer) failed(answer.failed);
    else send({ is: "checked", checked: { text: answer.text, report: answer.report } });
  }

  function ask(text: string | null): void {
    helper?.then((each) => each.ask(text)).catch(failed);
  }

  function drop(): void {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (wanted !== null) ask(null);
    wanted = null;
  }

  function see(model: Model): void {
    const { car, study } = model.bench;
    // The last message, which ends the screen, is seen as well: nothing may begin that would outlive it.
    if (ended || car.text === wanted) return;
    drop();
    if (car.text === model.check?.text || "refused" in study) return;
    wanted = car.text;
    timer = setTimeout(() => {
      helper ??= checkHelper(take);
      ask(car.text);
    }, pause);
  }

  function end(): void {
    ended = true;
    drop();
    helper?.then((each) => each.end()).catch(() => undefined);
  }

  return { see, end };
}

async function checkHelper(take: (answer: CheckAnswer) => void): Promise<Helper> {
  const [{ helperAt }, { address, checkDesk }] = await Promise.all([import("./aside.ts"), import("./checkDesk.ts")]);
  return helperAt({ address, name: "checkDesk", desk: checkDesk }, take);
}
