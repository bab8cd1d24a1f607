import { describe, expect, it } from "vitest";
import { carOfTape } from "../../src/measures/tapeCar.ts";
import { disagreements } from "../../src/vehicle/from-tape/checks.ts";
import { startingValues } from "../../src/vehicle/starting/marks.ts";
import { expectClose } from "../close.ts";
import { made, rise, shock, tape } from "./taped.ts";

describe("wheel travel from a shock's lengths", () => {
  it("is where the linkage gives the shock those lengths, never more", () => {
    const { car, tape: read, found, layout } = made(tape(shock, { shockOn: "lower-arm" }));
    expect(found.travelByShock).toBe(true);
    expect(layout.assumed.has("travel")).toBe(false);
    for (const way of ["bump", "droop"]) {
      const travel = read.numbers.get(way) ?? Number.NaN;
      expect(travel).toBeLessThanOrEqual(rise + 1e-4);
      expectClose(travel, rise, { abs: 0.1 });
    }
    expect(car.form.travelIsAssumed).toBe(false);
    expect(startingValues(car)).not.toContain("wheel-travel.bump");
    expectClose(car.sections.shock?.left?.["free-length"], 486.00422, { abs: 0.005 });
    expectClose(car.sections.shock?.left?.stroke, 486.00422 - 385.5923, { abs: 0.005 });
  });

  it("by a taped ratio is marked as assumed, and good enough for tables", () => {
    const { car, study, layout } = made(
      tape([
        ["shock-closed", 386],
        ["shock-open", 486],
        ["shock-now", 436],
        ["shock-ratio", 0.625],
      ]),
    );
    // 50 of shock over 0.625 is 80 of wheel.
    expectClose(layout.bump, 80, { abs: 1e-9 });
    expectClose(layout.droop, 80, { abs: 1e-9 });
    expect(startingValues(car)).toContain("wheel-travel.bump");
    expect(startingValues(car)).toContain("wheel-travel.droop");
    expect(study.noTravel).toBeNull();
    expect(study.bumpTable(0)).not.toBeNull();
  });

  it("comes from the place where a ratio was read too, which has to agree with it", () => {
    // From the pivot the foot is at (300, 0) and the top at (180, 420): −v·s, v one at the joint's 450 and 300/450 here, so
    // that the ratio is (300/450) (420/436.80659) = 0.6410.
    const with_ = (ratio: number) => made(tape([...shock, ["shock-ratio", ratio]], { shockOn: "lower-arm" }));
    const agreeing = with_(0.6);
    expect(agreeing.found).toEqual({ travelByShock: true, doubts: [] });
    expect(agreeing.layout.assumed.has("ratio")).toBe(false);
    const other = with_(0.85);
    expect(other.found.doubts.join()).toContain("was taped 0.85, and where the shock stands makes it 0.64");
    expect(other.tape.numbers.get("bump")).toBe(agreeing.tape.numbers.get("bump"));
  });

  it("gives way to bump and droop that were read", () => {
    const { tape: read, found } = made(tape([...shock, ["bump", 60], ["droop", 70]], { shockOn: "lower-arm" }));
    expect(found.travelByShock).toBe(false);
    expect(read.numbers.get("bump")).toBe(60);
  });

  it("is refused where the wheel cannot go so far", () => {
    const of = tape([...shock.slice(1), ["shock-closed", 80]], { shockOn: "lower-arm" });
    expect(carOfTape(of)).toMatchObject({ complaint: expect.stringContaining('"Shock, fully closed"') });
  });
});

describe("what page 2 does not ask for", () => {
  it("is marked: how far ahead the arms' pivots are", () => {
    const { car } = made(
      tape([
        ["bump", 60],
        ["droop", 60],
      ]),
    );
    const marked = [...startingValues(car)].filter((id) => id.startsWith("left."));
    expect(marked.filter((id) => !/wheel\.(camber|toe)$/.test(id)).sort()).toEqual(
      ["lower", "upper"].flatMap((arm) => ["front", "rear"].map((end) => `left.${arm}-arm.${end}.ahead`)),
    );
  });
});

describe("joints of page 2 that do not stand on page 1's king-pin line", () => {
  const say = (mm: number) => `${mm.toFixed(0)} mm`;
  const said = (...more: readonly (readonly [string, number])[]) => {
    const { tape: read, layout } = made(tape([["bump", 60], ["droop", 60], ...more]));
    return disagreements(read, layout, say);
  };

  it("are not spoken of where they do", () => {
    expect(said()).toEqual([]);
  });

  it("name the one joint that two readings and the other joint are against, and no other reading", () => {
    for (const joint of ["lower", "upper"]) {
      const [first, ...others] = said([`${joint}-joint-out`, 625], ["left-rod", Math.hypot(460, 10)]);
      expect(first).toContain(`Measure the ${joint} joint again: out it was taped 625 mm`);
      expect(first).toContain("make it 650 mm");
      for (const other of others) expect(other).toContain("the joint above");
    }
  });

  it("name what stands alone against both joints", () => {
    const [apart, ...none] = said(["king-pins-apart", 1330]);
    expect(none).toEqual([]);
    expect(apart).toContain("measure how far apart the king-pin lines are again");
    const [lean, ...more] = said(["inclination", 0.07]);
    expect(more).toEqual([]);
    expect(lean).toContain("measure the inclination again");
  });
});

describe("the rods of a car from a tape", () => {
  const rods = [
    ["left-rod", 460],
    ["right-rod", 461.5],
  ] as const;

  it("fit the other readings, the taped ones standing beside them", () => {
    const { car, study, text } = made(tape(rods));
    expect(car.form.rods).toEqual({ left: "fit", right: "fit" });
    // Hole to eye: 460 across, 10 along, level.
    expectClose(study.rodLengths, { left: Math.hypot(460, 10), right: Math.hypot(460, 10) }, { abs: 1e-9 });
    expect(text).toContain("Taped on the car: left 460.0 mm, right 461.5 mm");
  });

  it("are as they were taped where that is asked for", () => {
    const { car, study } = made(tape(rods, { rodsAsCut: true }));
    expect(car.form.rods).toEqual({ left: "cut", right: "cut" });
    expectClose(study.rodLengths, { left: 460, right: 461.5 }, { abs: 1e-9 });
    expect(carOfTape(tape([], { rodsAsCut: true }))).toMatchObject({ complaint: expect.stringContaining("Left rod") });
  });
});

describe("a car that cannot do what the one on the stands does", () => {
  it("is doubted: one that steers backwards", () => {
    expect(made(tape([])).found.doubts).toEqual([]);
    expect(made(tape([], { rackGoes: "left" })).found.doubts.join()).toContain('"Wheel left: the rack goes"');
  });
});
