import { renameSync, rmSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readKept } from "./kept.ts";
import { largestFile } from "./largestFile.ts";
import { codeOf, reasonOf } from "./reason.ts";
import { stateFolder } from "./state.ts";

/** Readings that were typed but are no car yet, by the name of their field. */
export type Draft = Readonly<Record<string, string>>;

/** The form that they were typed into: the short list, the sheet of readings between points, or what was read on the built car. */
export type DraftOf = "tape" | "survey" | "gauges";

/** More than any sheet's readings, bytes: what is larger is none of ours. A sheet is no larger than a car's file. */
const absurd = 2 * largestFile;

/** What a field of a form holds: one line, and nothing in it that acts on a terminal. A sheet has lines. */
const isField = (key: string, text: unknown) =>
  typeof text === "string" && (key === "sheet" || !/[\p{Cc}\u2028\u2029]/u.test(text));

function pathOf(environment: NodeJS.ProcessEnv, of: DraftOf): string | null {
  const folder = stateFolder(environment);
  return folder === null ? null : join(folder, `${of}.json`);
}

/** The readings of a form that was left before it was a car; null where there are none, or none that can be read. */
export function readDraft(environment: NodeJS.ProcessEnv = process.env, of: DraftOf = "tape"): Draft | null {
  const path = pathOf(environment, of);
  try {
    const found: unknown = JSON.parse((path === null ? null : readKept(path, absurd))?.text ?? "null");
    if (typeof found !== "object" || found === null || Array.isArray(found)) return null;
    return Object.fromEntries(Object.entries(found).filter(([key, each]) => isField(key, each)));
  } catch {
    return null;
  }
}

/** Keeps readings until they are thrown away, whole or not at all; null throws them away. Gives a complaint, or null. */
export function keepDraft(
  draft: Draft | null,
  environment: NodeJS.ProcessEnv = process.env,
  of: DraftOf = "tape",
): string | null {
  const path = pathOf(environment, of);
  if (path === null) return "The readings cannot be kept safe: there is no folder for them.";
  try {
    if (draft === null) {
      unlinkSync(path);
      return null;
    }
    const beside = `${path}.${process.pid}`;
    // What an earlier process of this number left there; a link to another file is not written into.
    rmSync(beside, { force: true });
    writeFileSync(beside, JSON.stringify(draft), { mode: 0o600, flag: "wx" });
    renameSync(beside, path);
    return null;
  } catch (error) {
    return draft === null && codeOf(error) === "ENOENT"
      ? null
      : `The readings cannot be kept safe: ${reasonOf(error)}.`;
  }
}
