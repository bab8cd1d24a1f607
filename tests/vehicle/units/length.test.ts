import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { readLength } from "../../../src/vehicle/units/length.ts";
import { prepareProducts } from "../../../src/vehicle/units/products.ts";
import { expectClose } from "../../close.ts";

/** The international inch is 25.4 mm exactly, the foot 12 of them (yard and pound agreement of 1959) [M]. */
const inch = 25.4;

/** A sum of two doubles near 100 mm is off by at most one unit in its last place. */
const rounding = { abs: 2 ** -46 };

function mm(text: string, unit: "in" | "mm" = "in", base?: number): number {
  const read = readLength(text, unit, base);
  if ("complaint" in read) throw new Error(`${text}: ${read.complaint}`);
  return read.mm;
}

function complaint(text: string, unit: "in" | "mm" = "in"): string {
  const read = readLength(text, unit);
  if (!("complaint" in read)) throw new Error(`${text} was read as ${read.mm} mm`);
  return read.complaint;
}

beforeAll(prepareProducts);

describe("a length is read as a builder means it", () => {
  // 25.4 × 14.375 = 365.125 and so on, worked out by hand.
  test.each([
    ["14.375", 365.125],
    ["14 3/8", 365.125],
    ["14-3/8", 365.125],
    ['14 3/8"', 365.125],
    ["14 3/8 in", 365.125],
    ["14 3/8 inches", 365.125],
    ["14\u00be", 374.65],
    ["14 \u00be", 374.65],
    ["14-\u00be", 374.65],
    ["\u00bd", 12.7],
    ["1/2 in", 12.7],
    ["3/8 in", 9.525],
    ["-1/4", -6.35],
    ["\u22121/4", -6.35],
    ["- 1/4", -6.35],
    ["-4 1/2", -114.3],
    ["-4-1/2", -114.3],
    ["+3", 76.2],
    [".5", 12.7],
    ["5.", 127],
    ["1 ft 2 1/2 in", 368.3],
    ["1 ft 2 in", 355.6],
    ["1 ft 2", 355.6],
    ["1' 2\"", 355.6],
    ["1'2\"", 355.6],
    ["1'-2 1/2\"", 368.3],
    ["1\u2032 2\u2033", 355.6],
    ["1\u2019 2\u201d", 355.6],
    ["-1 ft 2 in", -355.6],
    ["5'", 1524],
    ["365 mm", 365],
    ["365mm", 365],
    ["365 MM", 365],
    ["36.5 cm", 365],
    ["1.2 m", 1200],
    ["1\u00a0ft\u20092 in", 355.6],
    ["1e1", 254],
  ])("%s is %d mm in a file in inches", (text, value) => {
    expect(mm(text)).toBe(value);
  });

  test("bare numbers are in the file's unit, and a unit that is written wins", () => {
    expect(mm("14 3/8", "mm")).toBe(14.375);
    expect(mm("1/2 in", "mm")).toBe(12.7);
    expect(mm("3")).toBe(76.2);
    expect(mm("3", "mm")).toBe(3);
  });

  test.each([
    ["12 1/2 + 3/8", 327.025],
    ["365 mm - 1/2 in", 352.3],
    ["14 - 3/8", 346.075],
    ["1 ft - 2 in", 254],
    ["20-12-3/8", 193.675],
    ["2 + 10 mm", 60.8],
    ["2*(14 3/8)", 730.25],
    ["(2 + 1)*3 mm", 9],
    ["14 3/8 / 2", 182.5625],
    ["1 in / 3", 25.4 / 3],
    ["(1/3) * 3", 25.4],
    ["1/3", 25.4 / 3],
    ["12 + 2/3", 321.73333333333335],
    ["10/4/2", 31.75],
    ["6 mm / 3/4", 8],
    ["2 \u00d7 3", 152.4],
    ["6 \u00f7 4", 38.1],
    ["-(2 + 1/2)", -63.5],
    ["2 * 3 * 4 mm", 24],
  ])("the sum %s is %d mm", (text, value) => {
    expect(mm(text)).toBe(value);
  });
});

