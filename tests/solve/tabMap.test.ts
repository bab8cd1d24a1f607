import { describe, expect, it } from "vitest";
import { loadPreset } from "../../src/files/presets.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { carFigures } from "../../src/measures/carFigures.ts";
import { sideAt } from "../../src/measures/points.ts";
import { bodiesOf } from "../../src/measures/range/bodies.ts";
import { pairingsAt } from "../../src/measures/range/clearance.ts";
import { placeOf } from "../../src/measures/span.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { goalsFor } from "../../src/solve/goals/goals.ts";
import { dear } from "../../src/solve/goals/readings.ts";
import { scoreOf } from "../../src/solve/goals/score.ts";
import { finished } from "../../src/solve/job.ts";
import { clearancePlaces } from "../../src/solve/tab-map/noGo.ts";
import { type TabMapOf, tabMapJob } from "../../src/solve/tab-map/tabMap.ts";
import { tabNumbers } from "../../src/solve/tab-map/tabNumbers.ts";
import { standIn, tabsAt } from "../../src/solve/tab-map/tabPlane.ts";
import { setValues } from "../../src/vehicle/edits/values.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { limitOf } from "../../src/vehicle/sections/limits.ts";

function studyOfText(text: string): Study | null {
  const car = readCar(text);
  if ("complaints" in car) return null;
  const study = studyOf(car);
  return "refused" in study ? null : study;
}

function preset(name: string): Study {
  const loaded = loadPreset(name);
  const study = "complaints" in loaded ? null : studyOfText(loaded.text);
  if (study === null) throw new Error(name);
  return study;
}

function mapOf(study: Study, change: Partial<TabMapOf> = {}): TabMapOf {
  return {
    wheels: ["left", "right"],
    plane: "ahead",
    outs: { from: -40, to: 40, rows: 9 },
    others: { from: 30, to: -30, rows: 7 },
    read: tabNumbers(study),
    ...change,
  };
}

/** The study of the car's text with its tabs moved as an edit moves them. */
function moved({ car }: Study, map: TabMapOf, at: number): Study | null {
  const [out, other] = [placeOf(map.outs, at % map.outs.rows), placeOf(map.others, Math.floor(at / map.outs.rows))];
  return studyOfText(setValues(car, tabsAt(car, map, out, other)));
}

