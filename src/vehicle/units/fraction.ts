/** An exact number, top over bottom, bottom above nothing: fractions of an inch stay fractions until they are mm. */
export interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

/** A whole number as a fraction. */
export function whole(n: number | bigint): Fraction {
  return { top: BigInt(n), bottom: 1n };
}

/** a / b; null where b is nothing. */
export function ratio(top: bigint, bottom: bigint): Fraction | null {
  if (bottom === 0n) return null;
  return bottom < 0n ? { top: -top, bottom: -bottom } : { top, bottom };
}

export function add(a: Fraction, b: Fraction): Fraction {
  return { top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom };
}

export function negate(a: Fraction): Fraction {
  return { top: -a.top, bottom: a.bottom };
}

export function multiply(a: Fraction, b: Fraction): Fraction {
  return { top: a.top * b.top, bottom: a.bottom * b.bottom };
}

/** a / b; null where b is nothing. */
export function divide(a: Fraction, b: Fraction): Fraction | null {
  return ratio(a.top * b.bottom, a.bottom * b.top);
}

/** A plain decimal such as "14", "14.375", ".5" or "1e-3" (its form checked by the caller), exactly. */
export function decimal(text: string): Fraction {
  const [digits = "", exponent = "0"] = text.toLowerCase().split("e");
  const [before = "", after = ""] = digits.split(".");
  const top = BigInt(`${before}${after}`);
  const power = Number(exponent) - after.length;
  return power >= 0 ? { top: top * 10n ** BigInt(power), bottom: 1n } : { top, bottom: 10n ** BigInt(-power) };
}

/** The double nearest to a fraction: 25 significant digits are divided out and read by the language's own rounding. */
export function toNumber({ top, bottom }: Fraction): number {
  const size = top < 0n ? -top : top;
  const power = 25 - size.toString().length + bottom.toString().length;
  const digits = power >= 0 ? (size * 10n ** BigInt(power)) / bottom : size / (bottom * 10n ** BigInt(-power));
  const value = Number(`${digits}e${-power}`);
  return top < 0n ? -value : value;
}
