import type { LengthUnit } from "../../vehicle/car.ts";
import { sayLength } from "../../vehicle/units/format.ts";
import type { Json } from "../json.ts";
import { WIDTH, wrap } from "../table.ts";
import { boxOf, type Sketch } from "./flat.ts";
import { cautions } from "./lettering.ts";
import type { Templates } from "./templates.ts";

function sizeOf({ shapes }: Sketch): { readonly wide: number; readonly high: number } {
  const { left, right, low, high } = boxOf(shapes);
  return { wide: right - left, high: high - low };
}

/** The folder that drawings were written to, and their names there. */
export interface Written {
  readonly folder: string;
  readonly isNew: boolean;
  readonly names: readonly string[];
}

/** The drawings of a car, what comes first before cutting by them, their sizes, what is written and what the file lacks for more. */
export function templatesText(
  title: string,
  { drawings, wanting }: Templates,
  first: readonly string[],
  written: Written | null,
  unit: LengthUnit,
): readonly string[] {
  const length = (mm: number) => sayLength(mm, unit === "in" ? { unit, fraction: 16 } : { unit });
  return [
    title,
    "",
    ...first.flatMap((each) => wrap(`! ${each}`, WIDTH, "", 2)),
    ...(first.length === 0 ? [] : [""]),
    ...drawings.map((each) => {
      const { wide, high } = sizeOf(each);
      return `  ${each.name.padEnd(29)}${length(wide)} by ${length(high)}`;
    }),
    ...(wanting.length === 0 ? [] : ["", "Left out, since the file does not say enough:"]),
    ...wanting.flatMap(({ what, needs }) => wrap(`${what}: needs ${needs}.`, WIDTH, "  ", 4)),
    "",
    ...(written === null
      ? ["Write them with --out FOLDER: a PDF to print, or --svg, or --dxf for a cutter."]
      : wrap(
          `Written to ${written.folder === "." ? "this folder" : written.folder}${written.isNew ? ", a new folder" : ""}: ${written.names.join(", ")}.`,
          WIDTH,
        )),
    "",
    ...cautions.flatMap((each) => wrap(each, WIDTH)),
  ];
}

/** The same for other programs; lengths in mm, as the drawings are. */
export function templatesJson(
  { drawings, wanting }: Templates,
  first: readonly string[],
  written: Written | null,
): Json {
  return {
    units: { length: "mm" },
    first: [...first],
    drawings: drawings.map((each) => ({ name: each.name, title: each.title, notes: [...each.notes], ...sizeOf(each) })),
    wanting: wanting.map(({ what, needs }) => ({ what, needs })),
    written: [...(written?.names ?? [])],
  };
}
