import { describe, expect, it } from "vitest";
import { movableOn } from "../../src/screen/aims.ts";
import { roomsOf } from "../../src/solve/find/room.ts";
import { goalNames } from "../../src/vehicle/sections/goals.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { Bench, opened } from "./support/bench.tsx";

const degree = Math.PI / 180;

/** Brings the search that was asked for last as far as its first report: what it aims at is known then. */
async function begun(bench: Bench): Promise<Bench> {
  const asked = bench.effects.findLast((effect) => effect.do === "work");
  if (asked?.do !== "work") throw new Error("no search was asked for");
  const { job, key } = asked;
  job.step(0);
  while (job.best() === null) await new Promise((next) => setTimeout(next, 5));
  return bench.send({ is: "worked", key, progress: job.progress(), done: false, result: job.best() });
}

/** The list of what is looked for and what may move. */
async function onList(preset: string, columns = 80, rows = 24): Promise<Bench> {
  const bench = new Bench(opened(preset), columns, rows).press("8", "space", "space", "space", "space");
  return (await begun(bench)).press("a");
}

/** Down to the line that begins so. */
function to(bench: Bench, words: string): Bench {
  bench.press(...Array.from({ length: 30 }, () => "up"));
  for (let i = 0; i < 40 && !bench.text().includes(`> ${words}`); i++) bench.press("down");
  expect(bench.text()).toContain(`> ${words}`);
  return bench;
}

const flat = (bench: Bench) => bench.text().replace(/\s+/g, " ");
const find = (bench: Bench) => bench.model.bench.car.sections.find;

