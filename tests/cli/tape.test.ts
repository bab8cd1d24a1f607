import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { exampleText } from "../../src/files/examples.ts";
import { gaugeSections } from "../../src/vehicle/car-readings/sections.ts";
import { kindOf } from "../../src/vehicle/file-kind.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { mechanisms } from "../../src/vehicle/mechanisms.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
import { folder, run } from "./run.ts";

const place = folder();
afterAll(() => place.remove());

const donor = readFileSync(new URL("../../presets/sheets/donor-front.yaml", import.meta.url), "utf8");
const wrong = "left lower-arm.joint to left lower-arm.rear";

describe("the example sheet", () => {
  it("has one wrong reading, which is named with its line and by how much, and no other", async () => {
    const { code, out } = await run(["tape", "donor-front"]);
    expect(code).toBe(0);
    const line = donor.split("\n").findIndex((each) => each.startsWith(`  ${wrong}:`)) + 1;
    expect(out).toContain("ONE READING DOES NOT FIT");
    expect(out.replace(/\s+/g, " ")).toMatch(
      new RegExp(
        `${wrong.replaceAll(".", "\\.")} \\(line ${line}\\) reads (3/4|25/32|13/16) in long against all the others`,
      ),
    );
    for (const each of out.split("\n")) expect(each.length).toBeLessThanOrEqual(80);
  });

  it("stands out no more once the reading is put right", async () => {
    const right = donor.replace(new RegExp(`(${wrong}:) .*`), "$1 17 15/16");
    const { code, out } = await run(["tape", place.put("right.yaml", right)]);
    expect(code).toBe(0);
    expect(out).toContain("NO READING STANDS OUT");
  });

  it("says every reading when asked", async () => {
    const { out } = await run(["tape", "donor-front", "--readings"]);
    const survey = readSurvey(donor);
    const count = "complaints" in survey ? 0 : survey.readings.length;
    expect(count).toBeGreaterThan(100);
    expect(out.split("\n").filter((line) => /^[X?]? +\d+ {2}\S/.test(line)).length).toBe(count);
  });
});

describe("what a sheet leaves open", () => {
  it("is told of ahead and behind where nothing was read ahead, and not where something was", async () => {
    const words = "Nothing on the sheet tells ahead from behind";
    const without = donor.replace(/^ahead:\n(?: .*\n)*/m, "");
    const bare = await run(["tape", place.put("bare.yaml", without)]);
    expect(bare.code).toBe(0);
    expect(bare.out.replace(/\s+/g, " ")).toContain(words);
    expect((await run(["tape", "donor-front"])).out.replace(/\s+/g, " ")).not.toContain(words);
    const one = without.replace("distances:", "ahead:\n  left eye from left lower-arm.joint: -6 1/2\ndistances:");
    expect((await run(["tape", place.put("one.yaml", one)])).out.replace(/\s+/g, " ")).not.toContain(words);
  });
});

describe("a car that may be bent", () => {
  const car = "check-before-welding";

  it("is read by six diagonals, blank first, and the place that moved is named", async () => {
    const blank = await run(["tape", "--blank", "double-arm", "--diagonals"]);
    expect(blank.out.match(/ to .*:$/gm)).toHaveLength(6);
    const none = await run(["tape", place.put("six.yaml", blank.out), "--against", car]);
    expect(none.code).toBe(2);
    // Plain distances of the car file's points, inches.
    const points = {
      "lower-arm.joint": [0.3, 24, 7.5],
      "upper-arm.joint": [-0.9, 22.6, 16.5],
      "lower-arm.rear": [-5.5, 7, 8],
    } as const;
    const at = (name: string, moved: number) => {
      const [side = "", path = ""] = name.split(" ");
      const [x, y, z] = points[path as keyof typeof points];
      const back = side === "left" && path === "lower-arm.joint" ? moved : 0;
      return [x, (side === "left" ? 1 : -1) * (y - back), z];
    };
    const filled = (moved: number) =>
      blank.out.replace(/^ {2}(.*) to (.*):$/gm, (_, a: string, b: string) => {
        const [from, to] = [at(a, moved), at(b, moved)];
        return `  ${a} to ${b}: ${Math.hypot(...from.map((each, i) => each - (to[i] ?? 0))).toFixed(2)}`;
      });
    const sound = await run(["tape", place.put("sound.yaml", filled(0)), "--against", car]);
    expect(sound.code).toBe(0);
    expect(sound.out.replace(/\s+/g, " ")).toContain("No diagonal differs by more than two tapes can");
    const bent = await run(["tape", place.put("bent.yaml", filled(1)), "--against", car]);
    expect(bent.out.replace(/\s+/g, " ")).toMatch(
      /THE FRONT IS NOT AS IT WAS BUILT\. The left corner has moved\..*left lower-arm\.joint alone/,
    );
  });
});

