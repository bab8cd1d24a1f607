import { describe, expect, it } from "vitest";
import type { Study } from "../../src/measures/study.ts";
import { adjustersJob, type Turned, usualAmounts } from "../../src/solve/adjusters/adjusters.ts";
import { settingKeys, settingsAt } from "../../src/solve/adjusters/effect.ts";
import { finished } from "../../src/solve/job.ts";
import { linkageOf } from "../../src/vehicle/linkages.ts";
import { quantityOf } from "../../src/vehicle/quantities.ts";
import { expectClose } from "../close.ts";
import { carOf, presetText, studied } from "../measures/carTexts.ts";

const inch = 25.4;
const wheels = ["left", "right"] as const;
const balanced = presetText("balanced-two-seater");
const offset = presetText("widened-offset-rack");

/** Threads of all rod ends of two arms on two pivots, and of tie rods whose ends have the same hand. */
const armThreads = ["lower-arm", "upper-arm"]
  .map((arm) => `    ${arm}: { joint: 5/8-18, front: 1/2-20, rear: 1/2-20 }`)
  .join("\n");
const threads = `threads:
  both:
    outer: { size: 1/2-20, reach: 2.4, thread: 1.5 }
    inner: { size: 1/2-20, reach: 2.4, thread: 1.5 }
`;

function rowsOf(text: string) {
  const study = studied(text);
  return { study, rows: finished(adjustersJob(study, usualAmounts(study.car.form.units))) };
}

function turned(text: string, key: string): Turned & { readonly study: Study } {
  const { study, rows } = rowsOf(text);
  const row = rows.find((each) => each.key === key);
  if (row === undefined || "why" in row) throw new Error(`${key}: ${row === undefined ? "no such row" : row.why}`);
  return { ...row, study };
}

/** A point of a corner in a car's text, mm. */
function point(text: string, path: string): readonly number[] {
  const { numbers } = carOf(text);
  return ["ahead", "out", "up"].map((key) => numbers[quantityOf(`${path}.${key}`).index]);
}

function apart(text: string, a: string, b: string): number {
  const [p, q] = [point(text, a), point(text, b)];
  return Math.hypot(...p.map((each, i) => each - q[i]));
}

/**
 * Every adjuster's text is the car that its figures were read from: a rod's length is written to a millionth of a mm, and toe
 * across the tyre moves by its diameter over the lever of the tab, here up to six times as much.
 */
function expectWritten(row: Turned): void {
  const input = 0;
  for (const wheel of wheels)
    expectClose(settingsAt(studied(row.text()), wheel, input), settingsAt(row.after, wheel, input), { abs: 1e-5 });
}

