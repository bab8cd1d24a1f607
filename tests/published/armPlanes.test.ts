import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contactRateOut, contactRateUp } from "../../src/measures/frontView.ts";
import { rollCentre } from "../../src/measures/rollCentre.ts";
import { expectClose } from "../close.ts";
import { armPlanes, contactOf, cutAtWheel } from "../oracles/armPlanes.ts";
import { posed, seed } from "../oracles/cars.ts";
import { type DoubleArmCar, drawnPlaces, sides } from "../oracles/corner.ts";
import { frontOf, placesIn, solved, startOf } from "../oracles/kernel.ts";
import { spatialCar } from "../oracles/known.ts";
import { minus, plus, times } from "../oracles/vectors.ts";

/**
 * The roll centre by the planes of the arms, against the product's, which goes by the rates of a solved pose. The
 * construction is Reimpell's (The Automotive Chassis [M]) carried into space [D].
 */
const radius = 330;

/** Height of the place on the centreline where the line from the contact to (out, up) meets it. */
const onCentreline = (contact: { y: number; z: number }, out: number, up: number) =>
  contact.z + ((up - contact.z) * contact.y) / (contact.y - out);

describe("the spatial double arm as drawn [D]", () => {
  const at = drawnPlaces(spatialCar, "left");
  const planes = armPlanes(spatialCar, "left", at);
  const contact = contactOf(at, radius);

  test("the contact moves so that the roll centre is 187.385 mm up, as the product says", () => {
    const { y, z } = planes.velocity(contact);
    const height = contact.z + (y * contact.y) / z;
    expectClose(height, 187.385, { abs: 1e-3 });
    expectClose(rollCentre(solved(frontOf(spatialCar), 0, 0), 0, radius), { y: 0, z: height }, { abs: 1e-7 });
  });

  test("the planes cut at the wheel's section give 185.618 mm, which is another definition", () => {
    const centre = cutAtWheel(planes, at.wheelCenter.x);
    expectClose(onCentreline(contact, centre.y, centre.z), 185.618, { abs: 1e-3 });
  });

  test("both are one where the tie rod aims at the line in which the planes meet", () => {
    const aim = cutAtWheel(planes, -115);
    const way = minus(aim, at.tieRodOuter);
    const inner = plus(at.tieRodOuter, times(way, (270 - at.tieRodOuter.y) / way.y));
    const aimed: DoubleArmCar = {
      ...spatialCar,
      mechanism: { ...spatialCar.mechanism, ahead: inner.x, up: inner.z, eyeToEye: 2 * inner.y },
    };
    const centre = cutAtWheel(planes, at.wheelCenter.x);
    const height = onCentreline(contact, centre.y, centre.z);
    expectClose(rollCentre(solved(frontOf(aimed), 0, 0), 0, radius), { y: 0, z: height }, { abs: 1e-7 });
  });
});

test("on random cars, at any rack and travel, the contact moves as the planes of the arms say", () => {
  let told = 0;
  fc.assert(
    fc.property(posed(0.8), ({ drawn, input, left, right }) => {
      const poses = solved(frontOf(drawn), input, left, right);
      for (const side of sides) {
        const at = placesIn(poses, side);
        if (at === null) continue;
        const { y, z } = armPlanes(drawn, side, at).velocity(contactOf(at, radius));
        const start = startOf(side);
        const found = [contactRateOut(poses, start, radius), contactRateUp(poses, start, radius)];
        // Planes that are nearly one, and rods near their dead point, lose some of the sixteen digits.
        expectClose(found, [y, z], { abs: 1e-8, rel: 1e-8 }, side);
        told++;
      }
    }),
    { seed, endOnFailure: true },
  );
  expect(told).toBeGreaterThan(100);
});
