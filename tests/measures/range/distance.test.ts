import RAPIER from "@dimforge/rapier3d-compat";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import type { Point } from "../../../src/kinematics/drawn.ts";
import {
  lineRoom,
  pointToRing,
  type Ring,
  segmentToRing,
  segmentToSegment,
} from "../../../src/measures/range/distance.ts";
import { cross, distance, dot, length, minus, plus, point, times, unit } from "../../oracles/vectors.ts";

/**
 * Distances between bars, rims and tyres, held against brute force (a minimum over many places, which can miss the true one
 * by no more than half their spacing) and against the collision shapes of a general-purpose physics library, Rapier
 * (capsules, and cylinders with rounded edges). That library counts in single precision.
 */
beforeAll(async () => {
  await RAPIER.init();
});

interface Segment {
  readonly from: Point;
  readonly to: Point;
}

const coordinate = fc.double({ min: -400, max: 400, noNaN: true });
const place = fc.tuple(coordinate, coordinate, coordinate).map(([x, y, z]) => point(x, y, z));
const segments: fc.Arbitrary<Segment> = fc
  .record({ from: place, to: place })
  .filter(({ from, to }) => distance(from, to) > 20);
const axes = place.filter((p) => length(p) > 1).map(unit);

function buffered({ from, to }: Segment): Float64Array {
  const span = minus(to, from);
  return Float64Array.of(from.x, from.y, from.z, span.x, span.y, span.z);
}

const alongSegment = ({ from, to }: Segment, t: number): Point => plus(from, times(minus(to, from), t));

/** Two directions that are square to a unit vector and to each other. */
function squareTo(a: Point): readonly [Point, Point] {
  const u = unit(cross(a, Math.abs(a.z) < 0.9 ? point(0, 0, 1) : point(1, 0, 0)));
  return [u, cross(a, u)];
}

/** The quaternion that turns the y axis, along which Rapier's capsules and cylinders lie, into a unit vector. */
function fromY(a: Point) {
  const w = 1 + a.y;
  // Turned end for end, the shapes are the same: of a and −a the one that is nearer to y keeps clear of a division by 0.
  if (w < 1) return fromY(times(a, -1));
  const size = Math.hypot(w, a.z, a.x);
  return { w: w / size, x: a.z / size, y: 0, z: -a.x / size };
}

/** The library's distance of two shapes, as deep as they may overlap and as far as they may be apart. */
function libraryDistance(
  a: { shape: RAPIER.Shape; middle: Point; axis: Point },
  b: { shape: RAPIER.Shape; middle: Point; axis: Point },
): number {
  const contact = a.shape.contactShape(a.middle, fromY(a.axis), b.shape, b.middle, fromY(b.axis), 1e4);
  if (contact === null) throw new Error("the library found no contact");
  return contact.distance;
}

function capsule(segment: Segment, radius: number) {
  return {
    shape: new RAPIER.Capsule(distance(segment.from, segment.to) / 2, radius),
    middle: alongSegment(segment, 0.5),
    axis: unit(minus(segment.to, segment.from)),
  };
}

/**
 * How far the library may be off. It counts in single precision, 24 bits: places up to 1000 mm are good to 6e-5 mm, and some
 * tens of operations on them to a few hundredths at most. Its search for the nearest places stops once its bounds differ by
 * √(10 ε), ε = 2⁻²³, of the distance between the shapes without their roundings: a thousandth of it.
 */
const slack = (apart: number) => 0.02 + Math.sqrt(10 * 2 ** -23) * apart;