describe("one turn of a rod end", () => {
  const cut = (left: number) =>
    `${offset.replace("# length: 16 ", `length: ${studied(offset).rodLengths.right / inch} `)}  `.replace(
      "steering:",
      `  left: { tie-rod: { length: ${left / inch} } }\nsteering:`,
    );

  it("of a tie rod is what the same length written by hand does, and its slope by central differences", () => {
    const row = turned(offset + threads, "left.tie-rod.outer");
    const { rodLengths } = row.study;
    const settings = (left: number) => settingsAt(studied(cut(left)), "left", 0);
    const pitch = inch / 20;
    const now = settings(rodLengths.left);
    const after = settings(rodLengths.left + pitch);
    for (const key of settingKeys)
      expectClose(row.change.left[key], (after[key] ?? Number.NaN) - (now[key] ?? Number.NaN), { abs: 1e-6 }, key);
    // Central differences over a hundredth of the pitch; a whole turn bends the line by a few percent at most.
    const h = pitch / 100;
    const slope = ((settings(rodLengths.left + h).toe ?? 0) - (settings(rodLengths.left - h).toe ?? 0)) / (2 * h);
    expectClose(row.change.left.toe, slope * pitch, { rel: 0.03 });
    expect(row.change.left.toe).not.toBe(0);
    expectClose(row.change.right, { camber: 0, caster: 0, toe: 0, toeInBump: 0, toeInDroop: 0 }, { abs: 1e-6 });
    expectWritten(row);
  });

  it("of a tube with a left-hand thread at one end is both pitches", () => {
    const row = turned(presetText("check-before-welding"), "left.tie-rod");
    expectClose(row.after.rodLengths.left - row.study.rodLengths.left, (2 * inch) / 20, { abs: 1e-9 });
  });

  const ends = [
    ["left.lower-arm.joint", "lower-arm", inch / 18],
    ["right.upper-arm.joint", "upper-arm", inch / 18],
    ["left.upper-arm.front", "upper-arm", inch / 20],
    ["left.lower-arm.rear", "lower-arm", inch / 20],
  ] as const;

  it.each(ends)("of %s leaves every other length of the corner as it was", (key, arm, pitch) => {
    const before = balanced + threads + armThreads;
    const row = turned(before, key);
    const text = row.text();
    const [wheel, , end] = key.split(".");
    const at = (path: string) => `${wheel}.${path}`;
    for (const each of ["lower-arm", "upper-arm"])
      for (const pivot of ["front", "rear"]) {
        expect(point(text, at(`${each}.${pivot}`))).toEqual(point(before, at(`${each}.${pivot}`)));
        const longer =
          apart(text, at(`${each}.joint`), at(`${each}.${pivot}`)) -
          apart(before, at(`${each}.joint`), at(`${each}.${pivot}`));
        if (each !== arm || (end !== "joint" && end !== pivot)) expectClose(longer, 0, { abs: 1e-6 });
        else if (end === pivot) expectClose(longer, pitch, { abs: 1e-6 });
        // Along the line from the middle of the pivots: each leg gains the pitch times the cosine at the joint.
        else expect(longer / pitch).toBeGreaterThan(0.9);
      }
    const carried = ["lower-arm.joint", "upper-arm.joint", "tie-rod.outer", "wheel.center"].map(at);
    for (const a of carried)
      for (const b of carried) expectClose(apart(text, a, b), apart(before, a, b), { abs: 1e-6 });
    expectClose(point(text, at("wheel.center"))[2], point(before, at("wheel.center"))[2], { abs: 1e-6 });
    expectClose(row.after.rodLengths, row.study.rodLengths, { abs: 1e-6 });
    expectWritten(row);
  });

  it("of an upper arm's outer joint tips the wheel out at the top by the turn over the upright's height, nearly", () => {
    const text = balanced + threads + armThreads;
    const { change } = turned(text, "left.upper-arm.joint");
    const height = point(text, "left.upper-arm.joint")[2] - point(text, "left.lower-arm.joint")[2];
    expectClose(change.left.camber, inch / 18 / height, { rel: 0.05 });
  });

  it("of a front leg longer moves the joint back: more caster from the upper arm, less from the lower", () => {
    const text = balanced + threads + armThreads;
    expect(turned(text, "left.upper-arm.front").change.left.caster).toBeGreaterThan(0.001);
    expect(turned(text, "left.lower-arm.front").change.left.caster).toBeLessThan(-0.001);
  });

  it("does the same at both sides of a car that is the same at both sides", () => {
    const { rows } = rowsOf(balanced + threads + armThreads);
    const told = rows.filter((each): each is Turned => !("why" in each));
    expect(told.length).toBe(2 * (2 + 6) + 3);
    for (const { key, wheel, change } of told) {
      if (wheel === null) expectClose(change.left, change.right, { abs: 1e-9 });
      else if (wheel === "left") {
        const other = told.find((each) => each.key === key.replace("left", "right"));
        expectClose(other?.change.right, change.left, { abs: 1e-9 });
      }
    }
  });

  it("works on a strut and on trailing arms, whose other lengths stay too", () => {
    const strut = `${presetText("strut-hatchback-corners")}threads:
  both: { outer: { size: M12, reach: 60, thread: 40 }, inner: { size: M12, reach: 60, thread: 40 }, lower-arm: { joint: M16 } }
`;
    const row = turned(strut, "left.lower-arm.joint");
    const text = row.text();
    for (const [a, b] of [
      ["lower-arm.joint", "strut.bottom"],
      ["lower-arm.joint", "wheel.center"],
      ["strut.bottom", "wheel.center"],
      ["tie-rod.outer", "wheel.center"],
    ])
      expectClose(apart(text, `left.${a}`, `left.${b}`), apart(strut, `left.${a}`, `left.${b}`), { abs: 1e-6 });
    // The lower joint goes out and the top mount stays: the wheel's top goes in.
    expect(row.change.left.camber).toBeLessThan(-0.001);
    expectWritten(row);
    const trailing = `${presetText("torsion-beam-steering-plate")}threads:
  both: { outer: { size: 1/2-20, reach: 2.4, thread: 1.5 }, inner: { size: 1/2-20, reach: 2.4, thread: 1.5 }, upper-arm: { joint: 5/8-18 } }
`;
    const arm = turned(trailing, "left.upper-arm.joint");
    expect(arm.change.left.caster).toBeGreaterThan(0.001);
    expectWritten(arm);
  });

  it("is not given where the file names no thread, and takes the size of the rod end where it names one", () => {
    const { rows } = rowsOf(offset);
    const ends = rows.filter(({ wheel }) => wheel !== null);
    expect(ends.length).toBe(2 * (2 + linkageOf("double-arm").joints.length));
    for (const row of ends) expect("why" in row && row.why).toContain("not given: the file names no thread for it");
    const sized = `${offset}rod-ends:\n  both:\n    upper-arm: { joint: { bolt: vertical, angle: 20, size: 5/8-18 } }\n`;
    expect(turned(sized, "left.upper-arm.joint").done((mm) => mm.toFixed(3))).toBe("1 turn out (5/8-18, 1.411)");
  });
});

