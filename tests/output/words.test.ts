import { describe, expect, it } from "vitest";
import type { SteerRow } from "../../src/measures/steerTable.ts";
import type { WorstToe } from "../../src/measures/worstToe.ts";
import * as words from "../../src/output/words.ts";
import { presetText, studyFrom, widened } from "./studies.ts";

const degree = Math.PI / 180;
const mm: words.Length = (length) => `${words.fixed(length, 1)} mm`;

const onRack = { inputKind: "rack" } as const;
const onColumn = { inputKind: "column" } as const;

const row = (inner: number, outer: number, idealInner: number): SteerRow => ({
  input: 0,
  blame: null,
  left: { steer: 0 },
  right: { steer: 0 },
  turn: "left",
  inner: inner * degree,
  outer: outer * degree,
  idealInner: idealInner * degree,
  percentOfIdealInner: (100 * inner) / idealInner,
  ackermann: (100 * (inner - outer)) / (idealInner - outer),
  turnRadius: 4000,
});

describe("places in words", () => {
  it("say which way and how far", () => {
    expect(words.inputPlace(onRack, 12.7, mm)).toBe("rack 12.7 mm left of its middle");
    expect(words.inputPlace(onRack, -12.7, mm)).toBe("rack 12.7 mm right of its middle");
    expect(words.inputPlace(onColumn, 90 * degree, mm)).toBe("column 90.0° left of its middle");
    expect(words.inputPlace(onColumn, 0, mm)).toBe("column in its middle");
    expect(words.travelPlace(76.2, mm)).toBe("76.2 mm bump");
    expect(words.travelPlace(-76.2, mm)).toBe("76.2 mm droop");
  });

  it("are the middle and ride height when less than can be shown", () => {
    expect(words.inputPlace(onRack, -0.01, mm)).toBe("rack in its middle");
    expect(words.travelPlace(0.01, mm)).toBe("ride height");
  });
});

describe("locks in words", () => {
  const difference = (inner: number | null) => ({
    left: null,
    right: null,
    difference: { inner: inner === null ? null : inner * degree, outer: 0, turnRadius: 0 },
  });

  it("say which is short", () => {
    expect(words.unequalLocks(difference(-2.2))).toBe("inner left lock 2.2° short of right");
    expect(words.unequalLocks(difference(0.3))).toBe("inner right lock 0.3° short of left");
    expect(words.unequalLocks(difference(0.04))).toBe("inner locks are equal");
    expect(words.unequalLocks(difference(null))).toBeNull();
  });

  it("put the degrees short of ideal beside every percent", () => {
    expect(words.ackermannOf(row(30, 25, 32))).toBe("71 %, inner 2.0° short of ideal (94 % of it)");
    expect(words.ackermannOf(row(33, 25, 32))).toBe("114 %, inner 1.0° past ideal (103 % of it)");
    expect(words.ackermannOf(row(32, 25, 32))).toBe("100 %, inner as ideal (100 % of it)");
    expect(words.ackermannOf({ ...row(1, 1, 1), idealInner: null, ackermann: null })).toBeNull();
  });
});

describe("percents of a turn", () => {
  it("tell nothing while a turn plate, read to half a degree, cannot tell the ideal inner wheel from the outer one", () => {
    const at = (outer: number, idealInner: number) =>
      words.percentsTell({ outer: outer * degree, idealInner: idealInner * degree });
    expect(at(4.09, 4.25)).toBe(false);
    expect(at(7, 7.49)).toBe(false);
    expect(at(7, 7.51)).toBe(true);
    expect(words.percentsTell({ outer: 0.01, idealInner: null })).toBe(false);
  });
});

describe("rods that are cut with the rack off its middle", () => {
  const put = studyFrom(presetText("cut-rods-off-middle"));

  it("are named as the cause where the rack's place is said", () => {
    expect(words.rodsPutOff(put)).toBe(true);
    expect(words.inputOffMiddle(put, mm)).toBe(
      "rack 3.0 mm right of its middle with the wheels straight: the rods are cut so",
    );
  });

  it("are not, where rods are cut to fit or right", () => {
    expect(words.rodsPutOff(widened)).toBe(false);
    const right = studyFrom(
      presetText("cut-rods-off-middle")
        .replace(/length: 312/, "length: 309")
        .replace(/length: 306/, "length: 309"),
    );
    expect(right.car.form.rods).toEqual({ left: "cut", right: "cut" });
    expect(words.rodsPutOff(right)).toBe(false);
  });
});

