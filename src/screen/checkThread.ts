import { Worker } from "node:worker_threads";
import type { CheckAnswer } from "./checkDesk.ts";

/** Whoever checks cars, and can be told to end. */
export interface CheckHelper {
  /** Check this text, in the place of any other; null for none. */
  readonly check: (text: string | null) => void;
  readonly end: () => void;
}

/** ms of work at a time where keys and frames wait, and where only the next car does. */
const slices = { here: 2, aside: 3 };

const thread = `
const { parentPort, workerData: { address, slice } } = require("node:worker_threads");
const desk = import(address).then(({ checkDesk }) => checkDesk((answer) => parentPort.postMessage(answer), slice));
parentPort.on("message", (text) => desk.then((take) => take(text)));
`;

/**
 * Checks in a thread of their own, so that a key never waits for them nor for the memory they leave to be collected. Where
 * no thread can be had, as where the program is run from its source, they are done here, in short pieces between keys.
 */
export async function checkHelper(answer: (answer: CheckAnswer) => void): Promise<CheckHelper> {
  const { address, checkDesk } = await import("./checkDesk.ts");
  let wanted: string | null = null;
  let worker: Worker | null = new Worker(thread, { eval: true, workerData: { address, slice: slices.aside } });
  let check = (text: string | null): void => worker?.postMessage(text);
  worker.on("message", answer);
  worker.on("error", () => {
    worker = null;
    check = checkDesk(answer, slices.here);
    check(wanted);
  });
  // Listening holds the process; an open screen does that by itself, and a closed one is not to wait for checks.
  worker.unref();
  return {
    check: (text) => {
      wanted = text;
      check(text);
    },
    end: () => {
      worker?.terminate().catch(() => undefined);
    },
  };
}
