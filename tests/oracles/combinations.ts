import fc from "fast-check";
import type { Drawn, Linkage, Mechanism, Point } from "../../src/kinematics/drawn.ts";
import { type CornerDrawing, cornerDrawing, rodSine, within } from "./cars.ts";
import { sides } from "./corner.ts";
import { cornerOf, placesOf } from "./newton.ts";
import { plus, point, times } from "./vectors.ts";

/** Random front ends of every linkage and mechanism, unlike on their two sides, as a builder could draw them. */

export const linkageKinds: readonly Linkage["kind"][] = [
  "double-arm",
  "trailing-arms",
  "strut",
  "pivoting-beam",
  "fixed-kingpin",
];
export const mechanismKinds: readonly Mechanism["kind"][] = ["rack", "centre-rack", "steering-plate", "relay"];

export const combinations = linkageKinds.flatMap((linkage) =>
  mechanismKinds.map((mechanism) => ({ linkage, mechanism })),
);

/** What is random about a corner beside its drawing: a share of each of some lengths, -1 to 1. */
type Odds = readonly number[];
const odds: fc.Arbitrary<Odds> = fc.array(within(-1, 1), { minLength: 8, maxLength: 8 });

type Side<Kind extends Linkage["kind"]> = Extract<Linkage, { kind: Kind }>["left"];

function trailingArms({ arms }: CornerDrawing, [a, b, c, d]: Odds): Side<"trailing-arms"> {
  const { lowerJoint, upperJoint } = arms;
  return {
    lowerJoint,
    upperJoint,
    lowerPivot: plus(lowerJoint, point(220 + 50 * a, -60, 10 + 40 * b)),
    upperPivot: plus(upperJoint, point(210 + 50 * c, -60, 10 + 40 * d)),
  };
}

function strut({ arms }: CornerDrawing, [a, b, c, d]: Odds): Side<"strut"> {
  const { lowerFront, lowerRear, lowerJoint, upperJoint } = arms;
  const top = plus(upperJoint, point(20 * a - 15, -25 + 25 * b, 320 + 80 * c));
  const bottom = plus(upperJoint, point(25 * d, 15 + 30 * a, -20));
  return { lowerFront, lowerRear, lowerJoint, top, bottom };
}

function pivotingBeam({ arms }: CornerDrawing, [a, b, c, d]: Odds): Side<"pivoting-beam"> {
  const { lowerJoint, upperJoint } = arms;
  const middle = times(plus(lowerJoint, upperJoint), 0.5);
  const out = middle.y;
  return {
    lowerJoint,
    upperJoint,
    beamFront: point(middle.x + 30 * a, (-0.1 + 0.15 * b) * out, middle.z + 40 * c),
    beamRear: point(middle.x - (0.9 + 0.2 * d) * out, (0.45 + 0.2 * a) * out, middle.z + 60 * b),
  };
}

function linkageFor(kind: Linkage["kind"], corners: readonly CornerDrawing[], odds: readonly Odds[]): Linkage {
  const [left, right] = corners;
  switch (kind) {
    case "double-arm":
      return { kind, left: left.arms, right: right.arms };
    case "trailing-arms":
      return { kind, left: trailingArms(left, odds[0]), right: trailingArms(right, odds[1]) };
    case "strut":
      return { kind, left: strut(left, odds[0]), right: strut(right, odds[1]) };
    case "pivoting-beam":
      return { kind, left: pivotingBeam(left, odds[0]), right: pivotingBeam(right, odds[1]) };
    case "fixed-kingpin": {
      const pin = ({ arms: { lowerJoint, upperJoint } }: CornerDrawing) => ({ lowerJoint, upperJoint });
      return { kind, left: pin(left), right: pin(right) };
    }
  }
}

interface Steering {
  readonly mechanism: Mechanism;
  /** Each way from the middle, mm or rad. */
  readonly reach: number;
}

