import { describe, expect, it } from "vitest";
import { tapeRows } from "../../src/screen/tape.ts";
import type { Effect } from "../../src/screen/turn.ts";
import { readings } from "../../src/vehicle/from-tape/readings.ts";
import { blankSheet, readSheet } from "../../src/vehicle/from-tape/sheet.ts";
import { kingPinSketch } from "../../src/vehicle/from-tape/sketch.ts";
import { carFromTape } from "../../src/vehicle/from-tape/text.ts";
import { Bench, opened } from "./support/bench.tsx";

/** A front end as a builder reads it: the widened car with the offset rack, rods 15.782 and 10.797 in. */
const page1: Readonly<Record<string, string>> = {
  file: "yard-rail",
  units: "in",
  wheelbase: "68",
  "hub-height": "10 3/4",
  "over-tyres": "56",
  "tyre-width": "7",
  "king-pins-apart": "42 1/2",
  "tab-back": "4 1/2",
  "tab-in": "1 1/2",
  "tab-height": "8 1/2",
  "left-eye": "4",
  "right-eye": "9",
  "eye-height": "8 5/8",
  "eye-behind": "1",
  stroke: "4",
  turns: "2 1/2",
  "rack-goes": "right",
  "left-stop": "2",
  "left-rod": "15 3/4",
  "right-rod": "10 13/16",
  caster: "1/4, 2 over 14",
  toe: "1/8 total",
};

const page2: Readonly<Record<string, string>> = {
  "lower-pivot-out": "6",
  "lower-pivot-height": "7 1/2",
  "lower-joint-out": "21 1/2",
  "lower-joint-height": "7",
  "upper-pivot-out": "8 1/2",
  "upper-pivot-height": "13 1/4",
  "upper-joint-out": "20 3/8",
  "upper-joint-height": "14",
  bump: "3",
  droop: "3",
};

/** The form on a bench, nothing kept of an earlier time. */
function form(columns = 80, rows = 24): Bench {
  return new Bench(opened("balanced-two-seater"), columns, rows).press("T").send({ is: "readings", kept: null });
}

const rowOf = ({ model: { focus } }: Bench) => (focus.on === "tape" ? tapeRows[focus.cursor] : undefined);

/** Every row that is asked for down to a page's last, answered as a builder types it: the value, then Enter. */
function fill(bench: Bench, answers: Readonly<Record<string, string>>, page: 1 | 2 = 1): Bench {
  for (const { key, is, page: own } of tapeRows) {
    if (own > page || is === "make" || is === "survey") continue;
    if (rowOf(bench)?.key === "make-1") bench.press("down");
    if (rowOf(bench)?.key !== key) continue;
    const value = answers[key];
    bench.press(...(value === undefined ? ["enter"] : [`=${value}`, "enter"]));
  }
  return bench;
}

const flat = (bench: Bench) => bench.text().replace(/\s+/g, " ");

/** What the command line makes of a sheet with the same readings. */
function byCommand(answers: Readonly<Record<string, string>>): string {
  const sheet = readings.reduce(
    (text, { key }) => (answers[key] === undefined ? text : text.replace(`\n${key}:\n`, `\n${key}: ${answers[key]}\n`)),
    blankSheet("in").replace("title:", `title: ${answers.file}`),
  );
  const tape = readSheet(sheet);
  if ("complaints" in tape) throw new Error(JSON.stringify(tape.complaints));
  return carFromTape(tape).text;
}

function begun(bench: Bench): Effect & { do: "begin" } {
  const effect = bench.effects.at(-1);
  if (effect?.do !== "begin") throw new Error(`no car was made: ${effect?.do}`);
  return effect;
}