describe("a shim under the rack", () => {
  it("is the same as the rack raised by hand with the rods as long as they are", () => {
    const row = turned(offset, "shim");
    const { left, right } = row.study.rodLengths;
    const byHand = offset
      .replace('up: "8 5/8"', 'up: "8 3/4"')
      .replace(
        "steering:",
        `  left: { tie-rod: { length: ${left / inch} } }\n  right: { tie-rod: { length: ${right / inch} } }\nsteering:`,
      );
    for (const wheel of wheels)
      expectClose(settingsAt(studied(byHand), wheel, 0), settingsAt(row.after, wheel, 0), { abs: 1e-6 });
    expectWritten(row);
  });

  it("is not for a car without a rack", () => {
    for (const name of ["twin-beam-relay", "fixed-kingpin-yard-kart"]) {
      const shim = rowsOf(presetText(name)).rows.find(({ key }) => key === "shim");
      expect(shim !== undefined && "why" in shim && shim.why).toBe("there is no rack to shim");
    }
  });
});

describe("a beam", () => {
  it("is said to have no thread to turn, where an arm's would be listed", () => {
    const beam = rowsOf(presetText("twin-beam-relay")).rows.find(({ key }) => key === "beam");
    expect(beam !== undefined && "why" in beam && beam.why).toContain("a beam has none");
    expect(rowsOf(presetText("balanced-two-seater")).rows.some(({ key }) => key === "beam")).toBe(false);
  });
});

