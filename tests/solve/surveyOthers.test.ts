import { expect, it } from "vitest";
import { loadSheet } from "../../src/files/sheets.ts";
import { byOthers } from "../../src/solve/survey/others.ts";
import { type Surveyed, settleSurvey } from "../../src/solve/survey/survey.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
import type { Survey } from "../../src/vehicle/survey/survey.ts";

const loaded = loadSheet("sheets", "donor-front");
const survey = readSurvey("text" in loaded ? loaded.text : "") as Survey;

function settled(sheet: Survey): Surveyed {
  const found = settleSurvey(sheet);
  if ("complaint" in found) throw new Error(found.complaint);
  return found;
}

/** What a sheet makes of a reading that is hardly believed: as if it had been left out, and its value is still told. */
function without(at: number): number {
  const readings = survey.readings.map((each, i) => (i === at ? { ...each, sigma: each.sigma * 1e4 } : each));
  return settled({ ...survey, readings }).readings[at]?.computed ?? Number.NaN;
}

it("says of a reading what is found when the sheet is settled without it", () => {
  const found = settled(survey);
  const all = byOthers(found);
  const [wrong = -1] = found.blunders.map(({ reading }) => reading);
  expect(all.every((each) => each !== null)).toBe(true);
  // Every kind of reading, the wrong one among them. A settling of its own each time, so not all of them.
  for (const at of [wrong, 0, 5, 17, 23, 44, 60, 66, 77, 90, 101, 113, 120]) {
    const { reading, computed } = found.readings[at] ?? {};
    const said = all[at]?.value ?? Number.NaN;
    // Points move by some 1/8 in over some 10 in: what a straight line leaves out is (1/8)² / (2 × 10) in.
    expect(Math.abs(said - without(at)), reading?.name).toBeLessThan(0.02);
    expect(Math.abs(said - (reading?.value ?? 0))).toBeGreaterThanOrEqual(
      Math.abs((computed ?? 0) - (reading?.value ?? 0)) - 1e-9,
    );
  }
});

it("says how well the others know it, and nothing of a reading that no other checks", () => {
  // One height by itself, and one that was taken three times: two others know it to a sigma over the root of 2.
  const [, , first, second] = survey.readings;
  if (first === undefined || second === undefined) throw new Error("the example has no heights");
  const found = settled({ ...survey, readings: [first, second, second, second] });
  const [lone, ...thrice] = byOthers(found);
  expect(lone).toBeNull();
  for (const each of thrice) expect(each?.deviation).toBeCloseTo(second.sigma / Math.SQRT2, 6);
});