describe("bump in words", () => {
  const worst: WorstToe = {
    toeChange: -1.2 * degree,
    travel: -76.2,
    acrossTyre: -11.4,
    chiefly: "bow",
    slopePart: 0,
    bowPart: -1.2 * degree,
  };

  it("says how much, which way, across the tyre and where", () => {
    expect(words.worstToe(worst, mm)).toBe("toes out 11.4 mm across the tyre (1.20°) at 76.2 mm droop");
    expect(words.worstToe({ ...worst, toeChange: 0.5 * degree, acrossTyre: 4, travel: 50 }, mm)).toBe(
      "toes in 4.0 mm across the tyre (0.50°) at 50.0 mm bump",
    );
    expect(words.worstToe({ ...worst, toeChange: 1e-9, acrossTyre: 1e-6 }, mm)).toBe("keeps its toe");
  });

  it("gives no advice below what a tape reads, 1/64 in", () => {
    const little = { ...worst, toeChange: 0.03 * degree, acrossTyre: 25.4 / 65 };
    expect(words.worstToeAndCure(little, "fit", "up", mm)).toBe("keeps its toe (within 0.03°)");
    expect(words.worstToeAndCure({ ...little, acrossTyre: -25.4 / 63 }, "fit", undefined, mm)).toContain("inner end");
  });

  it("tells a slope from a bow", () => {
    expect(words.bumpCure(worst, "fit", undefined)).toContain("in or out");
    expect(words.bumpCure({ ...worst, chiefly: "slope" }, "fit", undefined)).toContain("up or down");
  });

  it("says which way, or that the inner end is not where the cure lies", () => {
    expect(words.bumpMove(worst, "fit", "in")).toBe("move the rod's inner end in, the rod is cut to follow");
    expect(words.bumpMove({ ...worst, chiefly: "slope" }, "cut", "up")).toBe("move the rod's inner end up");
    expect(words.bumpMove(worst, "fit", null)).toContain("hardly helps");
    expect(words.innerEndBrief(worst, null)).toBe("not the inner end");
    expect(words.innerEndBrief(worst, undefined)).toBe("inner end in/out");
  });

  it("never asks for another length alone, which only sets the toe", () => {
    expect(words.bumpCure(worst, "fit", undefined)).toContain("the rod is cut to follow");
    expect(words.bumpCure(worst, "cut", undefined)).toContain("inner end in or out and recut the rod");
  });

  it("says in words what a slope and a bow are", () => {
    expect(words.bumpCure(worst, "cut", undefined)).toContain("the same way in bump and in droop");
    expect(words.bumpCure({ ...worst, chiefly: "slope" }, "cut", undefined)).toContain(
      "toe-in one way, toe-out the other",
    );
  });

  it("says that both steer one way", () => {
    expect(words.bounce({ bounceSteer: -0.9 * degree, travel: -76.2 }, mm)).toBe(
      "both steer right 0.9° at 76.2 mm droop",
    );
    expect(words.bounce({ bounceSteer: 0.9 * degree, travel: 50 }, mm)).toBe("both steer left 0.9° at 50.0 mm bump");
    expect(words.bounce({ bounceSteer: 0.0001, travel: 50 }, mm)).toBe("no steer of both wheels the same way");
  });
});

describe("dead points in words", () => {
  it.each([
    [19.9, "dangerous"],
    [20.1, "doubtful"],
    [29.9, "doubtful"],
    [30.1, "good"],
  ] as const)("a rod-to-arm angle of %s° is %s (common practice: warn under 30°, fail under 20°)", (angle, grade) => {
    expect(words.rodAngleGrade(angle * degree)).toBe(grade);
    const said = words.leastRodAngle(onRack, { angle: angle * degree, input: 50, travel: 0 }, mm);
    expect(said).toContain(words.degrees(angle * degree));
    expect(said.includes("DANGEROUS")).toBe(grade === "dangerous");
    expect(said.includes("DOUBTFUL")).toBe(grade === "doubtful");
  });
});

describe("the car in words", () => {
  it("says whether rods are cut to fit or as cut", () => {
    expect(words.rodLength(widened, "left", mm)).toBe("400.9 mm, cut to fit");
    const cut = studyFrom(presetText("widened-offset-rack").replace("# length: 16 ", "length: 16 "));
    expect(words.rodLength(cut, "left", mm)).toBe("406.4 mm, as cut");
  });

  it("says loudly when it steers backwards, and only then", () => {
    expect(words.steersBackwards(widened)).toBeNull();
    const backwards = studyFrom(
      presetText("widened-offset-rack").replace("wheel-left-moves: right", "wheel-left-moves: left"),
    );
    expect(words.steersBackwards(backwards)).toMatch(/^STEERS BACKWARDS/);
    const silent = studyFrom(presetText("widened-offset-rack").replace(", wheel-left-moves: right", ""));
    expect(words.steersBackwards(silent)).toBeNull();
  });

  it("names the toe it stands at straight ahead", () => {
    expect(words.toeAtZero(widened, "left")).toBe("0.10° toe-in");
  });

  it("names the link, the wheel and the gap of a place out of reach", () => {
    const said = words.outOfReach(onRack, { wheel: "right", link: "tie rod", gap: -8, input: 60, travel: -76.2 }, mm);
    expect(said).toBe(
      "does not close at rack 60.0 mm left of its middle, 76.2 mm droop: right tie rod is 8.0 mm too short",
    );
  });
});
