import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { wheelFigures } from "../../src/measures/figures.ts";
import { hangOf, uprightOn, whyNoUpright, withUpright } from "../../src/vehicle/hang.ts";
import { type Hang, hung, type Upright, uprightOf } from "../../src/vehicle/upright.ts";
import { expectClose } from "../close.ts";
import { carOf, presetText, studied } from "../measures/carTexts.ts";
import { between } from "../measures/plausibleCars.ts";
import { seed } from "../oracles/cars.ts";
import { cross, distance, dot, minus, plus, point, radians, times, type Vector } from "../oracles/vectors.ts";

const upright: fc.Arbitrary<Upright> = fc.record({
  jointToJoint: between(120, 260),
  spindleUp: between(30, 150),
  spindleLean: between(-0.05, 0.3),
  spindleAhead: between(-25, 25),
  wheelOut: between(20, 140),
  tabBack: between(-130, 130),
  tabIn: between(-40, 60),
  tabUp: between(-40, 120),
});

const hang: fc.Arbitrary<Hang> = fc.record({
  lower: fc.constant([5, 540, 180] as const),
  camber: between(radians(-6), radians(6)),
  caster: between(radians(-5), radians(20)),
  toe: between(radians(-3), radians(3)),
});

/** The spindle's direction in a corner, ahead, out, up: turned by toe about the vertical from one that leans by camber. */
function spindle({ camber, toe }: Pick<Hang, "camber" | "toe">): Vector {
  const leaned = point(0, Math.cos(camber), -Math.sin(camber));
  return point(Math.sin(toe) * leaned.y, Math.cos(toe) * leaned.y, leaned.z);
}

function placesOf(each: Upright, how: Hang) {
  const stand = hung(each, how);
  if (stand === null) throw new Error("it does not hang");
  const at = ([x, y, z]: readonly [number, number, number]) => point(x, y, z);
  const [lower, upper, wheel, tab] = [stand.lower, stand.upper, stand.wheelCenter, stand.tab].map(at) as [
    Vector,
    Vector,
    Vector,
    Vector,
  ];
  return { stand, lower, upper, wheel, tab, along: plus(wheel, times(spindle(how), 100)) };
}

describe("an upright hung at a wanted camber and caster", () => {
  it("has them, and that toe, by its places alone", () => {
    fc.assert(
      fc.property(upright, hang, (each, how) => {
        const { lower, upper, stand } = placesOf(each, how);
        const k = minus(upper, lower);
        expectClose(Math.atan2(-k.x, k.z), how.caster, { abs: 1e-12 });
        expectClose(Math.atan2(-k.y, k.z), stand.inclination, { abs: 1e-12 });
        // The spindle's lean from square to the king-pin line is the upright's own.
        expectClose(-dot(k, spindle(how)) / each.jointToJoint, Math.sin(each.spindleLean), { abs: 1e-12 });
      }),
      { seed },
    );
  });

  it("is one rigid part, however it hangs: every distance and its hand are kept", () => {
    fc.assert(
      fc.property(upright, hang, hang, (each, one, other) => {
        const [a, b] = [placesOf(each, one), placesOf(each, other)];
        const names = ["lower", "upper", "wheel", "tab", "along"] as const;
        for (const from of names)
          for (const to of names) expectClose(distance(a[from], a[to]), distance(b[from], b[to]), { abs: 1e-9 });
        const hand = ({ lower, upper, tab, along }: typeof a) =>
          dot(cross(minus(upper, lower), minus(along, lower)), minus(tab, lower));
        expectClose(hand(a), hand(b), { rel: 1e-9, abs: 1e-3 });
      }),
      { seed },
    );
  });

  it("is on the bench again what it was", () => {
    fc.assert(
      fc.property(upright, hang, (each, how) => {
        const stand = hung(each, how);
        if (stand === null) throw new Error("it does not hang");
        expectClose(uprightOf(stand, how), each, { abs: 1e-9 });
      }),
      { seed },
    );
  });

  it("has its inclination and camber add up to the spindle's lean, without toe and caster", () => {
    // Included angle, the handbooks' sum of inclination and camber [recalled, not looked up again].
    const each: Upright = {
      jointToJoint: 200,
      spindleUp: 90,
      spindleLean: radians(9),
      spindleAhead: 0,
      wheelOut: 80,
      tabBack: 100,
      tabIn: 20,
      tabUp: 10,
    };
    for (const camber of [-2, 0, 1.5]) {
      const how = { lower: [0, 500, 160], camber: radians(camber), caster: 0, toe: 0 } as const;
      expectClose(hung(each, how)?.inclination, radians(9 - camber), { abs: 1e-12 });
    }
    // Camber 0: the line leans in by 9 degrees, the spindle is level. By hand with sines and cosines of 9 degrees.
    const [s, c] = [0.156434465, 0.987688341];
    const stand = hung(each, { lower: [0, 500, 160], camber: 0, caster: 0, toe: 0 });
    expectClose(stand?.upper, [0, 500 - 200 * s, 160 + 200 * c], { abs: 1e-5 });
    expectClose(stand?.wheelCenter, [0, 500 - 90 * s + 80, 160 + 90 * c], { abs: 1e-5 });
    // The hole: 10 up the line, 20 in square to it, 100 back.
    expectClose(stand?.tab, [-100, 500 - 10 * s - 20 * c, 160 + 10 * c - 20 * s], { abs: 1e-5 });
  });

  it("does not hang where its spindle would have to point up the king-pin line", () => {
    const steep = { jointToJoint: 200, spindleUp: 90, spindleLean: radians(80), spindleAhead: 0, wheelOut: 80 };
    const tab = { tabBack: 100, tabIn: 20, tabUp: 10 };
    expect(hung({ ...steep, ...tab }, { lower: [0, 500, 160], camber: radians(-15), caster: 0, toe: 0 })).toBeNull();
  });
});

