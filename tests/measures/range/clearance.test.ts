import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/kinematics/drawn.ts";
import { Side } from "../../../src/kinematics/slots.ts";
import { bodiesOf } from "../../../src/measures/range/bodies.ts";
import { clearanceLacks, pairingsAt } from "../../../src/measures/range/clearance.ts";
import type { Ring } from "../../../src/measures/range/distance.ts";
import { point } from "../../oracles/vectors.ts";
import { preset } from "../../vehicle/cars.ts";
import { studied } from "../carTexts.ts";
import { apart, armCarrier, type Bar, expectAll, fromRing, type Oracle, rod, slot } from "./pairs.ts";

describe("two arms, a shock, and a frame that a lower arm is bolted to", () => {
  const mm = 25.4;
  const inches = (ahead: number, out: number, up: number): Point => point(ahead * mm, out * mm, up * mm);
  const lower = { front: inches(5.5, 7, 8), rear: inches(-5.5, 7, 8), joint: inches(0.3, 24, 7.5) };
  const upper = { front: inches(4, 9.5, 15.25), rear: inches(-6, 9.5, 14.75) };
  const tyre: Ring = { inner: 6 * mm, outer: 12.5 * mm, half: 4.5 * mm, round: 6.5 * mm * 0.25 };
  const rim: Ring = { inner: 6 * mm, outer: 6 * mm, half: 3 * mm, round: 0 };
  const rail: Bar = [inches(12, 6.5, 7.5), inches(-20, 6.5, 7.5), 1.5 * mm];
  const brace: Bar = [inches(-10, 12, 6), inches(-10, 8, 20), mm];

  const oracle =
    (frame: Readonly<Record<string, Bar>>): Oracle =>
    (pose, at) => {
      const [low, high] = [slot(pose, at + Side.Lower), slot(pose, at + Side.Upper)];
      const foot = armCarrier([lower.front, lower.rear], lower.joint, low)(inches(-0.5, 19.5, 8.5));
      const bars: Readonly<Record<string, readonly Bar[]>> = {
        "tie-rod": rod(pose, at, 0.75 * mm),
        "lower-arm": [
          [lower.front, low, mm],
          [lower.rear, low, mm],
        ],
        "upper-arm": [
          [upper.front, high, mm],
          [upper.rear, high, mm],
        ],
        shock: [[inches(-1, 13, 27), foot, 2 * mm]],
        ...Object.fromEntries(Object.entries(frame).map(([name, bar]) => [name, [bar]])),
      };
      const pair = (a: string, b: string) => [`${a}.${b}`, apart(bars[a] ?? [], bars[b] ?? [])] as const;
      const tubes = Object.keys(frame);
      return Object.fromEntries([
        ...["lower-arm", "upper-arm", "shock", ...tubes].map((each) => pair("tie-rod", each)),
        // A shock stands on its lower arm, and that is bolted to the rail.
        pair("upper-arm", "shock"),
        ...tubes.map((each) => pair("upper-arm", each)),
        ...tubes.filter((each) => each !== "frame-lower-rail").map((each) => pair("lower-arm", each)),
        ...["tie-rod", "lower-arm", "upper-arm", "shock"].map(
          (each) => [`${each}.rim`, fromRing(bars[each] ?? [], rim, pose, at)] as const,
        ),
        ...Object.keys(bars).map((each) => [`${each}.tyre`, fromRing(bars[each] ?? [], tyre, pose, at)] as const),
      ]);
    };

  test("the left corner has every pair, as far apart as the file's numbers put them", () => {
    expectAll(
      studied(preset("check-before-welding")),
      "left",
      oracle({ "frame-lower-rail": rail, "frame-brace": brace }),
    );
  });

  test("the right corner has no brace of its own", () => {
    expectAll(studied(preset("check-before-welding")), "right", oracle({ "frame-lower-rail": rail }));
  });

  test("a tube of the left that comes across the middle is met by the right corner too, on its other side", () => {
    const text = preset("check-before-welding").replace(
      "      brace: { from: { ahead: -10, out: 12, up: 6 }, to: { ahead: -10, out: 8, up: 20 }, diameter: 1 }",
      "      cross  bar: { from: { ahead: -10, out: 12, up: 6 }, to: { ahead: -10, out: -8, up: 7 }, diameter: 1 }",
    );
    const across: Bar = [inches(-10, -12, 6), inches(-10, 8, 7), mm];
    const study = studied(text);
    expectAll(study, "right", oracle({ "frame-lower-rail": rail, "frame-cross-bar-of-the-other-side": across }));
    const own: Bar = [inches(-10, 12, 6), inches(-10, -8, 7), mm];
    expectAll(study, "left", oracle({ "frame-lower-rail": rail, "frame-cross-bar": own }));
  });

  test("the tie rod's own pairs are those of all that have it", () => {
    const study = studied(preset("check-before-welding"));
    const bodies = bodiesOf(study, "left");
    const all = pairingsAt(study, bodies).map(({ id, label, wheel }) => ({ id, label, wheel }));
    const own = pairingsAt(study, bodies, "tie rod").map(({ id, label, wheel }) => ({ id, label, wheel }));
    expect(own).toEqual(all.filter(({ id }) => id.startsWith("tie-rod.")));
    expect(own.map(({ label }) => label)).toEqual([
      "tie rod to lower arm",
      "tie rod to upper arm",
      "tie rod to shock",
      "tie rod to rim",
      "tie rod to tyre",
      "tie rod to frame tube brace",
      "tie rod to frame tube lower-rail",
    ]);
    expect(all.map(({ label }) => label)).toContain("frame tube brace to tyre");
  });

  test("nothing is paired whose size the file leaves out", () => {
    const ids = (text: string) => {
      const study = studied(text);
      return pairingsAt(study, bodiesOf(study, "left")).map(({ id }) => id);
    };
    const full = preset("check-before-welding");
    const having = (name: string) => (id: string) => id.split(".").includes(name);
    const without = (name: string) => ids(full).filter((id) => !having(name)(id));
    expect(ids(full.replace("    tie-rod: 3/4\n", ""))).toEqual(without("tie-rod"));
    expect(ids(full.replace("    upper-arm: 1\n", ""))).toEqual(without("upper-arm"));
    expect(ids(full.replace("    diameter: 2\n", ""))).toEqual(without("shock"));
    expect(ids(full.replace("rim: { diameter: 12, width: 6 }", "rim: { diameter: 12 }"))).toEqual(without("rim"));
    expect(ids(full.replace("radius: 12.5, width: 9", "radius: 12.5"))).toEqual(without("tyre"));
    expect(ids(full.replace("rim: { diameter: 12, width: 6 }\n", ""))).toEqual(
      without("rim").filter((id) => !having("tyre")(id)),
    );
  });

  test.each([
    ["49.9", true],
    ["50.1", false],
  ])("an arm is bolted to a tube whose surface is %s mm from that of its pivot: %s", (gap, bolted) => {
    // Both are 25.4 mm through, and the post stands ahead of the front pivot.
    const ahead = 5.5 * mm + 25.4 + Number(gap);
    const text = preset("check-before-welding").replace(
      /brace: .*/,
      `post: { from: { ahead: ${ahead} mm, out: 7, up: 0 }, to: { ahead: ${ahead} mm, out: 7, up: 20 }, diameter: 1 }`,
    );
    const study = studied(text);
    const ids = pairingsAt(study, bodiesOf(study, "left")).map(({ id }) => id);
    expect(ids.includes("lower-arm.frame-post")).toBe(!bolted);
    expect(ids).toContain("tie-rod.frame-post");
  });
});

