import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { bodiesOf, type CornerBodies } from "../../src/measures/range/bodies.ts";
import { pairingsAt } from "../../src/measures/range/clearance.ts";
import { rodEndsAt, swing } from "../../src/measures/range/rodEnds.ts";
import { shockAt } from "../../src/measures/shock.ts";
import type { Study } from "../../src/measures/study.ts";
import { transmissionAngle } from "../../src/measures/tieRod.ts";
import { checkJob } from "../../src/solve/check/check.ts";
import type { CheckItem } from "../../src/solve/check/item.ts";
import { countOf, worstFirst, worstOf } from "../../src/solve/check/report.ts";
import { finished } from "../../src/solve/job.ts";
import { limitOf } from "../../src/vehicle/sections/limits.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { studied } from "../measures/carTexts.ts";
import { radians } from "../oracles/vectors.ts";
import { preset } from "../vehicle/cars.ts";

function checked(study: Study): readonly CheckItem[] {
  const report = finished(checkJob(study));
  if (report === null) throw new Error("the checks came to no end");
  return report.items;
}

function itemIn(items: readonly CheckItem[], id: string): CheckItem {
  const found = items.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${id} among ${items.map((each) => each.id).join(", ")}`);
  return found;
}

const full = preset("check-before-welding");
const study = studied(full);
const items = checked(study);

describe("the car that has everything", () => {
  test.each([
    ["range", "pass"],
    ["rod-to-arm.left", "pass"],
    ["rod-end.tie-rod-inner", "broken"],
    ["rod-end.upper-arm-joint", "close"],
    ["thread.engagement.left", "broken"],
    ["thread.engagement.right", "pass"],
    ["thread.adjustment.left", "broken"],
    ["clearance.tie-rod.lower-arm", "broken"],
    ["clearance.tie-rod.frame-lower-rail", "close"],
    ["shaft-joint.upper", "pass"],
    ["shock.bump.left", "pass"],
    ["wall-circle.left", "pass"],
    ["overall-width", "pass"],
  ])("%s is %s", (id, state) => {
    expect(itemIn(items, id).state).toBe(state);
  });

  test("has no number that is none, every id once, and nothing left to give", () => {
    const text = JSON.stringify(items, (_, value) =>
      typeof value === "number" && !Number.isFinite(value) ? "none" : value,
    );
    expect(text).not.toContain('"none"');
    expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
    expect(countOf({ items }, "not given")).toBe(0);
  });

  test("one bolt upright and its mate flat leaves both ends of the tie rod more than two alike", () => {
    const { facts } = itemIn(items, "rod-end.tie-rod-inner");
    const left = (id: string) => Number(facts.find((each) => each.id === id)?.value);
    expect(left("outerUpright")).toBeGreaterThan(left("bothUpright") + radians(5));
    expect(left("outerUpright")).toBeGreaterThan(left("bothFlat"));
  });

  test("the worst comes first: broken, then close", () => {
    const states = worstFirst({ items }).map(({ state }) => state);
    expect(states.indexOf("close")).toBe(countOf({ items }, "broken"));
    expect(worstOf({ items })?.state).toBe("broken");
  });
});

/** What is left of a shock's stroke, by its length in the pose, the free length and the stroke that the file gives. */
function strokeLeft(bodies: CornerBodies, poses: Float64Array, at: number) {
  const shock = study.car.sections.shock?.[bodies.wheel];
  if (shock === undefined || shock === null) throw new Error("the car that has everything has shocks");
  const { length } = shockAt(bodies, shock)(poses, at);
  return [
    [`shock.bump.${bodies.wheel}`, length - (22.75 - 6.5) * inch],
    [`shock.droop.${bodies.wheel}`, 22.75 * inch - length],
  ] as const;
}

/** Everything that the sweep watches, asked anew in a pose: its item, its value there, and what a place off by a hair is worth. */
function asked(poses: Float64Array): readonly (readonly [id: string, value: number])[] {
  return (["left", "right"] as const).flatMap((wheel) => {
    const at = wheel === "left" ? Pose.Left : Pose.Right;
    if (poses[at + Side.Blame] !== 0) return [];
    const bodies = bodiesOf(study, wheel);
    return [
      [`rod-to-arm.${wheel}`, transmissionAngle(poses, at)] as const,
      ...rodEndsAt(study, bodies).map(
        (end) =>
          [`rod-end.${end.joint.path.join("-")}`, end.end.angle - swing(end.shankIn(poses, at), end.bolt)] as const,
      ),
      ...pairingsAt(study, bodies).map((pair) => [`clearance.${pair.id}`, pair.read(poses, at)] as const),
      ...strokeLeft(bodies, poses, at),
    ];
  });
}

test("nowhere in the range is anything worse than what is reported", () => {
  const values = new Map(items.map(({ id, value }) => [id, value]));
  fc.assert(
    fc.property(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: -study.wheelTravel.droop, max: study.wheelTravel.bump, noNaN: true }),
      (share, travel) => {
        const input = share * (share > 0 ? study.inputTravel.left : study.inputTravel.right);
        for (const [id, value] of asked(Float64Array.from(study.pose(input, travel, travel)))) {
          // The last round looks at places a 32nd of the grid's 2.7 by 5.4 mm apart, so within 0.1 mm: a value that changes by no more than
          // its way, or by 1 rad over 100 mm, is then known to 0.1 mm and to 0.001 rad.
          const slack = /^(clearance|shock)/.test(id) ? 0.1 : 0.001;
          expect(`${id} ${value >= Number(values.get(id)) - slack}`).toBe(`${id} true`);
        }
      },
    ),
    { numRuns: 150, endOnFailure: true },
  );
});

test("what is reported is had at the place that is named", () => {
  for (const item of items.filter(
    ({ where, id }) => where !== null && /^(clearance|rod-end|rod-to-arm|shock)/.test(id),
  )) {
    const { input = 0, travel = 0 } = item.where ?? {};
    const there = asked(Float64Array.from(study.pose(input, travel, travel))).filter(([id]) => id === item.id);
    expect(Math.min(...there.map(([, value]) => Math.abs(value - Number(item.value))))).toBeLessThan(1e-3);
  }
});

describe("as a job", () => {
  test("it comes to the same in one go and piece by piece, and says how far it is", () => {
    const job = checkJob(studied(full));
    let before = 0;
    for (let done = false; !done; ) {
      done = job.step(50);
      expect(job.progress()).toBeGreaterThanOrEqual(before);
      before = job.progress();
    }
    expect(before).toBe(1);
    expect(job.best()?.items).toEqual(items);
  });
});

const bare = [
  "balanced-two-seater",
  "strut-hatchback-corners",
  "torsion-beam-steering-plate",
  "twin-beam-relay",
  "fixed-kingpin-yard-kart",
];

test.each(bare)("%s, which gives nothing optional, is told what is not given, with the keys to write", (name) => {
  const found = checked(studied(preset(name)));
  const open = found.filter(({ state }) => state === "not given");
  const keys = open.map(({ cautions }) => cautions.join(" ")).join(" ");
  for (const key of ["rod-ends", "threads", "tubes: tie-rod", "steering-shaft", "body"]) expect(keys).toContain(key);
  expect(open.every(({ value, limit }) => value === null && limit === null)).toBe(true);
  expect(found.some(({ part }) => part === "shocks")).toBe(name !== "fixed-kingpin-yard-kart");
});

test("what only one side gives is checked there and said of the other", () => {
  const one = `
rod-ends: { left: { tie-rod: { outer: { bolt: vertical, angle: 20 } } } }
threads: { right: { outer: { size: M12, reach: 2.4, thread: 1.5 }, inner: { size: M12, hand: left, reach: 2.4, thread: 1.5 } } }
tubes: { left: { tie-rod: 3/4 } }
`;
  const found = checked(studied(preset("widened-offset-rack") + one));
  expect(itemIn(found, "rod-end.tie-rod-outer").wheel).toBe("left");
  expect(itemIn(found, "rod-end.tie-rod-outer.right").state).toBe("not given");
  expect(itemIn(found, "threads.not-given.left").state).toBe("not given");
  expect(itemIn(found, "thread.engagement.right").state).toBe("pass");
  expect(itemIn(found, "clearance.not-given").cautions[0]).toContain("tubes: tie-rod (right)");
});

describe("limits", () => {
  test("that a file leaves out are common practice; one that it sets decides", () => {
    const at = itemIn(items, "clearance.tie-rod.lower-arm");
    expect(at.limit).toMatchObject({ broken: inch / 4, close: inch / 2, from: "common practice" });
    const own = checked(studied(`${full}limits: { clearance: { broken: 1/16, close: 1/8 } }\n`));
    expect(itemIn(own, "clearance.tie-rod.lower-arm").state).toBe("close");
    expect(itemIn(own, "clearance.tie-rod.lower-arm").limit).toMatchObject({ broken: inch / 16, from: "file" });
  });

  test("a level alone never stands on the wrong side of the other one's default", () => {
    const none = {
      "rod-to-arm": null,
      "rod-end": null,
      engagement: null,
      adjustment: null,
      "shock-stroke": null,
      "shaft-joint": null,
    };
    const clearance = (close: number | null, broken: number | null) =>
      limitOf({ ...none, clearance: { close, broken } }, "clearance");
    expect(clearance(3, null)).toMatchObject({ close: 3, broken: 3 });
    expect(clearance(null, 20)).toMatchObject({ close: 20, broken: 20 });
    expect(clearance(null, 3)).toMatchObject({ close: inch / 2, broken: 3 });
    const joint = limitOf(
      { ...none, clearance: null, "shaft-joint": { close: radians(40), broken: null } },
      "shaft-joint",
    );
    expect(joint).toMatchObject({ close: radians(40), broken: radians(40) });
  });

  // Common practice: rod-to-arm angle, engagement, adjustment, what is left of a shock's stroke and a steering shaft's joints.
  test.each([
    ["rod-to-arm", radians(30), radians(20)],
    ["engagement", 1.5, 1.5],
    ["adjustment", inch / 4, 0],
    ["shock-stroke", inch / 4, 0],
    ["shaft-joint", radians(30), radians(35)],
  ] as const)("%s", (name, close, broken) => {
    const limit = limitOf(null, name);
    expect([limit.close, limit.broken, limit.from]).toEqual([close, broken, "common practice"]);
  });
});

test("three joints without a support bearing are a warning, with one they pass", () => {
  const shaft = (held: string) =>
    `steering-shaft: { wheel: { ahead: -40, offset: 14, up: 30 }, upper-joint: { ahead: -24, offset: 10, up: 23 }, middle-joint: { ahead: -18, offset: 6, up: 18 }, lower-joint: { ahead: -11, offset: 2, up: 13.5 }, pinion: { ahead: -6, offset: 0, up: 9.4 }${held} }\n`;
  const state = (held: string) =>
    itemIn(checked(studied(preset("balanced-two-seater") + shaft(held))), "shaft-support").state;
  expect([state(""), state(", support-bearing: yes")]).toEqual(["close", "pass"]);
});

test("a shock that is too short for the travel is broken, and says at which travel it tops out", () => {
  const short = full.replace("free-length: 22.75", "free-length: 21");
  const droop = itemIn(checked(studied(short)), "shock.droop.left");
  expect(droop.state).toBe("broken");
  const at = Number(droop.facts.find(({ id }) => id === "topsOutAt")?.value);
  expect(at).toBeLessThan(0);
  expect(at).toBeGreaterThan(-4.5 * inch);
});

test("a shock that has stroke left with the wheels straight, and none at lock, is broken", () => {
  const own = studied(full.replace("free-length: 22.75", "free-length: 22.62").replace("stroke: 6.5", "stroke: 6"));
  const straight = (travel: number) => {
    const bodies = bodiesOf(own, "left");
    const shock = own.car.sections.shock?.left;
    if (shock === undefined || shock === null) throw new Error("no shock");
    return shockAt(bodies, shock)(own.pose(own.zero ?? 0, travel, travel), Pose.Left).length / inch;
  };
  expect(straight(4)).toBeGreaterThan(16.62);
  expect(straight(-4.5)).toBeLessThan(22.62);
  const found = checked(own);
  for (const end of ["bump", "droop"] as const) {
    const item = itemIn(found, `shock.${end}.left`);
    expect(item.state).toBe("broken");
    expect(Math.abs(item.where?.input ?? 0)).toBeGreaterThan(1 * inch);
    // Its end is then met before full travel, at the rack position where it is met first.
    const met = Number(item.facts.find(({ id }) => id === (end === "bump" ? "bottomsAt" : "topsOutAt"))?.value);
    expect(Math.abs(met)).toBeLessThan((end === "bump" ? 4 : 4.5) * inch);
  }
});

test("a wheel's rate is how the force of its spring at the wheel changes with the travel", () => {
  const shock = study.car.sections.shock?.left;
  if (shock === undefined || shock === null) throw new Error("no shock");
  const inPlace = shockAt(bodiesOf(study, "left"), shock);
  const rate = shock["spring-rate"] ?? Number.NaN;
  /** Force on the wheel, N, by work: what the spring takes up over a hair of travel. */
  const energy = (travel: number) => {
    const { length } = inPlace(study.pose(study.zero ?? 0, travel, travel), Pose.Left);
    return (rate * (22.75 * inch - length) ** 2) / 2;
  };
  // Second differences of the energy: error h² times its fourth change, which the linkage keeps far below 1e-4 of the rate; rounding 1e-10/h².
  const step = 1;
  const facts = itemIn(items, "shock.bump.left").facts;
  for (const [id, travel] of [
    ["wheelRate", 0],
    ["wheelRateBump", study.wheelTravel.bump],
    ["wheelRateDroop", -study.wheelTravel.droop],
  ] as const) {
    const want = (energy(travel + step) - 2 * energy(travel) + energy(travel - step)) / step ** 2;
    expect(Number(facts.find((each) => each.id === id)?.value) / want).toBeCloseTo(1, 4);
  }
});

test("an end that is short of angle is told which usual bolt mends it, and a car with that bolt has what was told", () => {
  const told = itemIn(items, "rod-end.tie-rod-inner").facts.find(({ id }) => id === "mended");
  expect(told?.label).toContain("set the bolt fore and aft");
  expect(full.match(/inner: +\{ bolt: vertical/g)).toHaveLength(1);
  const turned = studied(full.replace(/(inner: +\{ bolt: )vertical/, "$1fore-and-aft"));
  const spare = itemIn(checked(turned), "rod-end.tie-rod-inner").value;
  // Both looked at over the grid, the item about its worst place more closely: by no more than a rod turns over a place.
  expect(Math.abs(Number(spare) - Number(told?.value))).toBeLessThan(radians(0.05));
});

test("a spring that is slack, or a shock that has bottomed, gives no wheel rate there", () => {
  const short = full.replace("free-length: 22.75", "free-length: 20").replace("stroke: 6.5", "stroke: 2");
  const facts = itemIn(checked(studied(short)), "shock.bump.left").facts;
  const rate = (id: string) => facts.find((each) => each.id === id)?.value;
  expect([rate("wheelRateDroop"), rate("wheelRateBump")]).toEqual([null, null]);
  expect(rate("wheelRate")).toBeGreaterThan(0);
});
