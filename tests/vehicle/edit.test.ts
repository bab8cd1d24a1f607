import { describe, expect, test } from "vitest";
import { cutRods, type Edit, fitRods, setQuantity, setTitle } from "../../src/vehicle/edit.ts";
import { carIn, plain, preset, told, value } from "./cars.ts";

function edited(text: string, edit: Edit): string {
  return setQuantity(carIn(text), edit);
}

/** The lines that an edit took away, and those it brought. */
function difference(before: string, after: string): { gone: readonly string[]; new: readonly string[] } {
  const [old, now] = [before.split("\n"), after.split("\n")];
  return { gone: old.filter((line) => !now.includes(line)), new: now.filter((line) => !old.includes(line)) };
}

const offset = preset("widened-offset-rack");

describe("one value is written in its place", () => {
  test("and nothing else on the line moves", () => {
    const after = edited(offset, { pair: "tire.radius", sides: "both", value: 279.4 });
    expect(after).toBe(offset.replace("{ radius: 10.75, width", "{ radius: 11, width"));
  });

  test("in the manner of what stood there: a fraction stays a fraction", () => {
    const after = edited(offset, { pair: "rack.up", sides: "both", value: 8.6875 * 25.4 });
    expect(after).toBe(offset.replace('"8 5/8"', '"8 11/16"'));
  });

  test("but where no 64th hits it, it is a decimal", () => {
    const after = edited(offset, { pair: "rack.up", sides: "both", value: 220 });
    expect(difference(offset, after).new[0]).toContain("up: 8.6614173228,");
    expect(Math.abs(value(carIn(after), "rack.up") - 220)).toBeLessThan(1e-9);
  });

  test("a unit that is written stays written", () => {
    const mixed = offset.replace('"8 5/8"', '"219 mm"');
    expect(edited(mixed, { pair: "rack.up", sides: "both", value: 219.5 })).toBe(mixed.replace("219 mm", "219.5 mm"));
  });

  test.each([
    ["8 11/16", '"8 11/16"'],
    ['8 11/16"', "'8 11/16\"'"],
    ["8.6875", "8.6875"],
    ["8 1/2 + 3/16", '"8 1/2 + 3/16"'],
    ["220.6625 mm", '"220.6625 mm"'],
    ["  8 11/16 ", '"8 11/16"'],
  ])("the builder's own text %s is kept", (as, written) => {
    const after = edited(offset, { pair: "rack.up", sides: "both", value: 220.6625, as });
    expect(after).toBe(offset.replace('"8 5/8"', written));
  });

  test("a text that means something else by itself, such as a change, is not kept", () => {
    const after = edited(offset, { pair: "rack.up", sides: "both", value: 220.6625, as: "+1/16" });
    expect(after).toBe(offset.replace('"8 5/8"', '"8 11/16"'));
  });

  test("an angle is written in degrees", () => {
    const after = edited(offset, { pair: "wheel.camber", sides: "both", value: (-0.75 * Math.PI) / 180 });
    expect(after).toBe(offset.replace("camber: -0.5", "camber: -0.75"));
  });

  test("a value that is absurd is written all the same, and complained of when it is read", () => {
    const after = edited(offset, { pair: "wheelbase", sides: "both", value: -1 });
    expect(told(after)).toEqual([expect.stringContaining("wheelbase: found -0.0393700787")]);
  });
});

