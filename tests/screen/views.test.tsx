import { describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { figures } from "../../src/measures/figures.ts";
import { pointsOf } from "../../src/measures/points.ts";
import { greeted } from "../../src/screen/guide.ts";
import type { Model } from "../../src/screen/model.ts";
import type { Effect } from "../../src/screen/turn.ts";
import { update } from "../../src/screen/update.ts";
import { helpLines } from "../../src/screen/view/helpText.ts";
import { wholeSentences } from "../../src/screen/view/wrap.ts";
import { views } from "../../src/screen/views/views.ts";
import { cellsOf } from "../../src/terminal/cells.ts";
import { labelsOf } from "../../src/vehicle/labels.ts";
import { notesOf } from "../../src/vehicle/notes.ts";
import { Bench, opened } from "./support/bench.tsx";

const offsetRack = (columns = 80, rows = 24) => new Bench(opened("widened-offset-rack"), columns, rows);

/** Does the long work that was asked for last, in pieces of so many. */
function work(bench: Bench, budget = 100_000): Bench {
  const asked = bench.effects.filter((each): each is Effect & { do: "work" } => each.do === "work").at(-1);
  if (asked === undefined) throw new Error("no work was asked for");
  const { job } = asked;
  const done = job.step(budget);
  return bench.send({ is: "worked", key: asked.key, progress: job.progress(), done, result: job.best() });
}

describe("every view", () => {
  it.each(views.map(({ name }) => name))(
    "%s fits at 80 by 24 and 120 by 40, with the five numbers and its tab",
    (name) => {
      const key = views.find((view) => view.name === name)?.key ?? "";
      for (const [columns, rows] of [
        [80, 24],
        [120, 40],
      ] as const)
        for (const preset of presetNames()) {
          const bench = new Bench(opened(preset), columns, rows).press(key);
          for (const keys of [[], ["space"], ["J", "K"], ["down", "down", "right", "b", "+"]]) {
            const lines = bench.press(...keys).lines();
            expect(lines.length, preset).toBe(rows);
            for (const line of lines) {
              expect(line.length, line).toBeLessThanOrEqual(columns);
              expect(line, preset).not.toContain("NaN");
              expect(line, preset).not.toContain("undefined");
            }
            const text = lines.join("\n");
            for (const label of ["LOCK", "ACKERMANN", "BUMP", "DEAD POINT", "RODS"])
              expect(text, preset).toContain(label);
            expect(text).toContain(`[${key} ${name}]`);
          }
        }
    },
    60_000,
  );

  it.each(views.map(({ name, key }) => ({ name, key })))("$name is the same in ASCII, column for column", ({ key }) => {
    const frame = offsetRack().press(key).text();
    const size = { columns: 80, rows: 24 };
    const unicode = cellsOf(frame, size, { color: "none", unicode: true });
    const ascii = cellsOf(frame, size, { color: "none", unicode: false });
    ascii.glyphs.forEach((glyph, at) => {
      expect(glyph).toMatch(/^[ -~]$/);
      const other = unicode.glyphs[at] ?? "";
      if (/^[ -~]$/.test(other)) expect(glyph).toBe(other);
    });
  });

  it("survives a front end that does not go together", () => {
    const bench = offsetRack().press("c", "down", "down", "down", "enter", "=4", "enter", "enter");
    expect("refused" in bench.model.bench.study).toBe(true);
    for (const { key, name } of views) {
      const text = bench.press(key).text().replace(/\s+/g, " ");
      expect(text, name).toContain("DOES NOT GO TOGETHER");
      expect(text, name).toContain("u takes the last change back.");
      expect(text, name).toContain("c cuts the rods to fit");
      if (["Adjust", "Car"].includes(name)) continue;
      expect(text, name).toContain("EMPTY UNTIL IT GOES TOGETHER");
      expect(text, name).not.toContain("t take it");
    }
    bench.press("c");
    expect("refused" in bench.model.bench.study).toBe(false);
  });
});

describe("the tables", () => {
  it("explain the number under the cursor with its sign, and their columns line up", () => {
    const bench = offsetRack().press("2", "right", "right", "right");
    expect(bench.text().replace(/\s+/g, " ")).toContain(
      "Rack 2 in right of its middle: inner wheel's turn 31.82° (toward the turn positive).",
    );
    expect(bench.text()).toMatch(/^> +-2 +31\.7 +25\.0 +\[31\.8\] +24\.9 +34\.0 +94 +76 +167/m);
    const lines = bench.lines().filter((line) => /^[> ] +-?\d/.test(line));
    expect(new Set(lines.map((line) => line.trimEnd().length)).size).toBe(1);
  });

  it("tell which lock turns further, for inners, outers and circles", () => {
    const text = offsetRack().press("2").text();
    expect(text).toMatch(/inner locks .*left 2\.1° short of right/);
    expect(text).toMatch(/outer locks .*right 0\.1° short of left/);
    expect(text).toMatch(/circles .*right 4 in tighter/);
  });

  it("leave a roll centre out whose lines meet far aside, and say so; call a toe change so, with the toe it makes", () => {
    const bench = offsetRack().press("3");
    expect(bench.text()).toMatch(/toe L° toe R°.*\n.*change change/);
    const told = () => bench.text().replace(/\s+/g, " ");
    expect(bench.press("right").text()).toMatch(/^>.* \[0\.45\]/m);
    expect(told()).toContain("toe change 0.45°, which makes 0.55° toe-in");
    bench.press(...Array<string>(9).fill("right"));
    expect(bench.text()).toMatch(/^> +3 .*\[-\]/m);
    expect(told()).toContain("the lines of both sides are nearly parallel: they meet 155 in to the right");
  });

  it("say whether the toe curve is a slope or a bow, wherever the rack stands", () => {
    const bench = offsetRack().press("3");
    expect(bench.text()).toMatch(/left wheel +toes in 7\/32 in at 3 in droop, a bow/);
    expect(bench.press("L").text()).toMatch(/BUMP TO DROOP, rack 2 in left/);
    // On a rack in the middle that stands an inch too high, the inner ends are too high: a slope, which asks for down.
    const high = opened("widened-offset-rack", (text) =>
      text.replace("offset: -2.5", "offset: 0").replace('"8 5/8"', '"9 5/8"'),
    );
    expect(new Bench(high).press("3").text()).toMatch(/left wheel +toes .*, a slope: inner end down/);
  });

  it("are adjusted from: + and - change what is selected, and the numbers follow", () => {
    const bench = offsetRack().press("2");
    const before = bench.text();
    expect(bench.press("]", "+").text()).not.toBe(before);
    expect(bench.text()).toContain("Tie-rod tab, out 19 13/16 (- + [ ])");
  });
});

describe("the tables' third page", () => {
  const third = (key: string) => offsetRack().press(key, "space", "space");

  it("asks for a pinned car first", () => {
    for (const key of ["2", "3"]) expect(third(key).text()).toContain("No car is pinned. Press b");
  });

  it("shows how much each number changed, place by place: the difference of the two cars' own tables", () => {
    for (const key of ["2", "3"]) {
      const cells = (bench: Bench) =>
        bench
          .lines()
          .filter((line) => /^[> ] +\[?-?\d[\d /]*\]? /.test(line))
          .map((line) => line.slice(12).trim().split(/\s+/));
      const bench = third(key).press("b", "+");
      const now = cells(offsetRack().press("+", key));
      const was = cells(offsetRack().press(key));
      const told = cells(bench);
      expect(told.length).toBe(now.length);
      let compared = 0;
      told.forEach((row, at) => {
        row.forEach((text, column) => {
          if (text === "-") return;
          const moved = Number(now[at]?.[column]) - Number(was[at]?.[column]);
          const step = /\.\d\d/.test(now[at]?.[column] ?? "") ? 0.01 : /\./.test(now[at]?.[column] ?? "") ? 0.1 : 1;
          // Both tables and the change are rounded to the step, each by half of it at most.
          expect(Math.abs((text === "same" ? 0 : Number(text)) - moved)).toBeLessThanOrEqual(1.5 * step + 1e-9);
          compared++;
        });
      });
      expect(compared).toBeGreaterThan(20);
      expect(told.flat().some((text) => /^[+-]\d/.test(text))).toBe(true);
    }
  });
});

describe("the words under the cursor", () => {
  const shown = (bench: Bench, key: string) => views.find((view) => view.key === key)?.explain(bench.model) ?? "";

  it("are never cut in a sentence: what has no room is left out whole, and help begins with all of it", () => {
    const long = Array.from({ length: 9 }, (_, at) => `Sentence number ${at} says a little.`).join(" ");
    const lines = wholeSentences(long, 78, 3);
    expect(lines.length).toBe(3);
    expect(lines.join(" ")).toMatch(/^Sentence number 0 .* a little\. \(\? tells all\)$/);
    const bench = offsetRack().press("3", "right", "right", "right");
    const all = shown(bench, "3");
    expect(bench.press("?").text().replace(/\s+/g, " ")).toContain(all);
  });

  it("plots beside a table keep their titles and the ends of their scales", () => {
    const text = new Bench(opened("cut-rods-off-middle"), 120, 40).press("3").text();
    expect(text).toContain("toe, left wheel L, right wheel R");
    expect(text).toMatch(/out +in 0\.\d\d°/);
    expect(text).toMatch(/left +right 0\.\d\d°/);
  });
});

describe("the drawings", () => {
  it("tell left from right by letters, and move with wheel and suspension", () => {
    for (const key of ["4", "5"]) {
      const bench = offsetRack().press(key);
      const drawn = () => bench.lines().slice(9, 19).join("\n");
      const straight = drawn();
      expect(straight).toMatch(/L.*R/);
      expect(straight).toContain("◆");
      const turned = bench.press("J") && drawn();
      expect(turned).not.toBe(straight);
      bench.press("K");
      expect(drawn()).not.toBe(turned);
    }
  });

  it("name the place under the cursor and where it is", () => {
    expect(offsetRack().press("4").text().replace(/\s+/g, " ")).toContain(
      "left wheel, tie-rod tab: 4 1/2 in behind the front-axle line, 19 3/4 in out from the middle, 8 1/2 in up",
    );
  });
});

describe("the lines to the rear axle", () => {
  it("are told in numbers: where each wheel's meets the rear axle, from its own angle and place", () => {
    const bench = offsetRack().press("4", "space", "J");
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error("the example stands");
    const { input } = bench.model.place;
    const pose = study.pose(input, 0, 0);
    const row = study.steerTable({ from: input, to: input, rows: 1 }).rows[0];
    const told = /meets it ([\d ]+(?:\/\d+)?) in left of the middle, the right one's ([\d ]+(?:\/\d+)?) in left/.exec(
      bench.text().replace(/\s+/g, " "),
    );
    for (const [at, wheel] of (["left", "right"] as const).entries()) {
      const [x = 0, y = 0] = pointsOf(pose, wheel, study.tireRadius)?.wheelCenter ?? [];
      // Seen from above the line is square to the wheel's heading, so it leans back by the wheel's steer.
      const expected = y + (x + study.wheelbase) / Math.tan(row?.[wheel].steer ?? 0);
      const [whole = "0", part = "0/1"] = (told?.[at + 1] ?? "").split(" ");
      const [above = 0, below = 1] = part.split("/").map(Number);
      // Shown to 1/32 in.
      expect(Math.abs((Number(whole) + above / below) * 25.4 - expected)).toBeLessThanOrEqual(25.4 / 64 + 1e-6);
    }
    expect(bench.press("h").text().replace(/\s+/g, " ")).toContain("too nearly straight");
  });
});

