import type { Mechanism } from "./mechanism.ts";
import { rack } from "./mechanisms/rack.ts";

/** Every steering mechanism that a car file can name: a new one is one file and one line here. */
export const mechanisms = [rack] as const satisfies readonly Mechanism[];

/** A mechanism's name in the file. */
export type MechanismName = (typeof mechanisms)[number]["name"];
