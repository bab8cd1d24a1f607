import type { TextProps } from "ink";
import type { Tone } from "./readout.ts";

/**
 * How each tone is drawn. All of it is also said in words, since colours may be off; red and magenta can be read on light
 * and dark backgrounds alike.
 */
export const tones: Readonly<Record<Tone, Pick<TextProps, "bold" | "color">>> = {
  plain: {},
  warn: { bold: true, color: "magenta" },
  bad: { bold: true, color: "red" },
};
