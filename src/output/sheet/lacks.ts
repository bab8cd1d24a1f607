import type { Study } from "../../measures/study.ts";
import { threadsOf } from "../../measures/threads.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { quantityOf } from "../../vehicle/quantities.ts";
import { wheels } from "./writing.ts";

/** What one line of a sheet or a drawing needs of the file and has not, by the file's own keys. */
export interface Lack {
  readonly what: string;
  readonly keys: readonly string[];
}

/** The key with the sides that lack it: "tubes: tie-rod" where both do, else "tubes: tie-rod (left)". */
function sided(key: string, has: (wheel: "left" | "right") => boolean): readonly string[] {
  const without = wheels.filter((wheel) => !has(wheel));
  return without.length === 0 ? [] : [without.length === 2 ? key : `${key} (${without[0]})`];
}

const plate = ["thickness", "hole", "end-radius", "reach", "foot"] as const;

/** What the file does not give and the sheet would say: asked for by name, never made up. */
export function lacksOf(study: Study): readonly Lack[] {
  const { sections, form, numbers } = study.car;
  const { hardware, tubes } = sections;
  const bodies = linkageOf(form.linkage).bodies.filter(({ moves }) => moves !== "with the upright");
  const tubed = [
    { name: "tie-rod", label: "tie rods" },
    ...bodies.map(({ name, label }) => ({ name, label: `${label}s` })),
  ];
  const width = quantityOf("rim.width");
  const all: readonly Lack[] = [
    ...tubed.map(({ name, label }) => ({
      what: `Tubes of the ${label}`,
      keys: [
        ...sided(`tubes: ${name}`, (wheel) => (tubes?.[wheel]?.diameters[name] ?? null) !== null),
        ...sided(`hardware: walls: ${name}`, (wheel) => (hardware?.walls?.[wheel]?.[name] ?? null) !== null),
      ],
    })),
    {
      what: "Lengths of the tie rods' tubes, and turns",
      keys: sided("threads", (wheel) => threadsOf(study, wheel) !== null),
    },
    {
      what: "Bolts of the tie rods",
      keys: (["outer", "inner"] as const).flatMap((end) =>
        sided(
          `hardware: bolts: tie-rod: ${end}`,
          (wheel) => (hardware?.bolts?.[wheel]?.["tie-rod"]?.[end] ?? null) !== null,
        ),
      ),
    },
    {
      what: "The tab's plate",
      keys: plate.flatMap((key) =>
        sided(`hardware: tab: ${key}`, (wheel) => (hardware?.tab?.[wheel]?.[key] ?? null) !== null),
      ),
    },
    {
      what: "The rack's mounting plate",
      keys:
        study.inputKind === "rack"
          ? [
              ...(hardware?.rack?.thickness == null ? ["hardware: rack: thickness"] : []),
              ...(hardware?.rack?.holes == null ? ["hardware: rack: holes"] : []),
            ]
          : [],
    },
    { what: "The hole from the rim's edge", keys: (numbers[width.index] ?? 0) > 0 ? [] : ["rim: width"] },
  ];
  return all.filter(({ keys }) => keys.length > 0);
}