describe("ride height and tyres move ground and body together", () => {
  const suspended = [
    "balanced-two-seater",
    "widened-offset-rack",
    "cut-rods-off-middle",
    "strut-hatchback-corners",
    "torsion-beam-steering-plate",
    "twin-beam-relay",
    "check-before-welding",
  ];

  it.each(suspended)("%s raised stands as it stood in so much droop, and no rod is longer", (name) => {
    const row = turned(presetText(name), "ride-height");
    const { rideHeight } = usualAmounts(row.study.car.form.units);
    const raised = studied(row.text());
    for (const travel of [0, rideHeight, 1.5 * rideHeight]) {
      const [was, is] = [
        row.study.pose(row.study.straightAhead, travel - rideHeight, travel - rideHeight),
        raised.pose(row.study.straightAhead, travel, travel),
      ];
      // Slots 10 to 12 and 22 to 24 of a side are the directions of the steering axis and of the spindle.
      for (const side of [0, 32])
        for (const slot of [10, 11, 12, 22, 23, 24]) expectClose(is[side + slot], was[side + slot], { abs: 1e-7 });
    }
    expectClose(raised.rodLengths, row.study.rodLengths, { abs: 1e-5 });
    expectClose(raised.wheelTravel.bump - row.study.wheelTravel.bump, rideHeight, { abs: 1e-6 });
    expectClose(row.study.wheelTravel.droop - raised.wheelTravel.droop, rideHeight, { abs: 1e-6 });
    expect(carOf(row.text()).warnings).toEqual(carOf(presetText(name)).warnings);
    expectWritten(row);
  });

  it("moves what the optional sections say of the frame, and a shock's foot with its arm", () => {
    const before = presetText("check-before-welding");
    const row = turned(before, "ride-height");
    const [was, is] = [carOf(before).sections, carOf(row.text()).sections];
    expectClose((is.shock?.left?.top.up ?? 0) - (was.shock?.left?.top.up ?? 0), inch, { abs: 1e-6 });
    expectClose((is["steering-shaft"]?.pinion.up ?? 0) - (was["steering-shaft"]?.pinion.up ?? 0), inch, { abs: 1e-6 });
    const tube = (of: typeof is) => of.tubes?.right?.frame.get("lower-rail")?.from.up ?? Number.NaN;
    expectClose(tube(is) - tube(was), inch, { abs: 1e-6 });
    const foot = (text: string) => {
      const { shock } = carOf(text).sections;
      const { ahead = 0, out = 0, up = 0 } = shock?.left?.foot ?? {};
      const pivot = point(text, "left.lower-arm.front");
      const joint = point(text, "left.lower-arm.joint");
      return [pivot, joint].map((p) => Math.hypot(p[0] - ahead, p[1] - out, p[2] - up));
    };
    // As far from pivot and joint as before, to what it is written to.
    expectClose(foot(row.text()), foot(before), { abs: 0.02 });
  });

  it("is one edit that keeps comments, and comes back to the same numbers", () => {
    const row = turned(offset, "ride-height");
    expect(row.text()).toContain("# loaded radius");
    const study = studied(row.text());
    const rows = finished(adjustersJob(study, { ...usualAmounts("in"), rideHeight: -inch }));
    const back = rows.find(({ key }) => key === "ride-height");
    if (back === undefined || "why" in back) throw new Error("it can be lowered again");
    expectClose([...carOf(back.text()).numbers], [...carOf(offset).numbers], { abs: 1e-6 });
  });

  it("is refused beyond the droop, and where the king pins are fixed", () => {
    const why = (text: string, rideHeight: number) => {
      const row = finished(adjustersJob(studied(text), { ...usualAmounts("in"), rideHeight })).find(
        ({ key }) => key === "ride-height",
      );
      return row !== undefined && "why" in row ? row.why : null;
    };
    expect(why(offset, 4 * inch)).toBe("there is less droop than that");
    expect(why(presetText("fixed-kingpin-yard-kart"), inch)).toBe("the king pins are fixed to the frame");
  });

  it("a larger tyre lifts the whole car: angles stay, and the contacts go in or out by what the camber is", () => {
    const row = turned(offset, "tyre");
    const now = settingsAt(row.study, "left", 0);
    const after = settingsAt(row.after, "left", 0);
    expectClose([after.camber, after.caster], [now.camber, now.caster], { abs: 1e-12 });
    // The contact is out by -r sin(camber) cos(toe): camber -0.5°, toe 0.1° on both sides.
    const [camber, toe] = [-0.5, 0.1].map((each) => (each * Math.PI) / 180);
    expectClose(row.after.track - row.study.track, -2 * inch * Math.sin(camber) * Math.cos(toe), { abs: 1e-9 });
    expect(carOf(row.text()).warnings).toEqual([]);
    expectWritten(row);
  });
});
