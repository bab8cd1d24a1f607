import { beforeAll, describe, expect, test } from "vitest";
import { blameOf } from "../../src/measures/blame.ts";
import { carFigures } from "../../src/measures/carFigures.ts";
import { poseFigures, wheelFigures } from "../../src/measures/figures.ts";
import { drawnOf } from "../../src/measures/front.ts";
import { sideAt } from "../../src/measures/points.ts";
import { studyOf } from "../../src/measures/study.ts";
import { changeFrontEnd } from "../../src/vehicle/change.ts";
import { setQuantity } from "../../src/vehicle/edit.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { mechanisms } from "../../src/vehicle/mechanisms.ts";
import { quantitiesOf } from "../../src/vehicle/quantities.ts";
import { carOf, presetText, studied } from "./carTexts.ts";
import { notFinite } from "./notFinite.ts";

const combinations = linkages.flatMap((linkage) =>
  mechanisms.map(({ name, word, takeOff }) => ({
    linkage: linkage.name,
    name,
    change: { linkage: linkage.name, mechanism: word, ...(takeOff === null ? {} : { takeOff }) },
  })),
);

/** A car of that combination, its left side a few mm unlike its right. */
function unlike(change: Parameters<typeof changeFrontEnd>[1]): string {
  const car = carOf(changeFrontEnd(carOf(presetText("balanced-two-seater")), change).text);
  const points = quantitiesOf(car.form).filter(
    ({ wheel, kind, id }) => wheel === "left" && kind === "length" && /\.(ahead|out|up)$/.test(id),
  );
  return points.reduce(
    (text, { pair, index }, i) =>
      setQuantity(carOf(text), { pair, sides: "left", value: (car.numbers[index] ?? 0) + 2 + (i % 3) }),
    car.text,
  );
}

describe.each(combinations)("$linkage and $name", ({ change, linkage, name }) => {
  let text = "";
  beforeAll(() => {
    text = unlike(change);
  });

  test("a study's every answer is a number, or null where it says so", () => {
    const study = studied(text);
    expect([study.car.form.linkage, study.car.form.mechanism]).toEqual([linkage, name]);
    const pose = study.pose(0.3 * study.inputTravel.left, 0, 0);
    expect(blameOf(pose, 0)).toBeNull();
    const answers = {
      steer: study.steerTable(),
      locks: study.locks,
      worst: study.worst,
      bump: study.bumpTable(0),
      zero: [study.zero, study.zeroSteer, study.rodLengths, study.track, study.kingPinSpacing],
      car: carFigures.map((figure) => [figure.id, figure.read(study)]),
      wheel: wheelFigures.map(({ read }) => [read(pose, sideAt("left"), study), read(pose, sideAt("right"), study)]),
      pose: poseFigures.map(({ id, read }) => [id, read(pose, 0, study)]),
    };
    expect(notFinite(answers)).toEqual([]);
    expect(study.locks.left?.inner).toBeGreaterThan(0.2);
    expect(study.locks.right?.inner).toBeGreaterThan(0.2);
    expect(study.steersBackwards).toBe(false);
    expect([study.worst.rodAngle.left, study.worst.rodAngle.right]).not.toContain(null);
  });

  test("the kernel is drawn as the file says: unlike sides, the rods' inner ends where the mechanism has them", () => {
    const drawn = drawnOf(carOf(text));
    expect(drawn.linkage.kind).toBe(linkage);
    expect(drawn.mechanism.kind).toBe(name);
    expect(drawn.left.tieRodOuter.x).not.toBe(drawn.right.tieRodOuter.x);
    expect(notFinite(drawn)).toEqual([]);
  });
});

