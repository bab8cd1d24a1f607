import { statSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";

/** How often a file is looked at, ms: soon enough for whoever looks up from an editor. */
const interval = 200;
/** How long a file has to stay as it is to count as written, ms. */
const quiet = 100;
/** How long a file may be gone while an editor puts another in its place, ms. */
const longestGap = 1000;

/** What tells one state of files on disk from another; a file that is not there has a state too. */
export function stampOf(paths: readonly string[]): string {
  return paths.map(stamp).join(" ");
}

function stamp(path: string): string {
  try {
    const found = statSync(path, { bigint: true, throwIfNoEntry: false });
    if (found === undefined) return gone;
    return [found.dev, found.ino, found.size, found.mtimeNs, found.ctimeNs].join(":");
  } catch {
    return gone;
  }
}

const gone = "gone";

/**
 * Waits until files are no longer as a stamp has them and whoever writes them seems to have ended; gives the new stamp,
 * or null once it is told to stop. A file is known by its path, so that one put in its place counts as a change of it.
 */
export async function nextStamp(paths: readonly string[], before: string, stop: AbortSignal): Promise<string | null> {
  try {
    while (stampOf(paths) === before) await wait(interval, undefined, { signal: stop });
    const since = performance.now();
    for (let seen = stampOf(paths); ; ) {
      await wait(quiet, undefined, { signal: stop });
      const now = stampOf(paths);
      const isWhole = !now.split(" ").includes(gone) || performance.now() - since > longestGap;
      if (now === seen && isWhole) return now === before ? nextStamp(paths, before, stop) : now;
      seen = now;
    }
  } catch (error) {
    if (stop.aborted) return null;
    throw error;
  }
}
