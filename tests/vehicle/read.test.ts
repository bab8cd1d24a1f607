import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { quantitiesOf } from "../../src/vehicle/quantities.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { carIn, plain, preset, presets, told, value } from "./cars.ts";

describe("a car file is read into mm and rad, left and right apart", () => {
  const car = carIn(preset("widened-offset-rack"));

  test("what the file says, in its own units", () => {
    expect(car.title).toBe("Rail two-seater, front widened, offset rack");
    expect(value(car, "wheelbase")).toBe(1727.2);
    expect(value(car, "left.lower-arm.joint.out")).toBe(546.1);
    expect(value(car, "right.lower-arm.joint.out")).toBe(546.1);
    // 8 5/8 in is 219.075 mm exactly.
    expect(value(car, "rack.up")).toBe(219.075);
    expect(value(car, "left.wheel.camber")).toBe((-0.5 * Math.PI) / 180);
    expect(value(car, "left.rack.travel")).toBe(50.8);
    expect(value(car, "right.rack.travel")).toBe(50.8);
    expect(car.form).toMatchObject({ units: "in", linkage: "double-arm", mechanism: "rack", wheelLeftMoves: "right" });
  });

  test("what it leaves out", () => {
    for (const id of ["rack.tilt", "rack.straight-ahead", "left.tie-rod.length"]) expect(value(car, id)).toBe(0);
    expect(car.form.rods).toEqual({ left: "fit", right: "fit" });
    const bare = carIn(plain);
    for (const id of ["left.wheel.camber", "right.wheel.toe", "rack.offset", "rack.per-turn"])
      expect(value(bare, id)).toBe(0);
    expect(bare.form.wheelLeftMoves).toBeNull();
    expect(bare.title).not.toBe("");
  });

  test("every example car is read without a complaint or a warning", () => {
    expect(presets.size).toBeGreaterThanOrEqual(4);
    for (const text of presets.values()) expect(carIn(text).warnings).toEqual([]);
  });

  test("a tie-rod length makes a rod as cut, on its own side", () => {
    const cut = carIn(plain.replace("  both:", "  left:\n    tie-rod: { length: 320 }\n  both:"));
    expect(cut.form.rods).toEqual({ left: "cut", right: "fit" });
    expect(value(cut, "left.tie-rod.length")).toBe(320);
  });

  test("rack travel may differ each way", () => {
    const car = carIn(plain.replace("travel: 55\n", "travel: { left: 50, right: 60 }\n"));
    expect([value(car, "left.rack.travel"), value(car, "right.rack.travel")]).toEqual([50, 60]);
  });
});

