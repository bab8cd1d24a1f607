import { createHash } from "node:crypto";

/** A fingerprint of a text, to tell whether a file still holds what it held. */
export function hashOf(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}
