import { describe, test } from "vitest";
import { camberGain } from "../../src/measures/camber.ts";
import { instantCentre } from "../../src/measures/instantCentre.ts";
import { rollCentre, rollCentreHeight } from "../../src/measures/rollCentre.ts";
import { expectClose } from "../close.ts";
import { frontOf, solved, startOf } from "../oracles/kernel.ts";
import { alike, type Plan, planarArms } from "../oracles/known.ts";
import { degrees, point } from "../oracles/vectors.ts";

/**
 * Front view of planar arms: the instant centre where the arms' lines cross, the roll centre where the line from it to the contact crosses the
 * centreline. Form: Reimpell, "The Automotive Chassis" [recalled from memory, not looked up again]; values derived [D].
 */
const radius = 330;

function frontView(lower: readonly [Plan, Plan], upper: readonly [Plan, Plan], contactOut: number): Float64Array {
  const [[[innerOut, innerUp], [outerOut, outerUp]]] = [lower];
  return solved(
    frontOf(
      alike({
        arms: planarArms(lower, upper),
        // Parallel and equal to the lower arm: the upright stays in the plane.
        inner: point(-110, innerOut, innerUp),
        outer: point(-110, outerOut, outerUp),
        wheelCenter: point(0, contactOut, radius),
        rack: 50,
        travel: 80,
      }),
    ),
    0,
    0,
  );
}

describe("the front view of two arms", () => {
  const poses = frontView(
    [
      [300, 250],
      [700, 200],
    ],
    [
      [350, 400],
      [650, 450],
    ],
    750,
  );

  test("lower (300, 250) to (700, 200), upper (350, 400) to (650, 450), contact 750", () => {
    for (const side of ["left", "right"] as const) {
      expectClose(instantCentre(poses, startOf(side), radius), { out: -185.71429, up: 310.71429 }, { abs: 1e-5 });
      // Swing arm 935.71429 mm: the camber changes by a radian over it.
      expectClose(degrees(camberGain(poses, startOf(side))), -0.0612321, { abs: 1e-7 });
    }
    expectClose(rollCentre(poses, 0, radius), { y: 0, z: 249.0458 }, { abs: 1e-5 });
  });

  test.each([
    { slope: -0.05, height: 37.5 },
    { slope: 0, height: 0 },
  ])("parallel arms sloping $slope outward, contact 750: roll centre $height", ({ slope, height }) => {
    const arm = (up: number): readonly [Plan, Plan] => [
      [300, up],
      [680, up + slope * 380],
    ];
    expectClose(rollCentreHeight(frontView(arm(250), arm(430), 750), 0, radius), height, { abs: 1e-9 });
  });
});
