import type { Quantity } from "../vehicle/quantity.ts";
import { formatAngle, formatLength, type LengthStyle } from "../vehicle/units/format.ts";
import type { Display } from "./model.ts";

/** The way lengths are shown just now. */
export function styleOf(display: Pick<Display, "unit" | "inches">): LengthStyle {
  return display.unit === "in" ? display.inches : { unit: "mm" };
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

/** A quantity's value, mm or rad, as it stands in the list; a dash while it is not known. */
export function bareValue(value: number | null, quantity: Quantity, display: Pick<Display, "unit" | "inches">): string {
  if (value === null) return "-";
  return quantity.kind === "angle" ? `${formatAngle(value, 2)}°` : formatLength(value, styleOf(display));
}
