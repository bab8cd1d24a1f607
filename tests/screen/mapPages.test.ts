import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it, vi } from "vitest";
import type { Effect } from "../../src/screen/turn.ts";
import { indexOf } from "../../src/vehicle/quantities.ts";
import { openTerminal } from "../terminal/support/terminal.ts";
import { Bench, opened } from "./support/bench.tsx";

const inch = 25.4;
const [leftOut, leftAhead, rightOut] = [
  "left.tie-rod.outer.out",
  "left.tie-rod.outer.ahead",
  "right.tie-rod.outer.out",
].map(indexOf);

/** Does the long work that was asked for last, once it is loaded. */
async function worked(bench: Bench, pieces = Number.POSITIVE_INFINITY): Promise<Bench> {
  const asked = bench.effects.filter((each): each is Effect & { do: "work" } => each.do === "work").at(-1);
  if (asked === undefined) throw new Error("no work was asked for");
  const { job, key } = asked;
  // Nothing is done before the job is loaded.
  await vi.waitFor(() => expect(job.best()).not.toBeNull(), { timeout: 30_000 });
  let done = false;
  for (let i = 0; i < pieces && !done; i++) done = job.step(1);
  return bench.send({ is: "worked", key, progress: job.progress(), done, result: job.best() });
}

const tabPage = (preset: string, columns = 80, rows = 24) =>
  new Bench(opened(preset), columns, rows).press("6", "space");

describe("where the tab may go", () => {
  it("is drawn about the tab, whole after a quarter of the work, its no-go areas told in words", async () => {
    for (const [columns, rows] of [
      [80, 24],
      [120, 40],
    ] as const) {
      const bench = await worked(tabPage("balanced-two-seater", columns, rows));
      const text = bench.text();
      expect(bench.lines().length).toBe(rows);
      for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(columns);
      expect(text).toContain("Total score, both tabs (Tab)");
      expect(text).toMatch(/x{5}.*!+.*█/);
      expect(text).toContain("no go: x does not close  ! dead point");
      expect(text).toContain("as is, as is");
      expect(text).not.toMatch(/NaN|undefined|null/);
    }
  });

  it("has the cursor's numbers beside it: those that the car has once the tab is there", async () => {
    const bench = await worked(tabPage("balanced-two-seater"));
    bench.press("right", "right", "up");
    const seen = /Acker +(\S+ %) +(\S+ %)/.exec(bench.text())?.slice(1);
    expect(bench.text()).toContain("1/4 in out, 1/4 in ahead");
    bench.press("enter");
    const { study } = bench.model.bench;
    if ("refused" in study) throw new Error(study.refused);
    const own = [study.locks.left, study.locks.right].map((row) => `${(row?.ackermann ?? 0).toFixed(1)} %`);
    expect(seen).toEqual(own);
  });

  it("moves both tabs by Enter as one change that u takes back, and is then about the new place", async () => {
    const bench = await worked(tabPage("balanced-two-seater"));
    const { text } = bench.model.bench.car;
    const [out, ahead] = [bench.value(leftOut), bench.value(leftAhead)];
    bench.press("right", "up", "enter");
    expect(bench.value(leftOut)).toBeCloseTo(out + inch / 8, 6);
    expect(bench.value(rightOut)).toBeCloseTo(out + inch / 8, 6);
    expect(bench.value(leftAhead)).toBeCloseTo(ahead + inch / 4, 6);
    expect(bench.model.bench.undo.length).toBe(1);
    expect(bench.text()).toContain("Tie-rod tab, both sides: moved to 22 1/2 in out");
    await worked(bench);
    expect(bench.text()).toContain("as is, as is");
    bench.press("u");
    expect(bench.model.bench.car.text).toBe(text);
  });

  it("moves the side that Tab says alone, and up with z; where the tab is, Enter types as ever", async () => {
    const bench = await worked(tabPage("balanced-two-seater").press("tab"));
    const out = bench.value(rightOut);
    bench.press("right", "enter");
    expect([bench.value(leftOut) > out, bench.value(rightOut)]).toEqual([true, out]);
    const up = indexOf("left.tie-rod.outer.up");
    const before = [bench.value(up), bench.value(leftAhead)];
    bench.press("z", "down", "enter");
    expect(bench.value(up)).toBeCloseTo(before[0] - inch / 4, 6);
    expect(bench.value(leftAhead)).toBe(before[1]);
    expect(bench.press("enter").model.focus.on).toBe("entry");
  });

  it("takes the step's size, and any number of the car without being worked out anew", async () => {
    const bench = await worked(tabPage("balanced-two-seater"));
    const jobs = () => bench.effects.filter((each) => each.do === "work").length;
    const asked = jobs();
    expect(bench.press("n").text()).toContain("─ Left lock, inner wheel ─");
    expect(jobs()).toBe(asked);
    bench.press(".");
    expect(jobs()).toBe(asked + 1);
    await worked(bench);
    expect(bench.press("right").text()).toContain("1/4 in out, as is");
  });

  it("can be stopped, and keeps what is done", async () => {
    const bench = await worked(tabPage("balanced-two-seater"), 70);
    expect(bench.text()).toMatch(/Total score \(\d+ %, Esc stops\)/);
    bench.press("escape");
    expect(bench.text()).toContain("stopped");
    expect(bench.text()).toMatch(/x{5}/);
  });

  it("says why there is none of a front end that does not go together", () => {
    const bench = new Bench(opened("widened-offset-rack", (text) => text.replace("# length: 16 ", "length: 6 "))).press(
      "6",
      "space",
    );
    expect("refused" in bench.model.bench.study).toBe(true);
    for (const key of ["space", "space", "right", "n", "z", "enter"])
      expect(bench.press(key).text()).not.toMatch(/NaN|undefined/);
  });
});

