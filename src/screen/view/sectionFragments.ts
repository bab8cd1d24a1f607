import type { SectionName } from "../../vehicle/sections.ts";

/**
 * How each optional section of a car file is begun, as lines to write at the end of the file. The numbers are invented, in
 * inches, and the parts those of a double-arm front end: another linkage names its own.
 */
export const sectionFragments: Readonly<Record<SectionName, readonly string[]>> = {
  "rod-ends": [
    "rod-ends:",
    "  both:",
    "    tie-rod:",
    "      outer: { bolt: vertical, angle: 22, size: 1/2-20 }",
    "      inner: { bolt: fore-and-aft, angle: 22, size: 1/2-20 }",
  ],
  threads: [
    "threads:",
    "  both:",
    "    outer: { size: 1/2-20, hand: right, reach: 2.44, thread: 1.5 }",
    "    inner: { size: 1/2-20, hand: left, reach: 2.44, thread: 1.5 }",
  ],
  tubes: ["tubes:", "  both: { tie-rod: 3/4, lower-arm: 1, upper-arm: 1 }"],
  hardware: [
    "hardware:",
    "  tab:",
    "    both: { thickness: 1/4, hole: 1/2, end-radius: 5/8, foot: 2 }",
    "  bolts: { both: { tie-rod: { outer: 1/2-20, inner: 1/2-20 } } }",
    "  walls: { both: { tie-rod: 0.12 } }",
    "  rack:",
    "    thickness: 1/4",
    "    holes:",
    "      left:  { along: 3.5, aside: 0, diameter: 3/8 }",
    "      right: { along: -3.5, aside: 0, diameter: 3/8 }",
  ],
  "steering-shaft": [
    "steering-shaft:",
    "  wheel:       { ahead: -40, offset: 0, up: 30 }",
    "  upper-joint: { ahead: -24, offset: 0, up: 23 }",
    "  lower-joint: { ahead: -11, offset: 0, up: 13.5 }",
    "  pinion:      { ahead: -6, offset: 0, up: 9 }",
  ],
  shock: [
    "shock:",
    "  both:",
    "    top: { ahead: -1, out: 13, up: 27 }",
    "    foot: { ahead: -0.5, out: 19.5, up: 8.5 }",
    "    on: lower-arm",
    "    spring-rate: 250 lb/in",
    "    free-length: 22.75",
    "    stroke: 6.5",
  ],
  body: ["body: { ahead: 22, out: 18 }"],
  limits: ["limits:", "  rod-to-arm: { close: 35, broken: 25 }"],
  targets: ["targets:", "  toe-change: { warn: 1/16, bad: 1/4 }"],
  find: ["find:", "  move: { tie-rod.outer.ahead: { within: 1 } }"],
  tolerances: ["tolerances: { length: 1/16, tie-rod.outer: 1/32 }"],
};
