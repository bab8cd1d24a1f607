import { type IPtyForkOptions, spawn } from "@lydell/node-pty";

/** The middle of some numbers. */
export function median(numbers: readonly number[]): number {
  return quantile(numbers, 0.5);
}

/** The value that a share of the numbers does not exceed, by nearest rank. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
}

/** One line of a bench: a ratio, the most it may be, and whether it is. Without a goal the ratio is only told. */
export function report(name: string, ratio: number, goal?: number): void {
  const verdict = goal === undefined ? "- ok" : `${goal} ${ratio <= goal ? "ok" : "MISSED"}`;
  process.stdout.write(`${name} ${ratio.toFixed(2)} ${verdict}\n`);
}

/** The same for a ratio that is to be no less than its goal. */
export function reportAtLeast(name: string, ratio: number, goal: number): void {
  process.stdout.write(`${name} ${ratio.toFixed(0)} ${goal} ${ratio >= goal ? "ok" : "MISSED"}\n`);
}

/** Starts Node in a pseudo-terminal of 80 by 24, as a builder's own terminal would, and not as CI's. */
export function inTerminal(words: readonly string[], options: IPtyForkOptions = {}): ReturnType<typeof spawn> {
  const { CI: _, ...env } = process.env;
  return spawn(process.execPath, [...words], {
    cols: 80,
    rows: 24,
    ...options,
    env: { ...env, TERM: "xterm-256color", ...options.env },
  });
}