describe("before and after", () => {
  it("shows the change beside every one of the five numbers in a wide window", () => {
    const bench = offsetRack(160, 40).press("b", ...Array<string>(4).fill("+"));
    const text = bench.text();
    const number = String.raw`[+-]\d+(?:\.\d+)?`;
    const lock = `outer 2\\d\\.\\d° ${number}, inner \\d\\d\\.\\d° ${number} `;
    expect(text).toMatch(new RegExp(`LOCK +${lock}.*${lock}`));
    expect(text).toMatch(new RegExp(`balance +left inner \\d\\.\\d° short of right ${number} `));
    expect(text).toMatch(new RegExp(`inner wheel .* % of ideal ${number} .* % of ideal ${number}`));
    expect(text).toMatch(
      /RODS +15 13\/16 in \(15\.\d+\), cut to fit \+1\/32 +10 13\/16 in \(10\.\d+\), cut to fit \+1\/32/,
    );
  });

  it("shows in a window that is no wider than usual the inner wheel's change alone, beside its number", () => {
    const text = offsetRack(80, 24)
      .press("b", ...Array<string>(4).fill("+"))
      .text();
    expect(text).toMatch(/LOCK +outer 26\.\d°, inner 3\d\.\d° [+-]\d+\.\d +outer/);
  });

  it("tells beside the value under the cursor what the pinned car has there, on the map and in the drawings too", () => {
    const bench = offsetRack().press("b", "+");
    for (const [key, words] of [
      ["2", /pinned \d/],
      ["4", /Pinned: 4 1\/2 in behind, 19 3\/4 in out, 8 1\/2 in up\./],
      ["6", /pinned -?\d+\.\d\d°/],
    ] as const)
      expect(
        bench
          .press(key, "right")
          .press(...(key === "4" ? ["left"] : []))
          .text()
          .replace(/\s+/g, " "),
      ).toMatch(words);
  });

  it("says above the changes what they are from: the last step, also one taken back, or the pinned car", () => {
    const bench = offsetRack();
    expect(bench.text()).not.toContain("+-last step");
    expect(bench.press("+").text()).toContain("+-last step");
    expect(bench.press("+", "u").text()).toContain("+-last step");
    expect(bench.press("+", "b").text()).not.toContain("+-last step");
  });

  it("pins the car: every number shows its change from there, however many changes follow", () => {
    const bench = offsetRack().press("b", "right", "right", "8");
    expect(bench.text()).toContain("+- pinned");
    expect(bench.text()).toMatch(/Left lock, inner wheel +33\.\d\d° +31\.82° +\+1\.\d\d°/);
    expect(bench.press("left", "left").text()).not.toBe("");
  });

  it("pins the car as it is saved, for what all unsaved changes do together, and says when there are none", () => {
    const bench = offsetRack();
    const saved = bench.model.origin.saved;
    expect(bench.press("8", "Y").text()).toContain("Nothing has changed since the car was opened");
    expect(bench.model.pin).toBeNull();
    bench.press("+", "+", "Y");
    expect(bench.model.pin?.car.text).toBe(saved);
    expect(bench.text()).toMatch(/now +saved +change/);
    expect(bench.press("u", "u").text()).toMatch(/Left lock, inner wheel +31\.82° +31\.82° +same/);
  });

  it("swaps the two in one key and back, which undo takes back too", () => {
    const bench = offsetRack();
    const first = bench.model.bench.car.text;
    const second = bench.press("b", "right").model.bench.car.text;
    expect(bench.press("v").model.bench.car.text).toBe(first);
    expect(bench.model.pin?.car.text).toBe(second);
    expect(bench.press("v").model.bench.car.text).toBe(second);
    expect(bench.press("u", "u").model.bench.car.text).toBe(second);
    expect(bench.model.pin?.car.text).toBe(first);
    expect(bench.press("u").model.bench.car.text).toBe(first);
  });

  it("keeps the pinned car when a swap is taken back, and done again", () => {
    const bench = offsetRack();
    const first = bench.model.bench.car.text;
    const second = bench.press("b", "right").model.bench.car.text;
    bench.press("v", "u");
    expect([bench.model.bench.car.text, bench.model.pin?.car.text]).toEqual([second, first]);
    bench.press("r");
    expect([bench.model.bench.car.text, bench.model.pin?.car.text]).toEqual([first, second]);
  });

  it("says why there is nothing to swap", () => {
    expect(offsetRack().press("v").text()).toContain("No car is pinned. Press b");
  });

  it("keeps named trials, takes one back on the bench and writes one to a file", () => {
    const bench = offsetRack().press("8", "n", "=as found", "enter", "+", "n", "=tab forward", "enter", "space");
    const [found, forward] = bench.model.trials;
    expect([found?.name, forward?.name]).toEqual(["as found", "tab forward"]);
    expect(bench.text()).toMatch(/> as found/);
    expect(bench.press("t").model.bench.car.text).toBe(found?.car.text);
    bench.press("down", "w", "=forward.yaml", "enter");
    expect(bench.effects.at(-1)).toMatchObject({ do: "write", text: forward?.car.text });
    expect(bench.send({ is: "failed", words: "There is a file forward.yaml already." }).text()).toContain(
      "There is a file forward.yaml already.",
    );
    expect(bench.send({ is: "written", path: "forward.yaml" }).model.focus.on).toBe("bench");
    expect(bench.press("d").model.trials.map(({ name }) => name)).toEqual(["as found"]);
  });
});

