/*
 * How a cell looks, as one number: foreground in bits 0-4, background in bits 5-9 (0 the terminal's own, 1-16 the
 * sixteen colours), attributes above. Only the sixteen colours: their shades are the user's own, so that they can be
 * read on light and on dark.
 */

const attributes = [
  { bit: 1 << 10, on: 1, off: 22 },
  { bit: 1 << 11, on: 2, off: 22 },
  { bit: 1 << 12, on: 3, off: 23 },
  { bit: 1 << 13, on: 4, off: 24 },
  { bit: 1 << 14, on: 7, off: 27 },
  { bit: 1 << 15, on: 9, off: 29 },
] as const;

const foreground = 0x1f;
const background = 0x1f << 5;
const underlined = 1 << 13;
const inverse = 1 << 14;
const struck = 1 << 15;

/** No colour, no attribute. */
export const plainStyle = 0;

/** The style after an SGR sequence with these parameters, as in `31;1`. Colours beyond sixteen are passed over. */
export function withSgr(style: number, parameters: string): number {
  const codes = parameters.split(";").map((code) => Number.parseInt(code, 10) || 0);
  let result = style;
  for (let at = 0; at < codes.length; at++) {
    const code = codes[at] ?? 0;
    if (code === 38 || code === 48) at += codes[at + 1] === 5 ? 2 : 4;
    else result = withCode(result, code);
  }
  return result;
}

function withCode(style: number, code: number): number {
  if (code === 0) return plainStyle;
  const started = attributes.find(({ on }) => on === code);
  if (started) return style | started.bit;
  if (attributes.some(({ off }) => off === code)) {
    return attributes.reduce((rest, { bit, off }) => (off === code ? rest & ~bit : rest), style);
  }
  const color = colorOfCode(code % 100 >= 40 || (code >= 100 && code < 108) ? code - 10 : code);
  if (color === undefined) return style;
  const isBackground = (code >= 40 && code <= 49) || (code >= 100 && code <= 107);
  return isBackground ? (style & ~background) | (color << 5) : (style & ~foreground) | color;
}

function colorOfCode(code: number): number | undefined {
  if (code >= 30 && code <= 37) return code - 29;
  if (code >= 90 && code <= 97) return code - 81;
  return code === 39 ? 0 : undefined;
}

function codeOfColor(color: number): number {
  if (color === 0) return 39;
  return color <= 8 ? color + 29 : color + 81;
}

/** What of a style can be seen on a blank cell. */
export function styleOfBlank(style: number): number {
  const seen = style & (background | underlined | inverse | struck);
  return (seen & (inverse | underlined | struck)) !== 0 ? seen | (style & foreground) : seen;
}

/** Whether a blank written with this pen looks like an untouched cell, and an erased cell is one. */
export function leavesBlank(style: number): boolean {
  return (style & (background | underlined | inverse | struck)) === 0;
}

const known = new Map<number, string>();

/** The shortest sequence that turns the pen from one style to another. */
export function restyle(from: number, to: number): string {
  if (from === to) return "";
  const pair = from * 65536 + to;
  let sequence = known.get(pair);
  if (sequence === undefined) {
    const fresh = ["", ...changes(plainStyle, to)].join(";");
    const changed = changes(from, to).join(";");
    sequence = `\x1b[${fresh.length < changed.length ? fresh : changed}m`;
    known.set(pair, sequence);
  }
  return sequence;
}

function changes(from: number, to: number): number[] {
  const codes: number[] = [];
  let now = from;
  for (const { bit, off } of attributes) {
    if ((now & bit) === 0 || (to & bit) !== 0) continue;
    codes.push(off);
    now = withCode(now, off);
  }
  for (const { bit, on } of attributes) if ((to & bit) !== 0 && (now & bit) === 0) codes.push(on);
  if ((now & foreground) !== (to & foreground)) codes.push(codeOfColor(to & foreground));
  if ((now & background) !== (to & background)) codes.push(codeOfColor((to & background) >> 5) + 10);
  return codes;
}
