import { describe, expect, it } from "vitest";
import { hashOf } from "../../src/files/hash.ts";
import { loadSheet } from "../../src/files/sheets.ts";
import { settledOf } from "../../src/screen/sheetState.ts";
import { linesOf } from "../../src/screen/survey.ts";
import type { Effect, KeptSheet } from "../../src/screen/turn.ts";
import { settleSheet } from "../../src/solve/survey/settled.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { blankSurvey } from "../../src/vehicle/survey/blank.ts";
import { planOf } from "../../src/vehicle/survey/plan.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
import { Bench, opened } from "./support/bench.tsx";

const loaded = loadSheet("sheets", "donor-front");
const donor = "text" in loaded ? loaded.text : "";
const wrong = "left lower-arm.joint to rear";

const kept = (text: string, more: Partial<KeptSheet> = {}): KeptSheet => ({
  text,
  file: "",
  car: "",
  known: null,
  isSafe: false,
  ...more,
});

/** The form on a bench, by way of page 3 of the short one, with a sheet that was kept, if any. */
function form(from: KeptSheet | null = null, columns = 80, rows = 24): Bench {
  const bench = new Bench(opened("balanced-two-seater"), columns, rows);
  bench.press("T").send({ is: "readings", kept: null }).press("pageDown", "pageDown");
  expect(bench.effects.at(-1)).toEqual({ do: "keptSheet" });
  return bench.send({ is: "keptSheet", kept: from });
}

/** What is asked to be brought together comes in. */
function settled(bench: Bench): Bench {
  const asked = bench.effects.filter((each): each is Effect & { do: "settle" } => each.do === "settle").at(-1);
  if (asked === undefined) throw new Error("nothing was to be brought together");
  return bench.send({ is: "settled", answer: { text: asked.text, outcome: settleSheet(asked.text) } });
}

function to(bench: Bench, name: string): Bench {
  bench.press("home");
  const { lines = [] } = linesOf(bench.model.sheet?.text ?? "") ?? {};
  const at = lines.findIndex((line) => line.name === name);
  if (at < 0) throw new Error(`no line is called ${name}`);
  return bench.press(...Array.from({ length: at }, () => "down"));
}

const flat = (bench: Bench) => bench.text().replace(/\s+/g, " ");
const lineOf = (bench: Bench, words: string) => bench.lines().find((line) => line.includes(words)) ?? "";

