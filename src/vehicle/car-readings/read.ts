import type { Car } from "../car.ts";
import type { Complaint } from "../complaint.ts";
import { otherKind } from "../file-kind.ts";
import { readUnit } from "../from-tape/reading.ts";
import { quantitiesOf } from "../quantities.ts";
import { safe } from "../shown.ts";
import { complaintAt, sourceAt } from "../tree.ts";
import { degree } from "../value.ts";
import { readYaml } from "../yaml.ts";
import { below, complain, mappingOf, type Sheet } from "./nodes.ts";
import type { BuiltTo, CarReadings } from "./reading.ts";
import { gaugeSections } from "./sections.ts";
import { builtAngle, type Gauge, tapeTolerance } from "./tolerances.ts";
import { angleAt, lengthAt } from "./values.ts";

const gauges = Object.keys(gaugeSections) as readonly Gauge[];

/**
 * What was read on a built car, from the text of a file of readings, or all that is wrong with it, each with its line and
 * column. Names of points, and what the car is steered by, are those of `car`.
 */
export function readCarReadings(
  text: string,
  car: Pick<Car, "form" | "numbers">,
): CarReadings | { readonly complaints: readonly Complaint[] } {
  const tree = readYaml(text);
  if ("complaints" in tree) return tree;
  const other = otherKind(text, "readings");
  if (other !== null) return { complaints: [{ line: null, column: null, part: "", message: other }] };
  const written = sourceAt(tree, ["units"])?.trim() ?? null;
  const units = written === null ? null : readUnit(written);
  if (units === null) {
    const found = written === null ? "missing: what lengths are in" : `found "${safe(written)}"`;
    return { complaints: [complaintAt(tree, ["units"], `${found}, expected in or mm`)] };
  }
  const sheet: Sheet = { tree, units, car, complaints: [] };
  const root = { node: tree.root, offset: tree.root.range?.[0] ?? 0, name: "" };
  mappingOf(sheet, root, ["title", "units", "notes", "built-to", ...gauges]);
  const readings = gauges.flatMap((gauge) => {
    const part = below(sheet, tree.root, gauge, "");
    return part === null ? [] : gaugeSections[gauge](sheet, part);
  });
  const builtTo = builtToOf(sheet);
  if (readings.length === 0 && sheet.complaints.length === 0)
    complain(sheet, root, `nothing was read: there is none of ${gauges.join(", ")}`);
  if (sheet.complaints.length > 0) return { complaints: sheet.complaints };
  return { title: sourceAt(tree, ["title"]), readings, builtTo };
}

/** How true the car is to its file: what the section built-to says, else what is common practice. */
function builtToOf(sheet: Sheet): BuiltTo {
  const part = below(sheet, sheet.tree.root, "built-to", "");
  const uncertain = quantitiesOf(sheet.car.form).filter(
    ({ roles, kind }) => roles.includes("uncertain") && kind !== "ratio",
  );
  const kinds = new Map(uncertain.map(({ pair, kind }) => [pair, kind]));
  const map = part === null ? null : mappingOf(sheet, part, ["lengths", "angles", ...kinds.keys()]);
  const read = (key: string, kind: "length" | "angle") => {
    const each = map === null ? null : below(sheet, map, key, "built-to");
    if (each === null) return null;
    return kind === "angle" ? angleAt(sheet, each, [degree / 1000, 20 * degree]) : lengthAt(sheet, each, [0.01, 200]);
  };
  return {
    length: read("lengths", "length") ?? tapeTolerance(sheet.units),
    angle: read("angles", "angle") ?? builtAngle,
    of: new Map(
      [...kinds].flatMap(([pair, kind]) => {
        const own = kind === "ratio" ? null : read(pair, kind);
        return own === null ? [] : [[pair, own]];
      }),
    ),
  };
}
