import { describe, expect, test } from "vitest";
import type { Point } from "../../src/kinematics/drawn.ts";
import { drawnOf, settingOf } from "../../src/measures/front.ts";
import { noStops } from "../../src/measures/stops.ts";
import { expectClose } from "../close.ts";
import { point, radians } from "../oracles/vectors.ts";
import { carOf, head } from "./carTexts.ts";

/** What the kernel is given of cars of every linkage and mechanism: each number of the file where it belongs, left and right apart. */
const corner = `
    tie-rod: { outer: { ahead: -100, out: 500, up: 210 } }
    wheel: { center: { ahead: 1, out: 620, up: 300 }, camber: -1, toe: 0.5 }
`;
const rack =
  "rack: { ahead: -120, up: 215, eye-to-eye: 340, offset: -30, tilt: 2, straight-ahead: 3, travel: { left: 50, right: 60 } }";

/** A car whose left side has one joint of its own. */
const text = (linkage: string, both: string, own: string, mechanism = `mechanism: rack\n  ${rack}`, travel = true) =>
  `${head}${travel ? "wheel-travel: { bump: 70, droop: 80 }\n" : ""}front:
  linkage: ${linkage}
  both:
${both}${corner}  left: { ${own} }
steering:
  ${mechanism}
`;

const kingPin = `    king-pin: { lower: { ahead: 10, out: 560, up: 200 }, upper: { ahead: -10, out: 530, up: 380 } }`;
const pinned = { lowerJoint: point(10, 560, 200), upperJoint: point(-10, 530, 380) };

describe("every linkage's points stand where the kernel looks for them", () => {
  test.each<
    readonly [
      linkage: string,
      both: string,
      own: string,
      right: Readonly<Record<string, Point>>,
      left: Readonly<Record<string, Point>>,
    ]
  >([
    [
      "double-arm",
      `    lower-arm: { front: { ahead: 101, out: 102, up: 203 }, rear: { ahead: -104, out: 105, up: 206 }, joint: { ahead: 7, out: 558, up: 199 } }
    upper-arm: { front: { ahead: 91, out: 212, up: 353 }, rear: { ahead: -94, out: 215, up: 356 }, joint: { ahead: -8, out: 528, up: 379 } }`,
      "upper-arm: { joint: { up: 381 } }",
      {
        lowerFront: point(101, 102, 203),
        lowerRear: point(-104, 105, 206),
        lowerJoint: point(7, 558, 199),
        upperFront: point(91, 212, 353),
        upperRear: point(-94, 215, 356),
        upperJoint: point(-8, 528, 379),
      },
      { upperJoint: point(-8, 528, 381) },
    ],
    [
      "trailing-arms",
      `    lower-arm: { pivot: { ahead: 161, out: 452, up: 203 }, joint: { ahead: 7, out: 558, up: 199 } }
    upper-arm: { pivot: { ahead: 162, out: 453, up: 354 }, joint: { ahead: -8, out: 528, up: 349 } }`,
      "lower-arm: { pivot: { ahead: 170 } }",
      {
        lowerPivot: point(161, 452, 203),
        lowerJoint: point(7, 558, 199),
        upperPivot: point(162, 453, 354),
        upperJoint: point(-8, 528, 349),
      },
      { lowerPivot: point(170, 452, 203) },
    ],
    [
      "strut",
      `    lower-arm: { front: { ahead: 101, out: 202, up: 203 }, rear: { ahead: -104, out: 205, up: 206 }, joint: { ahead: 7, out: 558, up: 199 } }
    strut: { top: { ahead: -25, out: 500, up: 801 }, bottom: { ahead: 2, out: 540, up: 402 } }`,
      "strut: { top: { out: 501 } }",
      {
        lowerFront: point(101, 202, 203),
        lowerRear: point(-104, 205, 206),
        lowerJoint: point(7, 558, 199),
        top: point(-25, 500, 801),
        bottom: point(2, 540, 402),
      },
      { top: point(-25, 501, 801) },
    ],
    [
      "pivoting-beam",
      `    beam: { pivot: { ahead: 11, out: -152, up: 303 }, brace: { ahead: -904, out: 355, up: 306 } }
${kingPin}`,
      "beam: { brace: { out: 360 } }",
      { beamFront: point(11, -152, 303), beamRear: point(-904, 355, 306), ...pinned },
      { beamRear: point(-904, 360, 306) },
    ],
    ["fixed-kingpin", kingPin, "king-pin: { lower: { ahead: 12 } }", pinned, { lowerJoint: point(12, 560, 200) }],
  ])("%s", (kind, both, own, right, left) => {
    const { linkage } = drawnOf(carOf(text(kind, both, own, undefined, kind !== "fixed-kingpin")));
    expectClose(linkage, { kind, left: { ...right, ...left }, right }, { abs: 1e-9 });
  });
});

