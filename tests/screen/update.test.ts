import { describe, expect, it } from "vitest";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { Bench, opened } from "./support/bench.tsx";

const inch = 25.4;
const leftOut = indexOf("left.tie-rod.outer.out");
const rightOut = indexOf("right.tie-rod.outer.out");
const offsetRack = () => new Bench(opened("widened-offset-rack"));

describe("adjusting", () => {
  it("moves both tabs by the chosen step, and only the chosen side after Tab", () => {
    const bench = offsetRack().press("down", "right");
    expect(bench.value(leftOut)).toBeCloseTo((19 + 13 / 16) * inch, 9);
    expect(bench.value(rightOut)).toBeCloseTo((19 + 13 / 16) * inch, 9);
    bench.press(".", "tab", "left");
    expect(bench.value(leftOut)).toBeCloseTo((19 + 11 / 16) * inch, 9);
    expect(bench.value(rightOut)).toBeCloseTo((19 + 13 / 16) * inch, 9);
  });

  it("steps each side by itself where they differ, so that the difference stays", () => {
    const bench = offsetRack().press("down", "tab", "right", "tab", "tab", ".", ".", ".", "right");
    expect(bench.value(leftOut)).toBeCloseTo((20 + 13 / 16) * inch, 9);
    expect(bench.value(rightOut)).toBeCloseTo((20 + 12 / 16) * inch, 9);
  });

  it("takes a typed fraction, a change and another unit, and writes them as they were typed", () => {
    const bench = offsetRack().press("down", "enter", "=19 7/8", "enter");
    expect(bench.value(leftOut)).toBeCloseTo(19.875 * inch, 9);
    expect(bench.model.bench.car.text).toContain('"19 7/8"');
    bench.press("enter", "=+1/16", "enter");
    expect(bench.value(leftOut)).toBeCloseTo((19 + 15 / 16) * inch, 9);
    bench.press("enter", "=500 mm", "enter");
    expect(bench.value(leftOut)).toBeCloseTo(500, 9);
  });

  it("keeps the field open on a text that is no length, and Escape leaves the car as it was", () => {
    const bench = offsetRack();
    const before = bench.model.bench.car.text;
    bench.press("enter", "=14 and a bit", "enter");
    expect(bench.model.focus.on).toBe("entry");
    bench.press("escape");
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.model.bench.car.text).toBe(before);
  });

  it("refuses a value that no car can have, says what would be right under the field, and changes nothing", () => {
    const bench = offsetRack();
    const before = bench.model.bench.car.text;
    bench.press("enter", "=99999", "enter");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.model.notice?.tone).toBe("wrong");
    expect(bench.model.notice?.text).toMatch(/expected a .*from .* to /);
    expect(bench.text()).toContain(bench.model.notice?.text.slice(0, 70));
    expect(bench.press("=9").text()).not.toContain("Not done");
  });

  it("tells a place that begins with a minus from taking away, while it is typed", () => {
    const said = offsetRack().press("enter", "=-1/16").text();
    expect(said).toContain("= -1/16 in = -1.6 mm, behind the axle line; to take it off type -=1/16");
    const less = offsetRack().press("enter", "=-=1/16");
    expect(less.text()).toContain("less 1/16 in");
    expect(less.press("enter").text()).toMatch(/> Tie-rod tab ahead +-4 9\/16/);
    expect(offsetRack().press("enter").text()).toContain("+1/16 in adds, -=1/16 in takes away");
  });

  it("says a step as it was taken, with its sign, and where it landed when that is not a whole step on", () => {
    expect(offsetRack().press("right").model.notice?.text).toBe(
      "Tie-rod tab, ahead, both sides: +1/16 in to -4 7/16 in",
    );
    // -4 3/4 in is -120.65 mm: a millimetre more, to the nearest half, is -119.5 and not -119.65.
    const bench = offsetRack().press("enter", "=-4 3/4", "enter", "m", "right");
    expect(bench.model.notice?.text).toBe("Tie-rod tab, ahead, both sides: +1 mm, to the nearest 0.5 mm, to -119.5 mm");
  });

  it("names both values in the field where the sides differ", () => {
    const bench = offsetRack().press("down", "tab", "right", "tab", "tab", "enter");
    expect(bench.text()).toContain("(now 19 13/16 in left, 19 3/4 in right):");
  });

  it("says that rods as cut ignore where the rack is at straight ahead", () => {
    const bench = offsetRack().press("c", ...Array<string>(8).fill("down"));
    expect(bench.model.selected).toBe("rack.straight-ahead");
    const before = bench.model.bench.car.text;
    expect(bench.press("right").model.notice?.text).toContain("Rods as cut ignore it");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.press("c", "right").model.bench.car.text).toContain("straight-ahead");
  });

  it("shows millimetres without changing the file, and then steps in millimetres", () => {
    const bench = offsetRack();
    const before = bench.model.bench.car.text;
    bench.press("m");
    expect(bench.model.bench.car.text).toBe(before);
    bench.press("down", ".", ".", ".", "right");
    expect(bench.value(leftOut)).toBeCloseTo(511.5, 9);
  });

  it("keeps rods cut to fit from being moved until they are as cut, and then moves them", () => {
    const bench = offsetRack().press("down", "down", "down", "right");
    expect(bench.model.notice?.text).toContain("cut to fit");
    bench.press("c");
    expect(bench.model.bench.car.form.rods).toEqual({ left: "cut", right: "cut" });
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    const { left } = study.rodLengths;
    bench.press("right");
    const after = bench.model.bench.study;
    if ("refused" in after) throw new Error(after.refused);
    // One step of 1/16 in, landing on the nearest 32nd.
    expect(Math.abs(after.rodLengths.left - left - inch / 16)).toBeLessThanOrEqual(inch / 64);
    bench.press("c");
    expect(bench.model.bench.car.form.rods).toEqual({ left: "fit", right: "fit" });
  });
});

