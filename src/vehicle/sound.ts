import type { Complaint } from "./complaint.ts";
import type { Linkage } from "./linkage.ts";
import type { Place } from "./places.ts";
import { indexOf } from "./quantities.ts";
import { sayLength } from "./units/format.ts";
import type { LengthUnit, Wheel } from "./words.ts";
import { complaintAt, nodeAt, type Tree } from "./yaml.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** Where a corner's part is written: at the side's own mapping where that has it, else where both sides share it. */
function placeOf(tree: Tree, wheel: Wheel, path: readonly string[]): readonly string[] {
  const own = ["front", wheel, ...path];
  return nodeAt(tree, own) === null ? ["front", "both", ...path] : own;
}

/** What cannot be built, though every number by itself could be: joints that coincide. Said once where both sides share it. */
export function faultsOf(tree: Tree, numbers: Float64Array, linkage: Linkage): readonly Complaint[] {
  const complaints = new Map<string, Complaint>();
  for (const wheel of wheels) {
    const place = (path: string): Place => [
      numbers[indexOf(`${wheel}.${path}.ahead`)] ?? 0,
      numbers[indexOf(`${wheel}.${path}.out`)] ?? 0,
      numbers[indexOf(`${wheel}.${path}.up`)] ?? 0,
    ];
    for (const fault of linkage.faults(place)) {
      const complaint = complaintAt(tree, placeOf(tree, wheel, fault.path), fault.message);
      complaints.set(`${complaint.part} ${complaint.message}`, complaint);
    }
  }
  return [...complaints.values()];
}

/** A wheel centre further than this share of the tyre's radius from it stands off the ground or in it. */
const heightTolerance = 0.02;

function heightWarnings(tree: Tree, numbers: Float64Array, units: LengthUnit): readonly Complaint[] {
  const radius = numbers[indexOf("tire.radius")] ?? 0;
  const say = (mm: number) => sayLength(mm, units === "in" ? { unit: "in", decimals: 2 } : { unit: "mm" });
  return wheels.flatMap((wheel) => {
    const up = numbers[indexOf(`${wheel}.wheel.center.up`)] ?? 0;
    if (Math.abs(up - radius) <= heightTolerance * radius) return [];
    const message = `the wheel centre is ${say(up)} above the ground, but the tyre's loaded radius is ${say(radius)}: at ride height they should be the same`;
    return [complaintAt(tree, placeOf(tree, wheel, ["wheel", "center", "up"]), message)];
  });
}

function rackWarnings(tree: Tree, numbers: Float64Array, units: LengthUnit): readonly Complaint[] {
  const say = (mm: number) => sayLength(mm, units === "in" ? { unit: "in", decimals: 2 } : { unit: "mm" });
  const left = numbers[indexOf("left.rack.travel")] ?? 0;
  const right = numbers[indexOf("right.rack.travel")] ?? 0;
  const straight = numbers[indexOf("rack.straight-ahead")] ?? 0;
  const warnings: Complaint[] = [];
  if (straight > left || straight < -right) {
    const message = `straight ahead, ${say(straight)} from mid-travel, lies beyond the rack's own travel`;
    warnings.push(complaintAt(tree, ["steering", "rack", "straight-ahead"], message));
  }
  const perTurn = numbers[indexOf("rack.per-turn")] ?? 0;
  if (perTurn > left + right) {
    const message = `one turn of the steering wheel, ${say(perTurn)}, is more than the rack's whole travel of ${say(left + right)}`;
    warnings.push(complaintAt(tree, ["steering", "rack", "per-turn"], message));
  }
  return warnings;
}

/** What is doubtful, though it can be worked out. */
export function warningsOf(tree: Tree, numbers: Float64Array, units: LengthUnit): readonly Complaint[] {
  const found = [...heightWarnings(tree, numbers, units), ...rackWarnings(tree, numbers, units)];
  return [...new Map(found.map((each) => [`${each.part} ${each.message}`, each])).values()];
}