describe("every mechanism's numbers too", () => {
  const drawn = (steering: string) => drawnOf(carOf(text("fixed-kingpin", kingPin, "", steering, false)));
  const eyes = "left-eye: { ahead: -121, out: 32, up: 216 }, right-eye: { ahead: -122, out: 33, up: 217 }";
  const [leftEye, rightEye] = [point(-121, 32, 216), point(-122, 33, 217)];

  test("a rack's, which goes to the left as far as inputs get high, and to the right as far as they get low", () => {
    const { mechanism, range } = drawn(`mechanism: rack\n  ${rack}`);
    const places = { ahead: -120, up: 215, eyeToEye: 340, offset: -30, tilt: radians(2), straightAhead: 3 };
    expectClose(mechanism, { kind: "rack", ...places }, { abs: 1e-9 });
    expectClose(range, { inputLow: -60, inputHigh: 50, travelLow: 0, travelHigh: 0 }, { abs: 1e-9 });
  });

  test("those of a rack with its take-off in the middle, eyes in their own corners' frames", () => {
    const { mechanism } = drawn(
      `mechanism: rack\n  rack: { take-off: centre, ${eyes}, tilt: -2, straight-ahead: 4, travel: 40 }`,
    );
    const places = { leftEye, rightEye, tilt: radians(-2), straightAhead: 4 };
    expectClose(mechanism, { kind: "centre-rack", ...places }, { abs: 1e-9 });
  });

  test("a plate's, its column in degrees", () => {
    const { mechanism, range } = drawn(
      `mechanism: steering-plate\n  steering-plate: { ahead: -90, offset: 5, up: 260, rake: 40, ${eyes}, straight-ahead: 6, travel: 35 }`,
    );
    const places = { foot: point(-90, 5, 260), rake: radians(40), leftEye, rightEye, straightAhead: radians(6) };
    expectClose(mechanism, { kind: "steering-plate", ...places }, { abs: 1e-9 });
    expectClose([range.inputLow, range.inputHigh], [-radians(35), radians(35)], { abs: 1e-9 });
  });

  test.each([
    ["with", 1],
    ["against", -1],
  ])("a relay's, all in the car's frame, whose pitman arm turns %s the column", (turns, sign) => {
    const { mechanism } = drawn(`mechanism: relay
  relay:
    pitman: { pivot: { ahead: -51, offset: 252, up: 303 }, joint: { ahead: -154, offset: 255, up: 246 }, lean-back: 10, lean-left: 5 }
    idler: { pivot: { ahead: -57, offset: -258, up: 309 }, joint: { ahead: -160, offset: -261, up: 252 }, lean-back: 10, lean-left: 5 }
    left-eye: { ahead: -151, out: 132, up: 246 }
    right-eye: { ahead: -152, out: 133, up: 247 }
    ratio: 16
    turns: ${turns}
    straight-ahead: 8
    travel: 480`);
    const shaft = point(-Math.tan(radians(10)), Math.tan(radians(5)), 1);
    const places = {
      pitmanPivot: point(-51, 252, 303),
      pitmanAxis: shaft,
      pitmanJoint: point(-154, 255, 246),
      idlerPivot: point(-57, -258, 309),
      idlerAxis: shaft,
      idlerJoint: point(-160, -261, 252),
      leftEye: point(-151, 132, 246),
      rightEye: point(-152, -133, 247),
      turn: sign / 16,
      straightAhead: radians(8),
    };
    expectClose(mechanism, { kind: "relay", ...places }, { abs: 1e-9 });
  });
});