describe("the map", () => {
  it("marks where the wheels stand, and the mark goes with them", () => {
    const bench = work(offsetRack().press("6", "right"));
    const at = () =>
      bench
        .lines()
        .slice(10, 17)
        .flatMap((line, row) => [...line].flatMap((glyph, column) => (glyph === "o" ? [[row, column]] : [])));
    const [straight, ...others] = at();
    expect(others).toEqual([]);
    expect(straight?.[0]).toBe(3);
    bench.press("l", "K");
    // This car's rack goes left when its wheel is turned right, and the left end is on the left.
    expect(at()[0]?.[1]).toBeLessThan(straight?.[1] ?? 0);
    expect(at()[0]?.[0]).toBeGreaterThan(3);
  });

  it("is asked for once for each car and number, shows how far it is, and is drawn when done", () => {
    const bench = offsetRack().press("6");
    const jobs = () => bench.effects.filter((each) => each.do === "work").length;
    expect(jobs()).toBe(1);
    expect(bench.press("down", "right").model.work?.state).toBe("running");
    expect(jobs()).toBe(1);
    expect(work(bench, 200).text()).toMatch(/Steer, left wheel \(\d+ %, Esc stops\)/);
    expect(work(bench).text()).toMatch(/█{5}/);
    expect(bench.press("n").model.work?.state).toBe("running");
    expect(jobs()).toBe(2);
    expect(bench.press("+").model.work?.result).toBeNull();
    expect(jobs()).toBe(3);
  });

  it("is stopped by a key, keeps what is done, and takes no more of it", () => {
    const bench = work(offsetRack().press("6"), 200).press("escape");
    expect(bench.effects.at(-1)).toEqual({ do: "halt" });
    expect(bench.text()).toContain("stopped");
    const { result } = bench.model.work ?? {};
    expect(work(bench).model.work?.result).toBe(result);
  });

  it("says the exact value under the cursor: at full lock that of the locks", () => {
    const bench = work(offsetRack().press("6"));
    const rows = Array<string>(3).fill("down");
    expect(
      bench
        .press(...rows)
        .text()
        .replace(/\s+/g, " "),
    ).toMatch(/Steer, left wheel at rack 2 in left, ride height: -24\.9\d°/);
  });

  it("can show every figure that a pose has", () => {
    const bench = offsetRack().press("6");
    const seen = new Set<string>();
    const count =
      figures.filter(({ of }) => of === "wheel").length * 2 + figures.filter(({ of }) => of === "pose").length;
    const view = views.find(({ name }) => name === "Map");
    for (let i = 0; i < count; i++) seen.add(view?.explain(bench.press("n").model).split(" at ")[0] ?? "");
    expect(seen.size).toBe(count);
  });
});

