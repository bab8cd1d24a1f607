import { levenbergMarquardt } from "ml-levenberg-marquardt";
import type { Point } from "../../src/kinematics/drawn.ts";
import { armsOf, type DoubleArmCar, drawnPlaces, fittedRod, innerEye, type Places, type SideName } from "./corner.ts";
import { distance, minus, plus, point, rotated, unit } from "./vectors.ts";

/**
 * A second independent solution: the upright as one rigid body with six unknowns, its lower joint's place and a rotation vector from the drawn
 * pose (Rodrigues' formula), and six loop equations, in mm: the four arm lengths, the tie rod's, and the height of the wheel centre. They are
 * brought to nothing by a general least-squares library (Levenberg-Marquardt), in a number of equal steps from the drawn pose.
 *
 * The answer is to be trusted only where the residual it returns is next to nothing.
 */
export interface Fitted {
  readonly places: Places;
  /** The largest loop equation left over, mm. */
  readonly residual: number;
}

export function fitPose(drawn: DoubleArmCar, side: SideName, input: number, travel: number, steps = 8): Fitted {
  const arms = armsOf(drawn, side);
  const start = drawnPlaces(drawn, side);
  const fitted = fittedRod(drawn, side);
  const rod = drawn[side].tieRodLength ?? fitted;
  const from = drawn.mechanism.straightAhead;

  const placesAt = (unknowns: readonly number[], eye: Point): Places => {
    const lower = plus(start.lower, point(unknowns[0], unknowns[1], unknowns[2]));
    const turn = point(unknowns[3], unknowns[4], unknowns[5]);
    const carried = (place: Point) => plus(lower, rotated(minus(place, start.lower), turn));
    return {
      lower,
      upper: carried(start.upper),
      tieRodOuter: carried(start.tieRodOuter),
      tieRodInner: eye,
      wheelCenter: carried(start.wheelCenter),
      spin: unit(rotated(start.spin, turn)),
    };
  };

  let unknowns: number[] = [0, 0, 0, 0, 0, 0];
  let residuals: number[] = [];
  for (let step = 1; step <= steps; step++) {
    const share = step / steps;
    const eye = innerEye(drawn, side, from + (input - from) * share);
    const rodNow = fitted + (rod - fitted) * share;
    const height = start.wheelCenter.z + travel * share;
    const left = (values: readonly number[]): number[] => {
      const { lower, upper, tieRodOuter, wheelCenter } = placesAt(values, eye);
      return [
        distance(lower, arms.lowerFront) - distance(start.lower, arms.lowerFront),
        distance(lower, arms.lowerRear) - distance(start.lower, arms.lowerRear),
        distance(upper, arms.upperFront) - distance(start.upper, arms.upperFront),
        distance(upper, arms.upperRear) - distance(start.upper, arms.upperRear),
        distance(tieRodOuter, eye) - rodNow,
        wheelCenter.z - height,
      ];
    };
    const { parameterValues } = levenbergMarquardt(
      { x: [0, 1, 2, 3, 4, 5], y: [0, 0, 0, 0, 0, 0] },
      (values) => {
        const equations = left(values);
        return (which) => equations[which];
      },
      {
        initialValues: unknowns,
        damping: 1e-6,
        gradientDifference: [1e-3, 1e-3, 1e-3, 1e-6, 1e-6, 1e-6],
        centralDifference: true,
        maxIterations: 60,
        errorTolerance: 1e-24,
      },
    );
    unknowns = [...parameterValues];
    residuals = left(unknowns);
  }
  return {
    places: placesAt(unknowns, innerEye(drawn, side, input)),
    residual: Math.max(...residuals.map(Math.abs)),
  };
}
