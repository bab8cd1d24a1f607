import { describe, expect, it } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { steer } from "../../src/measures/steer.ts";
import { noStops } from "../../src/measures/stops.ts";
import type { Study } from "../../src/measures/study.ts";
import { expectClose } from "../close.ts";
import { endOf, offsetCar, setting, withRods } from "./cars.ts";
import { presetText, studied } from "./carTexts.ts";

const text = presetText("balanced-two-seater");

function withStops(stops: string): Study {
  return studied(`${text}\nstops: ${stops}\n`);
}

const degrees = (angle: number | null | undefined) => ((angle ?? Number.NaN) * 180) / Math.PI;

describe("what stops the steering", () => {
  it("is the rack's own end where a file says nothing", () => {
    const study = studied(text);
    expect(study.acting.left).toMatchObject({ kind: "end", wheel: null });
    expectClose(study.inputTravel, { left: 2.125 * 25.4, right: 2.125 * 25.4 }, { abs: 1e-12 });
  });

  it("is a collar, which shortens the lock at its end of the rack only", () => {
    const study = withStops("{ collar: { left: 1/8, right: 0 } }");
    expect(study.acting.left.kind).toBe("collar");
    expect(study.acting.right.kind).toBe("end");
    expectClose(study.inputTravel.left, 2 * 25.4, { abs: 1e-9 });
    // The rack goes right for a left turn here: the collar at its left end takes from the right lock. The same lock
    // as a car whose rack ends there.
    const shorter = studied(text.replace('travel: "2 1/8"', "travel: { left: 2, right: 2 1/8 }"));
    expectClose(study.locks.right?.inner, shorter.locks.right?.inner, { abs: 1e-9 });
    expect(study.locks.left?.inner).toBe(studied(text).locks.left?.inner);
  });

  it("is the upright's stop at exactly the turn that it is set to, of the wheel that it is on", () => {
    const study = withStops("{ upright: { inner: { left: 28, right: 80 } } }");
    expectClose(degrees(study.locks.left?.inner), 28, { abs: 1e-9 });
    expect(study.acting.right).toMatchObject({ kind: "upright", wheel: "left" });
    expectClose(degrees(study.locks.right?.inner), degrees(studied(text).locks.right?.inner), { abs: 1e-9 });
  });

  it("is a tyre that rubs as the outer wheel, when that comes first; the least of all decides", () => {
    const study = withStops("{ tyre-rub: { outer: 20 }, upright: { inner: 30 }, collar: 0.01 }");
    expect(study.acting.left).toMatchObject({ kind: "tyreRub", wheel: "left" });
    expect(study.acting.right).toMatchObject({ kind: "tyreRub", wheel: "right" });
    expectClose(degrees(study.locks.left?.outer), 20, { abs: 1e-9 });
    expectClose(degrees(study.locks.right?.outer), 20, { abs: 1e-9 });
  });

  it("is no stop that stands beyond where the rods still reach", () => {
    const far = text.replace('travel: "2 1/8"', "travel: 4");
    const study = studied(`${far}\nstops: { upright: { inner: 70 } }\n`);
    expect(study.acting.left).toMatchObject({ kind: "end", wheel: null });
    expect(study.worst.blame?.gap).toBe(studied(far).worst.blame?.gap);
    expect(study.worst.blame).not.toBeNull();
  });

  it("is looked for at every travel where the whole range is asked: a wheel that bump turns back meets its stop later", () => {
    const study = studied(`${presetText("widened-offset-rack")}\nstops: { upright: { inner: 28 } }\n`);
    const turned = (input: number, travel: number, of: number, zero: number) =>
      Math.abs(degrees(steer(study.pose(input, travel, travel), of) - zero));
    const zeros = study.zeroSteer ?? { left: Number.NaN, right: Number.NaN };
    const { right, left } = study.furthestInput;
    expect(right).toBeGreaterThan(study.inputTravel.right);
    // With the tab behind the king pin the rack goes right for a left turn, whose inner wheel is the left. Beyond the furthest place no travel has a wheel short of its stop; at it, one has it just there.
    const travels = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1].map((share) => share * 3 * 25.4);
    expectClose(Math.min(...travels.map((z) => turned(-right, z, Pose.Left, zeros.left))), 28, { abs: 1e-6 });
    expectClose(Math.min(...travels.map((z) => turned(left, z, Pose.Right, zeros.right))), 28, { abs: 1e-6 });
  });

  it("is not what the wheels never reach", () => {
    expect(withStops("{ upright: { inner: 60 } }").acting.left.kind).toBe("end");
  });

  it("holds on a car that is steered by its column", () => {
    const relay = presetText("twin-beam-relay");
    const study = studied(`${relay}\nstops: { upright: { inner: 25 } }\n`);
    expectClose(degrees(study.locks.left?.inner), 25, { abs: 1e-9 });
    expectClose(degrees(study.locks.right?.inner), 25, { abs: 1e-9 });
  });

  it("acts a hair before the rack's end too, on a car whose wheels stand straight off the rack's middle", () => {
    const car = presetText("cut-rods-off-middle");
    const { left, right } = studied(car).locks;
    expect(Math.abs(studied(car).zero ?? 0)).toBeGreaterThan(1);
    // A tenth of a degree is far less than one of the places that are looked at on the way.
    const [toLeft, toRight] = [degrees(left?.inner) - 0.1, degrees(right?.inner) - 0.1];
    const study = studied(`${car}\nstops: { upright: { inner: { left: ${toLeft}, right: ${toRight} } } }\n`);
    expectClose([degrees(study.locks.left?.inner), degrees(study.locks.right?.inner)], [toLeft, toRight], {
      abs: 1e-9,
    });
    expect([study.acting.left.kind, study.acting.right.kind]).toEqual(["upright", "upright"]);
  });

  it("is the first that is met, whatever else is met further on", () => {
    const study = withStops("{ upright: { inner: 20 }, tyre-rub: { inner: 25, outer: 24 }, collar: 0.01 }");
    expect(study.acting.left).toMatchObject({ kind: "upright", wheel: "right" });
    expect(study.acting.right).toMatchObject({ kind: "upright", wheel: "left" });
    expectClose(degrees(study.locks.left?.inner), 20, { abs: 1e-9 });
  });

  it("is none by turns on a car without a place where the wheels stand straight", () => {
    const { left, right } = endOf(offsetCar).rodLengths;
    const stops = { ...noStops, upright: { inner: { left: 0.1, right: 0.1 }, outer: { left: 0.1, right: 0.1 } } };
    const end = endOf(withRods(offsetCar, left + 40, right - 40), {
      ...setting,
      inputTravel: { left: 5, right: 5 },
      stops,
    });
    expect([end.zero, end.acting.left.kind, end.acting.right.kind]).toEqual([null, "end", "end"]);
  });
});