describe("the car's file", () => {
  it("lists every number with its range, marks what is left out, and changes any of them in place", () => {
    const bench = offsetRack().press("7");
    for (let i = 0; i < 8; i++) bench.press("{");
    expect(bench.text()).toMatch(/> +Wheelbase +68 +12\.\.394 in/);
    bench.press("enter", "=70", "enter");
    expect(bench.model.bench.car.text).toContain("wheelbase: 70");
    expect(bench.text()).toContain("the whole car");
    for (let i = 0; i < 8; i++) bench.press("}");
    expect(bench.text()).toContain("steering: rack");
    expect(bench.text()).toMatch(/Rack at straight ahead.* default/);
  });

  it("goes to the next group and back in the list of what is moved first", () => {
    const bench = offsetRack().press("}", "}");
    expect(bench.text()).toMatch(/> Rack +ahead/);
    expect(bench.press("down", "{", "{").text()).toMatch(/> Tie-rod +length/);
  });

  it("marks rods that are cut to fit, and shows long notes on several lines", () => {
    const notes = Array.from({ length: 8 }, (_, at) => `word number ${at}`).join(", ");
    const bench = offsetRack().press("7", "n", `=${notes}`, "enter", "down", "down", "down");
    expect(bench.text()).toMatch(/Tie-rod length .* cut to fit/);
    expect(bench.text().replace(/\s+/g, " ")).toContain(`Notes: ${notes}`);
  });

  it("keeps notes of several lines in the file, and takes them out again", () => {
    const bench = offsetRack().press("7", "n", "=measured: 3 May | left tab bent", "enter");
    expect(notesOf(bench.model.bench.car)).toBe("measured: 3 May\nleft tab bent");
    expect(bench.text()).toContain("Notes: measured: 3 May | left tab bent");
    expect(bench.press("n", "=", "enter").model.bench.car.text).not.toContain("notes:");
  });
});

