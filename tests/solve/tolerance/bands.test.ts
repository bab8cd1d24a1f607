import { describe, expect, it } from "vitest";
import { meets } from "../../../src/solve/tolerance/judged.ts";
import { newSample, put, spreadOf } from "../../../src/solve/tolerance/sample.ts";
import { classOf, shareOf } from "../../../src/solve/tolerance/shares.ts";
import { toleranceJob } from "../../../src/solve/tolerance/tolerance.ts";
import { figureOf, quantileBounds, studyOfText, textOf, trialsOf } from "./cars.ts";

describe("straight lines beside the builds", { timeout: 120_000 }, () => {
  // So small that no curve shows: a tenth of a usual tolerance bends a figure a hundredth of what a usual one does.
  const study = studyOfText(`${textOf("widened-offset-rack")}\ntolerances: { length: 0.1 mm, angle: 0.02 }\n`);
  const result = trialsOf(study, { builds: 1500, seed: 2 });

  it("agree wherever a figure is smooth: their ends are as near as order statistics say", () => {
    let compared = 0;
    for (const { reading, linear, builds, alike } of result.figures) {
      if (linear === null || builds === null || linear.deviation < 1e-9) continue;
      const mean = (linear.low + linear.high) / 2;
      for (const [value, p] of [
        [builds.low, 0.05],
        [builds.high, 0.95],
      ] as const) {
        const [least, most] = quantileBounds(builds.told, p);
        // A twentieth of a deviation for the curve that is left.
        expect((value - mean) / linear.deviation, `${reading.id} ${p}`).toBeGreaterThan(least - 0.05);
        expect((value - mean) / linear.deviation, `${reading.id} ${p}`).toBeLessThan(most + 0.05);
      }
      expect(alike, reading.id).toBe(true);
      compared++;
    }
    expect(compared).toBeGreaterThan(35);
  });

  it("disagree, and say so, where a worst value turns from one end of the travel to the other", () => {
    const balanced = trialsOf(studyOfText(textOf("balanced-two-seater")), { builds: 600, seed: 4 });
    for (const id of ["worstToeLeft", "worstToeRight", "worstToeAcrossTyreLeft", "worstBounceSteer"])
      expect(figureOf(balanced, id).alike, id).toBe(false);
    // A size is never less than nothing, which a straight line does not know.
    const { builds, linear } = figureOf(balanced, "worstToeLeft");
    expect(builds?.low).toBeGreaterThan(0);
    expect(linear?.low).toBeLessThan(0);
    for (const id of ["leftLockInner", "lockDifferenceInner", "track", "rodLengthLeft", "left.scrubRadius"])
      expect(figureOf(balanced, id).alike, id).toBe(true);
  });

  it("share a spread out among the sizes as the builds do", () => {
    const locks = result.chances.find(({ judge }) => judge.id === "lock-difference");
    if (locks === undefined) throw new Error("not judged");
    const total = locks.carriers.reduce((sum, { share }) => sum + share, 0);
    // A figure that is a straight line is all carried by single sizes; classes of a twentieth lose under 1 %, chance some more.
    expect(total).toBeGreaterThan(0.93);
    expect(total).toBeLessThan(1.15);
  });
});

describe("the share of a spread", () => {
  const n = 4000;
  /** Evenly spread numbers that do not hang together: multiples of irrational numbers, less their whole parts (Weyl). */
  const weyl = (root: number) => Float64Array.from({ length: n }, (_, i) => (i * root) % 1);
  const [p, q] = [weyl(Math.SQRT2), weyl(Math.sqrt(3))];
  const classes = (of: Float64Array) => Uint8Array.from(of, classOf);
  const sampleOf = (f: (i: number) => number | null) => {
    const sample = newSample(n);
    for (let i = 0; i < n; i++) put(sample, i, f(i));
    return sample;
  };

  it("is that of the variances in a sum, whatever the curve", () => {
    // Var(3u) : Var(4v) = 9 : 16.
    const sum = sampleOf((i) => 3 * p[i] + 4 * q[i]);
    expect(shareOf(sum, n, classes(p))).toBeCloseTo(9 / 25, 2);
    expect(shareOf(sum, n, classes(q))).toBeCloseTo(16 / 25, 2);
    // A size that counts by its square about the middle has no slope there, and is found all the same.
    const bowl = sampleOf((i) => (p[i] - 0.5) ** 2);
    expect(shareOf(bowl, n, classes(p))).toBeGreaterThan(0.97);
    expect(shareOf(bowl, n, classes(q)) ?? 1).toBeLessThan(0.01);
  });

  it("is null where nothing varies, and passes over what could not be told", () => {
    expect(
      shareOf(
        sampleOf(() => 5),
        n,
        classes(p),
      ),
    ).toBeNull();
    const half = sampleOf((i) => (i % 2 === 0 ? p[i] : null));
    expect(shareOf(half, n, classes(p))).toBeGreaterThan(0.98);
  });
});