describe("left and right override both", () => {
  test("down to a single coordinate", () => {
    const car = carIn(plain.replace("steering:", "  right:\n    tie-rod: { outer: { up: 240 } }\nsteering:"));
    expect(value(car, "right.tie-rod.outer.up")).toBe(240);
    expect(value(car, "right.tie-rod.outer.out")).toBe(520);
    expect(value(car, "left.tie-rod.outer.up")).toBe(230);
  });

  test("a side given whole needs nothing from both", () => {
    const [head = "", rest = ""] = plain.split("  both:\n");
    const [corner = "", steering = ""] = rest.split("steering:");
    const car = carIn(`${head}  left:\n${corner}  right:\n${corner}steering:${steering}`);
    expect(car.numbers).toEqual(carIn(plain).numbers);
  });

  test("a side that is left empty overrides nothing", () => {
    expect(carIn(plain.replace("  both:", "  left:\n  right: # nothing yet\n  both:")).numbers).toEqual(
      carIn(plain).numbers,
    );
  });

  test("the merged whole holds each quantity's most particular value, wherever each stands", () => {
    const sided = quantitiesOf(carIn(plain).form).filter(
      (each) => each.path[0] === "front" && each.pair !== "tie-rod.length",
    );
    const nested = (entries: readonly (readonly [readonly string[], number])[]) => {
      const root: Record<string, unknown> = {};
      for (const [path, number] of entries) {
        let at = root;
        for (const key of path.slice(0, -1)) {
          at[key] ??= {};
          at = at[key] as Record<string, unknown>;
        }
        at[path.at(-1) ?? ""] = number;
      }
      return JSON.stringify(root);
    };
    const base = carIn(plain);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...sided), fc.double({ min: -1, max: 1, noNaN: true })), { maxLength: 12 }),
        (overrides) => {
          const moved = new Map(
            overrides.map(([quantity, by]) => [
              quantity,
              Math.round(by * 1000) / 1000 + (quantity.kind === "length" ? (base.numbers[quantity.index] ?? 0) : 0),
            ]),
          );
          for (const wheel of ["left", "right"] as const) {
            const side = [...moved].filter(([quantity]) => quantity.wheel === wheel);
            const text = nested(side.map(([{ path }, number]) => [path.slice(2), number]));
            const car = carIn(plain.replace("  both:", `  ${wheel}: ${text}\n  both:`));
            for (const quantity of sided) {
              const own = quantity.wheel === wheel ? moved.get(quantity) : undefined;
              const expected = own === undefined ? base.numbers[quantity.index] : own;
              const scale = own !== undefined && quantity.kind === "angle" ? Math.PI / 180 : 1;
              expect(car.numbers[quantity.index]).toBe((expected ?? 0) * scale || 0);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("complaints say where, what was found and what would be right", () => {
  const change = (from: string, to: string) => {
    expect(plain).toContain(from);
    return told(plain.replace(from, to));
  };

  test("an unknown key, with the nearest known one", () => {
    expect(change("    wheel:\n", "    weel:\n")).toContain(
      '19:5 front.both.weel: unknown key "weel": did you mean "wheel"?',
    );
    expect(change("units:", "colour: red\nunits:")).toEqual([
      expect.stringMatching(
        /^1:1 colour: unknown key "colour": expected one of title, notes, .*units, front, steering, wheelbase, /,
      ),
    ]);
  });

  test("an unknown unit, linkage and mechanism", () => {
    expect(change("units: mm", "units: metres")).toEqual(['1:8 units: found "metres", expected in or mm']);
    expect(change("double-arm", "duoble-arm")).toEqual([
      expect.stringMatching(/^7:12 front.linkage: found "duoble-arm", expected .*double-arm/),
    ]);
    expect(change("mechanism: rack", "mechanism: 7")).toEqual([
      expect.stringMatching(/^22:14 steering.mechanism: found 7, expected .*rack/),
    ]);
  });

  test.each([
    ["wheelbase: 2000", "wheelbase: [2000]", "2:12 wheelbase: found a list, expected a length"],
    ["wheelbase: 2000", "wheelbase: { a: 1 }", "2:12 wheelbase: found a group of keys, expected a length"],
    ["wheelbase: 2000", "wheelbase: true", "2:12 wheelbase: found true, expected a length"],
    ["wheelbase: 2000", "wheelbase:", "2:11 wheelbase: found nothing, expected a length"],
    ["wheelbase: 2000", "wheelbase: long", '2:12 wheelbase: found "long", which is not a length'],
    ["wheelbase: 2000", 'wheelbase: "2,000"', '2:12 wheelbase: found "2,000", which is not a length: it has a comma'],
    ["wheelbase: 2000", "wheelbase: 0x7d0", '2:12 wheelbase: found "0x7d0", which is not a length'],
    [
      "wheelbase: 2000",
      "wheelbase: .inf",
      "2:12 wheelbase: found a number too large to be held (1e400, .inf), expected a length",
    ],
    ["wheelbase: 2000", "wheelbase: .nan", "2:12 wheelbase: found no number (.nan), expected a length"],
    [
      "wheelbase: 2000",
      "wheelbase: -2000",
      "2:12 wheelbase: found -2000, expected a value from 300.0 mm to 10000.0 mm",
    ],
    ["wheelbase: 2000", "wheelbase: 1 km", '2:12 wheelbase: found "1 km", which is not a length'],
    ["wheelbase: 2000\n", "", "1:1 wheelbase: missing: From the front-axle line back"],
    ["bump: 80", "bump: -80", "5:23 wheel-travel.bump: found -80, expected a value from 0.0 mm"],
    ["{ bump: 80, droop: 80 }", "{ bump: 80 }", "5:1 wheel-travel.droop: missing: How far the wheel centre falls"],
    ["wheel-travel: { bump: 80, droop: 80 }\n", "", "1:1 wheel-travel: missing"],
    ["out: 550, ", "", "12:7 front.both.lower-arm.joint.out: missing: Joint of the lower arm"],
    ["up: 230", "up: 230000", "18:43 front.both.tie-rod.outer.up: found 230000, expected a value from"],
    ["travel: 55", "travel: 0", "27:13 steering.rack.travel: found 0, expected a value from 1.0 mm"],
    ["travel: 55", "travel: { left: 5, rite: 6 }", "right"],
    ["  both:\n", "  left: 3\n  both:\n", "8:9 front.left: found 3, expected the keys lower-arm, upper-arm"],
    ["front:\n", "front: 3\nrest:\n", "front"],
    [
      "    wheel:\n",
      "    wheel:\n      camber: lots\n",
      '20:15 front.both.wheel.camber: found "lots", which is not an angle',
    ],
    [
      "    wheel:\n",
      "    wheel:\n      camber: 45\n",
      "20:15 front.both.wheel.camber: found 45, expected a value from -20 degrees to 20 degrees",
    ],
    [
      "    wheel:\n",
      "    wheel:\n      camber: []\n",
      "20:15 front.both.wheel.camber: found a list, expected an angle",
    ],
    [
      "    travel: 55\n",
      "    travel: 55\n    wheel-left-moves: up\n",
      '28:23 steering.rack.wheel-left-moves: found "up", expected left or right',
    ],
    [
      "units: mm\n",
      'units: mm\ntitle: "\\e[31mred"\n',
      '2:8 title: found "\\u{1b}[31mred", expected text without control characters',
    ],
    ["units: mm\n", "units: mm\ntitle: [a]\n", "2:8 title: found a list, expected text on one line"],
  ])("%j made %j", (from, to, complaint) => {
    expect(change(from, to).join("\n")).toContain(complaint);
  });

  test("all of them at once, in the order of the file", () => {
    const lines = told(
      plain.replace("units: mm", "units: m").replace("both:", "boht:").replace("travel: 55", "travel: x"),
    );
    expect(lines.map((line) => line.split(" ")[0])).toEqual(["1:8", "8:3"]);
    const values = told(plain.replace("2000", "-2").replace("travel: 55", "travel: x"));
    expect(values.map((line) => line.split(" ")[0])).toEqual(["2:12", "27:13"]);
  });

  test("a value that both sides share is complained of once, an override where it stands", () => {
    expect(change("out: 620", "out: 6200")).toHaveLength(1);
    expect(change("  both:\n", "  left: { wheel: { center: { out: 6200 } } }\n  both:\n")).toEqual([
      expect.stringContaining("8:35 front.left.wheel.center.out"),
    ]);
  });

  test.each([
    [
      "rear: { ahead: -120, out: 200, up: 200 }",
      "rear: { ahead: 120, out: 200, up: 200 }",
      "11:13 front.both.lower-arm.rear",
    ],
    [
      "joint: { ahead: 5, out: 550, up: 190 }",
      "joint: { ahead: 5, out: 200, up: 200 }",
      "12:14 front.both.lower-arm.joint",
    ],
    [
      "joint: { ahead: -15, out: 520, up: 380 }",
      "joint: { ahead: 5, out: 550, up: 190 }",
      "16:14 front.both.upper-arm.joint",
    ],
    [
      "outer: { ahead: -110, out: 520, up: 230 }",
      "outer: { ahead: 5, out: 550, up: 190 }",
      "18:14 front.both.tie-rod.outer",
    ],
    [
      "outer: { ahead: -110, out: 520, up: 230 }",
      "outer: { ahead: -5, out: 535, up: 285 }",
      "18:14 front.both.tie-rod.outer",
    ],
  ])("joints that coincide: %j made %j", (from, to, where) => {
    expect(change(from, to)).toEqual([expect.stringContaining(where)]);
  });

  test.each([
    ["the joints exchanged", "joint: { ahead: -15, out: 520, up: 80 }", "found 162 degrees"],
    ["both joints at one height", "joint: { ahead: -15, out: 520, up: 190 }", "found 90 degrees"],
  ])("a steering axis that does not stand: %s", (_, to, found) => {
    const [complaint, ...more] = change("joint: { ahead: -15, out: 520, up: 380 }", to);
    expect(more).toEqual([]);
    expect(complaint).toContain("16:14 front.both.upper-arm.joint: the steering axis");
    expect(complaint).toContain(found);
  });
});

describe("warnings", () => {
  const warnings = (text: string) => carIn(text).warnings.map((each) => `${each.line}: ${each.message}`);

  test("a wheel centre more than 2 % of the tyre's radius off its height", () => {
    expect(warnings(plain.replace("out: 620, up: 300", "out: 620, up: 305"))).toEqual([]);
    expect(warnings(plain.replace("out: 620, up: 300", "out: 620, up: 307"))).toEqual([
      expect.stringMatching(/^20: the wheel centre is 307.0 mm above the ground, .* 300.0 mm/),
    ]);
  });

  test("a rack that is straight ahead beyond its own travel, or turns once in more than all of it", () => {
    expect(warnings(`${plain}    straight-ahead: -60\n`)).toEqual([expect.stringMatching(/^28: .*beyond/)]);
    expect(warnings(`${plain}    straight-ahead: 55\n`)).toEqual([]);
    expect(warnings(`${plain}    per-turn: 111\n`)).toEqual([expect.stringMatching(/^28: one turn.* 111.0 mm/)]);
  });
});

describe("the text itself may be written in many ways", () => {
  const numbers = carIn(plain).numbers;

  test.each([
    ["Windows line ends", plain.replaceAll("\n", "\r\n")],
    ["a byte-order mark", `\ufeff${plain}`],
    ["no last line end", plain.trimEnd()],
    ["a document mark", `---\n${plain}`],
    ["a YAML 1.2 mark", `%YAML 1.2\n---\n${plain}`],
    ["quoted numbers and keys", plain.replace("wheelbase: 2000", "\"wheelbase\": '2000'")],
    ["JSON", JSON.stringify(JSON.parse(toJson(plain)))],
    [
      "an anchor",
      plain.replace("rear: { ahead: -120, out: 200, up: 200 }", "rear: &r { ahead: -120, out: 200, up: 200 }"),
    ],
    ["a reference to a number", plain.replace("radius: 300", "radius: &r 300").replace("up: 300", "up: *r")],
  ])("%s", (_, text) => {
    expect(carIn(text).numbers).toEqual(numbers);
  });

  test("with a byte-order mark or Windows line ends, places are still as editors count", () => {
    expect(told(`\ufeff${plain.replace("units: mm", "units: m")}`)[0]).toMatch(/^1:8 /);
    expect(told(plain.replace("wheelbase: 2000", "wheelbase: x").replaceAll("\n", "\r\n"))[0]).toMatch(/^2:12 /);
  });

  test("a rubbish text is complained of, never thrown on", () => {
    const pieces = fc.array(
      fc.oneof(
        fc.constantFrom(..."{}[]:,&*!|>'\"%@`#?-\n\t ", "---", "<<", "both", "front", "\r\n", "null"),
        fc.string({ maxLength: 4 }),
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(pieces, fc.nat({ max: plain.length }), (rubbish, at) => {
        for (const text of [rubbish.join(""), plain.slice(0, at) + rubbish.join("") + plain.slice(at)]) {
          const car = readCar(text);
          if ("complaints" in car) expect(car.complaints.length).toBeGreaterThan(0);
          else for (const number of car.numbers) expect(Number.isFinite(number)).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });
});

/** The plain car as JSON, by nothing but its own layout. */
function toJson(text: string): string {
  const stack: number[] = [];
  let json = "{";
  for (const line of text.trimEnd().split("\n")) {
    const [, indent = "", key = "", rest = ""] = /^( *)([\w-]+): ?(.*)$/.exec(line) ?? [];
    while (stack.length > 0 && indent.length <= (stack.at(-1) ?? 0)) {
      stack.pop();
      json += "}";
    }
    const comma = json.endsWith("{") ? "" : ",";
    const value = rest.replace(/([\w-]+):/g, '"$1":').replace(/^([a-z][\w-]*)$/, '"$1"');
    json += `${comma}"${key}":${rest === "" ? "{" : value}`;
    if (rest === "") stack.push(indent.length);
  }
  return `${json}${"}".repeat(stack.length + 1)}`;
}

test("a text is read the same whatever was read before it", async () => {
  const changed = [...presets.values()].flatMap((text) => [
    text,
    text.replace(/^units: .*$/m, text.includes("units: in") ? "units: mm" : "units: in"),
    text.replace(/[1-9](?=\D*$)/, "4"),
    text.replace(/^( +(?:size|rate|diameter|bolt).*): .*$/m, "$1: nonsense"),
  ]);
  const alone: unknown[] = [];
  for (const text of changed) {
    vi.resetModules();
    const fresh = await import("../../src/vehicle/read.ts");
    alone.push(fresh.readCar(text));
  }
  vi.resetModules();
  const { readCar: again } = await import("../../src/vehicle/read.ts");
  for (const round of [changed, [...changed].reverse(), changed])
    for (const text of round) expect(again(text)).toEqual(alone[changed.indexOf(text)]);
});