describe("undo", () => {
  it("goes all the way back and forth again, text by text", () => {
    const bench = offsetRack();
    const texts = [bench.model.bench.car.text];
    for (let i = 0; i < 60; i++) {
      bench.press(i % 3 === 0 ? "down" : "right", "left", "right", "right");
      texts.push(bench.model.bench.car.text);
    }
    const last = bench.model.bench.car.text;
    while (bench.model.bench.undo.length > 0) bench.press("u");
    expect(bench.model.bench.car.text).toBe(texts[0]);
    while (bench.model.bench.redo.length > 0) bench.press("r");
    expect(bench.model.bench.car.text).toBe(last);
  });

  it("journals every change, also what is taken back", () => {
    const bench = offsetRack().press("right", "right", "u");
    expect(bench.effects.map((effect) => effect.do)).toEqual(["journal", "journal", "journal"]);
  });
});

describe("turning the wheel and moving the suspension", () => {
  it("stops at the locks and at the ends of the travel, and comes back to the middle", () => {
    const bench = offsetRack();
    for (let i = 0; i < 30; i++) bench.press("j", "i");
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    expect(Math.abs(bench.model.place.input)).toBeCloseTo(study.inputTravel.left, 9);
    expect(bench.model.place.left).toBeCloseTo(study.wheelTravel.bump, 9);
    bench.press("h");
    expect(bench.model.place).toEqual({ input: study.zero, left: 0, right: 0 });
  });

  it("turns the road wheels left when the steering wheel is turned left", () => {
    const bench = offsetRack().press("J");
    expect(bench.text()).toMatch(/Steer +L ?[\d.]+° left +R ?[\d.]+° left/);
  });

  it("moves one wheel alone", () => {
    const bench = offsetRack().press("e", "K");
    expect(bench.model.place.left).toBeCloseTo(-3 * inch, 9);
    expect(bench.model.place.right).toBe(0);
  });
});

