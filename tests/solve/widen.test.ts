import { describe, expect, it } from "vitest";
import { compared, isWidened } from "../../src/output/widen.ts";
import { finished } from "../../src/solve/job.ts";
import { type Widened, type WidenKind, widenJob } from "../../src/solve/widen/widen.ts";
import { quantitiesOf } from "../../src/vehicle/quantities.ts";
import { expectClose } from "../close.ts";
import { carOf, presetText, studied } from "../measures/carTexts.ts";

const inch = 25.4;
const balanced = presetText("balanced-two-seater");
const offset = presetText("widened-offset-rack");
const presets = [
  "balanced-two-seater",
  "widened-offset-rack",
  "cut-rods-off-middle",
  "check-before-welding",
  "centre-take-off",
  "strut-hatchback-corners",
  "torsion-beam-steering-plate",
  "twin-beam-relay",
  "fixed-kingpin-yard-kart",
];

function ways(text: string, by: number) {
  return finished(widenJob(studied(text), by));
}

function way(text: string, key: WidenKind, by = 2 * inch): Widened {
  const found = ways(text, by).find((each) => each.key === key);
  if (found === undefined || !isWidened(found)) throw new Error(`${key}: ${found?.why ?? "no such way"}`);
  return found;
}

const figures = (study: ReturnType<typeof studied>) =>
  Object.fromEntries(compared.map(({ id, read }) => [id, read(study)]));

/** The numbers of a car that differ from another's, by their pair, mm. */
function moved(before: string, after: string): Record<string, number> {
  const [a, b] = [carOf(before), carOf(after)];
  return Object.fromEntries(
    quantitiesOf(a.form)
      .map(({ id, index }) => [id, Number((b.numbers[index] - a.numbers[index]).toFixed(6))] as const)
      .filter(([, by]) => by !== 0),
  );
}

describe("every way to widen every example", () => {
  it.each(presets)(
    "%s: the track grows by twice as much, exactly, and the text is the car that was measured",
    (name) => {
      const text = presetText(name);
      const by = studied(text).car.form.units === "in" ? 1.5 * inch : 40;
      const done = ways(text, by).filter(isWidened);
      expect(done.length).toBeGreaterThanOrEqual(2);
      for (const each of done) {
        expectClose(each.after.track - studied(text).track, 2 * by, { abs: 1e-9 }, each.key);
        expectClose(figures(studied(each.text())), figures(each.after), { abs: 1e-5 }, each.key);
        expect(each.caution).toContain("CAUTION");
        expect(
          each
            .text()
            .split("\n")
            .filter((line) => line.startsWith("#")),
        ).toEqual(text.split("\n").filter((line) => line.startsWith("#")));
      }
    },
  );
});

