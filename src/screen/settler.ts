import type { Helper } from "./aside.ts";
import type { SurveyAnswer } from "./surveyDesk.ts";
import type { Message } from "./turn.ts";

/** Brings sheets of readings together beside the keys, the last one asked for. */
export interface Settler {
  readonly ask: (text: string) => void;
  readonly end: () => void;
}

/** A settler that sends what it finds. What it takes is loaded when first needed. */
export function settler(send: (message: Message) => void): Settler {
  let helper: Promise<Helper> | null = null;
  let ended = false;

  async function begin(): Promise<Helper> {
    const [{ helperAt }, { address, surveyDesk }] = await Promise.all([
      import("./aside.ts"),
      import("./surveyDesk.ts"),
    ]);
    return helperAt<SurveyAnswer>({ address, name: "surveyDesk", desk: surveyDesk }, (answer) => {
      if (!ended) send({ is: "settled", answer });
    });
  }

  return {
    ask: (text) => {
      if (ended) return;
      helper ??= begin();
      helper
        .then((each) => each.ask(text))
        .catch((error: unknown) =>
          send({ is: "failed", words: `The readings cannot be worked out: ${String(error)}.` }),
        );
    },
    end: () => {
      ended = true;
      helper?.then((each) => each.end()).catch(() => undefined);
    },
  };
}
