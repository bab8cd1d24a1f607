/**
 * A run of every command, as it is typed after the program's name, on the examples that come with it: short, and with every
 * part that is loaded only when it is asked for (documents, drawings, sums and units).
 *
 * @type {readonly (readonly string[])[]}
 */
export const everyCommand = [
  ["widened-offset-rack"],
  ["steer", "widened-offset-rack", "--from=(1 + 1/2) * -1 in", "--csv"],
  ["locks", "widened-offset-rack"],
  ["bump", "strut-hatchback-corners", "--json"],
  ["adjusters", "rack-ahead"],
  ["widen", "balanced-two-seater", "--by=1 1/2"],
  ["sensitivity", "fixed-kingpin-yard-kart", "--csv"],
  ["tolerance", "fixed-kingpin-yard-kart", "--builds=100"],
  ["pose", "twin-beam-relay", "--travel=1"],
  ["check", "check-before-welding"],
  ["match", "balanced-two-seater", "as-built"],
  ["compare", "balanced-two-seater", "rack-ahead", "--html"],
  ["sheet", "rack-ahead", "--pdf"],
  ["template", "rack-ahead", "--json"],
  ["find", "fixed-kingpin-yard-kart", "--move=tie-rod.outer.ahead=1/4"],
  ["upright", "balanced-two-seater"],
  ["tape", "donor-front"],
  ["presets"],
  ["new", "--tape-sheet"],
  ["schema"],
  ["completion", "bash"],
  ["man"],
  ["help", "steer"],
];
