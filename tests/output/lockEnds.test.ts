import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Study } from "../../src/measures/study.ts";
import { summaryText } from "../../src/output/summary.ts";
import { built, plausible } from "../measures/plausibleCars.ts";
import { presetText, studyFrom } from "./studies.ts";

const wheels = ["left", "right"] as const;

/** A sound car whose rack goes as far as told to each side, drawn with it at `straight`. */
function ended(straight: string, left: string, right: string): Study {
  const text = presetText("balanced-two-seater");
  const changed = text.replace(
    /(rack: \{.*?)travel: [^,}]+/,
    `$1straight-ahead: ${straight}, travel: { left: ${left}, right: ${right} }`,
  );
  expect(changed).not.toBe(text);
  return studyFrom(changed);
}

/** The summary in one line, however it is wrapped. */
const said = (study: Study) => summaryText(study, "", "mm", String).join(" ").replace(/\s+/g, " ");

test("a lock is the end that turns both wheels its own way, on random cars", () => {
  let told = 0;
  fc.assert(
    fc.property(plausible, (car) => {
      const study = built(car);
      if (study === null) return;
      for (const wheel of wheels) {
        const lock = study.locks[wheel];
        expect(lock?.turn).toBe(wheel);
        // Steer is positive to the left, of both wheels; toe is far less than any lock.
        for (const side of wheels) expect(Math.sign(lock?.[side]?.steer ?? 0)).toBe(wheel === "left" ? 1 : -1);
        // With the tab behind the axis the left lock is at the rack's right end, with the tab ahead at its left end.
        expect(Math.sign(lock?.input ?? 0)).toBe((wheel === "left" ? 1 : -1) * (car.tabBack > 0 ? -1 : 1));
        told++;
      }
    }),
    { numRuns: 40, endOnFailure: true },
  );
  expect(told).toBeGreaterThan(10);
});

describe("straight ahead at the rack's end", () => {
  test("leaves no lock that way, and says so", () => {
    const study = ended("1", "1", "0.5");
    const [none, full] = study.locks.left?.turn === null ? (["left", "right"] as const) : (["right", "left"] as const);
    expect(study.locks[none]).toMatchObject({ turn: null, inner: null, outer: null, blame: null });
    expect(study.locks[full]).toMatchObject({ turn: full, blame: null });
    expect(study.locks.difference.inner).toBeNull();
    expect(said(study)).toContain(`${none}: none: the rack ends there with the wheels straight`);
  });

  test("and beyond it, both ends turn one way: the lock of the other is none", () => {
    const study = ended("1", "0.75", "0.5");
    const [none, full] =
      study.locks.left?.turn === "left" ? (["right", "left"] as const) : (["left", "right"] as const);
    expect(study.locks[none]?.turn).toBe(full);
    expect(study.locks.difference.inner).toBeNull();
    expect(said(study)).toContain(`${none}: none: the rack ends there with the wheels still turned ${full}`);
  });
});
