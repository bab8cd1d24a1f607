import { describe, expect, it } from "vitest";
import { bumpProof, proofPlaces, steerProof } from "../../../src/measures/bench/proof.ts";
import { buildOf } from "../../../src/solve/tolerance/built.ts";
import { errorsFrom } from "../../../src/solve/tolerance/errors.ts";
import { heldOf } from "../../../src/solve/tolerance/held.ts";
import { proofSpreadOf } from "../../../src/solve/tolerance/proofSpread.ts";
import { presetText, studyFrom } from "../../output/studies.ts";

const BUILDS = 400;
/** What turn plates are read to, rad. */
const gauge = (0.5 * Math.PI) / 180;

describe.each(["balanced-two-seater", "check-before-welding", "widened-offset-rack"])("%s", (name) => {
  const study = studyFrom(presetText(name));
  const places = proofPlaces(study, "in");
  const spread = proofSpreadOf(study, places);
  const held = heldOf(study.car);
  const build = buildOf(study, held);
  const next = errorsFrom(7, held);
  const told = steerProof(study, places);
  const bumps = bumpProof(study, places);
  const builds = Array.from({ length: BUILDS }, () => build(next().errors)).filter((each) => each !== null);
  const read = builds.map((each) => ({ steer: steerProof(each, places), bump: bumpProof(each, places) }));
  const off = (a: number | null | undefined, b: number | null | undefined) =>
    Math.abs((a ?? Number.NaN) - (b ?? Number.NaN));

  it("has 95 of 100 whole builds nearer than its +-, at the wheel that is moved more", () => {
    // Four standard deviations of a share of 0.95 of that many builds; the straight line's own error is a part of it.
    const chance = 4 * Math.sqrt((0.95 * 0.05) / builds.length);
    const share = (near: (i: number) => boolean) => read.filter((_, i) => near(i)).length / read.length;
    for (const [row, within] of (spread?.steer ?? []).entries()) {
      const nearer = (["left", "right"] as const).map((wheel) =>
        share(
          (i) => off(read[i]?.steer[row]?.turned[wheel], told[row]?.turned[wheel]) <= (within.turned ?? Number.NaN),
        ),
      );
      expect(Math.abs(Math.min(...nearer) - 0.95)).toBeLessThan(chance);
    }
    for (const [row, within] of (spread?.bump ?? []).entries()) {
      if (bumps[row]?.travel === 0) continue;
      const nearer = (["left", "right"] as const).map((wheel) =>
        share((i) => off(read[i]?.bump[row]?.toe[wheel], bumps[row]?.toe[wheel]) <= (within.toe ?? Number.NaN)),
      );
      expect(Math.abs(Math.min(...nearer) - 0.95)).toBeLessThan(chance);
    }
    expect(spread?.steer).toHaveLength(told.length);
    expect(spread?.bump).toHaveLength(bumps.length);
  });

  it("sends few good builds back by what turn plates read from stop to stop", () => {
    const sent = read.filter(({ steer }) =>
      (spread?.steer ?? []).some((within, row) =>
        (["left", "right"] as const).some(
          (wheel) => !(off(steer[row]?.turned[wheel], told[row]?.turned[wheel]) <= (within.turned ?? 0) + gauge),
        ),
      ),
    );
    expect(sent.length / read.length).toBeLessThan(0.05);
  });

  it("sends a tab back that is an inch behind its place", () => {
    const wrong = new Float64Array(held.length);
    for (const [i, { quantity }] of held.entries()) if (quantity.id === "left.tie-rod.outer.ahead") wrong[i] = -25.4;
    expect(wrong.some((error) => error !== 0)).toBe(true);
    const built = build(wrong);
    const rows = built === null ? [] : steerProof(built, places);
    const past = rows.some(
      (row, i) => off(row.turned.left, told[i]?.turned.left) > (spread?.steer[i]?.turned ?? Number.NaN) + gauge,
    );
    expect(past).toBe(true);
  });
});