describe("readings between points, as a form", () => {
  it.each(linkages.map(({ name }) => name))("asks for what the blank list of %s asks for, in its order", (linkage) => {
    const found = { linkage, mechanism: "rack" } as const;
    const lines = linesOf(blankSurvey(found, "in"))?.lines ?? [];
    const asked = lines.flatMap((line) => (line.is === "reading" ? [line.path[1]] : []));
    expect(asked).toEqual(planOf(found).map(({ names }) => names.join(" to ")));
  });

  it("fits 80 by 24 and 60 by 20 on every line, the line under the cursor seen", () => {
    for (const [columns, rows] of [
      [80, 24],
      [60, 20],
      [120, 40],
    ] as const) {
      const bench = settled(form(kept(donor)))
        .send({ is: "resized", columns, rows })
        .press("home");
      const { lines = [] } = linesOf(donor) ?? {};
      for (const line of lines) {
        const shown = bench.lines();
        expect(shown.length, line.name).toBeLessThanOrEqual(rows);
        for (const each of shown) expect(each.length, each).toBeLessThanOrEqual(columns);
        const name = columns < 76 && "brief" in line ? line.brief : line.name;
        expect(shown.filter((each) => each.startsWith(`> ${name}`)).length, line.name).toBe(1);
        bench.press("down");
      }
    }
  });

  it("has beside each reading what it is off the others, and a mark on the one that does not fit", () => {
    const bench = settled(form(kept(donor)));
    expect(flat(bench)).toContain("1 DOES NOT FIT (Ctrl-N goes there)");
    bench.press("ctrl+n");
    expect(bench.text()).toContain(`> ${wrong}`);
    // The command says the same of it: 25/32 in long, and 17 29/32 in by the others.
    expect(flat(bench)).toContain(
      "DOES NOT FIT: reads 25/32 in long; measure it again. The others make it 17 29/32 in",
    );
    expect(flat(bench)).toMatch(/left lower-arm\.rear: ahead within 0\.09, out within 0\.07, up within 0\.11 in/);
    // What is typed in its place is held against what the others say at once.
    expect(flat(bench.press("=17 15/16"))).toContain(
      "= 17 15/16 in. The others make it 17 29/32 in, give or take 3/32 in: this is 1/32 in long.",
    );
    bench.press("=18 11/16", "down");
    expect(lineOf(bench, wrong)).toMatch(/18 11\/16 +X \+25\/32/);
    expect(lineOf(bench, "left upper-arm.joint to front")).toMatch(/13 13\/16 +-1\/16/);
    // In a narrow window the same, the sides by their letters.
    bench.send({ is: "resized", columns: 60, rows: 20 });
    expect(lineOf(bench, "L lower-arm.joint to rear")).toMatch(/18 11\/16 X \+25\/32/);
  });

  it("marks what it knows as old until the new reading is brought together, and then all fit", () => {
    const bench = settled(form(kept(donor))).press("ctrl+n", "=17 15/16", "enter");
    expect(bench.effects.slice(-2)).toMatchObject([{ do: "keepSheet" }, { do: "settle" }]);
    expect(flat(bench)).toContain("OLD, being brought together anew: 121 readings");
    expect(lineOf(bench, "left upper-arm.joint to front")).toMatch(/13 13\/16 +\(-1\/16\)/);
    settled(bench);
    expect(bench.text()).not.toContain("OLD");
    expect(flat(bench)).toContain("121 readings of 20 points; none stands out.");
    // A late answer to what was asked before says nothing new; while nothing newer is known, it does.
    const late = { is: "settled", answer: { text: donor, outcome: settleSheet(donor) } } as const;
    expect(flat(bench.send(late))).toContain("none stands out.");
    bench.press("=16 1/16", "enter").send(late);
    expect(flat(bench)).toContain("OLD, being brought together anew: 121 readings of 20 points; 1 DOES NOT FIT");
  });

  it("changes no character of a sheet but those of the line that is typed on", () => {
    const bench = to(form(kept(donor)), "height of left eye").press("=9 3/8, 9 7/16", "enter");
    const lines = (bench.model.sheet?.text ?? "").split("\n");
    const others = donor.split("\n").flatMap((line, i) => (line === lines[i] ? [] : [[line, lines[i]]]));
    expect(others).toEqual([["  left eye: 9 7/16", "  left eye: [9 3/8, 9 7/16]"]]);
    to(bench, "height of left eye");
    expect(lineOf(bench, "> height of left eye")).toContain("9 3/8, 9 7/16");
    bench.press("ctrl+u", "enter");
    expect(bench.model.sheet?.text).toContain("\n  left eye:\n");
    const survey = readSurvey(bench.model.sheet?.text ?? "");
    expect("complaints" in survey ? 0 : survey.readings.length).toBe(120);
  });

  it("stays at a reading that is none, says why, and says what one is read as", () => {
    const bench = to(form(), "height of left eye").press("=81/4");
    expect(flat(bench)).toContain('"81/4" is not clear: write "8 1/4"');
    expect(bench.press("enter").text()).toContain("> height of left eye");
    expect(bench.press("up").text()).toContain("> height of left eye");
    bench.press("=8 1/4 +- 1/4");
    expect(flat(bench)).toContain("= 8 1/4 in.");
    expect(bench.press("enter").text()).toContain("> height of right eye");
  });

  it("tells what is not settled, and puts the reading that settles most on the sheet", () => {
    const bench = form();
    for (const name of ["left", "right"])
      for (const [what, typed] of [
        ["height of", "7"],
        ["", "20"],
      ] as const)
        to(bench, what === "" ? `${name} eye, out` : `${what} ${name} eye`).press(`=${typed}`, "enter");
    settled(bench);
    expect(flat(bench)).toMatch(/8 readings of 4 points, \d not settled \(Ctrl-P lists them\), 16 not read/);
    const next = settledOf(bench.model.sheet as never)?.next[0];
    expect(next?.settles).toBe(true);
    bench.press("ctrl+n");
    expect(bench.text()).toMatch(/> (left|right) (eye|floor mark)/);
    // A distance that is on no list gets a line of its own.
    to(bench, "Another distance: point to point").press("=left eye to right floor mark", "enter");
    expect(bench.text()).toContain("> left eye to right floor mark");
    expect(bench.model.sheet?.text).toContain("\n  left eye to right floor mark:\n");
    to(bench, "Another distance: point to point").press("=left eye to nowhere", "enter");
    expect(flat(bench)).toContain('No point is called "nowhere"');
  });

  it("has every point with how near it is known on a page of its own, and leads back", () => {
    const bench = settled(form(kept(donor), 80, 40)).press("ctrl+n", "ctrl+p");
    expect(bench.text()).toContain("left lower-arm.rear    -5.54  0.09   6.11  0.07   7.96  0.11");
    expect(bench.press("escape").text()).toContain(`> ${wrong}`);
    bench.send({ is: "resized", columns: 60, rows: 20 }).press("ctrl+p", "space", "space", "space");
    for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(60);
    expect(lineOf(bench, "R floor mark")).toMatch(/0\.04 +0\.10 +15\.39/);
    expect(form().press("ctrl+p").text()).toContain("There is no point yet");
  });

  it("makes the car that the command makes, with what was set aside said in it", () => {
    const bench = settled(form(kept(donor))).press("end", "down", "down", "=donor-car", "enter");
    expect(flat(bench)).toContain("1 that does not fit left out");
    const made = bench.press("enter").effects.at(-1);
    if (made?.do !== "begin") throw new Error(`no car was made: ${made?.do}`);
    expect(made.path).toMatch(/donor-car\.yaml$/);
    expect(made.text).toContain("# Set aside: left lower-arm.joint to left lower-arm.rear");
    expect("complaints" in readCar(made.text)).toBe(false);
    bench.send({ is: "begun", path: made.path });
    expect(bench.effects.at(-1)).toEqual({ do: "open", source: { from: "file", path: made.path } });
    // The sheet stays, for the next reading.
    bench.send({ is: "opened", opened: opened("balanced-two-seater") });
    expect(bench.model.sheet?.text).toBe(donor);
  });

  it("keeps the caution beside the numbers of a car that a reading did not fit, until its comment is gone", () => {
    const bench = settled(form(kept(donor, { car: "donor-car" }))).press("end", "down", "down", "down", "enter");
    const made = bench.effects.at(-1);
    if (made?.do !== "begin") throw new Error(`no car was made: ${made?.do}`);
    const caution = `Look at the file, line 2: a reading that did not fit was left out: left lower-arm.joint to left lower-arm.rear reads 25/32 in long; measure it again`;
    const on = new Bench(opened("balanced-two-seater", () => made.text));
    for (const press of [[], ["2"], ["6", "down"], ["1", "+"]]) expect(flat(on.press(...press))).toContain(caution);
    for (const line of on.lines()) expect(line.length, line).toBeLessThanOrEqual(80);
    const [first = "", aside = "", ...rest] = made.text.split("\n");
    expect(aside).toContain("Set aside");
    const measured = new Bench(opened("balanced-two-seater", () => [first, ...rest].join("\n")));
    expect(flat(measured)).not.toContain("did not fit");
    // Only at the top of the file: of a value's own comment nothing is known.
    const below = new Bench(opened("balanced-two-seater", () => [first, ...rest, aside, ""].join("\n")));
    expect(below.model.bench.car.warnings).toEqual([]);
  });

  it("makes no car of what is old, and writes over no file: the complaint stands at its name", () => {
    const bench = settled(form(kept(donor, { car: "donor-car" }))).press("ctrl+n", "=18", "enter", "end");
    bench.press("down", "down", "down", "enter");
    expect(flat(bench)).toContain("Enter again in a moment");
    settled(bench).press("enter").send({ is: "failed", words: "/x/donor-car.yaml is there already." });
    expect(bench.text()).toContain("> Name of the new car's file");
    expect(flat(bench)).toContain("is there already.");
    bench.press("end", "down", "enter");
    expect(flat(bench)).toContain("Type a name for the file, such as front-sheet.");
  });

  it("writes the sheet, knows its file from then on, and asks for another name where that is another's", () => {
    const bench = form(kept(donor)).press("end", "=front", "enter", "enter");
    const write = bench.effects.at(-1);
    if (write?.do !== "writeSheet") throw new Error(`nothing was written: ${write?.do}`);
    expect(write).toMatchObject({ text: donor, known: null });
    bench.send({ is: "sheetWritten", path: write.path, text: donor, hash: "abc" });
    expect(flat(bench)).toContain("rackwright tape reads it too");
    expect(bench.press("enter").effects.at(-1)).toMatchObject({ do: "writeSheet", path: write.path, known: "abc" });
    bench.press("up", "=other", "enter", "enter");
    expect(bench.effects.at(-1)).toMatchObject({ do: "writeSheet", known: null });
  });

  it("keeps what was typed with every line that is left, and goes on with it", () => {
    const bench = to(form(), "Title").press("=Yard donor", "escape", "escape");
    expect(bench.effects.at(-2)).toMatchObject({
      do: "keepSheet",
      sheet: { text: expect.stringContaining("Yard donor") },
    });
    expect(flat(bench)).toContain("goes on with them");
    bench.press("T").press("pageDown", "pageDown", "home");
    expect(lineOf(bench, "Title")).toContain("Yard donor");
    expect(flat(settled(form(kept(donor))))).toContain("Ctrl-R throws them away");
  });

  it("is told of on page 1 while readings wait in it, on the bench or kept on disk, and not while nothing is read", () => {
    const bench = form();
    expect(flat(bench.press("escape", "T"))).not.toContain("page 3");
    const read = to(form(), "height of left eye").press("=9 3/8", "enter", "escape", "T");
    // What stands on every list of the floor's two marks is no reading of the builder's.
    expect(flat(read)).toContain("1 reading between points is kept on page 3: PgDn, twice from page 1, goes on");
    const later = new Bench(opened("balanced-two-seater")).press("T").send({ is: "readings", kept: null });
    expect(later.effects).toContainEqual({ do: "countSheet" });
    expect(flat(later.send({ is: "sheetCounted", count: 121 }))).toContain("121 readings between points are kept");
    expect(flat(later.press("escape").send({ is: "sheetCounted", count: 121 }))).not.toContain("kept on page 3");
  });

  it("says that no reading is checked while none is, and of how many that nothing stands out", () => {
    const bench = settled(to(form(), "height of left eye").press("=9 3/8", "enter"));
    expect(flat(bench)).toContain("no reading checks another yet: a wrong one would not show");
    expect(flat(bench)).not.toContain("stands out");
    const known = bench.model.sheet?.settled?.outcome;
    if (known === undefined || known === null || "complaint" in known) throw new Error("nothing came of it");
    expect(known.others.every((each) => each === null)).toBe(true);
  });

  it("throws a sheet away by Ctrl-R, and brings it back by the same key", () => {
    const bench = form(kept(donor)).press("ctrl+r");
    expect(bench.effects.find((each) => each.do === "keepSheet")).toEqual({ do: "keepSheet", sheet: null });
    expect(bench.model.sheet?.text).not.toBe(donor);
    bench.press("ctrl+r");
    expect(bench.model.sheet?.text).toBe(donor);
    expect(bench.effects.filter((each) => each.do === "keepSheet").at(-1)).toMatchObject({ sheet: { text: donor } });
  });

  it("begins with what the short form has of points, and with the front end on the bench where that has none", () => {
    const bench = new Bench(opened("balanced-two-seater")).press("T");
    bench.send({ is: "readings", kept: { units: "in", file: "yard", "hub-height": "10 1/2", "left-eye": "7 about" } });
    bench.press("pageDown", "pageDown").send({ is: "keptSheet", kept: null });
    expect(lineOf(bench, "Title")).toContain("yard");
    expect(bench.model.sheet?.text).toContain('  left wheel.center: "10 1/2"');
    expect(bench.model.sheet?.text).toContain("\n  left eye:\n");
    const strut = new Bench(opened("strut-hatchback-corners")).press("T").send({ is: "readings", kept: null });
    strut.press("pageDown", "pageDown").send({ is: "keptSheet", kept: null });
    expect(lineOf(strut, "Front end")).toContain("strut");
  });

  it("lists another front end while nothing is read, by the first letters of its name, and not after", () => {
    const bench = to(settled(form()), "Front end").press("=tr", "enter");
    // An answer that is on its way is of points that are none of this front end's.
    bench.send({ is: "settled", answer: { text: donor, outcome: settleSheet(donor) } });
    expect(bench.model.sheet?.settled).toBeNull();
    expect(bench.model.sheet?.text).toContain("linkage: trailing-arms");
    to(bench, "height of left eye").press("=9", "enter");
    to(bench, "Front end").press("=strut", "enter");
    expect(flat(bench)).toContain("Ctrl-R begins another");
    expect(flat(bench.press("=cart", "enter"))).toContain('Found "cart", expected double-arm or trailing-arms');
    expect(flat(bench.press("ctrl+u", "enter"))).toContain('Found "", expected double-arm');
  });

  it("names the sheet on the first line, not the car on the bench, and whether it stands in its file", () => {
    const head = (bench: Bench) => bench.text().split("\n")[0] ?? "";
    expect(head(form(kept(donor)))).toMatch(/^ Donor's front end.* a sheet, in no file yet/);
    const known = { path: "/yard/donor.yaml", hash: hashOf(donor) };
    const bench = form(kept(donor, { known, file: known.path }));
    expect(head(bench)).toMatch(/^ Donor's front end.* sheet donor\.yaml, written/);
    to(bench, "Title").press("=Other", "down");
    expect(head(bench)).toMatch(/^ Other +sheet donor\.yaml, NOT WRITTEN/);
    expect(head(bench.press("escape"))).toContain("Balanced two-seater");
  });

  it("takes a sheet from the list of what can be opened, but not over readings that stand in no file", () => {
    const choices = [{ name: "donor-front", about: "", sheet: { from: "example", name: "donor-front" } as const }];
    const list = () =>
      new Bench(opened("balanced-two-seater")).press("o").send({ is: "listed", choices }).press("enter");
    expect(list().effects.at(-1)).toEqual({ do: "openSheet", source: choices[0]?.sheet });
    const open = list().send({ is: "sheetOpened", opened: kept(donor, { isSafe: true }), kept: null });
    expect(flat(settled(open))).toContain("121 readings of 20 points");
    const other = donor.replace("title: Donor's", "title: Another");
    const held = list().send({ is: "sheetOpened", opened: kept(donor, { isSafe: true }), kept: kept(other) });
    expect(held.model.sheet?.text).toBe(other);
    expect(flat(held)).toContain("Not opened: the readings of last time are back, and stand in no file yet.");
    expect(flat(held)).toContain("then open Donor's front end");
    // After a crash the same sheet is asked for, and what was typed into it is back.
    const typed = `${donor}# typed since\n`;
    const again = list().send({ is: "sheetOpened", opened: kept(donor, { isSafe: true }), kept: kept(typed) });
    expect(again.model.sheet?.text).toBe(typed);
    expect(flat(again)).not.toContain("Not opened");
    expect(flat(again)).toContain("Your readings of last time are back: Donor's front end");
    const safe = list().send({ is: "sheetOpened", opened: kept(donor), kept: kept(other, { isSafe: true }) });
    expect(safe.model.sheet?.text).toBe(donor);
    const failed = list().send({ is: "failed", words: "donor-front: it cannot be read." });
    expect(flat(failed)).toContain("it cannot be read");
    expect(failed.model.focus.on).toBe("bench");
  });
});
