import type { Car } from "../vehicle/car.ts";
import type { FrontEndChange } from "../vehicle/change.ts";
import { linkageOf, linkages } from "../vehicle/linkages.ts";
import { mechanismOf, mechanisms } from "../vehicle/mechanisms.ts";
import { startingValues } from "../vehicle/starting/marks.ts";
import { type Adjustable, adjustables } from "./adjust.ts";

/** A linkage or a steering mechanism that the car can be given. */
export interface Part {
  readonly group: "WHAT CARRIES THE WHEELS" | "WHAT MOVES THE TIE RODS";
  readonly label: string;
  /** What it is, in a few words and in a sentence. */
  readonly gist: string;
  readonly help: string;
  /** Whether it is what the car has now. */
  readonly present: boolean;
  readonly change: FrontEndChange;
}

/** Every linkage, then every steering mechanism, as a car can be changed to them. */
export function partsFor({ form }: Pick<Car, "form">): readonly Part[] {
  return [
    ...linkages.map(({ name, label, gist, help }) => ({
      group: "WHAT CARRIES THE WHEELS" as const,
      ...{ label, gist, help },
      present: name === form.linkage,
      change: { linkage: name },
    })),
    ...mechanisms.map(({ name, word, takeOff, label, gist, help }) => ({
      group: "WHAT MOVES THE TIE RODS" as const,
      ...{ label, gist, help },
      present: name === form.mechanism,
      change: takeOff === null ? { mechanism: word } : { mechanism: word, takeOff },
    })),
  ];
}

/** What a change of front end does, in a builder's words: "Strut instead of double A-arms". */
export function changeWords({ form }: Pick<Car, "form">, part: Part): string {
  const now = "linkage" in part.change ? linkageOf(form.linkage).label : mechanismOf(form.mechanism).label;
  return `${part.label} instead of ${now.charAt(0).toLowerCase()}${now.slice(1)}`;
}

/** Whether a line of the list holds a value that was filled in to begin with, and was not put right since. */
export function isStarting(car: Car, { quantities }: Adjustable): boolean {
  const ids = startingValues(car);
  return ids.size > 0 && quantities.some(({ id }) => ids.has(id));
}

/** The lines of the list that hold such values. */
export function startingLines(car: Car): readonly Adjustable[] {
  return startingValues(car).size === 0 ? [] : adjustables(car).filter((line) => isStarting(car, line));
}
