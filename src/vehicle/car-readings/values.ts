import type { YAMLMap } from "yaml";
import type { Car } from "../car.ts";
import { readBenchAngle } from "../from-tape/angle.ts";
import { safe } from "../shown.ts";
import { readAngle } from "../units/angle.ts";
import { formatAngle, sayLength } from "../units/format.ts";
import { readLength } from "../units/length.ts";
import { degree } from "../value.ts";
import { below, complain, type Part, type Sheet, textOf } from "./nodes.ts";
import { type Gauge, usualTolerance } from "./tolerances.ts";

/** From and to: what a reading can be at all, mm or rad. */
export type Range = readonly [from: number, to: number];

type Read = { readonly value: number } | { readonly complaint: string };

function angleFrom(sheet: Sheet, text: string, board: number | null): Read {
  const over = /^(.+)\bover\b(.+)$/i.exec(text);
  if (text.includes(",") && over !== null) {
    const read = readBenchAngle(text, sheet.units, { shared: false, diameter: null, along: "board" });
    return "rad" in read ? { value: read.rad } : read;
  }
  if (over !== null || (board !== null && !/deg|°/i.test(text))) {
    const across = readLength((over?.[1] ?? text).trim(), sheet.units);
    if ("complaint" in across) return across;
    const along = over === null ? { mm: board ?? 0 } : readLength((over[2] ?? "").trim(), sheet.units);
    if ("complaint" in along) return along;
    if (!(along.mm > 0) || Math.abs(across.mm) >= along.mm) return { complaint: "an angle that no board can show" };
    return { value: Math.asin(across.mm / along.mm) };
  }
  const read = readAngle(text);
  return "rad" in read
    ? { value: read.rad }
    : { complaint: 'not degrees such as 17 1/2, nor a length over a board such as "7 1/4 over 24"' };
}

function lengthFrom({ units }: Sheet, text: string): Read {
  const read = readLength(text, units);
  return "mm" in read ? { value: read.mm } : read;
}

function settled(
  sheet: Sheet,
  part: Part,
  kind: "angle" | "length",
  [from, to]: Range,
  read: Read,
  text: string,
): number | null {
  const say = (value: number) =>
    kind === "angle"
      ? `${formatAngle(value, 2)}°`
      : sayLength(value, sheet.units === "in" ? { unit: "in", exact: true } : { unit: "mm" });
  if ("complaint" in read) complain(sheet, part, `found "${safe(text)}", which is ${read.complaint}`);
  else if (!(read.value >= from && read.value <= to))
    complain(sheet, part, `found "${safe(text)}" (${say(read.value)}), expected ${say(from)} to ${say(to)}`);
  else return read.value;
  return null;
}

/** An angle, rad: degrees, or a length over a board; bare numbers are lengths over `board` where there is one. */
export function angleAt(sheet: Sheet, part: Part, range: Range, board: number | null = null): number | null {
  const text = textOf(sheet, part);
  return text === null ? null : settled(sheet, part, "angle", range, angleFrom(sheet, text, board), text);
}

/** A length, mm. */
export function lengthAt(sheet: Sheet, part: Part, range: Range): number | null {
  const text = textOf(sheet, part);
  return text === null ? null : settled(sheet, part, "length", range, lengthFrom(sheet, text), text);
}

/** Toe of each wheel, rad: as at the bench, across both tyres or in degrees a wheel. `diameter`: the tyre's, mm. */
export function toeAt(sheet: Sheet, part: Part, range: Range, diameter: number): number | null {
  const text = textOf(sheet, part);
  if (text === null) return null;
  const read = readBenchAngle(text, sheet.units, { shared: true, diameter, along: "board" });
  return settled(sheet, part, "angle", range, "rad" in read ? { value: read.rad } : read, text);
}

/** Where the rack or the column stands: "1/2 left", "10 right", or 0; to the left positive. */
export function placeAt(sheet: Sheet, part: Part, input: "rack" | "column", most: number): number | null {
  const text = textOf(sheet, part);
  if (text === null) return null;
  const found = /^(.*?)\s*\b(left|right)$/i.exec(text);
  const size = found?.[1] ?? text;
  const read = input === "rack" ? lengthFrom(sheet, size) : angleFrom(sheet, size, null);
  if (found === null && "value" in read && read.value !== 0) {
    complain(sheet, part, `found "${safe(text)}": say which way from the middle, such as "${safe(text)} left"`);
    return null;
  }
  const value = settled(sheet, part, input === "rack" ? "length" : "angle", [0, most], read, text);
  return value === null ? null : found?.[2]?.toLowerCase() === "right" ? -value : value;
}

/** A gauge's tolerance, as the mapping says it, else `otherwise`. */
export function toleranceAt(sheet: Sheet, map: YAMLMap | null, name: string, gauge: Gauge, otherwise?: number): number {
  const usual = otherwise ?? usualTolerance(gauge, sheet.units, inputOf(sheet));
  const part = map === null ? null : below(sheet, map, "tolerance", name);
  if (part === null) return usual;
  const isAngle = !["rods", "lengths"].includes(gauge) && !(gauge === "straight-ahead" && inputOf(sheet) === "rack");
  const read = isAngle ? angleAt(sheet, part, [degree / 1000, 10 * degree]) : lengthAt(sheet, part, [0.01, 100]);
  return read ?? usual;
}

/** What this car is steered by. */
export function inputOf({ car }: { readonly car: Pick<Car, "form"> }): "rack" | "column" {
  return car.form.mechanism === "rack" || car.form.mechanism === "centre-rack" ? "rack" : "column";
}
