import { describe, expect, it } from "vitest";
import { carOfTape } from "../../src/measures/tapeCar.ts";
import type { Tape } from "../../src/vehicle/from-tape/readings.ts";
import { expectClose } from "../close.ts";
import { made, rise, shock, tape } from "./taped.ts";

describe("readings that make no car", () => {
  const complaintOf = (of: Tape) => {
    const car = carOfTape(of);
    return "complaint" in car ? car.complaint : null;
  };

  it("are told by what clashes, by what its file would say, or by what does not reach", () => {
    expect(complaintOf(tape([["wheelbase", 1]]))).toMatch(
      /^These readings make no car: wheelbase: found 1,? ?.*expected .*\.$/,
    );
    expect(
      complaintOf(
        tape(
          [
            ["left-rod", 100],
            ["right-rod", 460],
          ],
          { rodsAsCut: true },
        ),
      ),
    ).toMatch(/^These readings make no car\. At rack .* left tie rod is [\d.]+ mm too short\.$/);
  });

  it("say which end of the shock is further than the wheel can go", () => {
    const open = complaintOf(
      tape([...shock.filter(([key]) => key !== "shock-open"), ["shock-open", 900]], { shockOn: "lower-arm" }),
    );
    expect(open).toContain('cannot go as far as its length "Shock, fully open"');
    // Both lengths shorter than it is at ride height: bump is had, droop would be less than none.
    const short = complaintOf(
      tape([...shock.filter(([key]) => key !== "shock-open"), ["shock-open", 420]], { shockOn: "lower-arm" }),
    );
    expect(short).toContain('"Shock, fully open"');
    const long = complaintOf(
      tape([...shock.filter(([key]) => key !== "shock-closed"), ["shock-closed", 450]], { shockOn: "lower-arm" }),
    );
    expect(long).toContain('"Shock, fully closed"');
  });
});

describe("wheel travel where less was read of it", () => {
  it("keeps the one way that was read, and takes the other one from the shock", () => {
    const { tape: read, found } = made(tape([...shock, ["bump", 60]], { shockOn: "lower-arm" }));
    expect(found.travelByShock).toBe(true);
    expect(read.numbers.get("bump")).toBe(60);
    expectClose(read.numbers.get("droop"), rise, { abs: 0.1 });
  });

  it("is no more than the shock gives in hundredths of an inch, where the tape is in inches", () => {
    const { tape: read } = made(tape(shock, { shockOn: "lower-arm", units: "in" }));
    for (const way of ["bump", "droop"]) {
      const travel = Number(read.numbers.get(way));
      expect(travel).toBeLessThanOrEqual(rise + 1e-4);
      expect(travel).toBeGreaterThan(rise - 0.254 - 1e-4);
      expect(Math.abs(travel / 0.254 - Math.round(travel / 0.254))).toBeLessThan(1e-6);
    }
  });

  it("is not made of a shock of which one length was read, nor doubted for a ratio that was not", () => {
    expect(made(tape(shock, { shockOn: "lower-arm" })).found).toEqual({ travelByShock: true, doubts: [] });
    for (const missing of ["shock-closed", "shock-open"]) {
      const some = shock.filter(([key]) => key !== missing);
      const car = made(tape([...some, ["bump", 60]], { shockOn: "lower-arm" }));
      expect(car.found.travelByShock, missing).toBe(false);
      expect(car.tape.numbers.get("bump")).toBe(60);
    }
  });

  it("is not made of a shock whose arms were not read: they are assumed", () => {
    const some = tape(shock, { shockOn: "lower-arm" });
    const bare = { ...some, numbers: new Map([...some.numbers].filter(([key]) => !/^(lower|upper)-/.test(key))) };
    const car = carOfTape(bare);
    if ("complaint" in car) throw new Error(car.complaint);
    expect(car.found.travelByShock).toBe(false);
    expect(car.layout.assumed.has("arms")).toBe(true);
  });
});

it("a car that cannot reach both ends of its rack is doubted", () => {
  const doubts = made(
    tape([
      ["stroke", 300],
      ["left-stop", 150],
    ]),
  ).found.doubts;
  expect(doubts).toHaveLength(1);
  expect(doubts[0]).toMatch(/cannot reach both ends of its rack, .* measure again ("[^"]+", ){4}"[^"]+"\.$/);
});

it("a shock's ratio that is an eighth off what its place makes it is taken as the tape's own doubt", () => {
  const doubtsAt = (ratio: number) =>
    made(tape([...shock, ["shock-ratio", ratio]], { shockOn: "lower-arm" })).found.doubts.length;
  // (300/450) (420/436.80659) = 0.6410, with a hair for the arms as the file rounds them.
  expect([0.641 - 0.12, 0.641 + 0.12, 0.641 - 0.13, 0.641 + 0.13].map(doubtsAt)).toEqual([0, 0, 1, 1]);
});
