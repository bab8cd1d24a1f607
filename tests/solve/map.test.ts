import { describe, expect, it } from "vitest";
import { loadPreset } from "../../src/files/presets.ts";
import { figureOf } from "../../src/measures/figures.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { type MapOf, mapJob } from "../../src/solve/map.ts";
import { readCar } from "../../src/vehicle/read.ts";

function studyOfPreset(name: string): Study {
  const loaded = loadPreset(name);
  if ("complaints" in loaded) throw new Error(name);
  const car = readCar(loaded.text);
  if ("complaints" in car) throw new Error(name);
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

function mapOf(id: string, { inputTravel, wheelTravel }: Study): MapOf {
  const figure = figureOf(id);
  if (figure === undefined || figure.of === "car") throw new Error(id);
  return {
    figure,
    wheel: "right",
    inputs: { from: inputTravel.left, to: -inputTravel.right, rows: 7 },
    travels: { from: wheelTravel.bump, to: -wheelTravel.droop, rows: 5 },
  };
}

describe("a map of a figure", () => {
  const study = studyOfPreset("widened-offset-rack");

  it("is done in pieces, tells how far it is, and is the same however it was stepped", () => {
    const whole = mapJob(study, mapOf("steer", study));
    expect(whole.step(1000)).toBe(true);
    const pieces = mapJob(study, mapOf("steer", study));
    let steps = 0;
    for (let last = -1; !pieces.step(4); last = pieces.progress()) {
      expect(pieces.progress()).toBeGreaterThan(last);
      expect(pieces.best()).toEqual(whole.best().slice(0, pieces.best().length));
      steps++;
    }
    expect(steps).toBe(8);
    expect(pieces.progress()).toBe(1);
    expect(pieces.best()).toEqual(whole.best());
  });

  it("has the steer table in its row at ride height, and the bump table in its columns", () => {
    const steer = mapJob(study, mapOf("steer", study));
    steer.step(1000);
    const middle = steer.best().slice(2 * 7, 3 * 7);
    const { left, right } = study.inputTravel;
    const table = study.steerTable({ from: left, to: -right, rows: 7 }).rows;
    expect(middle).toEqual(table.map((row) => row.right.steer));
    const camber = mapJob(study, mapOf("camber", study));
    camber.step(1000);
    const { bump, droop } = study.wheelTravel;
    const rows = study.bumpTable(left, { from: bump, to: -droop, rows: 5 })?.rows ?? [];
    expect([0, 7, 14, 21, 28].map((at) => camber.best()[at])).toEqual(rows.map((row) => row.right.camber));
  });

  it("says where the linkage does not close, and where the figure says nothing", () => {
    const ackermann = mapJob(study, mapOf("ackermann", study));
    ackermann.step(1000);
    // Straight ahead at ride height nothing has turned.
    expect(ackermann.best()[2 * 7 + 3]).toBeNull();
    const far = mapJob(study, { ...mapOf("steer", study), inputs: { from: 0, to: 1000, rows: 2 } });
    far.step(1000);
    expect(far.best()[1]).toBe("open");
  });
});