describe("title, job, date and what was built otherwise", () => {
  it("are asked for one after the other, each a change of its own that u takes back", () => {
    const bench = offsetRack().press("7", "t");
    expect(bench.text()).toContain("Title: Rail two-seater");
    bench.press("=Rail for the yard", "enter", "=Job 12", "enter", "=2 May", "enter", "=left tab bent", "enter");
    const { text } = bench.model.bench.car;
    expect(text).toContain("title: Rail for the yard");
    expect(labelsOf({ text })).toEqual({
      title: "Rail for the yard",
      job: "Job 12",
      date: "2 May",
      "as-built": "left tab bent",
    });
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.text()).toContain("Job 12, 2 May, as built: left tab bent. Notes: none");
    expect(labelsOf(bench.press("u").model.bench.car)["as-built"]).toBe("");
  });

  it("stay as they are where nothing is typed, and a car keeps a title", () => {
    const bench = offsetRack().press("7", "t", "=", "enter");
    expect(bench.text()).toContain("A car needs a title.");
    bench.press("escape", "t", "enter", "enter", "enter", "enter");
    expect(bench.model.bench.undo).toEqual([]);
  });
});

describe("help", () => {
  it("goes to the line of a key that is pressed there", () => {
    for (const [key, words] of [
      ["c", "  c      rods: cut to fit"],
      ["v", "  v      swap the car"],
      ["n", "  n      map the next number"],
    ] as const)
      expect(offsetRack().press("6", "?", key).lines()[1]).toContain(words);
  });
});

