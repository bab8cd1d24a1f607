import { describe, expect, it } from "vitest";
import { loadPreset } from "../../src/files/presets.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { firstStep, stepsFor } from "../../src/screen/steps.ts";
import { finished } from "../../src/solve/job.ts";
import { builderStep, type SensitivityRow, sensitivityJob } from "../../src/solve/sensitivity/sensitivity.ts";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { readCar } from "../../src/vehicle/read.ts";

function textOf(name: string): string {
  const loaded = loadPreset(name);
  if ("complaints" in loaded) throw new Error(name);
  return loaded.text;
}

function studyOfText(text: string): Study {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints[0]?.message);
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

const balanced = studyOfText(textOf("balanced-two-seater"));
const rows = finished(sensitivityJob(balanced, "in"));

function rowOf(all: readonly SensitivityRow[], id: string): SensitivityRow {
  const row = all.find(({ quantity }) => quantity.id === id);
  if (row === undefined) throw new Error(id);
  return row;
}

function changeOf(row: SensitivityRow, id: string) {
  const change = row.changes.find(({ reading }) => reading.id === id);
  if (change === undefined) throw new Error(id);
  return change;
}

/** The other side's id of a figure or a quantity. */
function swapped(id: string): string {
  return id.replace(
    /left|right|Left|Right/,
    (side) => ({ left: "right", right: "left", Left: "Right", Right: "Left" })[side] ?? side,
  );
}

/** Figures that are positive to the left: a mirror turns their sign. */
const toTheLeft = ["lockDifferenceInner", "lockDifferenceOuter", "lockDifferenceTurnRadius", "zero"].concat([
  "left.steer",
  "right.steer",
  "rollCentreOffset",
]);

describe("sensitivity", () => {
  it("is mirrored on a car that is alike on both sides, to the last bit", () => {
    let compared = 0;
    for (const row of rows.filter(({ quantity }) => quantity.wheel === "left" && quantity.pair !== "rack.travel")) {
      const other = rowOf(rows, swapped(row.quantity.id));
      expect(other.hold).toBe(row.hold);
      for (const { reading, more, less } of row.changes) {
        const change = changeOf(other, swapped(reading.id));
        const hand = toTheLeft.includes(reading.id) ? -1 : 1;
        const expected = [more, less].map((value) => (value === null ? null : hand * value + 0));
        expect(
          [change.more, change.less].map((value) => (value === null ? null : value + 0)),
          `${row.quantity.id} ${reading.id}`,
        ).toEqual(expected);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });

  it("has the sign of the change, more and less", () => {
    const out = rowOf(rows, "left.wheel.center.out");
    // The contact goes out by as much as the wheel's centre, whatever its lean.
    expect(changeOf(out, "track").more).toBeCloseTo(25.4 / 16, 9);
    expect(changeOf(out, "track").less).toBeCloseTo(-25.4 / 16, 9);
    const toe = rowOf(rows, "right.wheel.toe");
    expect(changeOf(toe, "right.toe").more).not.toBe(0);
    // Tabs behind the king pins: a longer rod pushes the tab out, and the wheel toes in; drawn alike, each takes half.
    const rod = rowOf(rows, "left.tie-rod.length");
    expect(changeOf(rod, "left.toe").more).toBeGreaterThan(0);
    expect(changeOf(rod, "left.toe").less).toBeLessThan(0);
  });

  it("shows the larger of both ways, also at the bottom of a worst value", () => {
    const both = rows.flatMap((row) => row.changes).filter(({ more, less }) => more !== null && less !== null);
    for (const { more, less, worse } of both)
      expect(Math.abs(worse?.change ?? 0)).toBe(Math.max(Math.abs(more ?? 0), Math.abs(less ?? 0)));
    // Rack and tabs are nearly as good as can be here: up or down, the worst toe grows.
    const { more, less } = changeOf(rowOf(rows, "rack.up"), "worstToeAcrossTyreLeft");
    expect(more).toBeGreaterThan(0);
    expect(less).toBeGreaterThan(0);
  });

  it("ranks by the share of what the targets allow: a target of half the size makes twice the share", () => {
    const shares = rows.map((row) =>
      row.breaks.length > 0 ? Number.POSITIVE_INFINITY : (row.chief?.worse?.share ?? 0),
    );
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    const strict = studyOfText(`${textOf("balanced-two-seater")}targets: { toe-change: { warn: 0.0625 } }\n`);
    const share = (of: readonly SensitivityRow[]) =>
      changeOf(rowOf(of, "rack.up"), "worstToeAcrossTyreLeft").worse?.share ?? 0;
    expect(share(finished(sensitivityJob(strict, "in")))).toBeCloseTo(2 * share(rows), 9);
    // By common practice 1/8 in of toe is where it gets doubtful.
    const { worse } = changeOf(rowOf(rows, "rack.up"), "worstToeAcrossTyreLeft");
    expect(worse?.share).toBeCloseTo(Math.abs(worse?.change ?? 0) / (25.4 / 8), 12);
  });

  it("leaves out what the file does not say, and takes the steps of the screen", () => {
    const ids = rows.map(({ quantity }) => quantity.id);
    expect(ids.filter((id) => id.includes("stops"))).toEqual([]);
    expect(ids).toContain("rack.offset");
    expect(new Set(ids).size).toBe(ids.length);
    for (const unit of ["in", "mm"] as const)
      for (const kind of ["length", "angle", "ratio"] as const)
        expect(builderStep(kind, unit)).toBe(stepsFor(kind, { unit })[firstStep]?.size);
  });

  it("says which way the front end no longer reaches its lock", () => {
    const { car } = balanced;
    const withTravel = (travel: number) => {
      const numbers = Float64Array.from(car.numbers);
      numbers[indexOf("left.rack.travel")] = travel;
      const study = studyOf({ ...car, numbers });
      if ("refused" in study) throw new Error(study.refused);
      return study;
    };
    let [low, high] = [car.numbers[indexOf("left.rack.travel")], 900];
    expect(withTravel(high).locks.difference.inner).toBeNull();
    while (high - low > 0.1) {
      const middle = (low + high) / 2;
      if (withTravel(middle).locks.difference.inner === null) high = middle;
      else low = middle;
    }
    const all = finished(sensitivityJob(withTravel(low), "in"));
    expect(rowOf(all, "left.rack.travel")).toMatchObject({ breaks: ["more"], hold: "tight" });
    expect(all[0]?.breaks).not.toEqual([]);
  });

  it("is a job that can be stopped and keeps what it has", () => {
    const job = sensitivityJob(balanced, "in");
    expect(job.best()).toEqual([]);
    expect(job.step(7)).toBe(false);
    expect(job.best().length).toBe(3);
    expect(job.progress()).toBeCloseTo(3.5 / rows.length, 12);
    while (!job.step(5));
    expect(job.best().map(({ quantity, chief }) => [quantity.id, chief?.worse])).toEqual(
      rows.map(({ quantity, chief }) => [quantity.id, chief?.worse]),
    );
  });
});