describe("sides", () => {
  test("editing one side writes an override", () => {
    const after = edited(offset, { pair: "tie-rod.outer.up", sides: "left", value: 8.75 * 25.4 });
    expect(difference(offset, after)).toEqual({ gone: [], new: ["  left: { tie-rod: { outer: { up: 8.75 } } }"] });
    const again = edited(after, { pair: "tie-rod.outer.ahead", sides: "left", value: -4.25 * 25.4 });
    expect(difference(after, again).new).toEqual(["  left: { tie-rod: { outer: { up: 8.75, ahead: -4.25 } } }"]);
  });

  test("editing both writes both, and drops what overrode it", () => {
    const one = edited(offset, { pair: "tie-rod.outer.up", sides: "left", value: 8.75 * 25.4 });
    const both = edited(one, { pair: "tie-rod.outer.up", sides: "both", value: 8.5 * 25.4 });
    expect(both).toBe(offset);
  });

  test("other overrides of the side stay", () => {
    const text = plain.replace(
      "steering:",
      "  left:\n    # as measured\n    tie-rod:\n      outer:\n        up: 231 # tape\n        out: 521\nsteering:",
    );
    const after = edited(text, { pair: "tie-rod.outer.up", sides: "both", value: 232 });
    expect(difference(text, after)).toEqual({
      gone: ["      outer: { ahead: -110, out: 520, up: 230 }", "        up: 231 # tape"],
      new: ["      outer: { ahead: -110, out: 520, up: 232 }"],
    });
  });

  test("a comment on a line of its own outlives the override below it", () => {
    const text = plain.replace(
      "steering:",
      "  left:\n    # as measured\n    tie-rod:\n      outer:\n        up: 231\nsteering:",
    );
    const after = edited(text, { pair: "tie-rod.outer.up", sides: "both", value: 230 });
    expect(after).toBe(plain.replace("steering:", "    # as measured\nsteering:"));
  });

  test("a value that only left and right had gets its place at both", () => {
    const [head = "", tail = ""] = plain.split("    wheel:\n      center: { ahead: 0, out: 620, up: 300 }\n");
    const wheel = "wheel: { center: { ahead: 0, out: 620, up: 300 } }";
    const text = `${head}  left: { ${wheel} }\n  right: { ${wheel} }\n${tail}`;
    const after = edited(text, { pair: "wheel.center.out", sides: "both", value: 630 });
    const car = carIn(after);
    expect([value(car, "left.wheel.center.out"), value(car, "right.wheel.center.out")]).toEqual([630, 630]);
    expect(difference(text, after).new).toEqual([
      "    wheel: { center: { out: 630 } }",
      "  left: { wheel: { center: { ahead: 0, up: 300 } } }",
      "  right: { wheel: { center: { ahead: 0, up: 300 } } }",
    ]);
  });

  test("an empty side gets its override on its own line, before its comment", () => {
    const text = plain.replace("  both:", "  left: # nothing yet\n  both:");
    const after = edited(text, { pair: "wheel.toe", sides: "left", value: Math.PI / 180 });
    expect(difference(text, after).new).toEqual(["  left: { wheel: { toe: 1 } } # nothing yet"]);
  });

  test("rack travel is one number for both ways, or one each way", () => {
    const each = edited(plain, { pair: "rack.travel", sides: "left", value: 60 });
    expect(difference(plain, each).new).toEqual(["    travel: { left: 60, right: 55 }"]);
    const other = edited(each, { pair: "rack.travel", sides: "right", value: 50 });
    expect(difference(each, other).new).toEqual(["    travel: { left: 60, right: 50 }"]);
    expect(edited(other, { pair: "rack.travel", sides: "both", value: 55 })).toBe(plain);
  });

  test("what the car has only one of is the same whatever side is asked for", () => {
    for (const sides of ["both", "left", "right"] as const)
      expect(edited(plain, { pair: "rack.up", sides, value: 240 })).toBe(plain.replace("up: 232", "up: 240"));
  });
});