const two = ["balanced-two-seater", "widened-offset-rack", "cut-rods-off-middle", "rack-ahead", "twin-beam-relay"];

describe("a car's uprights", () => {
  it("stay where they are when they are hung as they hang", () => {
    for (const name of [...two, "torsion-beam-steering-plate", "fixed-kingpin-yard-kart"])
      for (const wheel of ["left", "right"] as const) {
        const car = carOf(presetText(name));
        const same = withUpright(car, wheel, { ...uprightOn(car, wheel), caster: hangOf(car, wheel).caster });
        expect(same, `${name} ${wheel}`).toEqual({ text: car.text });
      }
  });

  it("read as they were hung by the figures of the whole car, on both sides", () => {
    const figure = (name: string, id: string, text: string) =>
      (["left", "right"] as const).map((wheel) => {
        const study = studied(text);
        const read = wheelFigures.find((each) => each.id === id)?.read;
        const value = read?.(study.pose(study.zero ?? 0, 0, 0), wheel === "left" ? Pose.Left : Pose.Right, study);
        if (value === null || value === undefined) throw new Error(`${name} has no ${id}`);
        return value;
      });
    for (const name of two) {
      const car = carOf(presetText(name));
      const made = withUpright(car, "both", { ...uprightOn(car, "left"), camber: radians(-1.25), caster: radians(8) });
      if ("complaint" in made) throw new Error(made.complaint);
      // Places are written to a thousandth of an inch: of an upright of 5 in that is 0.02 degrees at most.
      for (const value of figure(name, "caster", made.text)) expectClose(value, radians(8), { abs: radians(0.02) });
      for (const value of figure(name, "camber", made.text)) expectClose(value, radians(-1.25), { abs: radians(0.02) });
      const after = carOf(made.text);
      expectClose(uprightOn(after, "left"), uprightOn(car, "left"), { abs: 0.05 });
      expectClose(uprightOn(after, "right"), uprightOn(car, "left"), { abs: 0.05 });
    }
  });

  it("are changed on one side alone where that is meant, comments kept", () => {
    const car = carOf(presetText("widened-offset-rack"));
    const made = withUpright(car, "right", { tabBack: 120 });
    if ("complaint" in made) throw new Error(made.complaint);
    expect(uprightOn(carOf(made.text), "left")).toEqual(uprightOn(car, "left"));
    expectClose(uprightOn(carOf(made.text), "right").tabBack, 120, { abs: 0.05 });
    expect(made.text).toContain("# loaded radius");
  });

  it("are none where a strut carries the wheel, and that is said", () => {
    const car = carOf(presetText("strut-hatchback-corners"));
    expect(whyNoUpright(car)).toContain("no upper joint");
    expect(withUpright(car, "both", { caster: 0.1 })).toHaveProperty("complaint");
  });
});