describe("long work", () => {
  it("of the remedies is stopped by a key too, and says how far it is", () => {
    const bench = offsetRack().press("9");
    expect(bench.text()).toMatch(/LOCKS \(\d+ %, Esc stops\)/);
    expect(bench.press("escape").effects.at(-1)).toEqual({ do: "halt" });
    expect(bench.text()).toMatch(/UNEQUAL\? \(stopped\)|LOCKS \(stopped\)/);
    expect(bench.text()).toContain("Stopped before a remedy was found.");
  });
});

describe("a very wide window", () => {
  it("is used as far as lines can be followed: nothing that is said is cut off there", () => {
    for (const { key } of views) {
      const bench = offsetRack(200, 60).press(key);
      expect(bench.text(), key).not.toContain("…");
      expect(bench.press("?").text(), key).not.toContain("…");
    }
  });
});

describe("the guide", () => {
  it("is offered over an example that is opened first, until the next key", () => {
    const model = greeted(offsetRack().model);
    expect(model.notice?.text).toMatch(/g shows you round/);
    expect(update(model, { is: "key", chord: "down" }).model.notice).toBeNull();
    const mine: Model = { ...model, notice: null, origin: { ...model.origin, path: "mine.yaml" } };
    expect(greeted(mine)).toBe(mine);
  });

  it("goes through the car whose rods are cut wrong, a step for each key that it names", () => {
    const bench = offsetRack().press("g");
    expect(bench.effects.at(-1)).toEqual({ do: "open", source: { from: "preset", id: "cut-rods-off-middle" } });
    bench.send({ is: "opened", opened: opened("cut-rods-off-middle") });
    for (const [at, key] of ["2", "b", "c", "1"].entries()) {
      const text = bench.text().replace(/\s+/g, " ");
      expect(text).toContain(`GUIDE ${at + 1}/5`);
      expect(text).toMatch(new RegExp(`[Pp]ress ${key}\\b`));
      bench.press(key);
    }
    expect(bench.text()).toContain("left and right lock are equal");
    expect(bench.text()).toContain("GUIDE 5/5");
    expect(bench.press("escape").text()).not.toContain("GUIDE");
  });

  const guideStarted = () =>
    offsetRack()
      .press("g")
      .send({ is: "opened", opened: opened("cut-rods-off-middle") });
  const said = (bench: Bench) => bench.text().replace(/\s+/g, " ");

  it("moves on when a step is done another way: another view, rods fitted at once, undo and redo", () => {
    expect(said(guideStarted().press("3"))).toContain("GUIDE 2/5 (Esc ends it). These rods were cut wrong");
    const fitted = guideStarted().press("c");
    expect(said(fitted)).toMatch(/GUIDE 4\/5 .*The locks are equal.*Then press 1\./);
    expect(said(fitted.press("u"))).toContain("GUIDE 4/5 (Esc ends it). This is the car before");
    expect(said(fitted.press("r"))).toContain("GUIDE 5/5");
    const steered = guideStarted().press("2", "c");
    expect(said(steered)).toContain("GUIDE 4/5");
    expect(said(steered.press("u"))).toContain(
      "GUIDE 4/5 (Esc ends it). This is the car before, its rods cut wrong. r fits them again.",
    );
    expect(said(steered.press("r"))).toContain("The locks are equal.");
  });

  it("goes on after a save half way, and ends with one at its last step, which then says so", () => {
    const file = { is: "saved", path: "mine.yaml", hash: "x", next: null } as const;
    const bench = guideStarted().press("2").send(file);
    expect(said(bench)).toContain("GUIDE 2/5");
    expect(said(bench.press("b", "c", "1"))).toContain("GUIDE 5/5");
    expect(said(bench.send(file))).toMatch(/^(?!.*GUIDE).*Saved to mine\.yaml\./);
  });

  it("has every step whole at 80 by 24, and is off on any other car", () => {
    const bench = guideStarted();
    for (const key of ["2", "b", "c", "v", "v", "1"]) {
      expect(bench.lines()).toHaveLength(24);
      for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(80);
      expect(said(bench)).toMatch(/GUIDE \d\/5 \(Esc ends it\)\. .*[.] (Geometry|Then press 1\. Geometry)/);
      bench.press(key);
    }
    expect(said(bench)).toMatch(/GUIDE 5\/5 .*6, then Space: .* what to hold tightly\. Geometry/);
    expect(said(bench.press("6"))).not.toContain("GUIDE");
    const left = guideStarted().send({ is: "opened", opened: opened("rack-ahead") });
    expect(said(left)).not.toContain("GUIDE");
  });
});

describe("targets", () => {
  const withTargets = (lines: string) => new Bench(opened("widened-offset-rack", (text) => `${text}\n${lines}\n`));

  it("come from the file where it has them, else are common practice, and help says which", () => {
    const help = ({ model }: Bench) => helpLines(model, 80).join(" ").replace(/\s+/g, " ");
    expect(help(offsetRack())).toContain("Doubtful over 1/8 in, bad over 1/2 in (common practice)");
    expect(help(withTargets("targets: { toe-change: { warn: 1/16, bad: 1/4 } }"))).toContain(
      "Doubtful over 1/16 in, bad over 1/4 in (set in the car's file)",
    );
  });

  it("are refused in words where they are none", () => {
    expect(() => withTargets("targets: { toe-chnge: { warn: 1 } }")).toThrow(/toe-change/);
    expect(() => withTargets("targets: { toe-change: { warn: 999 } }")).toThrow(/expected a value from/);
  });
});
