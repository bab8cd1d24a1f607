import type { Complaint } from "./complaint.ts";
import type { Linkage } from "./linkage.ts";
import type { Mechanism } from "./mechanism.ts";
import type { Place } from "./places.ts";
import { indexOf, quantities } from "./quantities.ts";
import { complaintAt, spotAt, type Tree } from "./tree.ts";
import { formatAngle, sayLength } from "./units/format.ts";
import type { LengthUnit, Wheel } from "./words.ts";
import { readYaml } from "./yaml.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** Where a corner's part is written: at the side's own mapping where that has it, else where both sides share it. */
function placeOf(tree: Tree, wheel: Wheel, path: readonly string[]): readonly string[] {
  const own = ["front", wheel, ...path];
  return spotAt(tree, own) === undefined ? ["front", "both", ...path] : own;
}

/** Each complaint once, though both sides may share the part that it is about. */
function once(complaints: readonly Complaint[]): readonly Complaint[] {
  return [...new Map(complaints.map((each) => [`${each.part} ${each.message}`, each])).values()];
}

/**
 * A complaint about a part of a car that reads well, at its place in the car's text; `path` is from the root, a
 * corner's part under its own wheel.
 */
export function complaintOn(text: string, path: readonly string[], message: string): Complaint {
  const tree = readYaml(text);
  if ("complaints" in tree) return { line: null, column: null, part: path.join("."), message };
  const [root, wheel, ...rest] = path;
  return complaintAt(tree, root === "front" && isWheel(wheel) ? placeOf(tree, wheel, rest) : path, message);
}

function isWheel(word: string | undefined): word is Wheel {
  return word === "left" || word === "right";
}

function cornerFaults(tree: Tree, numbers: Float64Array, linkage: Linkage): readonly Complaint[] {
  return wheels.flatMap((wheel) => {
    const place = (path: string): Place => [
      numbers[indexOf(`${wheel}.${path}.ahead`)] ?? 0,
      numbers[indexOf(`${wheel}.${path}.out`)] ?? 0,
      numbers[indexOf(`${wheel}.${path}.up`)] ?? 0,
    ];
    return linkage.faults(place).map(({ path, message }) => complaintAt(tree, placeOf(tree, wheel, path), message));
  });
}

const byPath = new Map(quantities.map((each) => [each.path.join("."), each.index]));

function steeringFaults(tree: Tree, numbers: Float64Array, mechanism: Mechanism): readonly Complaint[] {
  const read = (path: string) => numbers[byPath.get(`steering.${path}`) ?? -1] ?? 0;
  return mechanism.faults(read).map(({ path, message }) => complaintAt(tree, ["steering", ...path], message));
}

function wheelFaults(tree: Tree, numbers: Float64Array, units: LengthUnit): readonly Complaint[] {
  return wheels.flatMap((wheel) => {
    const out = numbers[indexOf(`${wheel}.wheel.center.out`)] ?? 0;
    if (out > 0) return [];
    const message = `found ${length(out, units)}, expected more than 0: the wheel would stand across the car's centreline`;
    return [complaintAt(tree, placeOf(tree, wheel, ["wheel", "center", "out"]), message)];
  });
}

/** What cannot be built, though every number by itself could be: joints that coincide, wheels on the wrong side. */
export function faultsOf(
  tree: Tree,
  numbers: Float64Array,
  linkage: Linkage,
  mechanism: Mechanism,
  units: LengthUnit,
): readonly Complaint[] {
  return once([
    ...wheelFaults(tree, numbers, units),
    ...cornerFaults(tree, numbers, linkage),
    ...steeringFaults(tree, numbers, mechanism),
  ]);
}

function length(mm: number, units: LengthUnit): string {
  return sayLength(mm, units === "in" ? { unit: "in", decimals: 2 } : { unit: "mm" });
}

/** A wheel centre further than this share of the tyre's radius from it stands off the ground or in it. */
const heightTolerance = 0.02;

function heightWarnings(tree: Tree, numbers: Float64Array, units: LengthUnit): readonly Complaint[] {
  const radius = numbers[indexOf("tire.radius")] ?? 0;
  return wheels.flatMap((wheel) => {
    const up = numbers[indexOf(`${wheel}.wheel.center.up`)] ?? 0;
    if (Math.abs(up - radius) <= heightTolerance * radius) return [];
    const message = `the wheel centre is ${length(up, units)} above the ground, but the tyre's loaded radius is ${length(radius, units)}: at ride height they should be the same`;
    return [complaintAt(tree, placeOf(tree, wheel, ["wheel", "center", "up"]), message)];
  });
}

/** How far a mechanism goes each way, and where it stands straight ahead: mm of rack or rad of column. */
interface Reach {
  readonly left: number;
  readonly right: number;
  readonly straight: number;
}

function reachOf(numbers: Float64Array, section: string): Reach {
  return {
    left: numbers[indexOf(`left.${section}.travel`)] ?? 0,
    right: numbers[indexOf(`right.${section}.travel`)] ?? 0,
    straight: numbers[indexOf(`${section}.straight-ahead`)] ?? 0,
  };
}

function straightWarnings(
  tree: Tree,
  { left, right, straight }: Reach,
  { section, input }: Mechanism,
  units: LengthUnit,
): readonly Complaint[] {
  if (straight <= left && straight >= -right) return [];
  const message =
    input === "rack"
      ? `straight ahead, ${length(straight, units)} from mid-travel, lies beyond the rack's own travel`
      : `straight ahead, ${formatAngle(straight, 1)} degrees from the middle, lies beyond the column's own travel`;
  return [complaintAt(tree, ["steering", section, "straight-ahead"], message)];
}

function perTurnWarnings(tree: Tree, { left, right }: Reach, perTurn: number, units: LengthUnit): readonly Complaint[] {
  if (perTurn <= left + right) return [];
  const message = `one turn of the steering wheel, ${length(perTurn, units)}, is more than the rack's whole travel of ${length(left + right, units)}`;
  return [complaintAt(tree, ["steering", "rack", "per-turn"], message)];
}

function collarWarnings(tree: Tree, { input, help }: Mechanism): readonly Complaint[] {
  if (input === "rack" || spotAt(tree, ["stops", "collar"]) === undefined) return [];
  const message = `a collar is for a rack and counts for nothing here: ${help.charAt(0).toLowerCase()}${help.slice(1)}`;
  return [complaintAt(tree, ["stops", "collar"], message)];
}

/** What is doubtful, though it can be worked out. */
export function warningsOf(
  tree: Tree,
  numbers: Float64Array,
  mechanism: Mechanism,
  units: LengthUnit,
): readonly Complaint[] {
  const reach = reachOf(numbers, mechanism.section);
  return once([
    ...heightWarnings(tree, numbers, units),
    ...collarWarnings(tree, mechanism),
    ...straightWarnings(tree, reach, mechanism, units),
    ...(mechanism.input === "rack" ? perTurnWarnings(tree, reach, numbers[indexOf("rack.per-turn")] ?? 0, units) : []),
  ]);
}