describe("a change of the value that stands there", () => {
  test("a leading + adds to it", () => {
    expectClose(mm("+1/16", "in", 4 * inch), 4.0625 * inch, rounding);
    expect(mm("+ 2 mm", "in", 100)).toBe(102);
    expect(mm("+=1 1/2", "in", 0)).toBe(38.1);
    expect(mm("+1/4 + 1/8", "in", 0)).toBe(9.525);
  });

  test("-= and +- take away, while a - alone is a place", () => {
    expectClose(mm("-=1/16", "in", 4 * inch), 3.9375 * inch, rounding);
    expect(mm("+-2 mm", "in", 100)).toBe(98);
    expect(mm("-2 mm", "in", 100)).toBe(-2);
    expect(mm("-4 1/2", "in", 100)).toBe(-114.3);
  });

  test("without a value to change, + is a mere sign and -= is nothing", () => {
    expect(mm("+1/16")).toBe(1.5875);
    expect(complaint("-=1/16")).toContain("not a length");
  });
});

describe("what was read is said back", () => {
  test.each([
    ["14-3/8", "in", undefined, "14 3/8 in = 365.1 mm"],
    ["365 mm", "in", undefined, "14.3701 in = 365.0 mm"],
    ["365", "mm", undefined, "365.0 mm = 14.3701 in"],
    ["+1/16", "in", 25.4, "1 1/16 in = 27.0 mm (plus 1/16 in = 1.6 mm)"],
    ["-=1/16", "in", 25.4, "15/16 in = 23.8 mm (less 1/16 in = 1.6 mm)"],
    ["-0", "in", undefined, "0 in = 0.0 mm"],
  ] as const)("%s in %s is echoed", (text, unit, base, echo) => {
    expect(readLength(text, unit, base)).toMatchObject({ echo });
  });
});

describe("what is no length is refused, with the reason", () => {
  test.each([
    ["", "empty"],
    ["   ", "empty"],
    ["14,5", "comma"],
    ["1,250", "comma"],
    ["3 kg", '"kg" is not a unit'],
    ["3 s", '"s" is not a unit'],
    ["3 deg", '"deg" is not a unit'],
    ["0x10", '"x" is not a unit'],
    ["1e400", "too large"],
    ["Infinity", "not a number"],
    ["NaN", "not a number"],
    ["pi", "not a number"],
    ["e", "not a number"],
    ["i", "not a number"],
    ["14 -3/8", "two ways"],
    ["14- 3/8", "two ways"],
    ["3/0", "0 below the line"],
    ["14 3/0", "0 below the line"],
    ["1 ft 3/0 in", "0 below the line"],
    ["44 13/14", "44 13/14 is no mark of a tape, but 44 59/64 and 44 15/16 are"],
    ["44-13/14 in", "44 59/64 and 44 15/16"],
    ["1 ft 2 1/3 in", "2 21/64 and 2 11/32"],
    ["14\u2153", "14 21/64 and 14 11/32"],
    ["14 7/14", "no mark of a tape, but 14 1/2 is"],
    ["14 127/128", "14 63/64 and 15"],
    ["2*(14 3/7)", "14 27/64 and 14 7/16"],
    ["1/(2-2)", "divides by 0"],
    ["2 3", "lacks a sign"],
    ["-4 1/", '"4 1/" is an unfinished fraction, without its lower number'],
    ["1/ ", '"1/" is an unfinished fraction'],
    ["14-3/", '"14-3/" is an unfinished fraction'],
    ["1 ft 2 1/", '"2 1/" is an unfinished fraction'],
    ["must rod-to-arm 30", '"must" is not a number'],
    ["rod-to-arm-of-the-left-wheel 30", '"rod-to-arm-of-the-left-wheel" is not a number'],
    ["1.5 3/8", "lacks a sign"],
    ["14 3/8 3/8", "lacks a sign"],
    ["1..2", "lacks a sign"],
    ["1 ft 2 mm", "only inches"],
    ["3 mm * 2 mm", "both have a unit"],
    ["30 mm / 2 mm", "has a unit"],
    ["((((", "no number"],
    ["(2", "do not fit together"],
    ["2)", "do not fit together"],
    ["2 +", "do not fit together"],
    ["* 2", "do not fit together"],
    ["2 ** 3", "do not fit together"],
    ["--3", "two signs"],
    ["2 - -3", "two signs"],
    ["9".repeat(101), "longer than"],
  ])("%s", (text, reason) => {
    expect(complaint(text)).toContain(reason);
  });

  test.each([
    "sqrt(4)",
    "a = 3",
    "f(x) = x",
    "import({})",
    "createUnit(5)",
    "2^3",
    "3!",
    "3%",
    "1:2",
    "[1, 2]",
    "[1]",
    "{a: 1}",
    "1; 2",
    "1\n2",
    "true",
    "1 == 1",
    "1 ? 2 : 3",
    "'a'",
    "\u0000",
    "1 \u0000",
    "constructor",
    "__proto__",
    "#3",
  ])("nothing but numbers, units and + - * / ( ) is let in: %j", (text) => {
    expect(complaint(text)).toMatch(/^not a length: /);
  });

  test("a hostile text comes back without control characters", () => {
    expect(complaint("\u001b[31m3")).not.toContain("\u001b");
    expect(complaint("3 \u202egk")).not.toContain("\u202e");
  });
});

