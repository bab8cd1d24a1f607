import { flowMap } from "../edits/flow.ts";
import { scalar, shortest } from "../edits/written.ts";
import { mark, reckoned } from "../starting/marks.ts";
import { formatLength, sayLength } from "../units/format.ts";
import { inch } from "../units/length.ts";
import type { LengthUnit } from "../words.ts";
import { type Assumed, type At, type Layout, layoutOf, pivotSpread } from "./layout.ts";
import type { Tape } from "./readings.ts";

/** A worked-out length: to a thousandth of an inch or a hundredth of a millimetre, finer than any tape; a fraction where it is one. */
export function taped(mm: number, units: LengthUnit): string {
  if (units === "mm") return shortest(mm, 0.005);
  const exact = formatLength(mm, { unit: "in", exact: true });
  return exact.includes("/") ? scalar(exact) : shortest(mm / inch, 0.0005);
}

function angle(rad: number): string {
  return shortest((rad * 180) / Math.PI, 0.0005);
}

const wheels = ["left", "right"] as const;

function sayTaped(mm: number, units: LengthUnit): string {
  return sayLength(mm, units === "in" ? { unit: "in", exact: true } : { unit: "mm" });
}

/** The rods that were taped, beside those that fit: they are on the car, and what is made new is measured against them. */
function tapedRods({ numbers, units }: Tape): readonly string[] {
  const said = wheels.flatMap((wheel) => {
    const mm = numbers.get(`${wheel}-rod`);
    return mm === undefined ? [] : [`${wheel} ${sayTaped(mm, units)}`];
  });
  return said.length === 0 ? [] : [`      # no length here: cut to fit. Taped on the car: ${said.join(", ")}`];
}

function rodsAsCut({ numbers }: Tape, say: (mm: number) => string): readonly string[] {
  return wheels.flatMap((wheel) => [
    `  ${wheel}:`,
    `    tie-rod: { length: ${say(numbers.get(`${wheel}-rod`) ?? 0)} }  # as taped`,
  ]);
}

/** The shock, where its place was read. */
function shockLines({ numbers, shockOn }: Tape, say: (mm: number) => string): readonly string[] {
  const read = (key: string) => numbers.get(key) ?? 0;
  if (shockOn === null || !numbers.has("shock-top-out")) return [];
  const end = (name: "top" | "foot") =>
    flowMap([
      ["ahead", say(read(`shock-${name}-ahead`))],
      ["out", say(read(`shock-${name}-out`))],
      ["up", say(read(`shock-${name}-height`))],
    ]);
  const [closed, open] = [numbers.get("shock-closed"), numbers.get("shock-open")];
  return [
    "shock:",
    "  both:",
    `    top: ${end("top")}`,
    `    foot: ${end("foot")}`,
    `    on: ${shockOn}`,
    ...(open === undefined ? [] : [`    free-length: ${say(open)}`]),
    ...(open === undefined || closed === undefined ? [] : [`    stroke: ${say(open - closed)}`]),
  ];
}

/** A car's text from a tape's readings, and what was assumed. Assumed values are marked, each on its line. */
export function carFromTape(tape: Tape): { readonly text: string; readonly layout: Layout } {
  const layout = layoutOf(tape);
  const { units } = tape;
  const { assumed, rack, hub } = layout;
  const say = (mm: number) => taped(mm, units);
  const point = ({ ahead, out, up }: At) =>
    flowMap([
      ["ahead", say(ahead)],
      ["out", say(out)],
      ["up", say(up)],
    ]);
  /** The comment of a line: nothing where all was read; else what of it is assumed, or all of it. */
  const marked = (key: Assumed, of?: string) =>
    assumed.has(key) ? `  ${of === undefined ? mark : mark.replace(":", ` of ${of}:`)}` : "";
  const arm = (name: string, joint: At, pivot: { readonly out: number; readonly up: number }) => {
    const at = (ahead: number): At => ({ ahead: joint.ahead + ahead, ...pivot });
    return [
      `    ${name}:`,
      `      front: ${point(at(pivotSpread))}${marked("arms")}${marked("pivots-ahead", "ahead")}`,
      `      rear:  ${point(at(-pivotSpread))}${marked("arms")}${marked("pivots-ahead", "ahead")}`,
      `      joint: ${point(joint)}${assumed.has("arms") ? marked("arms") : marked("caster", "ahead")}`,
    ];
  };
  const wheel = (["camber", "toe"] as const).filter((key) => assumed.has(key));
  const wheelMark = wheel.length === 0 ? "" : `  ${mark.replace(":", ` of ${wheel.join(", ")}:`)}`;
  const rackEntries: [string, string][] = [
    ["ahead", say(rack.ahead)],
    ["up", say(rack.up)],
    ["eye-to-eye", say(rack.eyeToEye)],
    ["offset", say(rack.offset)],
    ["travel", say(rack.travel)],
    ...(Math.abs(rack.straightAhead) > 1e-6 ? [["straight-ahead", say(rack.straightAhead)] as [string, string]] : []),
    ...(rack.perTurn > 0 ? [["per-turn", say(rack.perTurn)] as [string, string]] : []),
    ["wheel-left-moves", tape.rackGoes],
  ];
  const travelMark = assumed.has("ratio") ? `  ${mark} ${reckoned}` : marked("travel");
  const text = [
    "# Begun from readings with a tape. What was not read is assumed, and its line says so until you change it.",
    tape.rodsAsCut
      ? "# The rods are as they were taped: the wheels stand where they put them."
      : "# The rods are cut to fit: the wheels were straight where the rack stood when it was measured.",
    `title: ${JSON.stringify(tape.title ?? "Car from the tape")}`,
    `units: ${units}`,
    `wheelbase: ${say(tape.numbers.get("wheelbase") ?? 0)}`,
    `tire: { radius: ${say(hub.up)}, width: ${say(layout.tyreWidth)} }  # taped ${sayTaped(tape.numbers.get("over-tyres") ?? 0, units)} over both tyres: where this width is corrected, correct wheel center out too, by half as much the other way`,
    `wheel-travel: { bump: ${say(layout.bump)}, droop: ${say(layout.droop)} }${travelMark}`,
    "front:",
    "  linkage: double-arm",
    "  both:",
    ...arm("lower-arm", layout.lower, layout.lowerPivot),
    ...arm("upper-arm", layout.upper, layout.upperPivot),
    "    tie-rod:",
    `      outer: ${point(layout.tab)}`,
    ...(tape.rodsAsCut ? [] : tapedRods(tape)),
    `    wheel: { center: ${point(hub)}, camber: ${angle(layout.camber)}, toe: ${angle(layout.toe)} }${wheelMark}`,
    ...(tape.rodsAsCut ? rodsAsCut(tape, say) : []),
    "steering:",
    "  mechanism: rack",
    `  rack: ${flowMap(rackEntries)}`,
    ...shockLines(tape, say),
    "",
  ].join("\n");
  return { text, layout };
}