describe("each way moves what it says, and nothing else", () => {
  const sides = (paths: readonly string[]) =>
    Object.fromEntries(["left", "right"].flatMap((side) => paths.map((path) => [`${side}.${path}.out`, 2 * inch])));
  const outboard = ["lower-arm.joint", "upper-arm.joint", "tie-rod.outer", "wheel.center"];
  const inboard = ["lower-arm.front", "lower-arm.rear", "upper-arm.front", "upper-arm.rear"];

  it("longer arms: joints, tabs and wheels, written once for both sides", () => {
    const text = way(offset, "arms").text();
    expect(moved(offset, text)).toEqual(sides(outboard));
    expect(text).toContain("joint: { ahead: 0.2,  out: 23.5, up: 7 }");
    expect(text).not.toMatch(/^ {2}left:/m);
  });

  it("wider pivots: those and the pivots, the rack kept", () => {
    expect(moved(offset, way(offset, "pivots").text())).toEqual(sides([...outboard, ...inboard]));
  });

  it("spacers: the wheels, so that steering axis, rods and king-pin spacing stay and the scrub radius grows", () => {
    const { after, text } = way(offset, "spacers");
    const now = studied(offset);
    expect(moved(offset, text())).toEqual(sides(["wheel.center"]));
    expect(after.kingPinSpacing).toBe(now.kingPinSpacing);
    expectClose(after.rodLengths, now.rodLengths, { abs: 1e-9 });
    const [was, is] = [now, after].map((study) => study.pose(0, 0, 0));
    // Slots 4 to 12 of a side: the joints and the direction of the steering axis.
    for (const side of [0, 32])
      expectClose([...is.slice(side + 4, side + 13)], [...was.slice(side + 4, side + 13)], { abs: 1e-9 });
    const toe = (0.1 * Math.PI) / 180;
    // Across the wheel's heading, which the toe turns away from straight ahead.
    expectClose((figures(after).scrubRadiusLeft ?? 0) - (figures(now).scrubRadiusLeft ?? 0), 2 * inch * Math.cos(toe), {
      abs: 1e-6,
    });
  });

  it("longer rack ends: the whole corner with its rod, so that no curve over the travel changes", () => {
    const { after, text } = way(offset, "rack-ends");
    expect(moved(offset, text())).toEqual({ ...sides([...outboard, ...inboard]), "rack.eye-to-eye": 4 * inch });
    const now = studied(offset);
    expectClose(after.rodLengths, now.rodLengths, { abs: 1e-9 });
    expectClose(after.worst.toe, now.worst.toe, { abs: 1e-9 });
    expectClose(after.locks.left?.inner, now.locks.left?.inner, { abs: 1e-9 });
    const bar = way(presetText("centre-take-off"), "rack-ends").text();
    expect(moved(presetText("centre-take-off"), bar)).toMatchObject({ "left.rack.eye.out": 2 * inch });
  });

  it("rods are as much longer as Pythagoras says", () => {
    const now = studied(balanced);
    const { after } = way(balanced, "pivots");
    // From eye to tab: 22 3/8 - 7 1/2 out, 1 1/4 ahead, 1/16 up; then 2 in further out.
    const rod = (out: number) => Math.hypot(out, 1.25, 1 / 16) * inch;
    expectClose(now.rodLengths.left, rod(22.375 - 7.5), { abs: 1e-9 });
    expectClose(after.rodLengths.left, rod(24.375 - 7.5), { abs: 1e-9 });
    expectClose(after.rodLengths.right, after.rodLengths.left, { abs: 1e-9 });
  });

  it("rods that are as cut are made anew where they would not fit, and kept where they would", () => {
    const cut = presetText("cut-rods-off-middle");
    expect(carOf(way(cut, "pivots").text()).form.rods).toEqual({ left: "fit", right: "fit" });
    for (const key of ["spacers", "rack-ends"] as const)
      expect(carOf(way(cut, key).text()).form.rods, key).toEqual({ left: "cut", right: "cut" });
  });
});

describe("shocks", () => {
  const text = presetText("check-before-welding");
  const shock = (of: string) => carOf(of).sections.shock?.left;

  it("stay on longer arms, whose widening the file then says; and go out with their mounts", () => {
    const arms = shock(way(text, "arms").text());
    expect(arms?.foot.out).toBe(shock(text)?.foot.out);
    expectClose(arms?.["arms-widened"], 6 * inch, { abs: 0.001 });
    const pivots = shock(way(text, "pivots").text());
    expectClose((pivots?.foot.out ?? 0) - (shock(text)?.foot.out ?? 0), 2 * inch, { abs: 1e-6 });
    expectClose((pivots?.top.out ?? 0) - (shock(text)?.top.out ?? 0), 2 * inch, { abs: 1e-6 });
    expect(pivots?.["arms-widened"]).toBe(shock(text)?.["arms-widened"]);
  });
});

describe("what a car cannot have", () => {
  it.each([
    ["fixed-kingpin-yard-kart", "arms", "there are no arms"],
    ["fixed-kingpin-yard-kart", "rack-ends", "there is no rack"],
    ["strut-hatchback-corners", "arms", "top mount"],
    ["torsion-beam-steering-plate", "arms", "trail"],
    ["twin-beam-relay", "rack-ends", "there is no rack"],
  ] as const)("%s: %s, because %s", (name, key, why) => {
    const found = ways(presetText(name), inch).find((each) => each.key === key);
    expect(found !== undefined && !isWidened(found) && found.why).toContain(why);
  });
});
