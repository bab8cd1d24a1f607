import { describe, expect, it } from "vitest";
import { camber } from "../../../src/measures/camber.ts";
import { caster } from "../../../src/measures/caster.ts";
import { sideAt } from "../../../src/measures/points.ts";
import type { Study } from "../../../src/measures/study.ts";
import { toe } from "../../../src/measures/toe.ts";
import { readings } from "../../../src/solve/sensitivity/readings.ts";
import { buildOf, setAgainOn } from "../../../src/solve/tolerance/built.ts";
import { errorsFrom } from "../../../src/solve/tolerance/errors.ts";
import { type Held, heldOf } from "../../../src/solve/tolerance/held.ts";
import { quantityOf } from "../../../src/vehicle/quantities.ts";
import { studyOfText, textOf } from "./cars.ts";

type Place = readonly [number, number, number];

const presets = {
  "double-arm": "widened-offset-rack",
  strut: "strut-hatchback-corners",
  "trailing-arms": "torsion-beam-steering-plate",
  "pivoting-beam": "twin-beam-relay",
  "fixed-kingpin": "fixed-kingpin-yard-kart",
} as const;

const wheels = ["left", "right"] as const;

/** A car without what setting again does: its numbers with the errors, as they came out of the welding. */
function welded({ car }: Study, held: readonly Held[], errors: Float64Array): Float64Array {
  const numbers = Float64Array.from(car.numbers);
  for (const [i, { places }] of held.entries()) for (const place of places) numbers[place] += errors[i];
  return numbers;
}

function pointIn(numbers: Float64Array, id: string): Place {
  return ["ahead", "out", "up"].map((key) => numbers[quantityOf(`${id}.${key}`).index]) as unknown as Place;
}

const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Place, b: Place) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const apart = (a: Place, b: Place) => Math.sqrt(dot(minus(a, b), minus(a, b)));

/** The spin axis as ISO 8855's angles give it, outboard. */
function spinIn(numbers: Float64Array, wheel: string): Place {
  const [c, t] = ["camber", "toe"].map((key) => numbers[quantityOf(`${wheel}.wheel.${key}`).index]);
  return [Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)];
}

const onUpright = {
  "double-arm": ["lower-arm.joint", "upper-arm.joint"],
  strut: ["lower-arm.joint", "strut.bottom"],
  "trailing-arms": ["lower-arm.joint", "upper-arm.joint"],
  "pivoting-beam": ["king-pin.lower", "king-pin.upper"],
  "fixed-kingpin": ["king-pin.lower", "king-pin.upper"],
} as const;

const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

