/** Milliseconds that a signal may take until it is dealt with. */
const patience = 1000;

/**
 * Ends the process as this signal ends one that does not listen to it; its listeners must be gone. Node's own way out sets
 * the terminal right once more, and takes it for a fault of its own (an abort with a list of its functions) when the
 * terminal is no longer there.
 */
export function endBySignal(signal: NodeJS.Signals): never {
  for (const way of [signal, "SIGKILL"] as const) {
    process.removeAllListeners(way);
    process.kill(process.pid, way);
    // Another thread may be the one that takes the signal.
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, patience);
  }
  throw new Error("a process cannot outlive SIGKILL");
}