describe("fractions are exact", () => {
  test("a fraction of an inch is the double nearest to its true value in mm", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 1, max: 63 }), (wholes, parts) => {
        // wholes + parts/64 in = (64 wholes + parts) · 254 / 640 mm, both whole numbers below 2^53: one rounding.
        expect(mm(`${wholes} ${parts}/64`)).toBe(((64 * wholes + parts) * 254) / 640);
        expect(mm(`-${wholes}-${parts}/64 in`)).toBe((-(64 * wholes + parts) * 254) / 640);
      }),
    );
  });

  test("of halves, quarters and so on to 64ths every one is read, and of other parts none behind a whole number", () => {
    for (let bottom = 1; bottom <= 130; bottom += 1) {
      const read = readLength(`7 1/${bottom}`, "in");
      expect("mm" in read, `7 1/${bottom}`).toBe([2, 4, 8, 16, 32, 64].includes(bottom));
    }
  });

  test("a decimal reads the same however many zeros follow it, and whatever way it is read", () => {
    fc.assert(
      fc.property(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: 0, max: 3 }), (digits, places) => {
        const text = (digits / 10 ** places).toFixed(places);
        // Ten decimals take the exact way through fractions, few ones the short way.
        expect(mm(`${text}${places === 0 ? "." : ""}0000000000`)).toBe(mm(text));
        expect(mm(`${text} in`)).toBe(mm(text));
        expect(mm(text, "mm")).toBe(Number(text) || 0);
      }),
    );
  });

  test("any text at all is read or refused, never thrown on, and never read as something that is no number", () => {
    const hostile = fc.string({ unit: fc.constantFrom(..."0123456789 ./-+*()'\"eimnftc,=^%x\u00bd"), maxLength: 20 });
    fc.assert(
      fc.property(fc.oneof(fc.string(), hostile), fc.constantFrom("in", "mm"), (text, unit) => {
        const read = readLength(text, unit, 10);
        if ("mm" in read) expect(Number.isFinite(read.mm)).toBe(true);
        else expect(read.complaint).toMatch(/^not a length: .+/);
      }),
      { numRuns: 2000 },
    );
  });

  test("a product is what the same arithmetic gives in plain numbers", () => {
    const number = fc.integer({ min: 1, max: 40 });
    fc.assert(
      fc.property(number, number, number, fc.constantFrom("+", "-"), (a, b, c, sign) => {
        const expected = sign === "+" ? a * (b + c / 8) : a * (b - c / 8);
        expect(mm(`${a} * (${b} ${sign} ${c}/8)`, "mm")).toBe(expected || 0);
      }),
    );
  });
});
