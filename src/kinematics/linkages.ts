import type { Corner as DrawnCorner, Linkage } from "./drawn.ts";
import type { Carry, Joints, Refusal } from "./front.ts";
import { carryDoubleArm, compileDoubleArm } from "./linkages/doubleArm.ts";
import { carryFixedKingpin, compileFixedKingpin } from "./linkages/fixedKingpin.ts";
import { carryPivotingBeam, compilePivotingBeam } from "./linkages/pivotingBeam.ts";
import { carryStrut, compileStrut } from "./linkages/strut.ts";
import { compileTrailingArms } from "./linkages/trailingArms.ts";

/** What the kernel knows of one linkage. */
interface LinkageKernel<Points> {
  /** Writes the linkage's own constants of a corner from its points. Gives the ends of the steering axis as drawn, or a refusal. */
  readonly compile: (
    points: Points,
    wheel: Refusal["wheel"],
    own: Float64Array,
    drawn: DrawnCorner,
  ) => Joints | Refusal;
  readonly carry: Carry;
  /** False where there is no suspension. */
  readonly hasTravel: boolean;
}

type PointsOf<Kind> = Extract<Linkage, { kind: Kind }>["left"];

/** Every linkage that the kernel solves. */
export const linkages: { readonly [Kind in Linkage["kind"]]: LinkageKernel<PointsOf<Kind>> } = {
  "double-arm": { compile: compileDoubleArm, carry: carryDoubleArm, hasTravel: true },
  "trailing-arms": { compile: compileTrailingArms, carry: carryDoubleArm, hasTravel: true },
  strut: { compile: compileStrut, carry: carryStrut, hasTravel: true },
  "pivoting-beam": {
    compile: compilePivotingBeam,
    carry: carryPivotingBeam,
    hasTravel: true,
  },
  "fixed-kingpin": {
    compile: compileFixedKingpin,
    carry: carryFixedKingpin,
    hasTravel: false,
  },
};
