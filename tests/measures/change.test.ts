import { describe, expect, test } from "vitest";
import { studyOf } from "../../src/measures/study.ts";
import { changeFrontEnd } from "../../src/vehicle/change.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { mechanisms } from "../../src/vehicle/mechanisms.ts";
import { indexOf, quantitiesOf } from "../../src/vehicle/quantities.ts";
import { presets } from "../vehicle/cars.ts";
import { carOf, head, studied } from "./carTexts.ts";

const marks = / *# starting value(?: of [\w., -]+)?: measure and correct/g;
const comments = (text: string) => text.replace(marks, "").match(/#.*/g) ?? [];

const targets = linkages.flatMap(({ name: linkage }) =>
  mechanisms.map(({ word: mechanism, takeOff, name }) => ({
    name: `${linkage}, ${name}`,
    linkage,
    mechanism,
    ...(takeOff === null ? {} : { takeOff }),
  })),
);

describe.each([...presets])("a change of the front end of %s", (_, text) => {
  const car = carOf(text);

  test.each(targets)("to $name stands, keeps what both have and marks what it filled", ({ name: _name, ...change }) => {
    const { text: changedText, filled } = changeFrontEnd(car, change);
    const after = carOf(changedText);
    expect(after.form.linkage).toBe(change.linkage);

    const study = studyOf(after);
    expect(study).not.toHaveProperty("refused");
    if ("refused" in study) return;
    expect([study.locks.left?.blame, study.locks.right?.blame]).toEqual([null, null]);
    expect(study.steersBackwards).not.toBe(true);
    const { rows: steered } = study.steerTable();
    const bumped = study.bumpTable(study.zero ?? study.straightAhead)?.rows ?? [];
    expect([...steered, ...bumped].filter(({ blame }) => blame !== null)).toEqual([]);
    // Wheels on trailing arms go straight up where others go in with their rods: at full lock a rod of the length that
    // another linkage has may come to its dead point before full travel. Its travel and rack are the builder's to shorten.
    if (change.linkage !== "trailing-arms") expect(study.worst.blame).toBeNull();

    const kept = quantitiesOf(after.form).filter(({ id, pair }) => !filled.includes(id) && pair !== "tie-rod.length");
    for (const { id, index } of kept) expect(after.numbers[index], id).toBe(car.numbers[index]);
    const before = new Set(quantitiesOf(car.form).map(({ id }) => id));
    for (const id of filled) expect(before.has(id), id).toBe(false);

    for (const comment of comments(changedText)) expect(text).toContain(comment);
    expect(changedText.match(marks) !== null).toBe(filled.length > 0);
    expect(changeFrontEnd(after, change)).toEqual({ text: changedText, filled: [] });
  });
});

describe("a change of the front end", () => {
  const balanced = presets.get("balanced-two-seater") ?? "";

  test("to a centre take-off leaves the rods' inner ends and so every number as it was", () => {
    const before = studied(balanced);
    const after = studied(changeFrontEnd(before.car, { mechanism: "rack", takeOff: "centre" }).text);
    expect(after.rodLengths).toEqual(before.rodLengths);
    expect(after.locks.left?.inner).toBeCloseTo(before.locks.left?.inner ?? Number.NaN, 12);
  });

  test("keeps the comments that do not belong to what goes", () => {
    const { text } = changeFrontEnd(carOf(balanced), { linkage: "strut" });
    expect(text).toContain("# loaded radius");
    expect(text).toContain("# of the wheel centre, from ride height");
    expect(text).not.toContain("upper-arm");
    expect(text).toContain("      front: { ahead: 5.5,  out: 7,    up: 8 }");
  });

  test("writes unlike sides apart and alike ones once", () => {
    const text = balanced.replace("  both:", "  left: { upper-arm: { joint: { out: 22.25 } } }\n  both:");
    const after = carOf(changeFrontEnd(carOf(text), { linkage: "pivoting-beam" }).text);
    const read = (id: string) => (after.numbers[indexOf(id)] ?? 0) / 25.4;
    expect(
      [read("left.king-pin.upper.out"), read("right.king-pin.upper.out")].map((each) => Math.round(each * 16) / 16),
    ).toEqual([22.25, 22.625]);
    expect(read("left.king-pin.lower.out")).toBe(read("right.king-pin.lower.out"));
  });

  test("drops wheel travel that has no place, and starts it anew on the way back", () => {
    const fixed = carOf(changeFrontEnd(carOf(balanced), { linkage: "fixed-kingpin" }).text);
    expect(fixed.text).not.toContain("wheel-travel");
    const back = changeFrontEnd(fixed, { linkage: "double-arm" });
    expect(back.filled).toEqual(expect.arrayContaining(["wheel-travel.bump", "wheel-travel.droop"]));
    expect(studied(back.text).noTravel).toBe("assumed");
    expect(studied(back.text.replace(marks, "")).wheelTravel.bump).toBeGreaterThan(50);
  });

  test("cuts rods to fit where their inner ends move", () => {
    const cut = presets.get("cut-rods-off-middle") ?? "";
    expect(carOf(cut).form.rods).toEqual({ left: "cut", right: "cut" });
    expect(carOf(changeFrontEnd(carOf(cut), { mechanism: "steering-plate" }).text).form.rods).toEqual({
      left: "fit",
      right: "fit",
    });
    expect(carOf(changeFrontEnd(carOf(cut), { linkage: "strut" }).text).form.rods).toEqual({
      left: "cut",
      right: "cut",
    });
  });

  test("of a file in braces, or with carriage returns, reads too", () => {
    const braces = `${head}wheel-travel: { bump: 60, droop: 60 }
front: { linkage: strut, both: { lower-arm: { front: { ahead: 120, out: 250, up: 230 }, rear: { ahead: -120, out: 250, up: 230 }, joint: { ahead: 5, out: 600, up: 220 } }, strut: { top: { ahead: -20, out: 540, up: 780 }, bottom: { ahead: 0, out: 570, up: 400 } }, tie-rod: { outer: { ahead: -120, out: 570, up: 290 } }, wheel: { center: { ahead: 0, out: 670, up: 300 } } } }
steering: { mechanism: rack, rack: { ahead: -150, up: 320, eye-to-eye: 560, travel: 60 } }
`;
    for (const text of [braces, braces.replaceAll("\n", "\r\n"), balanced.replaceAll("\n", "\r\n")]) {
      for (const { name: _, ...change } of targets) {
        const { text: after } = changeFrontEnd(carOf(text), change);
        expect(carOf(after).form.linkage).toBe(change.linkage);
        if (text.includes("\r\n")) expect(after.replaceAll("\r\n", "")).not.toContain("\n");
      }
    }
  });
});
