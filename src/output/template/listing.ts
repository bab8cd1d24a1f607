import type { LengthUnit } from "../../vehicle/car.ts";
import { sayLength } from "../../vehicle/units/format.ts";
import type { Json } from "../json.ts";
import { WIDTH, wrap } from "../table.ts";
import { boxOf, cautions, type Drawing } from "./flat.ts";
import type { Templates } from "./templates.ts";

function sizeOf({ shapes }: Drawing): { readonly wide: number; readonly high: number } {
  const { left, right, low, high } = boxOf(shapes);
  return { wide: right - left, high: high - low };
}

/** The drawings of a car, their sizes, what is written and what the file lacks for more. */
export function templatesText(
  title: string,
  { drawings, wanting }: Templates,
  folder: string | null,
  names: readonly string[],
  unit: LengthUnit,
): readonly string[] {
  const length = (mm: number) => sayLength(mm, unit === "in" ? { unit, fraction: 16 } : { unit });
  return [
    title,
    "",
    ...drawings.map((each) => {
      const { wide, high } = sizeOf(each);
      return `  ${each.name.padEnd(28)}${length(wide)} by ${length(high)}`;
    }),
    ...(wanting.length === 0 ? [] : ["", "Not drawn, since the file does not say enough:"]),
    ...wanting.flatMap(({ what, needs }) => wrap(`${what}: needs ${needs}.`, WIDTH, "  ", 4)),
    "",
    ...(folder === null
      ? ["Write them with --out FOLDER: a PDF to print, or --svg, or --dxf for a cutter."]
      : wrap(`Written to ${folder}: ${names.join(", ")}.`, WIDTH)),
    "",
    ...cautions.flatMap((each) => wrap(each, WIDTH)),
  ];
}

/** The same for other programs; lengths in mm, as the drawings are. */
export function templatesJson({ drawings, wanting }: Templates, names: readonly string[]): Json {
  return {
    units: { length: "mm" },
    drawings: drawings.map((each) => ({ name: each.name, title: each.title, notes: [...each.notes], ...sizeOf(each) })),
    wanting: wanting.map(({ what, needs }) => ({ what, needs })),
    written: [...names],
  };
}
