import { describe, expect, it } from "vitest";
import { loadPreset } from "../../src/files/presets.ts";
import { withGoal, withoutGoal, withoutRoom, withRods, withRoom, withStep } from "../../src/vehicle/find/edits.ts";
import { readGoal, readLine, readRoom, type SaidGoal, type SaidRoom } from "../../src/vehicle/find/words.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { inch } from "../../src/vehicle/units/length.ts";

const degree = Math.PI / 180;

function carOf(text: string) {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(`${car.complaints[0].message}\n${text}`);
  return car;
}

function preset(name: string) {
  const loaded = loadPreset(name);
  if ("complaints" in loaded) throw new Error(name);
  return carOf(loaded.text);
}

function goal(line: string): SaidGoal {
  const said = readLine(line, "in");
  if (said === null || "complaint" in said || !("level" in said)) throw new Error(JSON.stringify(said));
  return said;
}

function room(line: string): SaidRoom {
  const said = readLine(line, "in");
  if (said === null || "complaint" in said || !("pair" in said)) throw new Error(JSON.stringify(said));
  return said;
}

describe("goals and rooms in a builder's words", () => {
  it("are read in one line as the command line takes them, with = or a space", () => {
    expect(goal("must rod-to-arm 30")).toMatchObject({ level: "must", name: "rod-to-arm" });
    expect(goal("must rod-to-arm=30").aim).toEqual({ least: 30 * degree, most: null, over: 1 });
    expect(goal("--want toe-change = 1/8").aim).toEqual({ least: null, most: inch / 8, over: 1 });
    expect(goal("nice turning-circle 30 ft").aim.most).toBeCloseTo(360 * inch, 9);
    expect(room("move rack.up 1").room).toEqual({ from: null, to: null, within: inch, sides: null });
    expect(room("move each.tie-rod.outer.ahead=-6 to -3").room).toEqual({
      from: -152.4,
      to: -76.2,
      within: null,
      sides: "each",
    });
    expect(readLine("rod to arm", "in")).toBeNull();
  });

  it("take one end of a band, a percent sign, and a part of the lock", () => {
    expect(goal("want ackermann at least 60 %").aim).toEqual({ least: 60, most: null, over: 1 });
    expect(goal("want ackermann max 110").aim).toEqual({ least: null, most: 110, over: 1 });
    expect(goal("want ackermann 60 to 110 % over 50 %").aim).toEqual({ least: 60, most: 110, over: 0.5 });
    expect(readGoal("want", "toe-change", "at least 1/8", "in")).toHaveProperty("complaint");
    expect(readGoal("want", "toe-change", "at most 1/8", "in")).toMatchObject({ aim: { most: inch / 8 } });
  });

  it("take a unit at the end for both ends, unless the first has its own", () => {
    expect(room("move tie-rod.outer.ahead=-60 to -30 mm").room).toMatchObject({ from: -60, to: -30 });
    expect(room("move tie-rod.outer.ahead=-6 in to -30 mm").room).toMatchObject({ from: -152.4, to: -30 });
    expect(room('move tie-rod.outer.ahead=-6 1/2 to -3"').room).toMatchObject({ from: -165.1, to: -76.2 });
    expect(goal("want ackermann 60 to 110 %").aim).toMatchObject({ least: 60, most: 110 });
  });

  it("complain of what they are not", () => {
    expect(readGoal("must", "rod-to-am", "30", "in")).toHaveProperty(
      "complaint",
      'there is nothing called "rod-to-am". Did you mean "rod-to-arm"?',
    );
    expect(readRoom("rack.up", "9 to 8", "in")).toHaveProperty("complaint");
    expect(readRoom("rack.up", "0", "in")).toHaveProperty(
      "complaint",
      '"0" leaves no room: leave out what is to stay where it is',
    );
    expect(readRoom("wheelbase", "1", "in")).toHaveProperty("complaint");
  });
});

describe("edits of what is searched for", () => {
  it("begin the part where there is none, on lines of its own, in the builder's own words", () => {
    let car = preset("widened-offset-rack");
    for (const line of ["must rod-to-arm 30", "want toe-change 1/8", "want ackermann 60 to 110 over 50"])
      car = carOf(withGoal(car, goal(line)));
    car = carOf(withRoom(car, "length", room("move each.tie-rod.outer.ahead -6 to -3")));
    car = carOf(withRoom(car, "length", room("move rack.up 1/2")));
    car = carOf(withStep(car, { value: inch / 8, as: "1/8" }));
    car = carOf(withRods(car, "keep"));
    expect(car.text).toContain(
      [
        "find:",
        "  must:",
        "    rod-to-arm: 30",
        "  want:",
        '    toe-change: "1/8"',
        "    ackermann: { least: 60, most: 110, over: 50 }",
        "  move:",
        "    tie-rod.outer.ahead: { from: -6, to: -3, sides: each }",
        '    rack.up: { within: "1/2" }',
        '  step: "1/8"',
        "  rods: keep",
      ].join("\n"),
    );
    const { find } = car.sections;
    expect(find?.must?.["rod-to-arm"]).toEqual({ least: 30 * degree, most: null, over: 1 });
    expect(find?.want?.ackermann).toEqual({ least: 60, most: 110, over: 0.5 });
    expect(find?.move?.["rack.up"]).toEqual({ from: null, to: null, within: inch / 2, sides: null });
    expect([find?.step, find?.rods]).toEqual([inch / 8, "keep"]);
  });

  it("leave everything else byte for byte, comments among it, and take out again what they put in", () => {
    const before = preset("tab-to-place");
    const set = carOf(withGoal(before, goal("must rod-to-arm 32")));
    expect(set.text).toBe(before.text.replace("rod-to-arm: 30 }  ", "rod-to-arm: 32 }  "));
    const added = carOf(withGoal(before, goal("want bounce-steer 0.5")));
    expect(carOf(withoutGoal(added, "want", "bounce-steer")).text).toBe(before.text);
    const moved = carOf(withRoom(before, "length", room("move rack.ahead 1")));
    expect(carOf(withoutRoom(moved, "rack.ahead")).text).toBe(before.text);
    const bare = preset("widened-offset-rack");
    expect(withoutGoal(carOf(withGoal(bare, goal("nice inner-lock 35"))), "nice", "inner-lock")).toBe(bare.text);
  });

  it("write what was read in another unit as the file's own", () => {
    const car = preset("widened-offset-rack");
    const said = readGoal("want", "toe-change", "3 mm", "mm");
    if ("complaint" in said) throw new Error(said.complaint);
    expect(carOf(withGoal(car, said)).sections.find?.want?.["toe-change"]?.most).toBeCloseTo(3, 8);
    const bare = readGoal("want", "toe-change", "3", "mm");
    if ("complaint" in bare) throw new Error(bare.complaint);
    expect(carOf(withGoal(car, bare)).sections.find?.want?.["toe-change"]?.most).toBeCloseTo(3, 8);
  });

  it("write a wish for one end of a band as that", () => {
    const car = carOf(withGoal(preset("widened-offset-rack"), goal("want ackermann at least 60")));
    expect(car.text).toContain("ackermann: { least: 60 }");
    expect(car.sections.find?.want?.ackermann).toEqual({ least: 60, most: null, over: 1 });
  });
});
