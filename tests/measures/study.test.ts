import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { carFigures } from "../../src/measures/carFigures.ts";
import { drawnOf, settingOf } from "../../src/measures/front.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import type { Car } from "../../src/vehicle/car.ts";
import { quantities } from "../../src/vehicle/quantities.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { expectClose } from "../close.ts";
import { endOf, inch, offsetCar, setting } from "./cars.ts";
import { exampleText } from "./exampleText.ts";
import { notFinite } from "./notFinite.ts";

function carOf(text: string): Car {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints.map((complaint) => complaint.message).join("; "));
  return car;
}

function studied(text: string): Study {
  const study = studyOf(carOf(text));
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

const withLengths = (left: string, right: string) =>
  exampleText.replace(
    "  both:",
    `  left: { tie-rod: { length: ${left} } }\n  right: { tie-rod: { length: ${right} } }\n  both:`,
  );

describe("from a car file to the kernel", () => {
  test("every number of the file stands where the kernel looks for it", () => {
    const car = carOf(exampleText);
    expectClose(drawnOf(car), offsetCar, { abs: 1e-9 });
    expectClose(settingOf(car), setting, { abs: 1e-9 });
  });

  test("a rod length in the file makes that rod cut, the other one fitted", () => {
    const drawn = drawnOf(carOf(exampleText.replace("  both:", "  left: { tie-rod: { length: 16 } }\n  both:")));
    expectClose(drawn.left.tieRodLength, 16 * inch, { abs: 1e-9 });
    expect(drawn.right.tieRodLength).toBeNull();
  });
});

describe("a study", () => {
  test("is the same front end as the one drawn in numbers", () => {
    const [study, end] = [studied(exampleText), endOf(offsetCar)];
    expectClose(study.rodLengths, end.rodLengths, { abs: 1e-9 });
    expectClose([study.track, study.kingPinSpacing, study.zero], [end.track, end.kingPinSpacing, 0], { abs: 1e-9 });
  });

  test("works each part out once", () => {
    const study = studied(exampleText);
    expect(study.worst).toBe(study.worst);
    expect(study.locks).toBe(study.locks);
    expect(study.steerTable()).toBe(study.steerTable());
    expect(study.bumpTable(3)).toBe(study.bumpTable(3));
    expect(study.bumpTable(3)).not.toBe(study.bumpTable(4));
  });

  test("its poses are buffers of their own", () => {
    const study = studied(exampleText);
    const [one, other] = [study.pose(10, 20, -30), study.pose(0, 0, 0)];
    expect(one[Pose.Left + Side.Input]).toBe(10);
    expect([one[Pose.Left + Side.Travel], one[Pose.Right + Side.Travel]]).toEqual([20, -30]);
    expect(other[Pose.Left + Side.Input]).toBe(0);
  });

  test("tables take spans of their own", () => {
    const study = studied(exampleText);
    expect(study.steerTable({ from: 0, to: inch, rows: 3 }).rows.map((row) => row.input)).toEqual([0, inch / 2, inch]);
    expect(study.bumpTable(0, { from: -inch, to: 0, rows: 2 })?.rows.map((row) => row.travel)).toEqual([-inch, 0]);
  });

  test("steers backwards when the wheel turned left moves the rack the way that turns the wheels right", () => {
    // Tabs behind the steering axis: the rack must go right for the wheels to go left.
    expect(studied(exampleText).steersBackwards).toBe(false);
    expect(studied(exampleText.replace("moves: right", "moves: left")).steersBackwards).toBe(true);
    expect(studied(exampleText.replace(", wheel-left-moves: right", "")).steersBackwards).toBeNull();
  });

  test("with rods as they were fitted stands as it was drawn, whatever the file says of straight ahead", () => {
    const drawn = studied(exampleText);
    const cut = studied(withLengths(`${drawn.rodLengths.left} mm`, `${drawn.rodLengths.right} mm`));
    // The kernel brings a wheel's height within about 1e-8 mm, which a tie rod's slope hands on to the zero.
    expectClose(cut.zero, 0, { abs: 1e-7 });
    expectClose(cut.locks.difference.inner, drawn.locks.difference.inner, { abs: 1e-9 });
  });
});

describe("a car that cannot stand", () => {
  test("says which link does not reach and by how much, in the file's units", () => {
    const study = studyOf(carOf(withLengths("15.782", "5")));
    expect(study).toMatchObject({
      refused: expect.stringMatching(/^At rack 0, travel 0 .* right tie rod is \d+\.\d\d in too short\.$/),
    });
  });

  test("says how much too long a rod is", () => {
    const study = studyOf(carOf(withLengths("24", "10.797")));
    expect(study).toMatchObject({ refused: expect.stringMatching(/left tie rod is \d+\.\d\d in too long\.$/) });
  });

  test("a gap is the length that is missing: that much more, and the rod reaches", () => {
    const study = studyOf(carOf(withLengths("15.782", "5")));
    const missing = Number("refused" in study ? /is ([\d.]+) in/.exec(study.refused)?.[1] : Number.NaN);
    expect("refused" in studyOf(carOf(withLengths("15.782", String(5 + missing - 0.02))))).toBe(true);
    expect("refused" in studyOf(carOf(withLengths("15.782", String(5 + missing + 0.02))))).toBe(false);
  });

  test("a drawing that is no mechanism is refused in words", () => {
    // The tab halfway between the rack's eye (-5.5, 6.5, 8.625) and (-0.25, 20.9, 10.5), the middle of the king pin.
    const study = studyOf(
      carOf(
        exampleText
          .replace("{ ahead: -4.5, out: 19.75, up: 8.5 }", "{ ahead: -2.875, out: 13.7, up: 9.5625 }")
          .replace("offset: -2.5", "offset: 0"),
      ),
    );
    expect(study).toMatchObject({
      refused: expect.stringMatching(
        /^The front end cannot work as drawn: the left tie rod is drawn on its dead point/,
      ),
    });
  });
});

describe("cars as they come", () => {
  /** The example with every length of it moved by up to `most` mm. */
  const moved = (most: number) =>
    fc
      .tuple(
        fc.array(fc.double({ min: -most, max: most, noNaN: true }), {
          minLength: quantities.length,
          maxLength: quantities.length,
        }),
        fc.constantFrom("fit" as const, "cut" as const),
        fc.constantFrom("fit" as const, "cut" as const),
      )
      .map(([by, left, right]) => {
        const car = carOf(withLengths("15.782", "10.797"));
        const numbers = car.numbers.map((value, i) => (quantities[i].kind === "length" ? value + by[i] : value));
        return { ...car, numbers, form: { ...car.form, rods: { left, right } } };
      });

  test.each([5, 60, 400])("every answer is a finite number, null or a sentence, lengths off by up to %d mm", (most) => {
    fc.assert(
      fc.property(moved(most), fc.double({ min: -1e4, max: 1e4, noNaN: true }), (car, far) => {
        const study = studyOf(car);
        if ("refused" in study) {
          expect(study.refused).toMatch(/^[A-Z][^N]*\.$/);
          return;
        }
        const answers = {
          steer: study.steerTable(),
          further: study.steerTable({ from: -far, to: far, rows: 5 }),
          bump: study.bumpTable(study.zero ?? 0),
          atFar: study.bumpTable(far),
          locks: study.locks,
          worst: study.worst,
          zero: [study.zero, study.zeroSteer, study.rodLengths, study.track, study.kingPinSpacing],
          figures: carFigures.map((figure) => [figure.id, figure.read(study)]),
        };
        expect(notFinite(answers)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});