test("a corner whose sizes the file leaves out has no pairs, whatever the other one has", () => {
  const bare = studied(preset("balanced-two-seater"));
  for (const wheel of ["left", "right"] as const) expect(pairingsAt(bare, bodiesOf(bare, wheel))).toEqual([]);
  const one = studied(`${preset("balanced-two-seater")}
tubes: { left: { lower-arm: 1 } }
shock: { left: { top: { ahead: 0, out: 13, up: 27 }, foot: { ahead: 0, out: 18, up: 9 }, on: lower-arm, diameter: 2 } }
`);
  expect(pairingsAt(one, bodiesOf(one, "right"))).toEqual([]);
  const ids = pairingsAt(one, bodiesOf(one, "left")).map(({ id }) => id);
  expect(ids).toEqual(["lower-arm.rim", "shock.rim", "lower-arm.tyre", "shock.tyre"]);
});

describe("what the clearances lack", () => {
  const tubes = ["tie-rod", "lower-arm", "upper-arm", "frame"].map((name) => `tubes: ${name}`);
  const wheels = ["rim: diameter and width", "tire: width"];
  const shock = "top: { ahead: 0, out: 12, up: 24 }, foot: { ahead: 0, out: 18, up: 8 }, on: lower-arm";

  test.each([
    ["nothing", "", [...tubes, ...wheels]],
    [
      "two links of the left",
      "tubes: { left: { tie-rod: 0.75, lower-arm: 1 } }",
      ["tubes: tie-rod (right)", "tubes: lower-arm (right)", ...tubes.slice(2), ...wheels],
    ],
    [
      "a frame's tube on the right",
      "tubes: { right: { frame: { rail: { from: { ahead: 1, out: 2, up: 3 }, to: { ahead: 9, out: 2, up: 3 }, diameter: 1 } } } }",
      [...tubes.slice(0, 3), ...wheels],
    ],
    [
      "a shock on the left, as thick as it may be",
      `shock: { left: { ${shock} } }`,
      [...tubes, "shock: diameter (left)", ...wheels],
    ],
    ["shocks of a known thickness", `shock: { both: { ${shock}, diameter: 2 } }`, [...tubes, ...wheels]],
    ["a rim", "rim: { diameter: 10, width: 6 }", [...tubes, "tire: width"]],
    ["a rim of no known width", "rim: { diameter: 10 }", [...tubes, ...wheels]],
  ])("with %s", (_, given, lacks) => {
    const bare = preset("widened-offset-rack").replace(/^(rim|tire):.*\n/gm, "");
    expect(clearanceLacks(studied(`${bare}tire: { radius: 10.75 }\n${given}\n`))).toEqual(lacks);
  });

  test("is nothing where the file has all", () => {
    expect(clearanceLacks(studied(preset("check-before-welding")))).toEqual([]);
  });

  test("is the tyre's width alone where it is all that is left out, and a rim's where that is", () => {
    const full = preset("check-before-welding");
    expect(clearanceLacks(studied(full.replace("radius: 12.5, width: 9", "radius: 12.5")))).toEqual(["tire: width"]);
    expect(clearanceLacks(studied(full.replace("diameter: 12, width: 6", "width: 6")))).toEqual(wheels);
  });
});