describe("segment to segment", () => {
  test("is the least of all pairs of places on both, to their spacing", () => {
    const places = 160;
    fc.assert(
      fc.property(segments, segments, (a, b) => {
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= places; i++) {
          const p = alongSegment(a, i / places);
          for (let j = 0; j <= places; j++) least = Math.min(least, distance(p, alongSegment(b, j / places)));
        }
        const spacing = (distance(a.from, a.to) + distance(b.from, b.to)) / (2 * places);
        const ours = segmentToSegment(buffered(a), 0, buffered(b), 0);
        // Lines within 1e-6 of parallel count as parallel: either end may then stand for the nearest place.
        const turn = 1e-6 * distance(a.from, a.to);
        expect(ours).toBeLessThanOrEqual(least + turn + 1e-9);
        expect(ours).toBeGreaterThanOrEqual(least - spacing);
      }),
      { numRuns: 60 },
    );
  });

  test("less both radii is a general library's distance of two capsules", () => {
    fc.assert(
      fc.property(segments, segments, (a, b) => {
        const apart = segmentToSegment(buffered(a), 0, buffered(b), 0);
        fc.pre(apart > 9 + 14);
        const theirs = libraryDistance(capsule(a, 9), capsule(b, 14));
        expect(Math.abs(apart - 9 - 14 - theirs)).toBeLessThan(slack(apart));
      }),
      { numRuns: 400 },
    );
  });

  test.each([
    ["crossing", [0, 0, 0, 10, 0, 0], [5, -5, 3, 0, 10, 0], 3],
    ["side by side", [0, 0, 0, 10, 0, 0], [4, 3, 4, 10, 0, 0], 5],
    ["in one line, end to end", [0, 0, 0, 10, 0, 0], [12, 0, 0, 5, 0, 0], 2],
    ["one of no length", [0, 0, 0, 10, 0, 0], [5, 0, 7, 0, 0, 0], 7],
    ["both of no length", [0, 0, 0, 0, 0, 0], [1, 2, 2, 0, 0, 0], 3],
    ["touching", [0, 0, 0, 10, 0, 0], [5, 0, 0, 0, 5, 0], 0],
  ])("%s", (_, a, b, expected) => {
    expect(segmentToSegment(Float64Array.from(a), 0, Float64Array.from(b), 0)).toBeCloseTo(expected, 12);
    expect(segmentToSegment(Float64Array.from(b), 0, Float64Array.from(a), 0)).toBeCloseTo(expected, 12);
  });
});

const tyre: Ring = { inner: 150, outer: 310, half: 110, round: 40 };
const rim: Ring = { inner: 150, outer: 150, half: 75, round: 0 };

/** Places all over a ring's surface in its own frame (radius, along): its half section gone around, none further apart than `spacing`. */
function outline({ inner, outer, half, round }: Ring, spacing: number): readonly (readonly [number, number])[] {
  const places: [number, number][] = [];
  const line = (fr: number, fz: number, tr: number, tz: number) => {
    const steps = Math.max(Math.ceil(Math.hypot(tr - fr, tz - fz) / spacing), 1);
    for (let i = 0; i <= steps; i++) places.push([fr + ((tr - fr) * i) / steps, fz + ((tz - fz) * i) / steps]);
  };
  const corner = (r: number, z: number, from: number) => {
    const steps = Math.ceil((round * Math.PI) / 2 / spacing);
    for (let i = 0; i <= steps && round > 0; i++) {
      const angle = from + (i * Math.PI) / 2 / steps;
      places.push([r + round * Math.cos(angle), z + round * Math.sin(angle)]);
    }
  };
  for (const z of [-half, half]) line(inner + round, z, outer - round, z);
  for (const r of [inner, outer]) line(r, round - half, r, half - round);
  corner(outer - round, half - round, 0);
  corner(inner + round, half - round, Math.PI / 2);
  corner(inner + round, round - half, Math.PI);
  corner(outer - round, round - half, (3 * Math.PI) / 2);
  return places;
}

/** Least distance of many places on a segment from many on a ring's surface. */
function sampled(segment: Segment, ring: Ring, middle: Point, axis: Point, spacing: number): number {
  const [u, v] = squareTo(axis);
  const section = outline(ring, spacing);
  const around = Math.ceil((2 * Math.PI * ring.outer) / spacing);
  const steps = Math.ceil(distance(segment.from, segment.to) / spacing);
  // In the ring's own frame, u and v in its plane and the third along its axis: a turn of it moves nothing.
  const own = (p: Point) => [dot(minus(p, middle), u), dot(minus(p, middle), v), dot(minus(p, middle), axis)] as const;
  const [from, to] = [own(segment.from), own(segment.to)];
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= steps; k++) {
    const t = k / steps;
    const [x, y, z] = from.map((each, i) => each + (to[i] - each) * t);
    for (let i = 0; i < around; i++) {
      const [c, s] = [Math.cos((i * 2 * Math.PI) / around), Math.sin((i * 2 * Math.PI) / around)];
      for (const [r, w] of section) {
        const [dx, dy, dz] = [x - r * c, y - r * s, z - w];
        least = Math.min(least, dx * dx + dy * dy + dz * dz);
      }
    }
  }
  return Math.sqrt(least);
}

