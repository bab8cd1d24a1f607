/** Every command's name, known before any command is loaded: a first word that is none of these is a car. */
export const commandNames: readonly string[] = [
  "steer",
  "locks",
  "bump",
  "adjusters",
  "widen",
  "sensitivity",
  "tolerance",
  "pose",
  "check",
  "compare",
  "find",
  "upright",
  "presets",
  "new",
  "schema",
  "help",
];
