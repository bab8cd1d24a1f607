import type { UprightChange } from "./hang.ts";

/** One measure of an upright on the bench, or of how it hangs. */
export interface UprightField {
  readonly key: keyof UprightChange;
  /** Its word on the command line. */
  readonly option: string;
  readonly kind: "length" | "angle";
  /** In at most 30 columns. */
  readonly name: string;
  readonly help: string;
  readonly is: "of the upright" | "how it hangs";
}

function field(
  key: keyof UprightChange,
  kind: UprightField["kind"],
  name: string,
  help: string,
  is: UprightField["is"] = "of the upright",
): UprightField {
  return { key, option: key.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`), kind, name, help, is };
}

/**
 * An upright as it is measured on the bench, its king-pin line (through both joints) upright and the spindle pointing
 * straight out, and then how it is to hang: the command's options and the form's fields are made from this list.
 */
export const uprightFields: readonly UprightField[] = [
  field("jointToJoint", "length", "Joint to joint", "from the lower joint's centre to the upper one's"),
  field(
    "spindleUp",
    "length",
    "Spindle above lower joint",
    "along the king-pin line, to where the spindle's line passes it",
  ),
  field(
    "spindleLean",
    "angle",
    "Spindle's lean",
    "how far its end leans down from square to the king-pin line, degrees: inclination and camber together",
  ),
  field(
    "spindleAhead",
    "length",
    "Spindle ahead of the line",
    "its line against the king-pin line; behind is negative",
  ),
  field(
    "wheelOut",
    "length",
    "Wheel out on the spindle",
    "from the king-pin line along the spindle to the middle of the wheel's width",
  ),
  field("tabBack", "length", "Hole behind the line", "the tie-rod hole behind the king-pin line; ahead is negative"),
  field("tabIn", "length", "Hole inboard of the line", "square to the king-pin line; outboard is negative"),
  field("tabUp", "length", "Hole above lower joint", "along the king-pin line"),
  field("camber", "angle", "Camber, as it hangs", "of the wheel, degrees, top outward positive", "how it hangs"),
  field(
    "caster",
    "angle",
    "Caster, as it hangs",
    "of the king-pin line, degrees, top rearward positive",
    "how it hangs",
  ),
];
