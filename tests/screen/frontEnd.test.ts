import { describe, expect, it } from "vitest";
import { partsFor, startingLines } from "../../src/screen/frontEnd.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { mechanisms } from "../../src/vehicle/mechanisms.ts";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { Bench, opened } from "./support/bench.tsx";

/** Chooses a part by its label, from the bench. */
function change(bench: Bench, label: string): Bench {
  bench.press("p");
  const { focus } = bench.model;
  const to = partsFor(bench.model.bench.car).findIndex((part) => part.label === label);
  if (focus.on !== "parts" || to < 0) throw new Error(`no part ${label}`);
  const chord = to < focus.cursor ? "up" : "down";
  return bench.press(...Array<string>(Math.abs(to - focus.cursor)).fill(chord), "enter");
}

const offsetRack = (columns = 80, rows = 24) => new Bench(opened("widened-offset-rack"), columns, rows);

describe("choosing another front end or steering", () => {
  it("lists every linkage and mechanism in words, and marks what the car has", () => {
    const bench = offsetRack().press("p");
    for (const { label, gist } of [...linkages, ...mechanisms]) {
      expect(bench.text()).toContain(label);
      expect(bench.text()).toContain(gist);
    }
    expect(bench.lines().filter((line) => /^ [> ] \*/.test(line))).toEqual([
      expect.stringContaining("Double A-arms"),
      expect.stringContaining("Rack, rods at its ends"),
    ]);
    for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(80);
    expect(bench.text()).not.toContain("…");
  });

  it("is one change that keeps wheel, tab and rack, and is taken back by one undo", () => {
    const bench = offsetRack();
    const before = bench.model.bench.car;
    change(bench, "Strut");
    const { car, undo } = bench.model.bench;
    expect(car.form.linkage).toBe("strut");
    expect(undo.length).toBe(1);
    for (const id of ["left.tie-rod.outer.out", "right.wheel.center.out", "rack.offset", "left.lower-arm.joint.up"])
      expect(car.numbers[indexOf(id)]).toBe(before.numbers[indexOf(id)]);
    expect(bench.effects.map((effect) => effect.do)).toEqual(["journal"]);
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before.text);
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.press("r").model.bench.car.text).toBe(car.text);
  });

  it("lists what was filled in, and marks it until it is changed or found right", () => {
    const bench = change(offsetRack(), "Strut");
    expect(bench.text()).toContain("6 STARTING VALUES TO CHECK");
    expect(bench.text()).toContain("Strut instead of double A-arms.");
    expect(bench.text()).toMatch(/> Strut, top mount, ahead: -2 3\/8 in/);
    bench.press("enter");
    expect(bench.text()).toMatch(/^>~Strut +top mount, ahead +-2 3\/8/m);
    expect(bench.text()).toMatch(/^ STARTING VALUE: measure it; x once it is right/m);
    bench.press("right");
    expect(bench.text()).toMatch(/^> Strut +top mount, ahead +-2 5\/16/m);
    bench.press("down", "x");
    expect(bench.text()).toMatch(/^> +top mount, out/m);
    expect(startingLines(bench.model.bench.car).map(({ label }) => label)).toEqual([
      "Strut, top mount, up",
      "Strut, bottom, ahead",
      "Strut, bottom, out",
      "Strut, bottom, up",
    ]);
    bench.press("u");
    expect(bench.text()).toMatch(/^>~ +top mount, out/m);
    bench.press("X", "x", "x", "x", "x", "x");
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.press("X").text()).toContain("There are no starting values to check.");
    expect(bench.press("x").text()).toContain("only lines marked ~ are");
    expect(bench.model.bench.car.text).not.toContain("starting value");
  });

  it("marks one side only when the other was measured", () => {
    const bench = change(offsetRack(), "Strut").press("enter", "tab", "enter", "=-2", "enter");
    expect(startingLines(bench.model.bench.car)[0]?.label).toBe("Strut, top mount, ahead");
    expect(bench.press("tab", "x").model.bench.car.text).toContain("# starting value of out, up:");
    expect(startingLines(bench.model.bench.car)[0]?.label).toBe("Strut, top mount, out");
  });

  it("sets the wheels straight when the steering is no rack any more, and back", () => {
    const bench = change(offsetRack().press("J", "K"), "Relay");
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    expect(bench.model.place).toEqual({ input: study.zero, left: 0, right: 0 });
    bench.press("u");
    expect(bench.model.place.input).toBe(0);
  });

  it("does nothing but say so where the car has the part already, and Escape changes nothing", () => {
    const bench = offsetRack();
    const before = bench.model.bench.car.text;
    expect(bench.press("p", "enter").text()).toContain("The car has that already.");
    bench.press("p", "down", "escape");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.effects).toEqual([]);
  });

  it("makes every front end from every other, each with a list that fits the screen or says that it goes on", () => {
    for (const linkage of linkages) {
      for (const mechanism of mechanisms) {
        const bench = change(change(offsetRack().press("p", "escape"), linkage.label).press("escape"), mechanism.label);
        const { form } = bench.model.bench.car;
        expect([form.linkage, form.mechanism]).toEqual([linkage.name, mechanism.name]);
        for (const line of bench.lines()) expect(line.length, line).toBeLessThanOrEqual(80);
        for (const line of bench.press("escape").lines()) expect(line.length, line).toBeLessThanOrEqual(80);
        expect(bench.text()).not.toContain("NaN");
      }
    }
  });

  it("says it as ever when the changed car does not go together, and undo leads back", () => {
    const bench = new Bench(
      opened("widened-offset-rack", (text) => text.replace("up: 8.5 }", "up: 8.5 }\n      length: 20")),
    );
    expect("refused" in bench.model.bench.study).toBe(true);
    change(bench, "Strut");
    expect(bench.text()).toContain("DOES NOT GO TOGETHER");
    expect(bench.press("escape").text()).toMatch(/tie rod is[\s\S]*too long/);
    bench.press("u");
    expect(bench.model.bench.car.form.linkage).toBe("double-arm");
  });
});

describe("quantities of every kind", () => {
  it("moves a plain number by steps and by what is typed", () => {
    const bench = new Bench(opened("twin-beam-relay"));
    const ratio = indexOf("relay.ratio");
    bench.send({ is: "selected", pair: "relay.ratio", sides: "both" });
    expect(bench.press("right").value(ratio)).toBe(16.5);
    expect(bench.press(",", "left").value(ratio)).toBeCloseTo(16.4, 12);
    expect(bench.press("enter").text()).toContain("Type a plain number");
    expect(bench.press("=15 1/2").text()).toContain("= 15.5");
    expect(bench.press("enter").value(ratio)).toBe(15.5);
    expect(bench.press("enter", "=+1", "enter").value(ratio)).toBe(16.5);
    expect(bench.text()).toContain("set to 16.5");
  });

  it("moves wheel, arms and travel too, after what is moved first", () => {
    const bench = offsetRack();
    bench.send({ is: "selected", pair: "wheel.camber", sides: "both" });
    expect(bench.press("right").value(indexOf("left.wheel.camber"))).toBeCloseTo((-0.2 * Math.PI) / 180, 9);
    bench.send({ is: "selected", pair: "lower-arm.front.up", sides: "left" });
    bench.press("right");
    expect(bench.value(indexOf("left.lower-arm.front.up"))).toBeCloseTo(7.5625 * 25.4, 9);
    expect(bench.value(indexOf("right.lower-arm.front.up"))).toBeCloseTo(7.5 * 25.4, 9);
    expect(bench.text()).toMatch(/^> +front up +>L/m);
  });
});
