import type { Linkage } from "./linkage.ts";
import { bodyField } from "./sections/body.ts";
import type { Field, Worth } from "./sections/field.ts";
import { findField } from "./sections/find.ts";
import { hardwareField } from "./sections/hardware.ts";
import { limitsField } from "./sections/limits.ts";
import { rodEndsField } from "./sections/rod-ends.ts";
import { shockField } from "./sections/shock.ts";
import { steeringShaftField } from "./sections/steering-shaft.ts";
import { targetsField } from "./sections/targets.ts";
import { threadsField } from "./sections/threads.ts";
import { tolerancesField } from "./sections/tolerances.ts";
import { tubesField } from "./sections/tubes.ts";

/** Every optional section of a car file, by its key at the root. A new one is one file and one line here. */
const makers = {
  "rod-ends": rodEndsField,
  threads: threadsField,
  tubes: tubesField,
  hardware: hardwareField,
  "steering-shaft": () => steeringShaftField,
  shock: shockField,
  body: () => bodyField,
  limits: () => limitsField,
  targets: () => targetsField,
  find: findField,
  tolerances: () => tolerancesField,
} as const satisfies Readonly<Record<string, (linked: readonly Linkage[]) => Field<unknown>>>;

export type SectionName = keyof typeof makers;

/** What a car's optional sections say, mm and rad; null where the file has none. */
export type Sections = { readonly [Name in SectionName]: Worth<ReturnType<(typeof makers)[Name]>> | null };

export const sectionNames = Object.keys(makers) as readonly SectionName[];

/** Whether a key at the root of a file is an optional section's. */
export function isSection(key: string): key is SectionName {
  return Object.hasOwn(makers, key);
}

/** An optional section, for cars of these linkages. */
export function sectionField(name: SectionName, linked: readonly Linkage[]): Field<unknown> {
  return makers[name](linked);
}

/** The field at a path from the root of a file; undefined where no optional section has one. */
export function fieldAt(path: readonly string[], linked: readonly Linkage[]): Field<unknown> | undefined {
  const [name = "", ...below] = path;
  if (!isSection(name)) return undefined;
  return below.reduce<Field<unknown> | undefined>((field, key) => field?.below(key), sectionField(name, linked));
}