describe("tie rods", () => {
  test("as cut are written per side; cut to fit leaves no trace", () => {
    const cut = cutRods(carIn(offset), { left: 400.862801, right: 274.2438 });
    expect(difference(offset, cut).new).toEqual([
      "  left: { tie-rod: { length: 15.78200004 } }",
      "  right: { tie-rod: { length: 10.797 } }",
    ]);
    expect(fitRods(carIn(cut))).toBe(offset);
  });

  test("alike ones are written once, and the comment below stays below", () => {
    const cut = cutRods(carIn(offset), { left: 406.4, right: 406.4 });
    expect(difference(offset, cut)).toEqual({ gone: [], new: ["      length: 16"] });
    expect(cut).toMatch(/outer: .*\n {6}length: 16\n {6}# length: 16/);
    expect(fitRods(carIn(cut))).toBe(offset);
  });

  test("lengths that the file gives already are given anew in their places", () => {
    const text = preset("cut-rods-off-middle");
    const cut = cutRods(carIn(text), { left: 309, right: 309.5 });
    expect(difference(text, cut).new).toEqual(["    tie-rod: { length: 309 }", "    tie-rod: { length: 309.5 }"]);
    const fit = fitRods(carIn(text));
    expect(carIn(fit).form.rods).toEqual({ left: "fit", right: "fit" });
    expect(fit).not.toContain("left:");
  });
});

describe("the title", () => {
  test("is changed in its place", () => {
    expect(setTitle(carIn(offset), "Another car")).toBe(offset.replace(/^title: .*$/m, "title: Another car"));
  });

  test("is put before all else where there is none, below the comments at the top", () => {
    expect(setTitle(carIn(plain), "Mine")).toBe(`title: Mine\n${plain}`);
    expect(setTitle(carIn(`# my car\n\n${plain}`), "Mine")).toBe(`# my car\n\ntitle: Mine\n${plain}`);
    expect(setTitle(carIn(`\ufeff${plain}`), "Mine")).toBe(`\ufefftitle: Mine\n${plain}`);
    expect(setTitle(carIn(plain.replaceAll("\n", "\r\n")), "Mine")).toBe(
      `title: Mine\n${plain}`.replaceAll("\n", "\r\n"),
    );
  });

  test.each([
    "yes: no",
    "# 1",
    "true",
    "null",
    "1.5",
    '"',
    "'",
    "a\\b",
    "- a",
    "{",
    "a # b",
    "\u00e4\u00f6\u65e5\u672c",
    "",
  ])("may be %j", (title) => {
    expect(carIn(setTitle(carIn(offset), title)).title).toBe(title);
    expect(carIn(setTitle(carIn(plain), title)).title).toBe(title);
  });

  test("of several lines becomes one of one line", () => {
    const folded = `title: >-\n  a long\n  title\n${plain}`;
    expect(carIn(folded).title).toBe("a long title");
    expect(setTitle(carIn(folded), "Short")).toBe(`title: Short\n${plain}`);
    expect(carIn(setTitle(carIn(plain), "two\nlines")).title).toBe("two lines");
  });
});

describe("parts that refer to each other are never changed behind the builder's back", () => {
  const joint = "joint: { ahead: 5, out: 550, up: 190 }";

  test("a number that others refer to", () => {
    const text = plain.replace("radius: 300", "radius: &r 300").replace("out: 620, up: 300", "out: 620, up: *r");
    const after = carIn(edited(text, { pair: "tire.radius", sides: "both", value: 305 }));
    expect(value(after, "tire.radius")).toBe(305);
    expect(value(after, "left.wheel.center.up")).toBe(300);
  });

  test("a number that is a reference", () => {
    const text = plain.replace("radius: 300", "radius: &r 300").replace("out: 620, up: 300", "out: 620, up: *r");
    const after = carIn(edited(text, { pair: "wheel.center.up", sides: "both", value: 305 }));
    expect(value(after, "tire.radius")).toBe(300);
    expect(value(after, "left.wheel.center.up")).toBe(305);
  });

  test("a mapping that both sides share", () => {
    const corner = plain.slice(plain.indexOf("    lower-arm:"), plain.indexOf("steering:"));
    const text = plain.replace("  both:\n", "  left: &corner\n").replace("steering:", "  right: *corner\nsteering:");
    expect(text).toContain(corner);
    const after = carIn(edited(text, { pair: "lower-arm.joint.out", sides: "right", value: 555 }));
    expect(value(after, "left.lower-arm.joint.out")).toBe(550);
    expect(value(after, "right.lower-arm.joint.out")).toBe(555);
    expect(value(after, "right.lower-arm.joint.up")).toBe(190);
  });

  test("references elsewhere are left alone", () => {
    const text = plain
      .replace(joint, "joint: &j { ahead: 5, out: 550, up: 190 }")
      .replace("steering:", "  left: { lower-arm: { joint: *j } }\nsteering:");
    expect(edited(text, { pair: "rack.up", sides: "both", value: 240 })).toBe(text.replace("up: 232", "up: 240"));
  });
});

test("a layout that no value can be spliced into is printed anew, with the right values and the comments", () => {
  const odd = plain.replace("    tie-rod:\n      outer:", "    ? tie-rod\n    : # the tab\n      ? outer\n      :");
  const car = carIn(odd);
  const after = setQuantity(car, { pair: "tie-rod.length", sides: "both", value: 333 });
  expect(value(carIn(after), "left.tie-rod.length")).toBe(333);
  expect(value(carIn(after), "left.tie-rod.outer.up")).toBe(230);
  expect(after).toContain("# the tab");
  expect(carIn(fitRods(carIn(after))).numbers).toEqual(car.numbers);
  const oddRack = plain.replace("  rack:\n", "  ? rack\n  :\n").replace("    travel: 55\n", "    ? travel\n    : 55\n");
  const wider = carIn(setQuantity(carIn(oddRack), { pair: "rack.travel", sides: "left", value: 60 }));
  expect([value(wider, "left.rack.travel"), value(wider, "right.rack.travel")]).toEqual([60, 55]);
  const named = carIn(setQuantity(carIn(oddRack), { pair: "rack.tilt", sides: "both", value: 0.1 }));
  expect(Math.abs(value(named, "rack.tilt") - 0.1)).toBeLessThan(1e-12);
});

test("a pair that is none is a mistake in the program", () => {
  expect(() => edited(plain, { pair: "tie-rod.outer", sides: "both", value: 1 })).toThrow("no quantity");
});
