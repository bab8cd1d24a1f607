import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { bodiesOf } from "../../src/measures/range/bodies.ts";
import { shockAt } from "../../src/measures/shock.ts";
import { standsOf, travelsOf } from "../../src/measures/shockTravel.ts";

import { at, head, studied } from "./carTexts.ts";

/**
 * A beam that pivots at (100, 300), seen from the front; the shock's foot 300 out on it, the wheel's centre 450, the top mount
 * 180 out of the pivot and 420 above it, mm. The king pin goes through the wheel's centre: steer does not move the shock.
 */
const beam = (shock: string, rack = "travel: 40") => `${head}
wheel-travel: { bump: 90, droop: 90 }
front:
  linkage: pivoting-beam
  both:
    beam: { pivot: ${at(0, 100, 300)}, brace: ${at(-500, 100, 300)} }
    king-pin: { lower: ${at(0, 550, 200)}, upper: ${at(0, 550, 400)} }
    tie-rod: { outer: ${at(-120, 540, 300)} }
    wheel: { center: ${at(0, 550, 300)} }
steering:
  mechanism: rack
  rack: { ahead: -130, up: 300, eye-to-eye: 300, ${rack} }
shock:
  left: { top: ${at(0, 280, 720)}, foot: ${at(0, 400, 300)}, on: beam, ${shock} }
`;

/** The wheel travel at which the shock is so long: L² = 300² + 180² + 420² − 600 (180 cos φ + 420 sin φ), z = 450 sin φ. */
function travelAt(length: number): number {
  const part = (300 ** 2 + 180 ** 2 + 420 ** 2 - length ** 2) / 600;
  return 450 * Math.sin(Math.asin(part / Math.hypot(180, 420)) - Math.atan2(180, 420));
}

function told(text: string) {
  const study = studied(text);
  const shock = study.car.sections.shock?.left ?? null;
  if (shock === null) throw new Error("the shock is given");
  const place = shockAt(bodiesOf(study, "left"), shock);
  return { study, shock, place, ...travelsOf(study, shock, standsOf(study, "left", place)) };
}

/** Ten millimetres halved 16 times, and half of that. */
const near = 10 / 2 ** 17 + 1e-9;

describe("the travels at which a shock's ends come", () => {
  test("are those of the triangle of pivot, top and foot", () => {
    // 486.00422 and 385.59230 long with the beam 10 degrees down and up; derived, plane trigonometry.
    const { bottoms, topsOut, whole } = told(beam("free-length: 486.00422, stroke: 100.41192"));
    const ten = 450 * Math.sin(Math.PI / 18);
    expect(travelAt(385.5923)).toBeCloseTo(ten, 4);
    expect(Math.abs((bottoms ?? Number.NaN) - travelAt(385.5923))).toBeLessThan(near);
    expect(Math.abs((topsOut ?? Number.NaN) - travelAt(486.00422))).toBeLessThan(near);
    expect(Math.abs((whole ?? Number.NaN) - 2 * ten)).toBeLessThan(2 * near + 1e-4);
  });

  test("of a shock that is too long or too short for ride height lie on the other side of it", () => {
    const short = told(beam("free-length: 420, stroke: 30"));
    expect(travelAt(420)).toBeGreaterThan(10);
    expect(Math.abs((short.topsOut ?? Number.NaN) - travelAt(420))).toBeLessThan(near);
    expect(Math.abs((short.bottoms ?? Number.NaN) - travelAt(390))).toBeLessThan(near);
    const long = told(beam("free-length: 500, stroke: 40"));
    expect(travelAt(460)).toBeLessThan(-10);
    expect(Math.abs((long.bottoms ?? Number.NaN) - travelAt(460))).toBeLessThan(near);
  });

  test("are not told where the file leaves a length out, nor where the beam cannot go", () => {
    expect(told(beam("stroke: 100"))).toMatchObject({ bottoms: null, topsOut: null, whole: null });
    const open = told(beam("free-length: 486.00422"));
    expect(open).toMatchObject({ bottoms: null, whole: null });
    expect(Math.abs((open.topsOut ?? Number.NaN) - travelAt(486.00422))).toBeLessThan(near);
    // Straight down or up the shock would be 742 and 138 mm long.
    expect(told(beam("free-length: 760, stroke: 374.4"))).toMatchObject({ topsOut: null, whole: null });
    expect(told(beam("free-length: 486, stroke: 360"))).toMatchObject({ bottoms: null, whole: null });
  });

  test("are those of the steering position at which they come first", () => {
    const moved = beam("free-length: 480, stroke: 95", "travel: { left: 10, right: 45 }")
      .replace("on: beam", "on: upright")
      .replace(`foot: ${at(0, 400, 300)}`, `foot: ${at(60, 500, 300)}`)
      .replace(`top: ${at(0, 280, 720)}`, `top: ${at(60, 400, 720)}`);
    const { study, place, bottoms, topsOut } = told(moved);
    const length = (rack: number, travel: number) => place(study.pose(rack, travel, travel), Pose.Left).length;
    const racks = Array.from({ length: 9 }, (_, i) => -45 + (55 * i) / 8);
    // At its ends the shock is as short, or as long, at one of the places, and at none shorter, or longer.
    expect(Math.min(...racks.map((rack) => length(rack, bottoms ?? 0)))).toBeCloseTo(385, 3);
    expect(Math.max(...racks.map((rack) => length(rack, topsOut ?? 0)))).toBeCloseTo(480, 3);
    // It is not at the rack's left end that it comes out first: the others count.
    const out = racks.map((rack) => length(rack, topsOut ?? 0));
    expect(Math.max(...out) - (out.at(-1) ?? Number.NaN)).toBeGreaterThan(0.1);
  });
});

test("a shock is not asked how it stands where its wheel does not", () => {
  const { study, place } = told(beam("free-length: 486, stroke: 100"));
  expect(standsOf(study, "left", place)(0, 600)).toBeNull();
  expect(standsOf(study, "left", place)(0, 50)?.length).toBeLessThan(436.9);
});
