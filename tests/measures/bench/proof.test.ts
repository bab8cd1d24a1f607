import { describe, expect, test } from "vitest";
import { Pose } from "../../../src/kinematics/slots.ts";
import { bumpProof, proofPlaces, steerProof } from "../../../src/measures/bench/proof.ts";
import { camber } from "../../../src/measures/camber.ts";
import { steer } from "../../../src/measures/steer.ts";
import { toe } from "../../../src/measures/toe.ts";
import { presetText, studied } from "../carTexts.ts";

const inch = 25.4;
const car = presetText("widened-offset-rack");
const wheels = [
  ["left", Pose.Left],
  ["right", Pose.Right],
] as const;

const inInches = (places: readonly number[]) => places.map((mm) => Number((mm / inch).toFixed(6)));

describe("places to prove a car at", () => {
  test("are the marks of a tape between the ends, at most nine of them, and a board of 24 in or 600 mm", () => {
    const { board, inputs, travels } = proofPlaces(studied(car), "in");
    expect(board).toBe(24 * inch);
    expect(inInches(inputs)).toEqual([-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2]);
    expect(inInches(travels)).toEqual([-3, -2, -1, 0, 1, 2, 3]);
    const metric = proofPlaces(studied(car), "mm");
    expect(metric.board).toBe(600);
    // 101.6 mm are more than nine marks of 10: they are 20 apart; 152.4 are more than nine of 10 too.
    expect(metric.inputs.map((mm) => mm.toFixed(1))).toEqual([
      "-50.8",
      "-40.0",
      "-20.0",
      "0.0",
      "20.0",
      "40.0",
      "50.8",
    ]);
    expect(metric.travels.map((mm) => mm.toFixed(1))).toEqual([
      "-76.2",
      "-60.0",
      "-40.0",
      "-20.0",
      "0.0",
      "20.0",
      "40.0",
      "60.0",
      "76.2",
    ]);
  });

  test("have straight ahead among them, and no mark within a third of a step of it or of an end", () => {
    const study = { ...studied(car), zero: 0.3 * inch };
    expect(inInches(proofPlaces(study, "in").inputs)).toEqual([-2, -1.5, -1, -0.5, 0, 0.3, 0.5, 1, 1.5, 2]);
    const near = { ...study, zero: 0.1 * inch };
    expect(inInches(proofPlaces(near, "in").inputs)).toEqual([-2, -1.5, -1, -0.5, 0.1, 0.5, 1, 1.5, 2]);
    const acting = { ...study.acting, left: { ...study.acting.left, at: 1.6 * inch } };
    expect(inInches(proofPlaces({ ...study, zero: null, acting }, "in").inputs)).toEqual([
      -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.6,
    ]);
    expect(inInches(proofPlaces({ ...study, zero: -3 * inch }, "in").inputs)).toEqual([
      -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2,
    ]);
    // Beyond an end it is no place to go to.
    expect(inInches(proofPlaces({ ...study, zero: 3 * inch }, "in").inputs)).toEqual([
      -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2,
    ]);
  });

  test("of a column are degrees, and of a kart without suspension no travels", () => {
    const { inputs, travels } = proofPlaces(studied(presetText("fixed-kingpin-yard-kart")), "mm");
    expect(inputs.map((rad) => ((rad * 180) / Math.PI).toFixed(6))).toEqual([
      "-35.000000",
      "-30.000000",
      "-20.000000",
      "-10.000000",
      "0.000000",
      "10.000000",
      "20.000000",
      "30.000000",
      "35.000000",
    ]);
    expect(travels).toEqual([]);
  });
});

describe("readings to prove a car by", () => {
  const text = car.replace("toe: 0.1", "toe: 1.5");
  const study = studied(text);
  const places = proofPlaces(study, "in");
  const b = 24 * inch;

  test("steering: turned from straight ahead, and a board's ends come in or out by its length times the sine", () => {
    const rows = steerProof(study, places);
    expect(rows.map(({ input }) => input)).toEqual(places.inputs);
    const straight = study.pose(study.zero ?? Number.NaN, 0, 0);
    for (const row of rows) {
      const poses = study.pose(row.input, 0, 0);
      for (const [wheel, side] of wheels) {
        const [now, then] = [steer(poses, side), steer(straight, side)];
        expect(row.turned[wheel]).toBeCloseTo(now - then, 12);
        expect(row.board[wheel]).toBeCloseTo(b * Math.sin(now) - b * Math.sin(then), 9);
      }
    }
  });

  test("travel: toe against ride height, over the board and across the tyre, and camber", () => {
    const zero = study.zero ?? Number.NaN;
    const rows = bumpProof(study, places);
    expect(rows.map(({ travel }) => travel)).toEqual(places.travels);
    const ride = study.pose(zero, 0, 0);
    for (const row of rows) {
      const poses = study.pose(zero, row.travel, row.travel);
      for (const [wheel, side] of wheels) {
        const [now, then] = [toe(poses, side), toe(ride, side)];
        expect(row.toe[wheel]).toBeCloseTo(now - then, 12);
        expect(row.board[wheel]).toBeCloseTo(b * Math.sin(now) - b * Math.sin(then), 9);
        // The tyre of this car is 10.75 in to its middle.
        expect(row.acrossTyre[wheel]).toBeCloseTo(2 * 10.75 * inch * Math.sin(now - then), 9);
        expect(row.camber[wheel]).toBeCloseTo(camber(poses, side), 12);
      }
    }
    expect(Math.max(...rows.map(({ toe: { left } }) => Math.abs(left ?? 0)))).toBeGreaterThan(1e-3);
  });

  test("are none of steering where the wheels cannot be set straight, and none for one that does not reach", () => {
    expect(steerProof({ ...study, zeroSteer: null }, places)).toEqual([]);
    // 65 mm to the right the left rod is too short at ride height, and reaches 60 mm up.
    const [far] = steerProof(studied(car), { ...places, inputs: [-65] });
    expect([far?.turned.left, far?.board.left]).toEqual([null, null]);
    expect([far?.turned.right, far?.board.right].map(Number.isFinite)).toEqual([true, true]);
    const [up] = bumpProof({ ...studied(car), zero: -65 }, { ...places, travels: [60] });
    expect([up?.toe.left, up?.board.left, up?.acrossTyre.left]).toEqual([null, null, null]);
    expect([up?.toe.right, up?.board.right, up?.acrossTyre.right, up?.camber.left].map(Number.isFinite)).toEqual([
      true,
      true,
      true,
      true,
    ]);
    const drawnOff = { ...studied(car), zero: null, straightAhead: 7 };
    expect(bumpProof(drawnOff, places)[0]?.camber.left).toBeCloseTo(
      camber(drawnOff.pose(7, -3 * inch, -3 * inch), Pose.Left),
      12,
    );
    expect(bumpProof(studied(presetText("fixed-kingpin-yard-kart")), places)).toEqual([]);
  });
});
