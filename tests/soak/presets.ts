import { loadPreset, presetNames } from "../../src/files/presets.ts";

/** The texts of all example cars. */
export const presetTexts: readonly string[] = presetNames().flatMap((name) => {
  const loaded = loadPreset(name);
  return "text" in loaded ? [loaded.text] : [];
});