describe("a corner and its setting", () => {
  const arms = `    king-pin: { lower: { ahead: 10, out: 560, up: 200 }, upper: { ahead: -10, out: 530, up: 380 } }
    beam: { pivot: { ahead: 11, out: 100, up: 303 }, brace: { ahead: -904, out: 355, up: 306 } }`;
  const own = "tie-rod: { outer: { up: 213 }, length: 320 }, wheel: { center: { out: 621 }, camber: 2, toe: -0.25 }";

  test("a rod whose length the file gives is as cut, the other one is to be cut", () => {
    const { left, right } = drawnOf(carOf(text("pivoting-beam", arms, own)));
    const drawnRight = {
      tieRodOuter: point(-100, 500, 210),
      tieRodLength: null,
      wheelCenter: point(1, 620, 300),
      camber: radians(-1),
      toe: radians(0.5),
    };
    const drawnLeft = {
      tieRodOuter: point(-100, 500, 213),
      tieRodLength: 320,
      wheelCenter: point(1, 621, 300),
      camber: radians(2),
      toe: radians(-0.25),
    };
    expectClose(right, drawnRight, { abs: 1e-9 });
    expectClose(left, drawnLeft, { abs: 1e-9 });
  });

  test("wheel travel is the file's where there is suspension, and none where king pins are fixed", () => {
    const sprung = carOf(text("pivoting-beam", arms, own));
    const same = {
      wheelbase: 2000,
      tireRadius: 300,
      inputKind: "rack",
      inputTravel: { left: 50, right: 60 },
      stops: noStops,
    };
    expectClose(
      settingOf(sprung),
      { ...same, noTravel: null, suspended: true, wheelTravel: { bump: 70, droop: 80 } },
      { abs: 1e-9 },
    );
    expectClose(
      settingOf(carOf(text("fixed-kingpin", kingPin, "", undefined, false))),
      { ...same, noTravel: "fixed", suspended: false, wheelTravel: { bump: 0, droop: 0 } },
      { abs: 1e-9 },
    );
    const assumed = { numbers: sprung.numbers, form: { ...sprung.form, travelIsAssumed: true } };
    expectClose(
      settingOf(assumed),
      { ...same, noTravel: "assumed", suspended: false, wheelTravel: { bump: 0, droop: 0 } },
      { abs: 1e-9 },
    );
    const { range } = drawnOf(sprung);
    expectClose(range, { inputLow: -60, inputHigh: 50, travelLow: -80, travelHigh: 70 }, { abs: 1e-9 });
  });

  test("a column is turned, a rack is moved", () => {
    const plate =
      "steering-plate: { ahead: -90, up: 260, rake: 40, left-eye: { ahead: -121, out: 32, up: 216 }, right-eye: { ahead: -121, out: 32, up: 216 }, travel: 35 }";
    const setting = settingOf(carOf(text("pivoting-beam", arms, own, `mechanism: steering-plate\n  ${plate}`)));
    expect(setting.inputKind).toBe("column");
    expectClose(setting.inputTravel, { left: radians(35), right: radians(35) }, { abs: 1e-9 });
  });

  test("a form that no list has is a fault of the program, told at once", () => {
    const car = carOf(text("pivoting-beam", arms, own));
    const form = { ...car.form, mechanism: "none" as typeof car.form.mechanism };
    expect(() => settingOf({ ...car, form })).toThrow("no mechanism is called none");
  });
});
