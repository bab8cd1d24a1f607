import type { FigureKind } from "../measures/figure.ts";
import { figureWords } from "../output/numbers.ts";
import type { Quantity } from "../vehicle/quantity.ts";
import { formatAngle, formatLength, formatRatio, type LengthStyle, sayLength } from "../vehicle/units/format.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import type { Display } from "./model.ts";

/** The way lengths are shown just now. */
export function styleOf(display: Pick<Display, "unit" | "inches">): LengthStyle {
  return display.unit === "in" ? display.inches : { unit: "mm" };
}

/** A length that steel is cut to is never coarser than this: read to 1/16, it could be cut 1/32 short. */
const cutStyle = { unit: "in", fraction: 32 } as const;

/** The way a length that is cut to is shown. */
function styleToCut(display: Pick<Display, "unit" | "inches">): LengthStyle {
  const style = styleOf(display);
  return "fraction" in style && style.fraction < cutStyle.fraction ? cutStyle : style;
}

/** A length that is cut to, with its unit: briefly, and with the decimals that a fraction hides. */
export function cutSayer(display: Pick<Display, "unit" | "inches">): (mm: number) => readonly [string, string] {
  const style = styleToCut(display);
  return (mm) => {
    const brief = `${formatLength(mm, style)} ${style.unit}`;
    return [brief, "fraction" in style ? `${brief} (${formatLength(mm, { unit: "in", decimals: 3 })})` : brief];
  };
}

/** The name of that way, as a heading over columns of bare numbers. */
export function unitWords(display: Pick<Display, "unit" | "inches">): string {
  if (display.unit === "mm") return "millimetres";
  const { inches } = display;
  return "fraction" in inches ? `inches, to 1/${inches.fraction}` : "inches, decimal";
}

/** A length in mm with its unit, as it is shown just now. */
export function sayer(display: Pick<Display, "unit" | "inches">): (mm: number) => string {
  const style = styleOf(display);
  return (mm) => `${formatLength(mm, style)} ${style.unit}`;
}

/** Writes a figure's value with its unit, as it is shown just now; "-" for one that cannot be told. */
export type FigureSayer = (value: number | null | undefined, kind: FigureKind) => string;

export function figureSayer(display: Pick<Display, "unit" | "inches">): FigureSayer {
  const length = sayer(display);
  return (value, kind) => figureWords(value, kind, display.unit, length);
}

/** Whether a quantity's value says that the car file leaves it out, as not known. */
function isUnknown(value: number, { absent, low }: Quantity): boolean {
  return value === absent && absent < low;
}

/** A quantity's value, mm or rad or bare, as it stands in the list; a dash while it is not known. */
export function bareValue(value: number | null, quantity: Quantity, display: Pick<Display, "unit" | "inches">): string {
  if (value === null || isUnknown(value, quantity)) return "-";
  if (quantity.kind === "ratio") return formatRatio(value);
  return quantity.kind === "angle"
    ? `${formatAngle(value, 2)}°`
    : formatLength(value, quantity.pair === "tie-rod.length" ? styleToCut(display) : styleOf(display));
}

/** The same with its unit. */
export function saidValue(value: number, quantity: Quantity, display: Pick<Display, "unit" | "inches">): string {
  const bare = bareValue(value, quantity, display);
  return quantity.kind === "length" && bare !== "-" ? `${bare} ${styleOf(display).unit}` : bare;
}

/** The values of a line with their unit: one where all are alike, else "312.0 mm left, 306.0 mm right". */
export function bothValues(
  values: readonly { readonly quantity: Quantity; readonly value: number }[],
  display: Pick<Display, "unit" | "inches">,
): string {
  const words = new Set(values.map(({ quantity, value }) => saidValue(value, quantity, display)));
  return [...words].join(" left, ") + (words.size > 1 ? " right" : "");
}

/** Lengths of a tape's sheet, in its own unit whatever is shown elsewhere: as near as a tape is read. */
export function sheetLength(units: LengthUnit): (mm: number) => string {
  return (mm) => sayLength(mm, sheetStyle(units));
}

/** The same without the unit, for a list. */
export function sheetStyle(units: LengthUnit): LengthStyle {
  return units === "in" ? { unit: "in", fraction: 32 } : { unit: "mm" };
}
