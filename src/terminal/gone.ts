import { endBySignal } from "./raise.ts";

/** A stream of the process as far as it tells of its terminal; what Node's types leave out is its handle. */
interface Stream {
  readonly isTTY?: boolean;
  readonly _handle?: { getWindowSize?(size: number[]): number };
}

/** How often a terminal is looked at that nothing is written to just now, ms. */
const interval = 1000;

/** Whether the terminal of a stream has gone: one whose line is cut does not say its size. Windows tells it of output only. */
export function isGone({ isTTY, _handle }: Stream): boolean {
  if (isTTY !== true || process.platform === "win32") return false;
  return (_handle?.getWindowSize?.([0, 0]) ?? 0) !== 0;
}

/** Ends the process as a hang-up does, once the terminal that it writes to has gone without one. Holds nothing up. */
export function endWithTerminal(stdout: Stream): void {
  if (stdout.isTTY !== true) return;
  setInterval(() => {
    if (isGone(stdout)) endBySignal("SIGHUP");
  }, interval).unref();
}
