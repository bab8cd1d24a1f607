import { describe, expect, it } from "vitest";
import { loadPreset } from "../../src/files/presets.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { checkJob } from "../../src/solve/check/check.ts";
import { finished } from "../../src/solve/job.ts";
import { readCar } from "../../src/vehicle/read.ts";

function offsetCar(targets: string): Study {
  const loaded = loadPreset("widened-offset-rack");
  const car = "complaints" in loaded ? loaded : readCar(`${targets}${loaded.text}`);
  if ("complaints" in car) throw new Error(car.complaints[0]?.message);
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

const judged = (study: Study) => (finished(checkJob(study))?.items ?? []).filter(({ part }) => part === "targets");

describe("targets among the checks", () => {
  it("are those that the file sets, and no other", () => {
    expect(judged(offsetCar(""))).toEqual([]);
    const states = judged(
      offsetCar("targets: { lock-difference: { warn: 1, bad: 2 }, ackermann-least: { bad: 50 } }\n"),
    );
    // The screen and the steer table say 31.8° and 34.0° of inner lock, 76 % and 101 % Ackermann of this car.
    expect(states.map(({ label, state }) => [label, state])).toEqual([
      ["Inner locks' difference", "broken"],
      ["Ackermann at full left lock", "pass"],
      ["Ackermann at full right lock", "pass"],
    ]);
    expect(states[0]?.limit).toMatchObject({ from: "file", bad: "over" });
  });

  it("judge sizes: toe out and steer to the right as much as toe in and steer to the left", () => {
    const study = offsetCar("targets: { toe-change: { warn: 1/8, bad: 1/4 }, bounce-steer: { warn: 0.5, bad: 1 } }\n");
    expect(study.worst.toe.right?.acrossTyre).toBeLessThan(0);
    expect(study.worst.bounce?.bounceSteer).toBeLessThan(0);
    expect(judged(study).map(({ state }) => state)).toEqual(["close", "broken", "close"]);
  });
});