describe("the README", () => {
  it("shows a sheet in short that is one", () => {
    const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
    const [, text = ""] = readme.match(/```text\n(units: in\nlinkage: .*?)```/s) ?? [];
    const survey = readSurvey(text);
    if ("complaints" in survey) throw new Error(survey.complaints.map(({ message }) => message).join("\n"));
    expect(survey.readings.map(({ kind }) => kind).sort()).toEqual(
      ["ahead", "angle", "distance", "distance", "height", "height", "height", "line", "out", "plumb"].sort(),
    );
  });
});

describe("the car", () => {
  it("is written, opens, and says what was set aside and what was assumed", async () => {
    const file = `${place.path}/donor.yaml`;
    const { code, err } = await run(["tape", "donor-front", "--out", file]);
    expect(code).toBe(0);
    expect(err).toContain("Wrote ");
    expect(err).toContain(wrong);
    const text = readFileSync(file, "utf8");
    expect(text).toContain("# Set aside: ");
    expect((await run(["steer", file])).code).toBe(0);
    const again = await run(["tape", "donor-front", "--out", file]);
    expect(again.code).toBe(2);
    expect(again.err).toContain("there is a file of that name already");
    expect(readFileSync(file, "utf8")).toBe(text);
  });

  it("is had in parts", async () => {
    for (const section of ["front", "steering"]) {
      const { code, out } = await run(["tape", "donor-front", "--section", section]);
      expect(code).toBe(0);
      expect(out.startsWith(`${section}:\n`)).toBe(true);
    }
  });

  it("is not what a sheet is: opened as one it is told apart, and the way is named", async () => {
    expect((await run(["steer", "donor-front"])).err).toContain("rackwright tape donor-front");
    expect((await run(["steer", place.put("sheet.yaml", donor)])).err).toContain("rackwright tape");
  });
});

describe("a blank list", () => {
  const forms = linkages.flatMap((linkage) => mechanisms.map((mechanism) => [linkage.name, mechanism.name] as const));

  it.each(forms)(
    "of %s and %s is a sheet without a reading but for its floor marks, and fits a page",
    async (linkage, mechanism) => {
      const { code, out } = await run(["tape", "--blank", linkage, "--mechanism", mechanism]);
      expect(code).toBe(0);
      for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(78);
      const survey = readSurvey(out);
      if ("complaints" in survey) throw new Error(survey.complaints.map(({ message }) => message).join("\n"));
      expect(survey.readings.length).toBe(4);
    },
  );
});

