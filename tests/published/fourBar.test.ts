import { describe, test } from "vitest";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { expectClose } from "../close.ts";
import { frontOf, pointIn, startOf } from "../oracles/kernel.ts";
import { alike, type Plan, planarArms } from "../oracles/known.ts";
import { degrees, point, radians } from "../oracles/vectors.ts";

/**
 * Planar four-bars through the real solver. The front view of a double arm on axes that run fore and aft is a four-bar: the lower arm is the
 * input a, the king pin the coupler b, the upper arm the output c, and the line between the arms' axes the ground d. A tie rod parallel and equal to
 * the upper arm keeps the upright in the plane, and a wheel centre straight behind the lower joint makes wheel travel the input's height.
 *
 * A four-bar's plane is laid into the front view with the ground line upright: along it is up, across it is outboard.
 */
interface FourBar {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

const inner = 500;
const lowerAxis = 300;

/** Joints of a four-bar at an input angle, rad, drawn by two circles; `side` picks the open (+1) or the crossed (-1) of the two ways. */
function joints({ a, b, c, d }: FourBar, input: number, side: number): readonly [Plan, Plan] {
  const [x, y] = [a * Math.cos(input), a * Math.sin(input)];
  const [dx, dy] = [d - x, -y];
  const apart = Math.hypot(dx, dy);
  const along = (apart * apart + b * b - c * c) / (2 * apart);
  const off = side * Math.sqrt(b * b - along * along);
  const coupled: Plan = [x + (along * dx - off * dy) / apart, y + (along * dy + off * dx) / apart];
  return [[x, y], coupled];
}

function drawnAs(bar: FourBar, input: number, side: number): Drawn {
  const laid = ([along, across]: Plan): Plan => [inner + across, lowerAxis + along];
  const [lower, upper] = joints(bar, input, side).map(laid);
  return alike({
    arms: planarArms([[inner, lowerAxis], lower], [[inner, lowerAxis + bar.d], upper]),
    inner: point(-120, inner, lowerAxis + bar.d),
    outer: point(-120, ...upper),
    wheelCenter: point(-50, ...lower),
    rack: 10,
    travel: bar.a / 4,
  });
}

/** The output's and the coupler's angle, deg, when the solver has brought the input from `from` to `to`, rad. */
function anglesAt(bar: FourBar, side: number, from: number, to: number): { output: number; coupler: number } {
  const poses = newPoses(1);
  const travel = bar.a * (Math.cos(to) - Math.cos(from));
  solve(frontOf(drawnAs(bar, from, side)), 0, travel, travel, poses, 0);
  const at = startOf("left");
  if (poses[at + Side.Blame] !== Link.None) throw new Error("the four-bar does not close");
  const lower = pointIn(poses, at + Side.Lower);
  const upper = pointIn(poses, at + Side.Upper);
  return {
    output: degrees(Math.atan2(upper.y - inner, upper.z - lowerAxis - bar.d)),
    coupler: degrees(Math.atan2(upper.y - lower.y, upper.z - lower.z)),
  };
}

describe("Freudenstein's equation K1 cos t4 - K2 cos t2 + K3 = cos(t2 - t4) (1955)", () => {
  // Cases: Norton, "Design of Machinery", ch. 4 example (printed 57.33, 20.30, -98.01, -60.98) and problem 4-1 row a (printed 117.3, 88.8)
  // [recalled from memory, not looked up again]; the third [D]. The further digits are derived [D].
  const cases = [
    { bar: { d: 100, a: 40, b: 120, c: 80 }, input: 40, open: [57.32488, 20.29788], crossed: [-98.00496, -60.97797] },
    { bar: { d: 6, a: 2, b: 7, c: 9 }, input: 30, open: [117.28607, 88.83724], crossed: [-143.65964, -115.21081] },
    { bar: { d: 100, a: 40, b: 90, c: 70 }, input: 45, open: [83.20001, 27.2605], crossed: [-126.248, -70.30848] },
  ];
  describe.each(cases)("ground $bar.d, input $bar.a, coupler $bar.b, output $bar.c at $input deg", (it) => {
    test.each(["open", "crossed"] as const)("%s, drawn 20 deg either side of it", (way) => {
      const [output, coupler] = it[way];
      for (const off of [-20, 20]) {
        const found = anglesAt(it.bar, way === "open" ? 1 : -1, radians(it.input + off), radians(it.input));
        expectClose(found, { output, coupler }, { abs: 1e-5 }, `drawn at ${it.input + off} deg`);
      }
    });
  });
});

describe("the symmetric steering trapezoid: king pins 2.4 m apart, arms 0.4 m, inward by beta", () => {
  // sin(b + di) + sin(b - do) = w/d - sqrt((w/d - 2 sin b)^2 - (cos(b - do) - cos(b + di))^2): Jazar, "Vehicle Dynamics", ch. 7 [recalled
  // from memory, not looked up again]; outer angles for inner 10, 20, 30, 40 deg derived [D].
  const table: [beta: number, outer: number[]][] = [
    [6, [9.811, 19.2284, 28.1818, 36.5228]],
    [10, [9.6793, 18.7067, 26.995, 34.3545]],
    [14, [9.5414, 18.1737, 25.8124, 32.2576]],
    [18, [9.3961, 17.6248, 24.6231, 30.2032]],
    [22, [9.2418, 17.0557, 23.4174, 28.1683]],
  ];
  test.each(table)("beta %d", (beta, outer) => {
    // The inner arm is the input, square to the ground line at beta 0 and turned toward the other king pin by beta.
    const bar = { a: 400, c: 400, d: 2400, b: 2400 - 2 * 400 * Math.sin(radians(beta)) };
    const found = [10, 20, 30, 40].map((turn) => {
      const { output } = anglesAt(bar, 1, radians(90 - beta), radians(90 - beta - turn));
      return output - 90 - beta;
    });
    expectClose(
      found.map((turn) => -turn),
      outer,
      { abs: 1e-4 },
    );
  });
});
