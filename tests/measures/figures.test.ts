import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { bumpTable, travelSpan } from "../../src/measures/bumpTable.ts";
import { carFigures } from "../../src/measures/carFigures.ts";
import { figureOf, figures, poseFigures, wheelFigures } from "../../src/measures/figures.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { expectClose } from "../close.ts";
import { exampleText } from "./exampleText.ts";

function example(): Study {
  const car = readCar(exampleText);
  if ("complaints" in car) throw new Error("the example is a car");
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

const study = example();

describe("the list of figures", () => {
  test("names each once, in one word, and explains it in sentences", () => {
    expect(new Set(figures.map((figure) => figure.id)).size).toBe(figures.length);
    for (const { id, label, explanation } of figures) {
      expect(id).toMatch(/^[a-z][A-Za-z]+$/);
      expect(label.length, id).toBeGreaterThan(2);
      expect(explanation, id).toMatch(/^[A-Z].*[.)]$/);
    }
  });

  test("has what a pose is told by", () => {
    const named =
      "steer toe camber caster kpi scrubRadius trail tieRodLength leverArm transmissionAngle bumpSteer".split(" ");
    expect(wheelFigures.map((figure) => figure.id)).toEqual(expect.arrayContaining(named));
    expect(figureOf("toe")?.of).toBe("wheel");
    expect(figureOf("no such figure")).toBeUndefined();
  });

  test("every figure of a wheel and of a pose is a number where the car turns and travels", () => {
    const poses = study.pose(-40, 30, 30);
    for (const figure of wheelFigures) {
      for (const at of [Pose.Left, Pose.Right])
        expect(figure.read(poses, at, study), figure.id).toSatisfy(Number.isFinite);
    }
    for (const figure of poseFigures) expect(figure.read(poses, 0, study), figure.id).toSatisfy(Number.isFinite);
  });

  test("every figure of a car on a rack is a number, but the column's", () => {
    expect(carFigures.find(({ id }) => id === "zeroColumn")?.read(study)).toBeNull();
    for (const figure of carFigures.filter(({ id }) => id !== "zeroColumn"))
      expect(figure.read(study), figure.id).toSatisfy(Number.isFinite);
  });

  test("straight ahead nothing is said of turning", () => {
    const ride = study.pose(0, 0, 0);
    expect(figureOf("ackermann")).toMatchObject({ of: "pose" });
    for (const id of ["inner", "outer", "idealInner", "percentOfIdealInner", "ackermann", "turnRadius"]) {
      const figure = poseFigures.find((each) => each.id === id);
      expect(figure?.read(ride, 0, study), id).toBeNull();
    }
  });

  test("bounce steer is only told while both wheels travel alike", () => {
    const figure = poseFigures.find((each) => each.id === "bounceSteer");
    expect(figure?.read(study.pose(0, 30, 20), 0, study)).toBeNull();
  });

  test("agree with the tables", () => {
    const row = bumpTable(study, 12, travelSpan(study)).rows[3];
    const poses = study.pose(12, row.travel, row.travel);
    const read = (id: string) => wheelFigures.find((figure) => figure.id === id)?.read(poses, Pose.Right, study);
    expectClose(
      [read("toe"), read("toeChange"), read("camber"), read("caster"), read("trackChange")],
      [row.right.toe, row.right.toeChange, row.right.camber, row.right.caster, row.right.trackChange],
      { abs: 0 },
    );
    const lock = carFigures.find((figure) => figure.id === "rightLockAckermann");
    expect(lock?.read(study)).toBe(study.steerTable().rows[20].ackermann);
  });
});