describe("a sheet that is not filled in", () => {
  it("is said to be none, and no point is made of it", async () => {
    const { out: blank } = await run(["tape", "--blank", "double-arm"]);
    for (const argv of [
      ["tape", place.put("blank.yaml", blank)],
      ["tape", place.put("blank.yaml", blank), "--section", "front"],
    ]) {
      const { code, out, err } = await run(argv);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toContain("this sheet has not been filled in: only what was written beforehand is there");
    }
  });

  it("never comes to one more reading while whole points are not read", async () => {
    const { out: blank } = await run(["tape", "--blank", "double-arm"]);
    const begun = blank.replace("  left eye:\n", "  left eye: 9\n");
    const { code, out } = await run(["tape", place.put("begun.yaml", begun)]);
    expect(code).toBe(0);
    const [, next = ""] = out.replace(/\s+/g, " ").split("NEXT ");
    expect(next).not.toContain("One more reading settles it");
    expect(next).not.toMatch(/^Everything is settled/);
    // What is held of where the whole stands is no reading, and no proof of good ones.
    expect(out.replace(/\s+/g, " ")).toContain("No reading checks another: a wrong one would not show.");
    // Eighteen points: eight a side and two eyes. One of them is read.
    expect(next).toMatch(/^First the 17 points that are not read at all/);
  });

  it("names the front ends that there is a blank list of", async () => {
    const { code, out, err } = await run(["tape", "--blank"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    for (const { name } of linkages) expect(err).toContain(`  ${name}`);
  });
});

describe("a file of another kind", () => {
  const car = place.put("a-car.yaml", exampleText("cars", "tab-to-place"));
  const sheet = place.put("a-sheet.yaml", donor);
  const readings = place.put("some-readings.yaml", exampleText("readings", "as-built"));

  it.each([
    ["a car as a sheet", ["tape", car], car, "this is a car file, not a tape sheet"],
    [
      "readings as a sheet",
      ["tape", readings],
      readings,
      "this is a file of readings on a built car, not a tape sheet",
    ],
    [
      "a sheet as a car",
      ["steer", sheet],
      sheet,
      "this is a tape sheet of readings between points, not a car file: rackwright tape",
    ],
    [
      "readings as a car",
      ["steer", readings],
      readings,
      "readings on a built car, not a car file: rackwright match CAR",
    ],
    [
      "a sheet as readings",
      ["match", "tab-to-place", sheet],
      sheet,
      "not a file of readings on a built car: rackwright tape",
    ],
    [
      "a car as readings",
      ["match", "tab-to-place", car],
      car,
      "this is a car file, not a file of readings on a built car",
    ],
    [
      "a car as a bench sheet",
      ["new", "x", "--from-tape", car],
      car,
      "this is a car file, not a sheet of readings with a tape",
    ],
  ])("%s is told apart, in one line", async (_, argv, file, words) => {
    const { code, out, err } = await run(argv);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    const complaints = err.split("\n").filter((line) => line !== "" && !line.startsWith("note: "));
    expect(complaints).toHaveLength(1);
    expect(complaints[0]).toContain(`${file}: `);
    expect(complaints[0]).toContain(words);
  });

  it.each(Object.keys(gaugeSections))("a file of readings with %s alone is known for one", (gauge) => {
    expect(kindOf(`units: in\n${gauge}: { left: 1, right: 1 }\n`)).toBe("readings");
  });

  it("is named where there is none of that name, with the examples", async () => {
    const { code, err } = await run(["tape", "nosuch"]);
    expect(code).toBe(2);
    expect(err).toContain(
      'there is no file "nosuch", and no example of a tape sheet of that name. The examples are:\n  donor-front',
    );
    expect((await run(["tape", "donor-frunt"])).err).toContain('Did you mean "donor-front"?');
    expect((await run(["tape", "tab-to-place"])).err).toContain('"tab-to-place" is a car, not a tape sheet');
    expect((await run(["match", "tab-to-place", "nosuch"])).err).toContain("  as-built");
  });
});

describe("bad sheets", () => {
  const sheet = (...lines: readonly string[]) => ["linkage: double-arm", "mechanism: rack", ...lines, ""].join("\n");

  it.each([
    [
      "a point that there is not",
      ["heights:", "  left lower-arm.jiont: 7"],
      "4:3: heights.left lower-arm.jiont: ",
      'did you mean "left lower-arm.joint"',
    ],
    ["a point without its side", ["heights:", "  lower-arm.joint: 7"], "4:3: ", 'write "left lower-arm.joint"'],
    ["a reading that is none", ["heights:", "  left eye: about 7"], "4:13: ", 'found "about 7"'],
    ["a fraction that lost its blank", ["heights:", "  left eye: 81/4"], "4:13: ", 'write "8 1/4"'],
    ["a distance of nothing", ["distances:", "  left eye to right eye: 0"], "4:26: ", "expected more than 0"],
    ["a distance to itself", ["distances:", "  left eye to left: 4"], "4:3: ", "stands in it twice"],
    ["one point for two", ["distances:", "  left eye: 4"], "4:3: ", '"left eye to left tie-rod.outer"'],
    ["a group that is none", ["hieghts:", "  left eye: 4"], "3:1: hieghts: ", 'did you mean "heights"'],
    [
      "a mark on no side",
      ["marks: { bolt A: top }", "heights:", "  left eye: 4"],
      "3:18: ",
      "expected left, right or middle",
    ],
    ["a list of words", ["heights:", "  left eye: { up: 4 }"], "4:13: ", "expected a reading such as 14 3/8"],
    [
      "a tolerance of nothing",
      ["tolerance: 0", "heights:", "  left eye: 4"],
      "3:12: tolerance: ",
      "how far one reading may be off",
    ],
    [
      "a point in the part of the car",
      ["heights:", "  left eye: 4", "car: { steering: { rack: { up: 4 } } }"],
      "5:28: ",
      "stand among the readings",
    ],
    ["an absurd wheelbase", ["heights:", "  left eye: 4", "car: { wheelbase: 4 }"], "5:19: ", "expected a value from"],
    ["no reading", [], "", "there is no reading on this sheet yet"],
  ])("%s: where, what was found, what would be right", async (_, lines, where, words) => {
    const file = place.put("bad.yaml", sheet(...lines));
    const { code, out, err } = await run(["tape", file]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(`${file}:${where}`);
    expect(err).toContain(words);
  });

  it("no linkage, and one that there is not", async () => {
    const file = place.put("bad.yaml", "mechanism: rack\nlinkage: triple-arm\nheights: { left eye: 4 }\n");
    expect((await run(["tape", file])).err).toContain("2:10: linkage: found");
  });

  it("no sheet at all", async () => {
    expect((await run(["tape"])).err).toContain("--blank");
    expect((await run(["tape", "nowhere.yaml"])).err).toContain('there is no file "nowhere.yaml"');
  });
});

describe("a short list that grows into a survey", () => {
  const short = [
    "title: Old hauler",
    "units: in",
    "wheelbase: 72",
    "hub-height: 10 1/2",
    "king-pins-apart: 40",
    "tab-height: 9 1/4",
    "left-eye: 7 1/2",
    "right-eye: 7 1/4",
    "eye-height: 9",
    "eye-behind: 1/2",
    "lower-joint-out: 20 1/4",
    "lower-joint-height: 7 1/2",
    "",
  ].join("\n");

  it("is filled in as it was written, each reading where a survey has it", async () => {
    const { code, out } = await run(["tape", place.put("short.yaml", short), "--blank", "double-arm"]);
    expect(code).toBe(0);
    const survey = readSurvey(out);
    if ("complaints" in survey) throw new Error(JSON.stringify(survey.complaints));
    const read = new Map(survey.readings.map(({ name, value }) => [name, Math.round((value / 25.4) * 1e9) / 1e9]));
    expect(survey.title).toBe("Old hauler");
    for (const side of ["left", "right"]) {
      expect(read.get(`height of ${side} wheel.center`)).toBe(10.5);
      expect(read.get(`height of ${side} tie-rod.outer`)).toBe(9.25);
      expect(read.get(`height of ${side} lower-arm.joint`)).toBe(7.5);
      expect(read.get(`height of ${side} eye`)).toBe(9);
      // The eyes are behind the holes: the holes are ahead of them.
      expect(read.get(`${side} tie-rod.outer, ahead of ${side} eye`)).toBe(0.5);
    }
    expect([...read.keys()].filter((name) => /eye/.test(name)).length).toBe(6);
    expect([...read].filter(([name]) => /eye.*centreline|eye, out/.test(name)).map(([, value]) => value)).toEqual([
      7.5, 7.25,
    ]);
    expect(out).toMatch(/^ {2}wheelbase: 72$/m);
    expect(out).toMatch(/^ {4}radius: "10 1\/2"$/m);
  });

  it("is taken for a survey as it is: the same as by way of the list that is filled in", async () => {
    const file = place.put("short.yaml", short);
    const { out: long } = await run(["tape", file, "--blank", "double-arm"]);
    const [once, twice] = [await run(["tape", file]), await run(["tape", place.put("long.yaml", long)])];
    expect({ once: once.code, twice: twice.code }).toEqual({ once: 0, twice: 0 });
    const bare = (text: string) => text.replace(/ \(line \d+\)/g, "").replace(/^([X? ]) +(\d+)? +/gm, "$1 ");
    // The tables' columns are as wide as what stands in them, and the short list has no lines to name.
    const words = (text: string) => bare(text).split("THE 6 READINGS")[0];
    expect(words(once.out)).toBe(words(twice.out));
    expect(once.out).not.toMatch(/line \d/);
    expect(once.err).toContain("--blank double-arm > survey.yaml");
    expect(once.out).toContain("NOT SETTLED by these readings");
  });

  it("complains of what is no reading on it by the point that it is of", async () => {
    const file = place.put("short.yaml", short.replace("9 1/4", "about 9"));
    const { code, out, err } = await run(["tape", file]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(`${file}: heights.left tie-rod.outer: found "about 9"`);
    // A line of a list that the builder never saw would lead him astray.
    expect(err).not.toMatch(/yaml:\d/);
  });

  it("is refused as a car with both ways to go on, and what is no short list is not filled in", async () => {
    const { err } = await run(["steer", place.put("short.yaml", short)]);
    expect(err).toContain("rackwright new my-car --from-tape");
    expect(err).toContain("rackwright tape");
    const other = await run(["tape", "donor-front", "--blank", "strut"]);
    expect(other.code).toBe(2);
    expect(other.err).toContain("is no short list of readings");
  });
});
