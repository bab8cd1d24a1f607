import { describe, expect, test } from "vitest";
import { wheelFigures } from "../../src/measures/figures.ts";
import { pointsOf, sideAt } from "../../src/measures/points.ts";
import { steer } from "../../src/measures/steer.ts";
import type { Study } from "../../src/measures/study.ts";
import { expectClose } from "../close.ts";
import { at, head, studied } from "../measures/carTexts.ts";

// Car files against four-bars and arithmetic that know nothing of this program.

const degree = Math.PI / 180;

function steers(study: Study, input: number): readonly [left: number, right: number] {
  const pose = study.pose(input, 0, 0);
  return [steer(pose, sideAt("left")) / degree, steer(pose, sideAt("right")) / degree];
}

/** Upright king pins that many mm out. */
const uprightPins = (out: number) =>
  `king-pin: { lower: ${at(0, out, 200)}, upper: ${at(0, out, 400)} }
    wheel: { center: ${at(0, out + 120, 300)} }`;

describe("a steering plate on an upright column is a planar four-bar", () => {
  // Ground 100, crank 40, coupler 120, rocker 80, crank at 40°: rocker at 57.32488° (Norton, Design of Machinery, ch. 4
  // example, printed 57.33 [recalled from memory, not looked up again]; the further digits are derived). Four times as large.
  // The car is drawn with crank and rocker square to the ground line, so the column turns by 40 − 90 degrees.
  const text = `${head}front:
  linkage: fixed-kingpin
  both:
    ${uprightPins(400)}
    tie-rod: { outer: ${at(-320, 400, 300)}, length: 480 }
steering:
  mechanism: steering-plate
  steering-plate: { ahead: 0, up: 300, rake: 90, left-eye: ${at(-160, 0, 300)}, right-eye: ${at(-160, 0, 300)}, travel: 60 }
`;
  const study = studied(text);

  test("Norton's example", () => {
    expectClose(steers(study, -50 * degree)[0], 57.32488 - 90, { abs: 1e-5 });
  });

  test("and its mirror image on the other wheel", () => {
    expectClose(steers(study, 50 * degree)[1], 90 - 57.32488, { abs: 1e-5 });
  });
});

describe("a relay between two parallelograms is the steering trapezoid", () => {
  // A single tie rod from arm to arm is no mechanism of a car file. But a relay's own pitman arm, centre link and idler
  // arm are a four-bar; with king pins that each make a parallelogram with it, the wheels turn as the trapezoid's arms.
  // Outer for inner = 10, 20, 30, 40: derived, by loop closure, of the symmetric trapezoid w 2.4, d 0.4 (equation as in
  // Jazar, Vehicle Dynamics, ch. 7 [recalled from memory, not looked up again]). Half as large.
  const cases = [
    [6, [9.811, 19.2284, 28.1818, 36.5228]],
    [10, [9.6793, 18.7067, 26.995, 34.3545]],
    [14, [9.5414, 18.1737, 25.8124, 32.2576]],
    [18, [9.3961, 17.6248, 24.6231, 30.2032]],
    [22, [9.2418, 17.0557, 23.4174, 28.1683]],
  ] as const;

  test.each(cases)("arms %d degrees inward", (beta, outers) => {
    const back = -200 * Math.cos(beta * degree);
    const inward = 200 * Math.sin(beta * degree);
    const arm = (hand: number) =>
      `pivot: { ahead: 0, offset: ${hand * 600}, up: 300 }, joint: { ahead: ${back}, offset: ${hand * (600 - inward)}, up: 300 }`;
    const eye = at(back, 600 - inward, 300);
    const study = studied(`${head}front:
  linkage: fixed-kingpin
  both:
    ${uprightPins(900)}
    tie-rod: { outer: ${at(back, 900 - inward, 300)} }
steering:
  mechanism: relay
  relay: { pitman: { ${arm(1)} }, idler: { ${arm(-1)} }, left-eye: ${eye}, right-eye: ${eye}, ratio: 1, turns: with, travel: 45 }
`);
    outers.forEach((outer, i) => {
      const inner = 10 * (i + 1);
      expectClose(steers(study, inner * degree), [inner, outer], { abs: 1e-4 });
    });
  });
});

describe("a relay with two arms alike", () => {
  test("is the textbook parallelogram: the centre link goes round a circle without turning", () => {
    const study = studied(`${head}front:
  linkage: fixed-kingpin
  both:
    ${uprightPins(560)}
    tie-rod: { outer: ${at(-120, 540, 300)} }
steering:
  mechanism: relay
  relay:
    pitman: { pivot: { ahead: -20, offset: 250, up: 320 }, joint: { ahead: -170, offset: 250, up: 310 } }
    idler: { pivot: { ahead: -20, offset: -250, up: 320 }, joint: { ahead: -170, offset: -250, up: 310 } }
    left-eye: ${at(-180, 200, 305)}
    right-eye: ${at(-180, 200, 305)}
    ratio: 16
    turns: with
    travel: 480
`);
    for (const column of [-480, -200, 0, 100, 480]) {
      const swing = (column / 16) * degree;
      // An arm of 150 straight back, turned left by `swing`: it goes to the right and forward.
      const [ahead, left] = [150 * (1 - Math.cos(swing)), -150 * Math.sin(swing)];
      const pose = study.pose(column * degree, 0, 0);
      expectClose(pointsOf(pose, "left", 300)?.tieRodInner, [-180 + ahead, 200 + left, 305], { abs: 1e-9 });
      expectClose(pointsOf(pose, "right", 300)?.tieRodInner, [-180 + ahead, -200 + left, 305], { abs: 1e-9 });
    }
  });
});

