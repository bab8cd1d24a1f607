import { Worker } from "node:worker_threads";

/** Whoever works a text out, one at a time, the last one asked for; null asks for none. */
export type Desk<Answer> = (answer: (answer: Answer) => void, slice: number) => (text: string | null) => void;

/** A desk as a thread can find it: the module that it is in, and what it is called there. */
export interface DeskAt<Answer> {
  readonly address: string;
  readonly name: string;
  readonly desk: Desk<Answer>;
}

/** Whoever is asked, and can be told to end. */
export interface Helper {
  /** Work this text out, in the place of any other; null for none. */
  readonly ask: (text: string | null) => void;
  readonly end: () => void;
}

/** ms of work at a time where keys and frames wait, and where only the next text does. */
const slices = { here: 2, aside: 3 };

const thread = `
const { parentPort, workerData: { address, name, slice } } = require("node:worker_threads");
const desk = import(address).then((found) => found[name]((answer) => parentPort.postMessage(answer), slice));
parentPort.on("message", (text) => desk.then((take) => take(text)));
`;

/**
 * A desk in a thread of its own, so that a key never waits for it nor for the memory it leaves to be collected. Where no
 * thread can be had, as where the program is run from its source, it works here, in short pieces between keys.
 */
export function helperAt<Answer>({ address, name, desk }: DeskAt<Answer>, answer: (answer: Answer) => void): Helper {
  let wanted: string | null = null;
  let worker: Worker | null = new Worker(thread, { eval: true, workerData: { address, name, slice: slices.aside } });
  let ask = (text: string | null): void => worker?.postMessage(text);
  worker.on("message", answer);
  worker.on("error", () => {
    worker = null;
    ask = desk(answer, slices.here);
    ask(wanted);
  });
  // Listening holds the process; an open screen does that by itself, and a closed one is not to wait for what is worked out.
  worker.unref();
  return {
    ask: (text) => {
      wanted = text;
      ask(text);
    },
    end: () => {
      worker?.terminate().catch(() => undefined);
    },
  };
}