describe("saving and leaving", () => {
  it("leaves at once when nothing is unsaved, and asks first when something is", () => {
    expect(offsetRack().press("q").effects).toEqual([{ do: "quit" }]);
    const bench = offsetRack().press("right", "q");
    expect(bench.model.focus).toMatchObject({ on: "question", question: { about: "unsaved" } });
    expect(bench.press("down").text().replace(/\s+/g, " ")).toContain(
      "First answer, by one of the keys below: This car has changes that are not saved.",
    );
    bench.press("escape");
    expect(bench.model.focus.on).toBe("bench");
    bench.press("q", "d");
    expect(bench.effects.slice(1)).toEqual([{ do: "forget" }, { do: "quit" }]);
  });

  it("leaves on a second Ctrl-C, with the changes kept for next time", () => {
    const bench = offsetRack().press("right", "ctrl+c");
    expect(bench.text()).toContain("Ctrl-C leave, keep for next time");
    bench.press("ctrl+c");
    expect(bench.effects.slice(1)).toEqual([{ do: "leave" }]);
  });

  it("takes no folder and no nothing for a file name", () => {
    const bench = offsetRack().press("S", "=", "enter");
    expect(bench.text()).toContain("Type a file name first, such as buggy.yaml.");
    for (const name of [".", "..", "/tmp/", "cars/.", "~"]) {
      bench.press(`=${name}`, "enter");
      expect(bench.model.focus, name).toMatchObject({
        on: "saveAs",
        complaint: expect.stringContaining("is a folder"),
      });
    }
    expect(bench.effects).toEqual([]);
    expect(bench.press("=.hidden", "enter").effects.map((effect) => effect.do)).toEqual(["save"]);
  });

  it("asks a new car's name, saves only where no file is, and goes on to leave once it is saved", () => {
    const bench = offsetRack().press("right", "q", "s", "=/tmp/mine", "enter");
    expect(bench.effects.at(-1)).toEqual({ do: "save", path: "/tmp/mine.yaml", known: null, next: { do: "quit" } });
    bench.send({ is: "saved", path: "/tmp/mine.yaml", hash: "h", next: { do: "quit" } });
    expect(bench.effects.at(-1)).toEqual({ do: "quit" });
    expect(bench.model.origin).toMatchObject({ path: "/tmp/mine.yaml", hash: "h" });
  });

  it("says that the car before was saved, once the other one is open, also where that cannot be opened", () => {
    const choices = [{ name: "rack-ahead", about: "", source: { from: "preset", id: "rack-ahead" } as const }];
    const opening = () => {
      const bench = offsetRack().press("right", "o").send({ is: "listed", choices }).press("enter", "s");
      bench.press("=/tmp/mine", "enter");
      const asked = bench.effects.at(-1);
      if (asked?.do !== "save") throw new Error("nothing was to be saved");
      return bench.send({ is: "saved", path: "/tmp/mine.yaml", hash: "h", next: asked.next });
    };
    const other = opening().send({ is: "opened", opened: opened("rack-ahead") });
    expect(other.model.origin.source).toEqual({ from: "preset", id: "rack-ahead" });
    expect(other.text()).toContain("Saved to /tmp/mine.yaml: the car before this one.");
    const failed = opening().send({ is: "failed", words: "rack-ahead cannot be read." });
    expect(failed.text()).toContain("Saved to /tmp/mine.yaml. rack-ahead cannot be read.");
    const unsaved = offsetRack().press("right", "o").send({ is: "listed", choices }).press("enter", "d");
    expect(unsaved.send({ is: "opened", opened: opened("rack-ahead") }).text()).not.toContain("Saved to");
  });

  it("asks before writing over a file, goes back to the name on Escape, and overwrites only what was seen", () => {
    const bench = offsetRack().press("S", "=/tmp/mine.yaml", "enter");
    bench.send({ is: "doubted", about: "exists", path: "/tmp/mine.yaml", found: "theirs", next: null });
    bench.press("escape");
    expect(bench.model.focus).toMatchObject({ on: "saveAs", text: "/tmp/mine.yaml" });
    bench.send({ is: "doubted", about: "exists", path: "/tmp/mine.yaml", found: "theirs", next: null }).press("o");
    expect(bench.effects.at(-1)).toEqual({ do: "save", path: "/tmp/mine.yaml", known: "theirs", next: null });
  });

  it("saves a named car against the file as it was read, and offers to read a changed one again", () => {
    const car = {
      ...opened("widened-offset-rack"),
      source: { from: "file", path: "/tmp/a.yaml" },
      hash: "mine",
    } as const;
    const bench = new Bench(car).press("right", "s");
    expect(bench.effects.at(-1)).toEqual({ do: "save", path: "/tmp/a.yaml", known: "mine", next: null });
    bench.send({ is: "doubted", about: "changed", path: "/tmp/a.yaml", found: "theirs", next: null }).press("r");
    expect(bench.effects.at(-1)).toEqual({ do: "open", source: { from: "file", path: "/tmp/a.yaml" } });
    const mine = bench.model.bench.car.text;
    const theirs = opened("widened-offset-rack", (text) => text.replace("offset: -2.5", "offset: -2"));
    bench.send({ is: "opened", opened: { ...theirs, source: car.source, hash: "theirs" } });
    expect(bench.model.bench.car.text).toBe(theirs.car.text);
    expect(bench.text()).toContain("u brings your own changes back");
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(mine);
    expect(bench.effects.at(-1)).toMatchObject({ do: "journal" });
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(car.car.text);
  });

  it("starts another name afresh, and Ctrl-U empties a field", () => {
    const car = {
      ...opened("widened-offset-rack"),
      source: { from: "file", path: "/tmp/tab4.yaml" },
      hash: "h",
    } as const;
    const bench = new Bench(car).press("S");
    expect(bench.text()).toContain("Save as (now tab4.yaml):");
    bench.press("=my buggy", "enter");
    expect(bench.effects.at(-1)).toMatchObject({ do: "save", path: expect.stringMatching(/\/my buggy\.yaml$/) });
    expect(bench.press("ctrl+u").model.focus).toMatchObject({ on: "saveAs", text: "" });
    bench.press("escape", "enter", "=14", "ctrl+u");
    expect(bench.model.focus).toEqual({ on: "entry", text: "" });
  });

  it("asks before one value goes over two that differ, and takes the length of a rod that was cut to fit", () => {
    const bench = offsetRack().press("down", "down", "down");
    const before = bench.model.bench.car.text;
    bench.press("enter", "=14", "enter");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.text()).toContain("15 25/32 in left, 10 13/16 in right now: Enter again sets both.");
    bench.press("=13", "enter");
    expect(bench.model.bench.car.text).toBe(before);
    bench.press("escape", "tab", "enter", "=15 3/4", "enter");
    expect(bench.model.bench.car.form.rods).toEqual({ left: "cut", right: "fit" });
    bench.press("tab", "tab", "enter", "=14", "enter", "enter");
    expect(bench.model.bench.car.form.rods).toEqual({ left: "cut", right: "cut" });
    bench.press("u", "u");
    expect(bench.model.bench.car.text).toBe(before);
    // A change by so much moves each from where it is: nothing is lost by it.
    bench.press("enter", "=+1/16", "enter");
    expect(bench.model.bench.car.text).not.toBe(before);
  });

  it("shows no length to be cut coarser than 1/32, however lengths are shown", () => {
    const bench = offsetRack().press("f");
    expect(bench.text()).toMatch(/RODS +15 25\/32 in \(15\.782\), cut to fit +10 13\/16 in \(10\.797\)/);
    expect(bench.text()).toMatch(/Tie-rod +length +L 15 25\/32 +R 10 13\/16/);
    expect(bench.text()).toContain("toes in 1/4 in");
  });

  it("lets no key change the car while another one is being read", () => {
    const bench = offsetRack()
      .press("o")
      .send({
        is: "listed",
        choices: [{ source: { from: "preset", id: "rack-ahead" }, name: "rack-ahead", about: "" }],
      });
    bench.press("enter");
    expect(bench.effects.at(-1)).toMatchObject({ do: "open" });
    const { text } = bench.model.bench.car;
    bench.press("right", "+", "c", "enter", "=5", "enter");
    expect(bench.model.bench.car.text).toBe(text);
    expect(bench.text()).toContain("keys wait");
    bench.send({ is: "failed", words: "It cannot be opened." });
    expect(bench.press("right").model.bench.car.text).not.toBe(text);
  });

  it("keeps the list where it is when a banner comes", () => {
    const bench = offsetRack();
    const row = () => bench.lines().findIndex((line) => line.includes("ADJUST both sides"));
    const at = row();
    bench.press("enter", "=2", "enter");
    expect(bench.text()).toMatch(/STEERS BACKWARDS|DOES NOT REACH/);
    expect(row()).toBe(at);
  });

  it("pages the help by Space", () => {
    const bench = offsetRack().press("?");
    const first = bench.lines()[1];
    expect(bench.press("space").lines()[1]).not.toBe(first);
    expect(bench.model.focus).toMatchObject({ on: "help", top: 21 });
  });

  it("says a save that failed, and keeps the name to be mended", () => {
    const bench = offsetRack()
      .press("S", "=/nowhere/a.yaml", "enter")
      .send({ is: "failed", words: "It cannot be saved." });
    expect(bench.model.focus).toMatchObject({ on: "saveAs", complaint: "It cannot be saved." });
  });
});

