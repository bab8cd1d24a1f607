import { type Key, type KeyName, named } from "./key.ts";

/*
 * What the tails of escape sequences mean. Sources: ECMA-48 (form of a control sequence), the published
 * control-sequence list of xterm, and the terminfo entries of xterm, rxvt, linux, screen and putty.
 */

const finals: Readonly<Record<string, KeyName>> = {
  A: "up",
  B: "down",
  C: "right",
  D: "left",
  F: "end",
  H: "home",
  P: "f1",
  Q: "f2",
  R: "f3",
  S: "f4",
};

const numbers: Readonly<Record<number, KeyName>> = {
  1: "home",
  2: "insert",
  3: "delete",
  4: "end",
  5: "pageUp",
  6: "pageDown",
  7: "home",
  8: "end",
  11: "f1",
  12: "f2",
  13: "f3",
  14: "f4",
  15: "f5",
  17: "f6",
  18: "f7",
  19: "f8",
  20: "f9",
  21: "f10",
  23: "f11",
  24: "f12",
};

/** The keypad in application mode: SS3 and a letter stand for the character on the key. */
const keypad: Readonly<Record<string, string>> = {
  X: "=",
  j: "*",
  k: "+",
  l: ",",
  m: "-",
  n: ".",
  o: "/",
  p: "0",
  q: "1",
  r: "2",
  s: "3",
  t: "4",
  u: "5",
  v: "6",
  w: "7",
  x: "8",
  y: "9",
};

/** The modifiers that a sequence's parameter stands for: it is one more than a bit sum of shift 1, alt 2, ctrl 4, meta 8. */
function modifiers(parameter: number | undefined) {
  const bits = Math.max(0, (parameter ?? 1) - 1);
  return { shift: (bits & 1) !== 0, alt: (bits & 10) !== 0, ctrl: (bits & 4) !== 0 };
}

function parameterNumbers(parameters: string): number[] {
  return parameters.split(";").map((part) => Number.parseInt(part, 10));
}

/** The key of a control sequence `CSI parameters final`, or undefined where it is none (a mouse, a focus, an unknown report). */
export function keyOfControlSequence(parameters: string, final: string): Key | undefined {
  if (!/^[\d;:]*$/.test(parameters)) return undefined;
  const [first, second] = parameterNumbers(parameters);
  if (final === "Z") return named("tab", { ...modifiers(second), shift: true });
  const letter = finals[final];
  if (letter !== undefined) {
    // A cursor position report has the same final as F3, but a row where the key always has 1.
    if (parameters !== "" && first !== 1) return undefined;
    return named(letter, modifiers(second));
  }
  const shifted = finals[final.toUpperCase()];
  if (parameters === "" && /^[a-d]$/.test(final) && shifted !== undefined) return named(shifted, { shift: true });
  const name = first === undefined ? undefined : numbers[first];
  if (name === undefined) return undefined;
  if (final === "~") return named(name, modifiers(second));
  if (final === "$") return named(name, { shift: true });
  if (final === "^") return named(name, { ctrl: true });
  if (final === "@") return named(name, { ctrl: true, shift: true });
  return undefined;
}

/** The key of `SS3 parameters final`, or undefined where that is no key. */
export function keyOfSingleShift(parameters: string, final: string): Key | undefined {
  const held = parameterNumbers(parameters).at(-1);
  const letter = finals[final];
  if (letter !== undefined) return named(letter, modifiers(held));
  if (final === "M") return named("enter", modifiers(held));
  if (final === "I") return named("tab", modifiers(held));
  const controlled = finals[final.toUpperCase()];
  if (/^[a-d]$/.test(final) && controlled !== undefined) return named(controlled, { ctrl: true });
  const text = keypad[final];
  return text === undefined ? undefined : { ...named("character"), text };
}

const linuxFunctions: Readonly<Record<string, KeyName>> = { A: "f1", B: "f2", C: "f3", D: "f4", E: "f5" };

/** The key of the Linux console's own function keys, `CSI [ letter`. */
export function keyOfLinuxFunction(final: string): Key | undefined {
  const name = linuxFunctions[final];
  return name === undefined ? undefined : named(name);
}