describe("the list of what is looked for and what may move", () => {
  it("is told of by the page, and shows the file's own goals and rooms", async () => {
    const bench = new Bench(opened("tab-to-place"), 80, 24).press("8", "space", "space", "space", "space");
    expect(bench.text()).toContain("a goals, room");
    await begun(bench);
    bench.press("a");
    expect(bench.text()).toMatch(/must\s+Least rod-to-arm angle\s+at least 30\.0°\s+yours/);
    expect(bench.text()).toMatch(/nice\s+Larger turning circle\s+at most 30\.0 ft\s+yours/);
    expect(bench.text()).toMatch(/Rack, up\s+1\/2 in each way, now 9 1\/8 in\s+yours/);
    expect(bench.press("escape").model.focus.on).toBe("bench");
  });

  it("adds a goal by its name, its value and how hard, as one change that u takes back; the usual ones stay", async () => {
    const bench = await onList("widened-offset-rack");
    const before = bench.model.bench.car.text;
    expect(bench.text()).toMatch(/want\s+Worst toe change\s+at most 1\/8 in\s+usual/);
    to(bench, "+ another goal").press("enter", "=smaller");
    expect(bench.text()).toContain("> Smaller inner lock");
    bench.press("enter");
    expect(flat(bench)).toContain("This car as it stands: 31.8°");
    bench.press("=3x", "enter");
    expect(flat(bench)).toContain("not an angle");
    bench.press("=34");
    expect(bench.text()).toContain("= Smaller inner lock at least 34.0°");
    bench.press("enter", "up", "enter");
    expect(bench.text()).toMatch(/> must\s+Smaller inner lock\s+at least 34\.0°\s+yours/);
    expect(find(bench)?.must?.["inner-lock"]).toMatchObject({ most: null, over: 1 });
    expect(find(bench)?.must?.["inner-lock"]?.least).toBeCloseTo(34 * degree, 12);
    expect(find(bench)?.want?.["toe-change"]?.most).toBeCloseTo(inch / 8, 9);
    expect(flat(bench)).toContain("The usual goals now stand in the file beside it");
    expect(bench.model.bench.undo).toHaveLength(1);
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(before);
    expect(bench.model.focus.on).toBe("aims");
  });

  it("takes a whole line as the command line does, for goals and for rooms", async () => {
    const bench = to(await onList("tab-to-place"), "+ another goal").press("enter", "=want bounce-steer 0.5");
    expect(flat(bench)).toContain("= want: Worst bounce steer at most 0.5°. Enter takes it.");
    bench.press("enter");
    expect(find(bench)?.want?.["bounce-steer"]?.most).toBeCloseTo(0.5 * degree, 9);
    expect(find(bench)?.must?.["rod-to-arm"]).not.toBeNull();
    await begun(bench);
    to(bench, "+ something else").press("enter", "=move rack.ahead 3/4", "enter");
    expect(find(bench)?.move?.["rack.ahead"]?.within).toBeCloseTo(0.75 * inch, 9);
    await begun(bench);
    to(bench, "+ another goal").press("enter", "=must rod-to-am 30", "enter");
    expect(flat(bench)).toContain('Did you mean "rod-to-arm"?');
  });

  it("changes what is there: value, level, room, sides, rods and steps, and keeps what is left empty", async () => {
    const bench = await onList("tab-to-place");
    const before = bench.model.bench.car;
    to(bench, "must  Least rod-to-arm angle").press("enter", "=33", "enter", "down", "enter");
    expect(find(bench)?.must?.["rod-to-arm"] ?? null).toBeNull();
    expect(find(bench)?.want?.["rod-to-arm"]?.least).toBeCloseTo(33 * degree, 9);
    await begun(bench);
    to(bench, "Tie-rod tab, up").press("enter", "enter", "down", "enter");
    const was = before.sections.find?.move?.["tie-rod.outer.up"];
    expect(find(bench)?.move?.["tie-rod.outer.up"]).toEqual({ ...was, sides: "each" });
    to(bench, "Rack, up").press("enter", "=9 to 9 1/2", "enter");
    expect(find(bench)?.move?.["rack.up"]).toEqual({ from: 228.6, to: 241.3, within: null, sides: null });
    to(bench, "Tie rods").press("enter");
    expect(find(bench)?.rods).toBe("keep");
    to(bench, "Moves go").press("enter", "=1/8", "enter");
    expect(find(bench)?.step).toBeCloseTo(inch / 8, 9);
    expect(bench.model.bench.car.text).toContain("# across the tyre, over the whole travel");
    bench.press("u", "u", "u", "u", "u");
    expect(bench.model.bench.car.text).toBe(before.text);
  });

  it("removes what is the builder's own, lets a part stay, and says why a limit stays", async () => {
    const bench = await onList("tab-to-place");
    to(bench, "nice  Larger turning circle").press("d");
    expect(find(bench)?.nice ?? null).toBeNull();
    to(bench, "Rack, up").press("d");
    expect(find(bench)?.move?.["rack.up"] ?? null).toBeNull();
    const usual = await onList("widened-offset-rack");
    to(usual, "must  Least rod-to-arm angle").press("d");
    expect(flat(usual)).toContain("a limit that every car must keep");
    expect(find(usual)).toBeNull();
    to(usual, "Tie-rod tab, up").press("d");
    expect(Object.keys(roomsOf(usual.model.bench.car))).toEqual(["tie-rod.outer.ahead", "tie-rod.outer.out"]);
    await begun(usual);
    to(usual, "want  Worst bounce steer").press("d");
    expect(find(usual)?.want?.["bounce-steer"] ?? null).toBeNull();
    expect(find(usual)?.want?.["toe-change"]?.most).toBeCloseTo(inch / 8, 9);
  });

  it("says that the usual goals hold again once the last of the builder's own is gone", async () => {
    const bench = await onList("strut-hatchback-corners");
    to(bench, "+ another goal").press("enter", "=must rod-to-arm 25", "enter");
    await begun(bench);
    while (find(bench) !== null) {
      while (!/> (must|want|nice) .* yours/.test(bench.text())) bench.press("up");
      bench.press("d");
      await begun(bench);
    }
    expect(flat(bench)).toContain("None of yours is left: the usual goals hold again.");
  });

  it("says so at once where nothing in the list is about what is typed, and not of a line that is begun", async () => {
    const bench = to(await onList("tab-to-place"), "+ another goal").press("enter", "=zzz");
    expect(flat(bench)).toContain(
      "Nothing in the list is about that: type another word, or Ctrl-U for the whole list.",
    );
    for (const begun of ["m", "mu", "wa", "nice", "circle"])
      expect(flat(bench.press(`=${begun}`)), begun).not.toContain("Nothing in the list");
  });

  it("fits every window, whatever is asked", async () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
    ] as const) {
      const bench = await onList("tab-to-place", columns, rows);
      const fits = () => {
        expect(bench.lines().length).toBeLessThanOrEqual(rows);
        for (const line of bench.lines()) expect(line.length, line).toBeLessThanOrEqual(columns);
        expect(bench.text()).not.toMatch(/NaN|undefined|null|Infinity/);
      };
      fits();
      const { cursor } = to(bench, "+ another goal").model.focus as { cursor: number };
      for (const name of goalNames) {
        bench.press("enter", `=${name}`);
        fits();
        bench.press("enter", "=40 to 60");
        fits();
        bench.press("escape");
        expect(bench.model.focus).toEqual({ on: "aims", cursor });
      }
      to(bench, "+ something else").press("enter");
      for (const { pair } of movableOn(bench.model.bench.car)) {
        bench.press(`=${pair}`);
        fits();
      }
      bench.press("=no such part");
      expect(flat(bench)).toContain("Nothing that can move is about that");
      bench.press("enter");
      expect(flat(bench)).toContain("Nothing that can move is about that");
      fits();
    }
  });
});