describe("a new car from a tape, as a form", () => {
  it("is one key away, and on the page for opening a car", () => {
    expect(new Bench(opened("balanced-two-seater")).press("T").effects).toEqual([{ do: "readings" }]);
    const open = new Bench(opened("balanced-two-seater")).press("o").send({ is: "listed", choices: [] });
    expect(open.text()).toContain("T new from a tape");
    expect(open.press("T").effects.at(-1)).toEqual({ do: "readings" });
  });

  it("asks for every reading once, and fits the window on every row", () => {
    for (const { key } of readings) expect(tapeRows.filter((row) => row.key === key)).toHaveLength(1);
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
    ] as const) {
      const bench = fill(form(columns, rows), page1);
      bench.press("pageUp");
      for (const row of tapeRows) {
        const lines = bench.lines();
        expect(lines.length, row.key).toBeLessThanOrEqual(rows);
        for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(columns);
        expect(bench.text(), row.key).toContain(`> ${row.name}`);
        if (row.is === "reading") expect(flat(bench), row.key).toContain(row.ask.split(" (")[0]);
        bench.press("down");
      }
    }
  });

  it("makes of page 1 the car that the command makes of the same readings", () => {
    const bench = fill(form(), page1);
    expect(flat(bench)).toContain("Assumed, and marked ~ until you change it: king-pin inclination 9°");
    expect(flat(bench)).toContain("on nine cars of ten");
    expect(flat(bench)).toContain("Bump steer stays blank");
    const { path, text } = begun(bench.press("enter"));
    expect(path).toMatch(/yard-rail\.yaml$/);
    expect(text).toBe(byCommand(page1));
  });

  it("makes of both pages the same, and then says nothing of bump", () => {
    const bench = fill(form(), { ...page1, ...page2 }, 2);
    expect(flat(bench)).not.toContain("Bump steer stays blank");
    expect(begun(bench.press("enter")).text).toBe(byCommand({ ...page1, ...page2 }));
  });

  it("passes over the shock where bump and droop were read, says so, and still takes it where it is typed", () => {
    const bench = fill(form(), { ...page1, ...page2, droop: "" }, 2);
    const toDroop = (of: Bench) => {
      while (rowOf(of)?.key !== "droop") of.press("up");
      return of;
    };
    expect(toDroop(bench).text()).toMatch(/Shock, fully closed .*may be left out/);
    expect(rowOf(bench.press("enter"))?.key).toBe("shock-closed");
    toDroop(bench).press("=3", "enter");
    expect(rowOf(bench)?.key).toBe("make-2");
    expect(bench.text()).toMatch(/Shock's foot is on .*not needed/);
    while (rowOf(bench)?.key !== "shock-closed") bench.press("up");
    bench.press("=14", "enter");
    expect(bench.model.tape).toMatchObject({ "shock-closed": "14" });
    expect(rowOf(bench)?.key).toBe("make-2");
    // Which rods to take is no question until both were taped.
    const { "right-rod": _, ...oneRod } = page1;
    const rods = fill(form(), oneRod).press("pageUp");
    while (rowOf(rods)?.key !== "right-rod") rods.press("down");
    expect(rods.text()).toMatch(/Rods to fit, or as cut .*needs both rods taped/);
    expect(rowOf(rods.press("enter"))?.key).toBe("inclination");
  });

  it("reads millimetres where the tape does", () => {
    const bench = form().press("down", "=mm", "enter", "=1727.2");
    expect(flat(bench)).toContain("= 1727.2 mm");
    expect(bench.model.tape).toMatchObject({ units: "mm", wheelbase: "1727.2" });
  });

  it("shows what a pair of readings is worth, and stays at one that is none", () => {
    const at = (key: string) => {
      const bench = fill(form(), page1).press("pageUp");
      for (const row of tapeRows)
        if (row.key === key) break;
        else bench.press("down");
      return bench;
    };
    // The tangent of 7.1250 degrees, by a table, is 0.125 = 1.75 / 14; 1/8 in total over two 21 1/2 in tyres is 0.1666 a wheel.
    expect(flat(at("caster"))).toContain("= 7.13°");
    expect(flat(at("toe"))).toContain("= 0.17°");
    const bench = at("stroke").press("=long", "enter");
    expect(bench.text()).toContain("> Rack, stop to stop");
    expect(flat(bench)).toContain('"long" is not');
    expect(bench.press("=4", "enter").text()).toContain("> Wheel's turns");
  });

  it("says where a rod disagrees with the other readings, by how much, as soon as it is typed", () => {
    const right = fill(form(), page1);
    expect(flat(right)).toContain("The readings agree: they make rods of 15 25/32 in left and 10 13/16 in right.");
    const wrong = fill(form(), { ...page1, "right-rod": "11 1/2" });
    expect(flat(wrong)).toContain("The right rod was taped 11 1/2 in, and the other readings make it 10 13/16 in");
    expect(flat(wrong)).toContain("11/16 in longer");
  });

  it("goes to what is still missing, and to the file's name where it cannot be written", () => {
    const { stroke: _, ...without } = page1;
    const bench = fill(form(), without);
    expect(flat(bench)).toContain("Still to do: Rack, stop to stop: This one is needed.");
    expect(bench.press("enter").text()).toContain("> Rack, stop to stop");
    const made = fill(form(), page1).press("enter");
    made.send({ is: "failed", words: "/x/yard-rail.yaml cannot be made: there is a file of that name already." });
    expect(made.text()).toContain("> Name of the new car's file");
    expect(flat(made)).toContain("there is a file of that name already");
    expect(made.model.tape).toMatchObject(page1);
  });

  it("makes a car whose assumed angles are marked wherever they are shown", () => {
    const { text } = begun(fill(form(), { ...page1, caster: "" }).press("enter"));
    const bench = new Bench(opened("balanced-two-seater", () => text));
    // Toe was read, camber and caster were not.
    expect(bench.text()).toMatch(/Camber +L ~0\.00° +R ~0\.00°/);
    expect(bench.text()).not.toMatch(/Toe +L ~/);
    expect(bench.text()).toContain("BUMP        blank until arms and travel are measured");
  });

  it("asks before unsaved changes of the car on the bench are lost, and opens the new one", () => {
    const clean = fill(form(), page1).press("enter").send({ is: "begun", path: "/x/yard-rail.yaml" });
    const open = { do: "open", source: { from: "file", path: "/x/yard-rail.yaml" } };
    expect(clean.effects.at(-1)).toEqual(open);
    const changed = new Bench(opened("balanced-two-seater")).press("right", "T").send({ is: "readings", kept: null });
    const asked = fill(changed, page1).press("enter").send({ is: "begun", path: "/x/yard-rail.yaml" });
    expect(flat(asked)).toContain("This car has changes that are not saved.");
    expect(asked.effects.at(-1)?.do).toBe("begin");
    const { text } = asked.model.bench.car;
    expect(asked.press("escape").model.bench.car.text).toBe(text);
  });

  it("says at once that a file has the name already, while that name stands there", () => {
    const bench = form().press("=yard-rail", "enter");
    const look = bench.effects.at(-1);
    if (look?.do !== "lookFor") throw new Error(`nothing was looked for: ${look?.do}`);
    expect(look.path).toMatch(/yard-rail\.yaml$/);
    bench.send({ is: "taken", path: look.path });
    expect(bench.text()).toContain("> Name of the new car's file");
    expect(flat(bench)).toContain("already: type another name, such as yard-rail-2.");
    bench.press("=yard-rail-2", "enter").send({ is: "taken", path: look.path });
    expect(bench.text()).not.toContain("> Name of the new car's file");
  });

  it("keeps the readings of a car that was made, to be corrected under another name", () => {
    const made = fill(form(), page1).press("enter").send({ is: "begun", path: "/x/yard-rail.yaml" });
    expect(made.effects.some((each) => each.do === "keepReadings" && each.answers === null)).toBe(false);
    const again = made.send({ is: "opened", opened: opened("balanced-two-seater") }).press("T");
    expect(again.model.tape).toMatchObject(page1);
    expect(flat(again)).toContain("Ctrl-R all of them");
    expect(again.effects.at(-1)).toMatchObject({ do: "lookFor" });
  });

  it("goes to the line that makes the car by End, and offers the page that there is", () => {
    const bench = form();
    expect(bench.press("end").text()).toContain("> MAKE THE CAR; page 2 can wait");
    expect(bench.lines().at(-1)).toContain("PgDn page 2");
    bench.press("pageDown");
    expect(bench.lines().at(-1)).not.toContain("PgDn page 2");
    expect(bench.lines().at(-1)).toContain("PgUp page 1");
    bench.press("end");
    expect(tapeRows[bench.model.focus.on === "tape" ? bench.model.focus.cursor : -1]?.key).toBe("make-2");
  });

  it("shows the king-pin line where there is room", () => {
    const at = (rows: number) => {
      const bench = form(80, rows);
      for (const row of tapeRows)
        if (row.key === "tab-back") break;
        else bench.press("down");
      return bench.text();
    };
    expect(at(24)).not.toContain("upper joint");
    for (const line of kingPinSketch) expect(at(40)).toContain(line);
  });

  it("tells of a shock that stands elsewhere than its ratio says, and not of the ratio where it has a place", () => {
    const shock = {
      ...{
        bump: "",
        droop: "",
        "shock-closed": "13 1/2",
        "shock-open": "19 1/2",
        "shock-now": "17",
        "shock-ratio": "0.9",
      },
      ...{ "shock-top-ahead": "1", "shock-top-out": "11", "shock-top-height": "24", "shock-on": "lower arm" },
      ...{ "shock-foot-ahead": "1/2", "shock-foot-out": "17", "shock-foot-height": "8 1/8" },
    };
    const said = flat(fill(form(80, 40), { ...page1, ...page2, ...shock }, 2));
    expect(said).toContain('"Shock\'s way for 1 of wheel" was taped 0.9, and where the shock stands makes it');
    expect(said).not.toContain("by the shock's ratio");
    expect(said).toContain("how far ahead the arms' pivots are");
  });

  it("keeps what was typed, on disk too, until it is thrown away", () => {
    const bench = form().press("=yard-rail", "enter", "escape");
    expect(bench.effects.at(-1)).toEqual({ do: "keepReadings", answers: { units: "in", file: "yard-rail" } });
    expect(flat(bench)).toContain("T goes on with them");
    expect(bench.press("T").text()).toContain("yard-rail");
    const later = new Bench(opened("balanced-two-seater"));
    later.press("T").send({ is: "readings", kept: page1 });
    expect(later.text()).toContain("yard-rail");
    expect(flat(later)).toContain("kept from last time");
    later.press("ctrl+r");
    expect(later.effects.at(-1)).toEqual({ do: "keepReadings", answers: null });
    expect(later.model.tape).toEqual({ units: "in" });
  });
});
