import { loadPreset, presetNames } from "../../src/files/presets.ts";

/** The text of an example car. */
export function presetText(name: string): string {
  const loaded = loadPreset(name);
  if ("complaints" in loaded) throw new Error(`there is no example ${name}`);
  return loaded.text;
}

/** The texts of all example cars. */
export const presetTexts: readonly string[] = presetNames().map(presetText);
