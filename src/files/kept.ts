import { closeSync, constants, fstatSync, openSync, readFileSync } from "node:fs";

/** What the program kept between runs, and when. */
export interface Kept {
  readonly text: string;
  /** When it was last written, ms since 1970. */
  readonly when: number;
}

// Without waiting, since nobody may be at the other end of a pipe; a system that knows neither has no such files.
const { O_RDONLY, O_NOFOLLOW = 0, O_NONBLOCK = 0 } = constants;

/**
 * What stands in a file of the state folder. Null where there is none, or it cannot be the program's own: a link, a device, a
 * pipe, another user's, or of more bytes than it ever writes. Never throws.
 */
export function readKept(path: string, most: number): Kept | null {
  let file: number | null = null;
  try {
    file = openSync(path, O_RDONLY | O_NOFOLLOW | O_NONBLOCK);
    const stats = fstatSync(file);
    const isOurs = process.getuid === undefined || stats.uid === process.getuid();
    if (!stats.isFile() || !isOurs || stats.size > most) return null;
    return { text: readFileSync(file, "utf8"), when: stats.mtimeMs };
  } catch {
    return null;
  } finally {
    if (file !== null) closeSync(file);
  }
}
