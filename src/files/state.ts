import { existsSync, lstatSync, mkdirSync } from "node:fs";
import { homedir, tmpdir, userInfo } from "node:os";
import { dirname, join } from "node:path";
import { codeOf } from "./reason.ts";

/** Only the user himself may read what he has not saved yet. */
const ownOnly = 0o700;

/** Where a system keeps what a program remembers between runs, best first. */
function candidates(environment: NodeJS.ProcessEnv): readonly string[] {
  const {
    XDG_STATE_HOME: state,
    LOCALAPPDATA: local,
    HOME: home = homeOf(),
    TMPDIR: temporary = tmpdir(),
  } = environment;
  const found = [
    state?.startsWith("/") ? join(state, "rackwright") : null,
    process.platform === "win32" && local ? join(local, "rackwright", "State") : null,
    process.platform === "darwin" && home ? join(home, "Library", "Application Support", "rackwright") : null,
    home ? join(home, ".local", "state", "rackwright") : null,
    join(temporary, `rackwright-${process.getuid?.() ?? userName()}`),
  ];
  return found.filter((each) => each !== null);
}

/** The user's home as the system knows it, where the environment does not say; "" where there is none. */
function homeOf(): string {
  try {
    const home = homedir();
    return home === "/" ? "" : home;
  } catch {
    return "";
  }
}

function userName(): string {
  try {
    return userInfo().username;
  } catch {
    return "user";
  }
}

/**
 * Makes a folder of the user's own, and those above it that are missing. Throws what the system throws. Node's own way to
 * make several at once never ends where a folder that is there takes no other in it, as in /proc.
 */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { mode: ownOnly });
  } catch (error) {
    const above = dirname(folder);
    if (codeOf(error) === "EEXIST") return;
    if (codeOf(error) !== "ENOENT" || existsSync(above)) throw error;
    makeFolder(above);
    mkdirSync(folder, { mode: ownOnly });
  }
}

/** A folder of the user's own, made if need be; false when there is none or it belongs to someone else. */
function isOurs(folder: string): boolean {
  try {
    makeFolder(folder);
    const stats = lstatSync(folder);
    return stats.isDirectory() && (process.getuid === undefined || stats.uid === process.getuid());
  } catch {
    return false;
  }
}

/** The folder for unsaved edits: in the user's state folder, else in the folder for temporary files; null if neither can be had. */
export function stateFolder(environment: NodeJS.ProcessEnv = process.env): string | null {
  return candidates(environment).find(isOurs) ?? null;
}