/** `reach` is how far the eyes are to go to each side, mm; tabs behind want them to go right for a left turn. */
function steeringFor(
  kind: Mechanism["kind"],
  [left, right]: readonly Point[],
  [a, b, c, d, e, f, g, h]: Odds,
  reach: number,
): Steering {
  const middle = point((left.x + right.x) / 2, (left.y - right.y) / 2, (left.z + right.z) / 2);
  switch (kind) {
    case "rack":
      return {
        mechanism: {
          kind,
          ahead: middle.x,
          up: middle.z,
          eyeToEye: left.y + right.y,
          offset: 60 * a,
          tilt: 0.05 * b,
          straightAhead: 8 * c,
        },
        reach,
      };
    case "centre-rack":
      return {
        mechanism: {
          kind,
          leftEye: point(left.x, 60 + 40 * a, left.z),
          rightEye: point(right.x, 60 + 40 * b, right.z),
          tilt: 0.05 * c,
          straightAhead: 8 * d,
        },
        reach,
      };
    case "steering-plate": {
      const swing = 0.6;
      const rake = 0.6 + 0.4 * a;
      const arm = (d < 0 ? -1 : 1) * (reach / Math.sin(swing));
      return {
        mechanism: {
          kind,
          foot: point(middle.x + arm * Math.sin(rake), middle.y + 10 * b, middle.z + arm * Math.cos(rake)),
          rake,
          leftEye: point(left.x + 5 * e, middle.y + 30 + 10 * c, middle.z + 8 * f),
          rightEye: point(right.x + 5 * g, 30 - middle.y, middle.z + 8 * h),
          straightAhead: 0.05 * c,
        },
        reach: swing,
      };
    }
    case "relay": {
      const swing = 0.5;
      const turn = (e < 0 ? -1 : 1) / (14 + 4 * f);
      const arm = (d < 0 ? -1 : 1) * (reach / Math.sin(swing));
      const half = 180 + 60 * a;
      const parallel = g < 0.3;
      const lean = point(0.15 * b, 0.15 * c, 1);
      const joint = (hand: number) => point(middle.x, middle.y + hand * half, middle.z);
      const pitmanJoint = joint(1);
      const idlerJoint = plus(joint(-1), point(10 * b, 0, 12 * c));
      // Eyes off the link's own line have a place only where the shafts are parallel.
      const onLink = (share: number) => plus(times(pitmanJoint, 1 - share), times(idlerJoint, share));
      const offLine = (hand: number, share: number) =>
        parallel ? plus(onLink(share), point(15 * h, 20 * hand, 12 * e)) : onLink(share);
      return {
        mechanism: {
          kind,
          pitmanPivot: plus(pitmanJoint, point(arm, 5 * h, 20)),
          pitmanAxis: lean,
          pitmanJoint,
          idlerPivot: plus(idlerJoint, point(arm * (1 + 0.05 * a), 5 * g, 20)),
          idlerAxis: parallel ? times(lean, 2) : point(-0.1 * c, 0.15 * b, 1),
          idlerJoint,
          leftEye: offLine(1, 0.1 + 0.1 * c),
          rightEye: offLine(-1, 0.9 + 0.1 * b),
          turn,
          straightAhead: (0.05 * d) / Math.abs(turn),
        },
        reach: swing / Math.abs(turn),
      };
    }
  }
}

/** Cars of one combination: sides unlike, cut to fit or with rods up to 3 mm off, drawn well away from their rods' dead points. */
export function carsOf(linkage: Linkage["kind"], mechanism: Mechanism["kind"]): fc.Arbitrary<Drawn> {
  return fc
    .tuple(within(450, 1000), fc.constantFrom(-1, 1))
    .chain(([out, tabs]) =>
      fc.record({
        corners: fc.tuple(cornerDrawing(out, tabs), cornerDrawing(out, tabs)),
        odds: fc.tuple(odds, odds, odds),
        rack: within(0.25, 0.5),
        travel: fc.tuple(within(40, 110), within(40, 110)),
        errors: fc.option(fc.tuple(within(-3, 3), within(-3, 3))),
      }),
    )
    .map(({ corners, odds, rack, travel: [droop, bump], errors }): Drawn => {
      const shortest = Math.min(...corners.map(({ corner }) => Math.abs(corner.tieRodOuter.x)));
      const { mechanism: steering, reach } = steeringFor(
        mechanism,
        corners.map(({ eye }) => eye),
        odds[2],
        rack * shortest,
      );
      const suspended = linkage !== "fixed-kingpin";
      const fitted: Drawn = {
        linkage: linkageFor(linkage, corners, odds),
        mechanism: steering,
        left: corners[0].corner,
        right: corners[1].corner,
        range: {
          inputLow: -reach,
          inputHigh: reach,
          travelLow: suspended ? -droop : 0,
          travelHigh: suspended ? bump : 0,
        },
      };
      if (errors === null) return fitted;
      const cut = (side: "left" | "right", error: number) => ({
        ...fitted[side],
        tieRodLength: cornerOf(fitted, side).rod + error,
      });
      return { ...fitted, left: cut("left", errors[0]), right: cut("right", errors[1]) };
    })
    .filter((drawn) =>
      sides.every((side) => {
        const corner = cornerOf(drawn, side);
        return rodSine(placesOf(corner, corner.drawn)) > 0.5;
      }),
    );
}