describe("the map of a tab's plane", () => {
  it.each([
    ["balanced-two-seater", { plane: "up" }],
    ["cut-rods-off-middle", { wheels: ["right"] }],
    ["twin-beam-relay", {}],
  ] as const)("of %s has in each place what the edited file has", (name, change) => {
    const study = preset(name);
    const map = mapOf(study, change);
    const { cells } = finished(tabMapJob(study, map));
    expect(cells.length).toBe(63);
    const goals = goalsFor(study).filter((goal) => !dear.has(goal.name));
    let compared = 0;
    for (const [at, cell] of cells.entries()) {
      const alone = moved(study, map, at);
      if (alone === null || alone.worst.blame !== null) {
        expect(cell, String(at)).toEqual({ values: [], noGo: "does not close" });
        continue;
      }
      expect(cell?.noGo).not.toBe("does not close");
      const own = [scoreOf(goals, alone).total, ...carFigures.map((figure) => figure.read(alone))];
      // The edit writes a place to a millionth of a millimetre, and a score counts thousands for one miss of a must.
      for (const [i, value] of own.entries()) {
        const found = cell?.values[i] ?? null;
        if (value === null || found === null) expect(found).toBe(value);
        else expect(Math.abs(found - value), `${at} ${i}`).toBeLessThanOrEqual(1e-5 * Math.max(1, Math.abs(value)));
      }
      compared++;
    }
    expect(compared).toBeGreaterThan(10);
  });

  it("hatches what clearances and rod-to-arm angles forbid, as a search of the whole range finds it", () => {
    const study = preset("check-before-welding");
    const map = mapOf(study, { outs: { from: -40, to: 40, rows: 7 }, others: { from: 40, to: -60, rows: 6 } });
    const { cells, lacks } = finished(tabMapJob(study, map));
    const limit = limitOf(study.car.sections.limits, "clearance").broken;
    const least = limitOf(study.car.sections.limits, "rod-to-arm").broken;
    const seen = new Set<string | null>();
    for (const [at, cell] of cells.entries()) {
      seen.add(cell?.noGo ?? null);
      const alone = moved(study, map, at);
      if (alone === null || alone.worst.blame !== null) {
        expect(cell?.noGo).toBe("does not close");
        continue;
      }
      const angle = Math.min(alone.worst.rodAngle.left?.angle ?? 0, alone.worst.rodAngle.right?.angle ?? 0);
      if (angle < least) {
        expect(cell?.noGo, String(at)).toBe("dead point");
        continue;
      }
      // At the map's own places it forbids exactly what is too near there; and so nothing that the whole range allows.
      const own = leastDistance(alone, clearancePlaces.whole.inputs - 1, clearancePlaces.whole.travels - 1);
      expect(cell?.noGo !== null, `${at}: ${own}`).toBe(own < limit);
      if (cell?.noGo) expect(leastDistance(alone, 40, 40), `${at} ${cell.noGo}`).toBeLessThan(limit);
    }
    expect([...seen].length).toBeGreaterThan(2);
    expect(lacks.join()).not.toContain("tubes: tie-rod");
  });

  it("is seen whole after an eighth of the work, and is the same however it was stepped", () => {
    const study = preset("balanced-two-seater");
    const map = mapOf(study);
    const whole = finished(tabMapJob(study, map));
    const job = tabMapJob(study, map);
    expect(job.step(20)).toBe(false);
    const { cells } = job.best();
    for (let at = 0; at < cells.length; at++) expect(cells[standIn(at, map.outs.rows)]).toBeDefined();
    expect(job.progress()).toBeCloseTo(20 / (2 * 63), 12);
    while (!job.step(3));
    expect(job.best()).toEqual(whole);
  });

  it("has every cell half way through, forbidden alike and within a tenth of a degree of its last rod-to-arm angle", () => {
    const study = preset("widened-offset-rack");
    const map = mapOf(study);
    const job = tabMapJob(study, map);
    job.step(63);
    const coarse = job.best().cells;
    const whole = finished(tabMapJob(study, map))?.cells ?? [];
    expect(whole).toHaveLength(63);
    expect(coarse.map((cell) => cell?.noGo)).toEqual(whole.map((cell) => cell?.noGo));
    // After the score come the figures in their order.
    const angle = 1 + carFigures.findIndex(({ id }) => id === "leastRodAngleLeft");
    const apart = whole.flatMap((cell, at) => {
      const [a, b] = [cell?.values[angle] ?? null, coarse[at]?.values[angle] ?? null];
      return a === null || b === null ? [] : [Math.abs(a - b)];
    });
    expect(apart.length).toBeGreaterThan(10);
    expect(Math.max(...apart)).toBeLessThan((0.1 * Math.PI) / 180);
  });

  it("says what the clearances lack", () => {
    const study = preset("balanced-two-seater");
    expect(tabMapJob(study, mapOf(study)).best().lacks.join()).toContain("tubes: tie-rod");
  });
});

/** The least distance of both tie rods from all else, over so many steps of steering by so many of travel. */
function leastDistance(study: Study, inputs: number, travels: number): number {
  const pairs = (["left", "right"] as const).flatMap((wheel) =>
    pairingsAt(study, bodiesOf(study, wheel)).filter(({ id }) => id.startsWith("tie-rod.")),
  );
  const poses = newPoses(1);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= inputs; i++) {
    for (let j = 0; j <= travels; j++) {
      const input = -study.inputTravel.right + ((study.inputTravel.left + study.inputTravel.right) * i) / inputs;
      const travel = -study.wheelTravel.droop + ((study.wheelTravel.droop + study.wheelTravel.bump) * j) / travels;
      solve(study.front, input, travel, travel, poses, 0);
      for (const pair of pairs) {
        const at = sideAt(pair.wheel);
        if (poses[at + Side.Blame] === 0) least = Math.min(least, pair.read(poses, at, least));
      }
    }
  }
  return least;
}
