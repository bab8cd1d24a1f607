import type { Mechanism } from "./mechanism.ts";
import { centreRack } from "./mechanisms/centre-rack.ts";
import { rack } from "./mechanisms/rack.ts";
import { relay } from "./mechanisms/relay.ts";
import { steeringPlate } from "./mechanisms/steering-plate.ts";

/** Every steering mechanism that a car file can describe: a new one is one file and one line here. */
export const mechanisms = [rack, centreRack, steeringPlate, relay] as const satisfies readonly Mechanism[];

/** A mechanism's own name. */
export type MechanismName = (typeof mechanisms)[number]["name"];

/** What a file can say under steering.mechanism. */
export type MechanismWord = (typeof mechanisms)[number]["word"];

const byName: ReadonlyMap<string, Mechanism> = new Map(mechanisms.map((each) => [each.name, each]));

/** The mechanism of that name. A name that is not in the list is a mistake in the program, and throws. */
export function mechanismOf(name: MechanismName): Mechanism {
  const found = byName.get(name);
  if (found === undefined) throw new Error(`no mechanism is called ${name}`);
  return found;
}