describe("what to hold tightly", () => {
  it("ranks the car's sizes, says what one does in a sentence, and looks at one number alone", async () => {
    const bench = await worked(new Bench(opened("balanced-two-seater")).press("6", "space", "space"));
    expect(bench.text()).toMatch(/> Rack at straight ahead +1\/16 in +261 % inner locks L-R \+2\.61°/);
    expect(bench.text().replace(/\s+/g, " ")).toContain(
      "Inner locks, left less right, +2.61°. 261 % of what a target allows: HOLD TIGHTLY",
    );
    for (const line of bench.lines()) expect(line.length).toBeLessThanOrEqual(80);
    bench.press("n");
    expect(bench.text()).toContain("Left lock, inner wheel");
    expect(bench.text()).toMatch(/> Rack at straight ahead +1\/16 in +\+1\.33° +-1\.28°/);
    expect(bench.press("down").text()).toMatch(/> Rack travel, right/);
  });
});

describe("the tab's map in a pseudo-terminal", () => {
  const program = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), "tab-map-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("moves the tab by Enter, takes it back by u, and saves what was moved", async () => {
    const path = join(folder, "moved.yaml");
    const bench = openTerminal([program, "balanced-two-seater"], { env: { XDG_STATE_HOME: folder, HOME: folder } });
    const shows = (words: string) => bench.until(words, (text) => text.includes(words));
    await shows("? help");
    bench.type("6");
    await shows("Steer, left wheel");
    bench.type(" ");
    await shows("Total score");
    await bench.until("the end of the work", (text) => !text.includes("Esc stops") && text.includes("* best"));
    bench.type("\x1b[C\x1b[C");
    await shows("1/4 in out, as is");
    bench.type("\r");
    await shows("moved to 22 5/8 in out");
    bench.type("u");
    await shows("Taken back: Tie-rod tab");
    bench.type("r");
    await shows("Done again: Tie-rod tab");
    bench.type("s");
    await shows("Save as");
    bench.type(`${path}\r`);
    await shows("moved.yaml, saved");
    bench.type("q");
    expect(await bench.ended()).toBe(0);
    expect(readFileSync(path, "utf8")).toMatch(/outer: \{ ahead: -4\.75, out: "?22(\.625| 5\/8)"?, up: 9\.5 \}/);
  });
});