describe.each(Object.entries(presets))("a %s car that is built with errors and set again", (linkage, preset) => {
  const study = studyOfText(textOf(preset));
  const held = heldOf(study.car);
  const build = buildOf(study, held);
  const each = (check: (built: Study, before: Float64Array) => void) => {
    for (const seed of seeds) {
      const { errors } = errorsFrom(seed, held)();
      const built = build(errors);
      if (built === null) throw new Error(`seed ${seed} does not go together`);
      check(built, welded(study, held, errors));
    }
  };

  it("has its toe, and what its arms set, as drawn, in the solved pose", () => {
    const { arms } = setAgainOn(study.car);
    each((built) => {
      for (const wheel of wheels) {
        const [now, drawn] = [built.ridePose(built.straightAhead), study.pose(study.straightAhead, 0, 0)];
        const at = sideAt(wheel);
        expect(toe(now, at)).toBeCloseTo(toe(drawn, at), 10);
        if (arms?.what.includes("caster")) expect(caster(now, at)).toBeCloseTo(caster(drawn, at), 10);
        if (arms?.what.includes("camber")) expect(camber(now, at)).toBeCloseTo(camber(drawn, at), 10);
      }
    });
  });

  it("keeps its uprights as they were welded: every distance, and the spindle's angle to everything", () => {
    const points = [...onUpright[linkage as keyof typeof onUpright], "tie-rod.outer", "wheel.center"];
    each((built, before) => {
      const { numbers } = built.car;
      for (const wheel of wheels) {
        const [was, is] = [before, numbers].map((of) => points.map((point) => pointIn(of, `${wheel}.${point}`)));
        const [axisWas, axisIs] = [spinIn(before, wheel), spinIn(numbers, wheel)];
        for (const [i] of points.entries())
          for (const [j] of points.entries()) {
            expect(apart(is[i], is[j])).toBeCloseTo(apart(was[i], was[j]), 9);
            expect(dot(minus(is[i], is[j]), axisIs)).toBeCloseTo(dot(minus(was[i], was[j]), axisWas), 9);
          }
      }
    });
  });

  it("changes no arm but the one that is adjusted, and no place on the frame", () => {
    each((built, before) => {
      const { numbers } = built.car;
      const both = (id: string) => [pointIn(before, id), pointIn(numbers, id)] as const;
      for (const wheel of wheels) {
        const [jointWas, jointIs] =
          linkage === "pivoting-beam" || linkage === "fixed-kingpin"
            ? both(`${wheel}.king-pin.lower`)
            : both(`${wheel}.lower-arm.joint`);
        if (linkage === "double-arm")
          for (const end of ["front", "rear"]) {
            const [was, is] = both(`${wheel}.lower-arm.${end}`);
            expect(is).toEqual(was);
            expect(apart(is, jointIs)).toBeCloseTo(apart(was, jointWas), 9);
          }
        if (linkage === "trailing-arms") {
          const [was, is] = both(`${wheel}.lower-arm.pivot`);
          const reach = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[2] - b[2]);
          expect(reach(is, jointIs)).toBeCloseTo(reach(was, jointWas), 9);
          expect(jointIs[1]).toBeCloseTo(jointWas[1], 9);
          const [, upper] = both(`${wheel}.upper-arm.joint`);
          expect(upper[1]).toBeCloseTo(pointIn(before, `${wheel}.upper-arm.joint`)[1], 9);
        }
        if (linkage === "strut") {
          // The strut's line was fixed in the upright through its top as welded: it still goes through the top.
          const [top, now] = both(`${wheel}.strut.top`);
          expect(now).toEqual(top);
          const axes = [before, numbers].map((of) => {
            const line = minus(pointIn(of, `${wheel}.strut.top`), pointIn(of, `${wheel}.strut.bottom`));
            return dot(line, spinIn(of, wheel)) / Math.sqrt(dot(line, line));
          });
          expect(axes[1]).toBeCloseTo(axes[0], 10);
        }
        if (linkage === "pivoting-beam" || linkage === "fixed-kingpin") expect(jointIs).toEqual(jointWas);
        else
          expect(pointIn(numbers, `${wheel}.wheel.center`)[2]).toBeCloseTo(
            pointIn(study.car.numbers, `${wheel}.wheel.center`)[2],
            9,
          );
      }
    });
  });

  it("is the car as drawn where nothing is off, to what a coarse look over the range can tell", () => {
    const built = build(new Float64Array(held.length));
    if (built === null) throw new Error("not built");
    for (const { read, id } of readings) {
      const [now, drawn] = [read(built), read(study)];
      if (drawn === null || now === null) expect(now, id).toBe(drawn);
      else
        expect(Math.abs(now - drawn), id).toBeLessThan(1e-4 + 1e-2 * (/worst|least/i.test(id) ? Math.abs(drawn) : 0));
    }
  });
});

describe("tie rods that are as cut", () => {
  it("are set to the drawn toe with the rack where the wheels are straight now", () => {
    const study = studyOfText(textOf("cut-rods-off-middle"));
    const held = heldOf(study.car);
    const built = buildOf(study, held)(new Float64Array(held.length));
    expect(study.zero).not.toBeCloseTo(0, 1);
    expect(built?.zero).toBeCloseTo(study.zero ?? 0, 9);
    for (const wheel of wheels)
      expect(toe(built?.ridePose(built.zero ?? 0) ?? new Float64Array(), sideAt(wheel))).toBeCloseTo(
        study.drawn[wheel].toe,
        9,
      );
  });
});

describe("arms that the file says are welded", () => {
  it("leave camber and caster as they come out", () => {
    const study = studyOfText(`${textOf("balanced-two-seater")}\ntolerances: { arms: welded }\n`);
    const held = heldOf(study.car);
    const { errors } = errorsFrom(1, held)();
    const built = buildOf(study, held)(errors);
    if (built === null) throw new Error("not built");
    const index = held.findIndex(({ quantity }) => quantity.id === "left.wheel.camber");
    const pose = built.ridePose(built.straightAhead);
    // Turning the upright about its steering axis by a small toe error changes the camber by that times the caster's sine.
    expect(camber(pose, sideAt("left"))).toBeCloseTo(study.drawn.left.camber + errors[index], 3);
    expect(Math.abs(errors[index])).toBeGreaterThan(5e-4);
    expect(toe(pose, sideAt("left"))).toBeCloseTo(study.drawn.left.toe, 10);
  });
});