describe.each([
  ["tyre", tyre],
  ["rim's barrel", rim],
])("segment to %s", (_, ring) => {
  test("is the least over places all over both, to their spacing", () => {
    const spacing = 12;
    fc.assert(
      fc.property(segments, place, axes, (segment, middle, axis) => {
        const buffer = Float64Array.of(middle.x, middle.y, middle.z, axis.x, axis.y, axis.z);
        const ours = segmentToRing(buffered(segment), 0, ring, buffer, 0, 3, lineRoom());
        fc.pre(ours > 0);
        const least = sampled(segment, ring, middle, axis, spacing);
        expect(ours).toBeLessThanOrEqual(least + 1e-3);
        // Half the spacing along the segment, and half a cell's diagonal on the surface.
        expect(ours).toBeGreaterThanOrEqual(least - spacing / 2 - spacing / Math.SQRT2);
      }),
      { numRuns: 25 },
    );
  });

  test("is no more than that of any of its own places, as close as they are told apart", () => {
    const places = 4000;
    fc.assert(
      fc.property(segments, place, axes, (segment, middle, axis) => {
        const buffer = Float64Array.of(middle.x, middle.y, middle.z, axis.x, axis.y, axis.z);
        const ours = segmentToRing(buffered(segment), 0, ring, buffer, 0, 3, lineRoom());
        let least = Number.POSITIVE_INFINITY;
        for (let k = 0; k <= places; k++) {
          const off = minus(alongSegment(segment, k / places), middle);
          least = Math.min(least, pointToRing(ring, length(cross(off, axis)), dot(off, axis)));
        }
        // A stretch between two first places is at most a 12th of the segment's 1400 mm, and 28 golden steps bring it below 2e-4 mm.
        expect(ours).toBeLessThanOrEqual(least + 2e-4);
        expect(ours).toBeGreaterThanOrEqual(least - distance(segment.from, segment.to) / places / 2);
      }),
      { numRuns: 400 },
    );
  });

  test("where nothing is nearer than what is enough, any distance above that will do; else it is exact", () => {
    fc.assert(
      fc.property(
        segments,
        place,
        axes,
        fc.double({ min: 0, max: 300, noNaN: true }),
        (segment, middle, axis, enough) => {
          const buffer = Float64Array.of(middle.x, middle.y, middle.z, axis.x, axis.y, axis.z);
          const exact = segmentToRing(buffered(segment), 0, ring, buffer, 0, 3, lineRoom());
          const quick = segmentToRing(buffered(segment), 0, ring, buffer, 0, 3, lineRoom(), enough);
          if (exact < enough) expect(quick).toBeCloseTo(exact, 3);
          else expect(quick).toBeGreaterThanOrEqual(enough);
        },
      ),
      { numRuns: 400 },
    );
  });
});

test("from outside a tyre is a general library's distance of a capsule from a cylinder with rounded edges", () => {
  const { outer, half, round } = tyre;
  const solid = new RAPIER.RoundCylinder(half - round, outer - round, round);
  fc.assert(
    fc.property(segments, place, axes, (segment, middle, axis) => {
      const buffer = Float64Array.of(middle.x, middle.y, middle.z, axis.x, axis.y, axis.z);
      const theirs = libraryDistance(capsule(segment, 10), { shape: solid, middle, axis });
      // A solid has no hole: only where the segment keeps clear of the whole of it are both the same.
      fc.pre(theirs > 1);
      const ours = segmentToRing(buffered(segment), 0, tyre, buffer, 0, 3, lineRoom()) - 10;
      const free = slack(theirs + 10 + round);
      // Nothing of a tyre is nearer than the solid that it is a part of.
      expect(ours).toBeGreaterThan(theirs - free);
      const places = Array.from({ length: 201 }, (_, k) => minus(alongSegment(segment, k / 200), middle));
      const overHole = places.some((off) => length(cross(off, axis)) < tyre.inner + round + 10);
      if (!overHole) expect(ours).toBeLessThan(theirs + free);
    }),
    { numRuns: 600 },
  );
});
