import { describe, expect, test } from "vitest";
import { lineRoom, pointToRing, type Ring, segmentToRing } from "../../../src/measures/range/distance.ts";

/** Distances from a tyre and a rim's barrel that can be worked out by hand: beside, over and inside them. */
const tyre: Ring = { inner: 150, outer: 310, half: 110, round: 40 };
const barrel: Ring = { inner: 150, outer: 150, half: 75, round: 0 };

describe("a place", () => {
  test.each([
    ["beside the sidewall's middle", 230, 150, 40],
    ["on its other side", 230, -150, 40],
    ["beside the sidewall, where its flat ends", 270, 115, 5],
    ["beside the sidewall, near the bead", 200, 112, 2],
    ["over the tread's middle", 400, 0, 90],
    ["over the tread, where its flat ends", 330, -70, 20],
    // The edge's round is about (270, 70): 60 and 80 from it are 100, less its 40.
    ["off the tread's edge", 330, 150, 60],
    // About (190, 70) on the inside: 30 and 40 are 50, less 40.
    ["off the bead's edge", 160, 110, 10],
    ["in the hole, square to the barrel", 100, 0, 50],
    ["on the axis", 0, 0, 150],
    ["inside, as near to the tread as to the bead", 230, 0, -80],
    ["inside, nearest to the sidewall", 230, 100, -10],
    ["inside, nearest to the tread", 300, 0, -10],
    ["on the sidewall", 230, 110, 0],
  ])("of a tyre: %s", (_, radius, along, expected) => {
    expect(pointToRing(tyre, radius, along)).toBeCloseTo(expected, 12);
  });

  test.each([
    ["inside it", 120, 0, 30],
    ["outside it", 180, 60, 30],
    ["on it", 150, 20, 0],
    ["in its line, beyond its edge", 150, 100, 25],
    // 30 inward and 40 beyond the edge.
    ["beyond its edge", 120, -115, 50],
  ])("of a rim's barrel: %s", (_, radius, along, expected) => {
    expect(pointToRing(barrel, radius, along)).toBeCloseTo(expected, 12);
  });
});

describe("a bar", () => {
  // The wheel's axis is y through (0, 0, 300).
  const wheel = Float64Array.of(0, 0, 300, 0, 1, 0);
  const from = (segment: readonly number[], ring: Ring) =>
    segmentToRing(Float64Array.from(segment), 0, ring, wheel, 0, 3, lineRoom());

  test.each([
    // Starts and spans: level, 230 behind the axis and 20 inboard of the sidewall.
    ["beside the sidewall, upright past its middle", [-230, -130, 280, 0, 0, 40], tyre, 20],
    ["that ends short of the sidewall", [-230, -400, 300, 0, 265, 0], tyre, 25],
    ["that starts short of it", [-230, 200, 300, 0, 300, 0], tyre, 90],
    ["over the tread, along the axis", [0, -300, 650, 0, 600, 0], tyre, 40],
    ["through the hole, along the axis", [0, -300, 300, 0, 600, 0], tyre, 150],
    ["through the hole, along the barrel", [100, -300, 300, 0, 600, 0], barrel, 50],
    ["into the tyre, as deep as it goes", [-230, -400, 300, 0, 800, 0], tyre, -80],
    ["of no length", [0, 0, 700, 0, 0, 0], tyre, 90],
  ])("%s", (_, segment, ring, expected) => {
    // 28 golden steps bring a stretch of 50 mm below 1e-4 mm.
    expect(Math.abs(from(segment, ring) - expected)).toBeLessThan(1e-4);
  });
});
