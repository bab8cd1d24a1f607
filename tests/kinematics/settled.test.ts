import { describe, expect, test } from "vitest";
import type { Drawn, Linkage } from "../../src/kinematics/drawn.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { expectClose } from "../close.ts";
import { expectAsScanned } from "../oracles/agreement.ts";
import { sides } from "../oracles/corner.ts";
import { frontOf, placesIn, pointIn, solved, startOf } from "../oracles/kernel.ts";
import { spatialCar } from "../oracles/known.ts";
import { namedOver, oneOfEach } from "../oracles/oneOfEach.ts";
import { cross, distance, dot, length, minus, point } from "../oracles/vectors.ts";

/**
 * Far beyond the range, and with rods so far off that the drawn place may not stand at all: where a corner stands is held to a scan of its arm's
 * angle, five times as dense as the kernel's march. Invented cars, mm.
 */
const offs = [-120, -60, 0, 60, 110];
const inputs = [-90, -30, 40, 100];
const travels = [-420, -220, -90, 30, 130, 250, 500];

const eye = point(-110, 270, 330);
const rod = distance(eye, spatialCar.left.tieRodOuter);
const drawnWith = (linkage: Linkage, off: number, up = eye.z): Drawn => ({
  ...spatialCar,
  linkage,
  mechanism: { ...spatialCar.mechanism, up },
  left: { ...spatialCar.left, tieRodLength: rod + off },
  right: { ...spatialCar.right, tieRodLength: rod + off },
});

describe.each(oneOfEach)("$kind", (linkage) => {
  test.each(offs)("with a rod that is %d mm off stands where a scan of its arm's angle finds it", (off) => {
    const drawn = drawnWith(linkage, off);
    const front = frontOf(drawn);
    const met = { closes: 0, "does not close": 0, "too near to tell": 0 };
    for (const [i, input] of inputs.entries())
      for (const travel of travels) {
        const side = sides[i % 2];
        const poses = solved(front, input, travel);
        met[expectAsScanned(drawn, side, placesIn(poses, side), input, travel)]++;
        expectBlamed(poses, startOf(side), rod + off, `${side}, input ${input}, travel ${travel}`);
      }
    expect(met["too near to tell"]).toBeLessThan(14);
    for (const told of ["closes", "does not close"] as const) expect(met[told], told).toBeGreaterThan(0);
  });

  // The rod is too long where it is level: the nearest places that stand are below, and those above are behind a gap, or the other way round.
  test.each([390, 430, 300])("goes on behind a gap to what is asked, its rack %d up", (up) => {
    const drawn = drawnWith(linkage, 60, up);
    const front = frontOf(drawn);
    for (const input of [90, 120])
      for (const travel of [-200, -60, 20, 90, 165, 250, 330]) {
        const poses = solved(front, input, travel);
        expectAsScanned(drawn, "left", placesIn(poses, "left"), input, travel);
        expectBlamed(poses, startOf("left"), rod + 60, `input ${input}, travel ${travel}`);
      }
  });

  test.each([-60, 0, 60])("with a rod that is %d mm off lacks next to nothing just past its end", (off) => {
    const front = frontOf(drawnWith(linkage, off));
    const blameAt = (input: number, travel: number) => solved(front, input, travel)[Side.Blame];
    let ends = 0;
    // At the last input the longest rod has two intervals, and the end between them is of another kind.
    for (const input of inputs.slice(0, 3))
      for (const way of [1, -1]) {
        const inside = travels.find((travel) => blameAt(input, travel) === Link.None);
        if (inside === undefined) continue;
        ends++;
        let [closes, beyond] = [inside, way * 900];
        for (let i = 0; i < 40; i++) {
          const middle = 0.5 * (closes + beyond);
          if (blameAt(input, middle) === Link.None) closes = middle;
          else beyond = middle;
        }
        const last = solved(front, input, closes);
        const poses = solved(front, input, closes + way * 1e-3);
        const path = `input ${input}, the end at travel ${closes}`;
        const gap = poses[Side.Gap];
        // What the height lacks is what was asked too much, and at most what counts as met; what a link lacks there grows from nought.
        if (poses[Side.Blame] === Link.Travel) expectClose(gap, way * 1e-3, { abs: 2e-5 }, path);
        else expect(Math.abs(gap), path).toBeLessThan(0.01);
        expect(gap, path).not.toBe(0);
        // Where the rod gives out it stands at its dead point, and else well off it.
        const dead = Math.abs(last[Side.Lever]) < 1e-3;
        expect(poses[Side.Blame], path).toBe(dead ? Link.TieRod : Link.Travel);
      }
    expect(ends).toBeGreaterThan(3);
  });
});

describe.each(oneOfEach.filter(({ kind }) => kind !== "trailing-arms"))("$kind", (linkage) => {
  test.each([...offs, -90, 90])(
    "with a rod that is %d mm off stands, or lacks, the same with its axis named the other way round",
    (off) => {
      const front = frontOf(drawnWith(linkage, off));
      const other = frontOf(drawnWith(namedOver(linkage), off));
      for (const input of [...inputs, 0, 70])
        for (const travel of travels) {
          const [one, two] = [solved(front, input, travel), solved(other, input, travel)];
          const path = `input ${input}, travel ${travel}`;
          expect(two[Side.Blame], path).toBe(one[Side.Blame]);
          // The height is met to 1e-11 of the half width, or the dead point to the last bit of the arm's angle, and all else goes with its root there.
          for (let slot = Side.Gap; slot < Side.LowerRate; slot++)
            expect(Math.abs(two[slot] - one[slot]), `${path}: ${slot}`).toBeLessThan(1e-5);
        }
    },
  );
});

/** What is short is so by what stands at the place: the height by what it lacks, and a tie rod with its tab in line. */
function expectBlamed(poses: Float64Array, at: number, long: number, path: string): void {
  const link = poses[at + Side.Blame];
  const gap = poses[at + Side.Gap];
  const [wheel, lower, tab, inner] = [Side.WheelCenter, Side.Lower, Side.TieRodOuter, Side.TieRodInner].map((slot) =>
    pointIn(poses, at + slot),
  );
  if (link === Link.None) return;
  expect(gap, path).not.toBe(0);
  const { z } = spatialCar.left.wheelCenter;
  if (link === Link.Travel) expectClose(gap, z + poses[at + Side.Travel] - wheel.z, { abs: 1e-9 }, path);
  if (link !== Link.TieRod) return;
  const across = cross(pointIn(poses, at + Side.Axis), minus(tab, lower));
  expectClose(dot(across, minus(inner, lower)) / length(across), 0, { abs: 1e-9 }, `${path}: the tab in line`);
  expectClose(gap, long - distance(tab, inner), { abs: 1e-9 }, path);
}
