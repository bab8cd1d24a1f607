const inch = 25.4;

/**
 * How a length is written: inches as the nearest fraction, as a tape is read; inches as decimals; mm to a tenth;
 * or, with `exact`, inches as a fraction where they fall on a 64th and as decimals where they do not.
 */
export type LengthStyle =
  | { readonly unit: "in"; readonly fraction: 16 | 32 }
  | { readonly unit: "in"; readonly decimals: number }
  | { readonly unit: "in"; readonly exact: true }
  | { readonly unit: "mm" };

/** A number to so many decimals, never "-0". Not a number, which no caller should show, is a dash. */
function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return "-";
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

function withoutTrailingZeros(text: string): string {
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** The nearest whole number of parts of an inch, as "14 3/8", "-3/8" or "14". */
function fractionOf(inches: number, parts: number): string {
  if (!Number.isFinite(inches)) return "-";
  const count = Math.round(Math.abs(inches) * parts);
  const wholes = Math.floor(count / parts);
  let [top, bottom] = [count % parts, parts];
  while (top !== 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const part = top === 0 ? "" : `${top}/${bottom}`;
  const size = wholes === 0 && part !== "" ? part : part === "" ? `${wholes}` : `${wholes} ${part}`;
  return inches < 0 && count !== 0 ? `-${size}` : size;
}

/** Nearer to a 64th of an inch than this, in, a length counts as falling on it: far below what can be measured. */
const onTheMark = 1e-9;

function exactInches(inches: number): string {
  const parts = inches * 64;
  if (Math.abs(parts - Math.round(parts)) < 64 * onTheMark) return fractionOf(inches, 64);
  return withoutTrailingZeros(fixed(inches, 4));
}

/** A length given in mm, as text without its unit. */
export function formatLength(mm: number, style: LengthStyle): string {
  if (style.unit === "mm") return fixed(mm, 1);
  if ("fraction" in style) return fractionOf(mm / inch, style.fraction);
  if ("decimals" in style) return fixed(mm / inch, style.decimals);
  return exactInches(mm / inch);
}

/** A length given in mm, as text with its unit. */
export function sayLength(mm: number, style: LengthStyle): string {
  return `${formatLength(mm, style)} ${style.unit}`;
}

/** An angle given in rad, as degrees with so many decimals, without a unit. */
export function formatAngle(rad: number, digits: number): string {
  return fixed((rad * 180) / Math.PI, digits);
}

/** A number without a unit, to a hundredth. */
export function formatRatio(value: number): string {
  return withoutTrailingZeros(fixed(value, 2));
}