describe("a spread", () => {
  it("is what so many of 100 do not exceed, of those that could be told", () => {
    const sample = newSample(200);
    for (let i = 0; i < 101; i++) put(sample, Math.min(2 * i, 199), (i * 37) % 101);
    const spread = spreadOf(sample, 200);
    // 0 to 100 once each: their quantiles are their own numbers. The last is put where one had no place.
    expect(spread?.told).toBe(101);
    expect([spread?.low, spread?.middle, spread?.high]).toEqual([5, 50, 95]);
    expect(spreadOf(newSample(5), 5)).toBeNull();
  });

  it("meets an end that it stands on, and none where it cannot be told", () => {
    expect([meets({ bad: "over" }, 2, 2), meets({ bad: "over" }, 2.1, 2), meets({ bad: "under" }, 2, 2)]).toEqual([
      true,
      false,
      true,
    ]);
    expect(meets({ bad: "under" }, null, 0)).toBe(false);
  });
});

describe("the job", { timeout: 120_000 }, () => {
  const study = studyOfText(textOf("balanced-two-seater"));
  const start = () => {
    const job = toleranceJob(study, { builds: 120, seed: 9 });
    if ("refused" in job) throw new Error(job.refused);
    return job;
  };

  it("tells how far it is, and what the builds so far say when it is stopped", () => {
    const job = start();
    expect(job.best().tried).toBe(0);
    let before = 0;
    for (let i = 0; i < 90; i++) {
      job.step(1);
      expect(job.progress()).toBeGreaterThanOrEqual(before);
      before = job.progress();
    }
    const { tried, done, held, figures } = job.best();
    expect(tried).toBe(90 - held.length);
    expect(done).toBe(false);
    expect(figures.find(({ reading }) => reading.id === "track")?.builds?.told).toBe(tried);
    while (!job.step(64));
    expect([job.progress(), job.best().tried, job.best().done]).toEqual([1, 120, true]);
  });

  it("gives the same for the same seed, whatever the size of its steps, and something else for another", () => {
    const [one, other] = [start(), start()];
    while (!one.step(1));
    while (!other.step(37));
    const told = (job: typeof one) => JSON.stringify(job.best().figures.map(({ builds, linear }) => [builds, linear]));
    expect(told(one)).toBe(told(other));
    const third = toleranceJob(study, { builds: 120, seed: 10 });
    if ("refused" in third) throw new Error(third.refused);
    while (!third.step(64));
    expect(told(third)).not.toBe(told(one));
  });

  it("counts the builds that do not go together, and tells the others", () => {
    // 50 mm each way is no way to build: some of these are no front end at all.
    const wild = studyOfText(`${textOf("balanced-two-seater")}\ntolerances: { length: 50 mm, angle: 10 }\n`);
    const { tried, apart, figures, all } = trialsOf(wild, { builds: 200, seed: 1 });
    expect(apart).toBeGreaterThan(0);
    expect(apart).toBeLessThan(tried);
    expect(figures.find(({ reading }) => reading.id === "track")?.builds?.told).toBe(tried - apart);
    expect(all.limit.of).toBe(tried);
    expect(all.limit.met).toBeLessThanOrEqual(tried - apart);
  });

  it("gains by holding more closely what it says to hold", () => {
    const { jig } = trialsOf(study, { builds: 800, seed: 1 });
    expect(jig?.carriers[0]?.pair).toBe("rack.straight-ahead");
    expect(jig?.after?.of).toBe(jig?.before.of);
    expect(jig?.after?.between[0]).toBeGreaterThan(jig?.before.between[1] ?? 1);
  });
});
