import type { Linkage } from "./linkage.ts";
import { doubleArm } from "./linkages/double-arm.ts";
import { fixedKingpin } from "./linkages/fixed-kingpin.ts";
import { pivotingBeam } from "./linkages/pivoting-beam.ts";
import { strut } from "./linkages/strut.ts";
import { trailingArms } from "./linkages/trailing-arms.ts";

/** Every linkage that a car file can name: a new one is one file and one line here. */
export const linkages = [
  doubleArm,
  trailingArms,
  strut,
  pivotingBeam,
  fixedKingpin,
] as const satisfies readonly Linkage[];

/** A linkage's name in the file. */
export type LinkageName = (typeof linkages)[number]["name"];

const byName: ReadonlyMap<string, Linkage> = new Map(linkages.map((each) => [each.name, each]));

/** The linkage of that name. A name that is not in the list is a mistake in the program, and throws. */
export function linkageOf(name: LinkageName): Linkage {
  const found = byName.get(name);
  if (found === undefined) throw new Error(`no linkage is called ${name}`);
  return found;
}