describe("a fixed king pin is circle and sphere", () => {
  // The tab T turns about the pin through L along k: T(φ) = C + u cos φ + v sin φ, and |T − I|² = ℓ² is
  // A cos φ + B sin φ = D with A = 2 u·(I − C), B = 2 v·(I − C), D = |I − C|² + |u|² − ℓ². Of its two roots the one near 0.
  const lower = [12, 600, 200];
  const upper = [-18, 570, 400];
  const tab = [-115, 560, 260];
  const study = studied(`${head}front:
  linkage: fixed-kingpin
  both:
    king-pin: { lower: ${at(12, 600, 200)}, upper: ${at(-18, 570, 400)} }
    tie-rod: { outer: ${at(-115, 560, 260)} }
    wheel: { center: ${at(0, 680, 300)} }
steering:
  mechanism: rack
  rack: { ahead: -140, up: 275, eye-to-eye: 480, offset: 30, travel: 60 }
`);
  const minus = (a: readonly number[], b: readonly number[]) => a.map((each, i) => each - b[i]);
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, each, i) => sum + each * b[i], 0);
  const cross = ([a, b, c]: readonly number[], [x, y, z]: readonly number[]) => [
    b * z - c * y,
    c * x - a * z,
    a * y - b * x,
  ];

  test.each([-60, -25, 0, 10, 40, 60])("rack at %d mm", (rack) => {
    const pin = minus(upper, lower);
    const k = pin.map((each) => each / Math.hypot(...pin));
    const arm = minus(tab, lower);
    const along = dot(arm, k);
    const u = arm.map((each, i) => each - along * k[i]);
    const v = cross(k, u);
    const eye = (moved: number) => [-140, 30 + 240 + moved, 275];
    const fromCentre = minus(
      eye(rack),
      lower.map((each, i) => each + along * k[i]),
    );
    const rod = Math.hypot(...minus(tab, eye(0)));
    const [A, B] = [2 * dot(u, fromCentre), 2 * dot(v, fromCentre)];
    const D = dot(fromCentre, fromCentre) + dot(u, u) - rod * rod;
    const middle = Math.atan2(B, A);
    const off = Math.acos(D / Math.hypot(A, B));
    const turned = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle));
    const roots = [turned(middle + off), turned(middle - off)];
    const [phi] = roots.sort((a, b) => Math.abs(a) - Math.abs(b));
    // The spin axis (0, 1, 0) turned by φ about k (Rodrigues); heading square to it and level.
    const spin = [0, 1, 0];
    const turn = cross(k, spin);
    const a = spin.map(
      (each, i) => each * Math.cos(phi) + turn[i] * Math.sin(phi) + k[i] * dot(k, spin) * (1 - Math.cos(phi)),
    );
    expectClose(steers(study, rack)[0], Math.atan2(-a[0], a[1]) / degree, { abs: 1e-9 });
  });
});

describe("a strut as drawn is a double arm whose upper arm is square to it", () => {
  // The strut lets its own material point at the top mount move along the strut only. So does an upper arm that meets the
  // mount square to the strut, about an axis square to both: at the drawn pose the two are one mechanism to the first order.
  const common = `
    lower-arm: { front: ${at(140, 260, 245)}, rear: ${at(-160, 250, 240)}, joint: ${at(8, 600, 220)} }
    tie-rod: { outer: ${at(-120, 575, 300)} }
    wheel: { center: ${at(0, 670, 300)}, camber: -1, toe: 0.2 }`;
  const rack = `
steering:
  mechanism: rack
  rack: { ahead: -150, up: 330, eye-to-eye: 560, travel: 60 }
`;
  const travel = "wheel-travel: { bump: 80, droop: 80 }\n";
  const strut = studied(`${head}${travel}front:
  linkage: strut
  both:${common}
    strut: { top: ${at(-30, 540, 780)}, bottom: ${at(10, 570, 400)} }${rack}`);
  // The strut's direction is (-40, -30, 380). Square to it: r = (0, 380, 30), and the axis (-40, -30, 380) × r =
  // (-145300, 1200, -15200), which is (-145.3, 1.2, -15.2) for short.
  const pivot = (sign: number) => at(-30 - sign * 145.3, 540 - 380 + sign * 1.2, 780 - 30 - sign * 15.2);
  const doubleArm = studied(`${head}${travel}front:
  linkage: double-arm
  both:${common}
    upper-arm: { front: ${pivot(-1)}, rear: ${pivot(1)}, joint: ${at(-30, 540, 780)} }${rack}`);

  const read = (study: Study, id: string, at: number) =>
    wheelFigures.find((figure) => figure.id === id)?.read(study.pose(0, at, at), sideAt("left"), study) ?? Number.NaN;

  test.each([
    "bumpSteer",
    "camberGain",
    "instantCentreOut",
    "instantCentreUp",
    "caster",
    "kpi",
    "scrubRadius",
    "trail",
  ])("%s", (id) => {
    expectClose(read(strut, id, 0), read(doubleArm, id, 0), { rel: 1e-9 });
  });

  test("and they part with travel", () => {
    expect(Math.abs(read(strut, "camber", 60) - read(doubleArm, "camber", 60))).toBeGreaterThan(0.05 * degree);
  });
});
