import type { Linkage } from "./linkage.ts";
import { doubleArm } from "./linkages/double-arm.ts";

/** Every linkage that a car file can name: a new one is one file and one line here. */
export const linkages = [doubleArm] as const satisfies readonly Linkage[];

/** A linkage's name in the file. */
export type LinkageName = (typeof linkages)[number]["name"];
