import { describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { adjustables, isFirst } from "../../src/screen/adjust.ts";
import { caution } from "../../src/screen/view/Screen.tsx";
import { cellsOf } from "../../src/terminal/cells.ts";
import { Bench, opened } from "./support/bench.tsx";

const offsetRack = (columns = 80, rows = 24) => new Bench(opened("widened-offset-rack"), columns, rows);

describe("the bench at 80 by 24", () => {
  it("shows the five numbers, the list, the place and the caution, and fits", () => {
    const bench = offsetRack();
    const lines = bench.lines();
    expect(lines.length).toBe(24);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    const text = bench.text();
    // What the design expects of this invented car: inner locks 31.8 and 34.0, Ackermann 76 and 101 %, bounce steer 0.9, dead point 17.5.
    for (const words of [
      /LOCK +outer [\d.]+°, inner 31\.8° +outer [\d.]+°, inner 34\.0°/,
      /left inner 2\.[12]° short of right/,
      /ACKERMANN +76 %.*101 %/,
      /both steer right 0\.9° at 3 in droop/,
      /DEAD POINT .*17\.5° DANGEROUS/,
      /RODS +15 25\/32 in \(15\.782\), cut to fit +10 13\/16 in \(10\.797\), cut to fit/,
      /> Tie-rod tab ahead +-4 1\/2/,
    ])
      expect(text).toMatch(words);
    expect(text).toContain(caution);
  });

  it("never cuts a line short, for any example, any selected line and any key of the footer", () => {
    for (const name of presetNames()) {
      const bench = new Bench(opened(name));
      const lines = adjustables(bench.model.bench.car);
      // Of what is moved seldom, a window at a time.
      for (const { pair } of lines.filter((line, at) => isFirst(line) || at % 7 === 0)) {
        bench.send({ is: "selected", pair, sides: "both" }).press("right");
        for (const line of bench.lines()) expect(line, `${name}: ${line}`).not.toContain("…");
      }
    }
  }, 120_000);

  it("names the key that cuts rods to fit beside rods that are as cut", () => {
    const bench = new Bench(opened("cut-rods-off-middle"));
    expect(bench.text()).toMatch(/RODS +312\.0 mm, as cut \(c fits it\) +306\.0 mm, as cut \(c fits it\)/);
    expect(bench.press("c").text()).not.toContain("c fits it");
  });

  it("names rods that are cut so as the cause of unequal locks", () => {
    expect(new Bench(opened("cut-rods-off-middle")).text()).toContain(
      "balance     left inner 5.9° short of right: rods are cut with rack 3.0 mm off",
    );
    expect(new Bench(opened("cut-rods-off-middle"), 160, 50).text()).toContain(
      "the rack is 3.0 mm off its middle when straight, as the rods are cut",
    );
    expect(offsetRack().text()).toContain("straight: rack on its middle");
  });

  it("says toe so that it cannot be read as inches", () => {
    const bench = new Bench(opened("cut-rods-off-middle")).press("right");
    expect(bench.text()).toMatch(/Toe +L in 0\.10° +R in 0\.10°/);
  });

  it("shows a title whole where there is any room, else cut with dots, and always what is not saved", () => {
    const titled = (title: string) =>
      new Bench(opened("cut-rods-off-middle", (text) => text.replace(/^title: .*$/m, `title: ${title}`)))
        .press("right")
        .lines()[0];
    expect(titled("Short")).toMatch(/^ Short +new car, NOT SAVED, s saves$/);
    const long = "Single-seater, rods cut with the rack off its middle";
    expect(titled(long)).toMatch(new RegExp(`^ ${long} +NOT SAVED, s saves$`));
    expect(titled("a word ".repeat(20))).toMatch(/^ a word .* a\.\.\. +NOT SAVED$|^ a word .* word\.\.\. +NOT SAVED$/);
  });

  it("says on the help page where it stands, goes a page at a time and stops at its end", () => {
    const bench = offsetRack().press("?");
    expect(bench.lines().at(-2)).toMatch(/page 1 of \d+, more below: Space or ↓/);
    const first = bench.lines()[1];
    bench.press(...Array<string>(60).fill("pageDown"));
    expect(bench.lines().at(-2)).toContain("the end");
    expect(bench.text()).toContain("lock to lock");
    bench.press("up");
    expect(bench.lines().at(-2)).toContain("more below");
    expect(bench.press(...Array<string>(60).fill("pageUp")).lines()[1]).toBe(first);
  });

  it("keeps the columns of the longest values apart", () => {
    const bench = offsetRack().press("tab", "enter", "=-14 15/16", "enter");
    expect(bench.text()).toMatch(/> Tie-rod tab ahead +>L-14 15\/16 +R +-4 1\/2 /);
  });

  it("says what is read while a value is typed, and complains of what is not one", () => {
    const bench = offsetRack().press("enter", "=14 3/8");
    expect(bench.text()).toContain("= 14 3/8 in = 365.1 mm");
    bench.press("=14 3/");
    expect(bench.text()).toContain("not a length");
  });

  it("shows what the last change did beside each number", () => {
    expect(offsetRack().press("down", "right").text()).toMatch(/inner 31\.\d° -0\.\d .*inner 33\.\d° -0\.\d/);
  });

  it("says loudly that a car steers backwards, and where it does not reach", () => {
    expect(offsetRack().press("enter", "=4", "enter").text()).toContain("STEERS BACKWARDS");
    const short = offsetRack().press("c", "down", "down", "down", "tab", "enter", "=14 1/2", "enter");
    expect(short.text().replace(/\s+/g, " ")).toMatch(
      /DOES NOT REACH at rack full right, .*the left tie rod is [\d/ ]+ in too short/,
    );
  });

  it("says what size is needed where there is no room", () => {
    expect(offsetRack(60, 20).text().replace(/\s+/g, " ")).toContain(
      "60 columns by 20 rows. Make it at least 80 by 24.",
    );
  });

  it("changes nothing unseen there, but can be left", () => {
    const bench = offsetRack(60, 20);
    const before = bench.model.bench.car.text;
    expect(bench.press("right", "c", "enter").model.bench.car.text).toBe(before);
    expect(bench.model.focus.on).toBe("bench");
    expect(bench.press("q").effects).toEqual([{ do: "quit" }]);
  });

  it("shows that the list goes on beyond what is seen", () => {
    expect(offsetRack().text()).toMatch(/^↓ Rack +ahead +-5 1\/2/m);
    expect(
      offsetRack()
        .press(...Array<string>(9).fill("down"))
        .text(),
    ).toMatch(/^↑ /m);
  });

  it("says loudly that rods as cut no longer fit, though locks and Ackermann look well", () => {
    const bench = new Bench(opened("balanced-two-seater")).press("c", "down", ".", ".", ".");
    expect(bench.text()).not.toContain("STRAIGHT AHEAD");
    const said = bench.press("right").text();
    expect(said).toMatch(/WHEELS TOE (IN|OUT) 1\d\.\d° EACH STRAIGHT AHEAD: rods as cut do not fit \(c fits them\)/);
    // Out by an inch and kept as it was, the rod is an inch too short for the toe that is drawn: behind the king pin.
    expect(said).toContain("TOE OUT");
    expect(bench.press("c").text()).not.toContain("STRAIGHT AHEAD");
  });

  it("names what has no suspension", () => {
    const bench = new Bench(opened("fixed-kingpin-yard-kart"));
    expect(bench.text()).toContain("no suspension");
    expect(bench.press("i").text()).toContain("no suspension, so its wheels do not travel");
  });
});

describe("other terminals", () => {
  it("uses the room at 120 by 40 for both tables", () => {
    const bench = offsetRack(120, 40);
    const text = bench.text();
    expect(bench.lines().length).toBe(40);
    for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(120);
    expect(text).toContain("LOCK TO LOCK");
    expect(text).toContain("BUMP TO DROOP");
    expect(text).toMatch(/-2 in +31\.7° +25\.0° +34\.0° +76 %/);
  });

  it("draws the same frame in ASCII, column for column", () => {
    const bench = offsetRack();
    const frame = bench.text();
    const size = { columns: 80, rows: 24 };
    const unicode = cellsOf(frame, size, { color: "none", unicode: true });
    const ascii = cellsOf(frame, size, { color: "none", unicode: false });
    ascii.glyphs.forEach((glyph, at) => {
      expect(glyph).toMatch(/^[ -~]$/);
      const other = unicode.glyphs[at] ?? "";
      if (/^[ -~]$/.test(other)) expect(glyph).toBe(other);
      else expect(glyph).not.toBe(" ");
    });
  });
});
