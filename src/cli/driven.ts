import type { Job } from "../solve/job.ts";
import type { Streams } from "./streams.ts";

/** Pieces of a job between two looks at the clock and at the keyboard. */
const AT_ONCE = 32;
/** How often the line of progress changes, ms. */
const EVERY = 100;

/**
 * Runs a job to its end; where someone watches, with a line of progress on stderr, and so that Ctrl-C stops it and keeps
 * what it has found so far.
 */
export async function driven<T>(job: Job<T>, what: string, { stderr }: Pick<Streams, "stderr">): Promise<T> {
  if (stderr.isTTY !== true) {
    job.step(Number.POSITIVE_INFINITY);
    return job.best();
  }
  let stopped = false;
  const stop = () => {
    stopped = true;
  };
  process.once("SIGINT", stop);
  let told = 0;
  while (!stopped && !job.step(AT_ONCE)) {
    if (performance.now() - told < EVERY) continue;
    told = performance.now();
    stderr.write(`\r${what}: ${Math.floor(100 * job.progress())} % (Ctrl-C stops and keeps the best)`);
    await new Promise((next) => setImmediate(next));
  }
  process.off("SIGINT", stop);
  stderr.write("\r\u001b[2K");
  return job.best();
}
