import { describe, expect, it } from "vitest";
import { expectClose } from "../close.ts";
import { cross, dot, length, minus, plus, point, radians, times, unit } from "../oracles/vectors.ts";
import { presetText, studied } from "./carTexts.ts";
import { inch, placesAt, placesOf, rounded, sticksAt, vector } from "./sticks.ts";

describe("what steers", () => {
  it.each(["widened-offset-rack", "centre-take-off"])("of %s is a bar from eye to eye", (name) => {
    const study = studied(presetText(name));
    const eyes = (["left", "right"] as const).map((wheel) => placesAt(study, 30, 0, wheel).tieRodInner);
    expect(placesOf(sticksAt(study, 30, 0), "steering", null)).toEqual(rounded([eyes]));
  });

  it("a plate goes from eye to eye by way of the column, square to it, and the column up from there", () => {
    const study = studied(presetText("torsion-beam-steering-plate"));
    // The file's foot of the column, and its rake of 30 degrees, top rearward.
    const [foot, axis] = [
      point(-4.625 * inch, 0, 14.25 * inch),
      point(-Math.cos(radians(30)), 0, Math.sin(radians(30))),
    ];
    for (const turn of [-0.5, 0, 0.4]) {
      const sticks = sticksAt(study, turn, 0);
      const [plate, ...others] = sticks.filter(({ part }) => part === "steering");
      expect(others).toEqual([]);
      const [left, centre, right] = plate.places.map(vector);
      expect([left, right]).toEqual(
        (["left", "right"] as const).map((wheel) => vector(placesAt(study, turn, 0, wheel).tieRodInner)),
      );
      expect(length(cross(minus(centre, foot), axis))).toBeCloseTo(0, 9);
      // Both eyes are as high along the column, so that the plate is square to it.
      expect(dot(minus(left, centre), axis)).toBeCloseTo(0, 9);
      expect(dot(minus(right, centre), axis)).toBeCloseTo(0, 9);
      const [column] = sticks.filter(({ part }) => part === "fixed");
      expect(column.places.map(vector)[0]).toEqual(centre);
      expect(length(minus(minus(vector(column.places[1]), centre), times(axis, 150)))).toBeCloseTo(0, 9);
    }
  });

  const relay = (eyes: string, lean: string) =>
    presetText("twin-beam-relay")
      .replace(/( +)(left|right)-eye: .*\n/g, "")
      .replace("    ratio: 16", `${eyes}    ratio: 16`)
      .replaceAll("offset: 12, up: 16 }", `offset: 12, up: 16 }${lean}`)
      .replaceAll("offset: -12, up: 16 }", `offset: -12, up: 16 }${lean}`)
      // The idler arm is shorter than the pitman arm, so that the link between them turns.
      .replace("joint: { ahead: -8, offset: -12", "joint: { ahead: -7, offset: -12");

  const beside = `    left-eye: { ahead: "-7 7/8", out: -5, up: 13.25 }
    right-eye: { ahead: "-7 7/8", out: -4, up: 13.25 }
`;
  // On the line from (-8, 12, 13.5) to (-7, -12, 13.5), the arms' joints.
  const onLine = `    left-eye: { ahead: ${-8 + 17 / 24}, out: -5, up: 13.5 }
    right-eye: { ahead: ${-8 + 8 / 24}, out: -4, up: 13.5 }
`;
  const leaning = "\n      lean-back: 20\n      lean-left: -15";

  // Shafts that lean unlike each other let a link turn about its own line, which carries nothing that is on it.
  const unlike = relay(onLine, leaning).replace(/(offset: -12, up: 16 \}\s+lean-back: )20/, "$110");

  it.each([
    ["beside the centre link's line", relay(beside, "")],
    ["beside it, the shafts leaning", relay(beside, leaning)],
    ["on the line", relay(onLine, "")],
    ["on the line, the shafts leaning", relay(onLine, leaning)],
    ["on the line, the shafts leaning unlike each other", unlike],
  ])("a relay with its eyes %s: both arms about their shafts, and a link of one length between them", (_, text) => {
    const study = studied(text);
    const [pitmanPivot, idlerPivot] = [point(-2 * inch, 12 * inch, 16 * inch), point(-2 * inch, -12 * inch, 16 * inch)];
    const [pitmanJoint, idlerJoint] = [
      point(-8 * inch, 12 * inch, 13.5 * inch),
      point(-7 * inch, -12 * inch, 13.5 * inch),
    ];
    const shaft = unit(
      text.includes("lean") ? point(-Math.tan(radians(20)), Math.tan(radians(-15)), 1) : point(0, 0, 1),
    );
    const back = Math.tan(radians(10));
    const idlerShaft = text === unlike ? unit(point(-back, Math.tan(radians(-15)), 1)) : shaft;
    for (const turns of [-1.2, 0, 0.7]) {
      // The column's turn over the ratio of 16.
      const column = turns * 2 * Math.PI;
      const sticks = sticksAt(study, column, 0);
      const bars = sticks.filter(({ part }) => part === "steering").map(({ places }) => places.map(vector));
      const [pitman, link, idler, eyes] = bars;
      expect(bars.map((bar) => bar.length)).toEqual([2, 2, 2, 2]);
      expectClose([pitman[0], idler[0]], [pitmanPivot, idlerPivot], { abs: 1e-9 });
      expect(link).toEqual([pitman[1], idler[1]]);
      expect(eyes).toEqual(
        (["left", "right"] as const).map((wheel) => vector(placesAt(study, column, 0, wheel).tieRodInner)),
      );
      // Each joint keeps its height along the shaft and its distance from it; the pitman's has turned with the column.
      const arms = [
        [pitmanPivot, pitmanJoint, pitman[1], shaft],
        [idlerPivot, idlerJoint, idler[1], idlerShaft],
      ] as const;
      for (const [pivot, drawn, now, axis] of arms) {
        const [before, after] = [minus(drawn, pivot), minus(now, pivot)];
        expect(dot(after, axis)).toBeCloseTo(dot(before, axis), 6);
        expect(length(after)).toBeCloseTo(length(before), 6);
      }
      const [before, after] = [minus(pitmanJoint, pitmanPivot), minus(pitman[1], pitmanPivot)];
      const turned = Math.atan2(dot(cross(before, after), shaft), dot(before, after) - dot(before, shaft) ** 2);
      expect(turned).toBeCloseTo(column / 16, 9);
      expect(length(minus(link[1], link[0]))).toBeCloseTo(Math.hypot(24, 1) * inch, 6);
      // The eyes are carried by the link: as far along it and as far from its ends as drawn.
      const drawnEyes = sticksAt(study, 0, 0)
        .filter(({ part }) => part === "steering")[3]
        .places.map(vector);
      for (const [i, eye] of eyes.entries()) {
        expect(length(minus(eye, link[0]))).toBeCloseTo(length(minus(drawnEyes[i], pitmanJoint)), 6);
        expect(length(minus(eye, link[1]))).toBeCloseTo(length(minus(drawnEyes[i], idlerJoint)), 6);
      }
      const shafts = sticks.filter(({ part }) => part === "fixed").map(({ places }) => places.map(vector));
      expect(shafts).toHaveLength(2);
      for (const [i, [from, to]] of shafts.entries()) {
        expectClose(from, [pitmanPivot, idlerPivot][i], { abs: 1e-9 });
        expect(length(minus(to, plus(from, times([shaft, idlerShaft][i], 150))))).toBeCloseTo(0, 9);
      }
    }
  });
});
