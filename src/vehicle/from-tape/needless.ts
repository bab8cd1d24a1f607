import type { Reading } from "./readings.ts";

/** Why a reading is of no use beside those that there are, in at most 22 columns; null where it is of some. */
export function whyNeedless({ key }: Pick<Reading, "key">, has: (key: string) => boolean): string | null {
  if (key.startsWith("shock-")) return has("bump") && has("droop") ? "not needed" : null;
  if (key === "rods") return has("left-rod") && has("right-rod") ? null : "needs both rods taped";
  return null;
}
