import { describe, expect, test } from "vitest";
import { costsOf } from "../../src/solve/find/costs.ts";
import { goalsFor } from "../../src/solve/goals/goals.ts";
import { setQuantity } from "../../src/vehicle/edit.ts";
import { carOf, presetText, studied } from "../measures/carTexts.ts";

describe("what an answer costs that no goal asks for", () => {
  const before = studied(presetText("balanced-two-seater"));
  const value = 10.1875 * 25.4;
  const raised = studied(setQuantity(carOf(before.car.text), { pair: "rack.up", sides: "both", value }));

  test("is told of a rack 3/4 in too high: toe over travel, by as much as the two cars differ", () => {
    const worst = [before, raised].map(({ worst: { toe } }) => Math.abs(toe.left?.acrossTyre ?? 0));
    expect(worst[1] - worst[0]).toBeGreaterThan(25.4 / 4);
    const costs = costsOf([], before, raised);
    expect(costs.map(({ name }) => name)).toContain("toe-change");
    const toe = costs.find(({ name }) => name === "toe-change");
    expect([toe?.was.high, toe?.is?.high]).toEqual(worst);
  });

  test("is not told where a goal looks after it, nor where nothing is worse", () => {
    const [goal] = goalsFor(before);
    if (goal === undefined) throw new Error("the preset has no goal");
    const toe = { ...goal, name: "toe-change" as const };
    expect(costsOf([toe], before, raised).map(({ name }) => name)).not.toContain("toe-change");
    expect(costsOf([], before, before)).toEqual([]);
    expect(costsOf([], raised, before).map(({ name }) => name)).not.toContain("toe-change");
  });

  const made = (name: string, edits: readonly (readonly [string, string])[]) =>
    studied(
      edits.reduce((text, [from, to]) => {
        expect(text).toContain(from);
        return text.replace(from, to);
      }, presetText(name)),
    );
  const namesOf = (after: typeof before) => costsOf([], before, after).map(({ name }) => name);

  test("is told of longer arms, which take lock away and widen the circle", () => {
    const longer = made("balanced-two-seater", [["outer: { ahead: -4.75", "outer: { ahead: -6"]]);
    const lock = (study: typeof before) => Math.min(study.locks.left?.inner ?? 0, study.locks.right?.inner ?? 0);
    expect(lock(before) - lock(longer)).toBeGreaterThan((4 * Math.PI) / 180);
    expect(namesOf(longer)).toEqual(expect.arrayContaining(["inner-lock", "turning-circle"]));
    expect(costsOf([], longer, before)).toEqual([]);
  });

  test("is told of a rack that was put off the middle: both wheels steer the same way, and the locks differ", () => {
    const offset = made("balanced-two-seater", [["eye-to-eye: 15,", "eye-to-eye: 15, offset: 3,"]]);
    expect(Math.abs(offset.worst.bounce?.bounceSteer ?? 0)).toBeGreaterThan(Math.PI / 180);
    expect(namesOf(offset)).toContain("bounce-steer");
    const stops = made("balanced-two-seater", [['travel: "2 1/8"', 'travel: { left: "2 1/8", right: 1.5 }']]);
    expect(Math.abs(stops.locks.difference.inner ?? 0)).toBeGreaterThan((4 * Math.PI) / 180);
    expect(namesOf(stops)).toContain("lock-difference");
  });
});