describe("a car without suspension", () => {
  const study = studied(presetText("fixed-kingpin-yard-kart"));

  test("has no bump table and no worst toe or bounce: nothing, not noughts", () => {
    expect(study.suspended).toBe(false);
    expect(study.bumpTable(0)).toBeNull();
    expect(study.bumpTable(0, { from: -1, to: 1, rows: 3 })).toBeNull();
    expect(study.worst.toe).toEqual({ left: null, right: null });
    expect(study.worst.bounce).toBeNull();
  });

  test("its figures of travel are null, the others are not", () => {
    const pose = study.pose(0.2, 0, 0);
    const nulls = [
      ...wheelFigures.filter(({ read }) => read(pose, 0, study) === null),
      ...poseFigures.filter(({ read }) => read(pose, 0, study) === null),
    ].map(({ id }) => id);
    expect(nulls.sort()).toEqual(
      [
        "bounceSteer",
        "bumpSteer",
        "camberGain",
        "instantCentreOut",
        "instantCentreUp",
        "rollCentreHeight",
        "rollCentreOffset",
        "toeChange",
        "trackChange",
      ].sort(),
    );
  });

  test("looks for its dead points over the steering alone, and a wheel asked to travel does not close", () => {
    expect(study.worst.rodAngle.left).toMatchObject({ travel: -0 });
    expect(study.worst.blame).toBeNull();
    expect(blameOf(study.pose(0, 10, 10), 0)).toMatchObject({ link: "travel" });
  });

  test("says where it cannot stand without speaking of travel", () => {
    const refused = studyOf(
      carOf(presetText("fixed-kingpin-yard-kart").replace("  both:", "  left: { tie-rod: { length: 100 } }\n  both:")),
    );
    expect(refused).toMatchObject({
      refused: expect.stringMatching(/^At column 0 the front end does not go together/),
    });
  });
});

describe("a car steered by its column", () => {
  const kart = presetText("fixed-kingpin-yard-kart");

  test("has its input in rad, its locks at the column's ends", () => {
    const study = studied(kart);
    expect(study.inputKind).toBe("column");
    expect(study.inputTravel.left).toBeCloseTo((35 * Math.PI) / 180, 12);
    expect(study.locks.left?.input).toBeCloseTo((35 * Math.PI) / 180, 12);
    expect(carFigures.find(({ id }) => id === "zero")?.read(study)).toBeNull();
    expect(carFigures.find(({ id }) => id === "zeroColumn")?.read(study)).toBe(0);
  });

  test("steers backwards where turning it left turns the wheels right", () => {
    expect(studied(kart).steersBackwards).toBe(false);
    // The eyes as far above the column as they hung below it (column at 242 up, 100 behind; eyes 37 further back).
    const above = kart.replaceAll("{ ahead: -137, out: 23, up: 158 }", "{ ahead: -63, out: 23, up: 326 }");
    expect(studied(above).steersBackwards).toBe(true);
    const relay = presetText("twin-beam-relay");
    expect(studied(relay).steersBackwards).toBe(false);
    expect(studied(relay.replace("turns: with", "turns: against")).steersBackwards).toBe(true);
  });

  test("a relay's shaft leans back and left as seen from the side and the front", () => {
    const relay = presetText("twin-beam-relay")
      .replace("    ratio: 16", "    ratio: 8")
      .replace("    idler:", "      lean-back: 45\n      lean-left: 30\n    idler:");
    const { mechanism } = drawnOf(carOf(relay));
    if (mechanism.kind !== "relay") throw new Error("not a relay");
    expect(mechanism.pitmanAxis.x / mechanism.pitmanAxis.z).toBeCloseTo(-1, 12);
    expect(mechanism.pitmanAxis.y / mechanism.pitmanAxis.z).toBeCloseTo(Math.tan(Math.PI / 6), 12);
    expect(mechanism.turn).toBe(1 / 8);
    expect([mechanism.leftEye.y, mechanism.rightEye.y]).toEqual([-127, 127]);
    expect(studyOf(carOf(relay))).toMatchObject({ refused: expect.stringContaining("centre link twists") });
  });
});
