import { readFileSync } from "node:fs";
import { codeOf } from "./reason.ts";

/**
 * When a process began, as the system counts; "" where the system does not tell, and for one that has ended and only waits
 * for whoever started it to take note. Tells a process from a later one of its number.
 */
export function birthOf(pid: number): string {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, "utf8");
    const [state = "", ...more] = line.slice(line.lastIndexOf(")") + 2).split(" ");
    return /[ZXx]/.test(state) ? "" : (more[18] ?? "");
  } catch {
    return "";
  }
}

/** Whether the process that had this number and this birth still runs. */
export function isAlive(pid: number, birth: string): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (codeOf(error) !== "EPERM") return false;
  }
  return birth === "" || birthOf(pid) === birth;
}