describe("recovery", () => {
  const offer = (text: string) => ({
    path: "/j",
    steps: [{ text, what: "tab out" }],
    what: "1 change",
    stale: false,
    base: null,
  });

  it("offers the unsaved changes, takes them back only when told to, and lets them be undone", () => {
    const car = opened("widened-offset-rack");
    const changed = new Bench(car).press("right").model.bench.car.text;
    const bench = new Bench({ ...car, offers: [offer(changed)] });
    expect(bench.model.bench.car.text).toBe(car.car.text);
    bench.press("r");
    expect(bench.model.bench.car.text).toBe(changed);
    expect(bench.effects).toEqual([expect.objectContaining({ do: "journal", settles: offer(changed) })]);
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(car.car.text);
  });

  it("says how many were found, shows each, and asks about the others when one is thrown away", () => {
    const car = opened("widened-offset-rack");
    const [newer, older] = ["newer", "older"].map((what) => ({
      ...offer(`${car.car.text}# ${what}\n`),
      path: what,
      what,
    }));
    if (newer === undefined || older === undefined) throw new Error("no offers");
    const bench = new Bench({ ...car, offers: [newer, older] });
    expect(bench.text()).toContain("found (1 of 2; n shows the next): newer.");
    expect(bench.press("n").text()).toContain("found (2 of 2; n shows the next): older.");
    bench.press("d");
    expect(bench.effects).toEqual([{ do: "discard", offer: older }]);
    expect(bench.text()).toContain("were found: newer.");
    bench.press("r");
    expect(bench.model.bench.car.text).toBe(newer.steps[0]?.text);
  });

  it("says all of it at 80 by 24, what is replaced too, where the file is newer than the changes", () => {
    const stale = {
      ...offer("x"),
      stale: true,
      base: "y",
      what: '12 changes, 15 minutes ago, the last "Tie-rod tab, ahead: set to 1"',
    };
    const bench = new Bench({ ...opened("widened-offset-rack"), offers: [stale] });
    expect(bench.lines().length).toBe(24);
    const said = bench.text().replace(/\s+/g, " ");
    expect(said).toContain("in the place of the newer one that is shown");
    expect(said).toContain("u takes the restoring back.");
    expect(said).toContain("r restore them d throw them away");
  });

  it("leaves them for next time on Escape", () => {
    const car = opened("widened-offset-rack");
    const bench = new Bench({ ...car, offers: [offer(`${car.car.text}\n`)] }).press("escape");
    expect(bench.effects).toEqual([]);
    expect(bench.model.focus.on).toBe("bench");
  });
});

describe("a front end that does not go together", () => {
  it("is taken, said with its gap, keeps every key working, and undo leads back", () => {
    const bench = offsetRack().press("c", "down", "down", "down", "tab", "enter", "=30", "enter");
    expect("refused" in bench.model.bench.study).toBe(true);
    expect(bench.text().replace(/\s+/g, " ")).toMatch(/left tie rod is [\d.]+ in too long/);
    expect(bench.text()).not.toContain("NaN");
    for (const chord of ["j", "l", "J", "i", "k", "h", "e", "m", "f", "up", "down", "?", "escape", "o", "escape"]) {
      bench.press(chord);
      expect(bench.text()).not.toContain("NaN");
    }
    bench.press("u");
    expect("refused" in bench.model.bench.study).toBe(false);
  });
});
