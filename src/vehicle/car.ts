import type { Complaint } from "./complaint.ts";
import type { LinkageName } from "./linkages.ts";
import type { MechanismName } from "./mechanisms.ts";
import type { Sections } from "./sections.ts";
import type { LengthUnit, Wheel } from "./words.ts";

export type { LengthUnit, Wheel } from "./words.ts";

/** The choices in a car file that are not numbers. */
export interface Form {
  readonly units: LengthUnit;
  readonly linkage: LinkageName;
  /** Its own name: a rack whose take-off is its centre is another mechanism than one whose take-off is its ends. */
  readonly mechanism: MechanismName;
  /** Per side: "fit" while the file gives no tie-rod length, "cut" once it does. */
  readonly rods: { readonly left: "fit" | "cut"; readonly right: "fit" | "cut" };
  /** The way the rack goes when the steering wheel is turned left; null when the file does not say. */
  readonly wheelLeftMoves: Wheel | null;
  /** The way the pitman arm turns, seen from above, against the steering wheel; null where there is no pitman arm. */
  readonly pitmanTurns: "with" | "against" | null;
  /** True while the wheel's travel is a starting value: arms that nobody has measured tell nothing of it. */
  readonly travelIsAssumed: boolean;
}

/**
 * A car: its text is the truth; numbers and form are read from it. numbers holds every quantity in mm and rad at the
 * index its Quantity names (NaN never: what a file leaves out holds the quantity's `absent`, 0 in every case so far:
 * a tie-rod length of 0 is a rod cut to fit; a tyre width, rim or rack per turn of 0 is not known).
 */
export interface Car {
  readonly text: string;
  readonly title: string;
  readonly numbers: Float64Array;
  readonly form: Form;
  /** What the optional sections say, read anew with each text. */
  readonly sections: Sections;
  /** Doubtful but usable: shown as warnings. */
  readonly warnings: readonly Complaint[];
}
