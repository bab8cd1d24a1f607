import { afterAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { presetNames } from "../../src/files/presets.ts";
import {
  degrees,
  distance,
  dot,
  length,
  minus,
  point,
  radians,
  rotated,
  times,
  unit,
  type Vector,
} from "../oracles/vectors.ts";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const work = folder();
afterAll(work.remove);

async function sheet(...argv: readonly string[]) {
  const { code, out } = await run(["sheet", ...argv, "--json"]);
  expect(code).toBe(0);
  return JSON.parse(out);
}

/** A point of a file with plain numbers, x ahead, y out, z up. */
const at = ({ ahead, out, up }: { ahead: number; out: number; up: number }): Vector => point(ahead, out, up);

const offset = presetText("widened-offset-rack").replace('"8 5/8"', "8.625");
const file = work.put("offset.yaml", offset);
const drawn = parse(offset);
const corner = drawn.front.both;
const [hole, lower, upper, hub] = [
  at(corner["tie-rod"].outer),
  at(corner["lower-arm"].joint),
  at(corner["upper-arm"].joint),
  at(corner.wheel.center),
];
const [camber, toe] = [radians(corner.wheel.camber), radians(corner.wheel.toe)];
/** Camber tips the spindle's end down for top outward, toe-in points it forward. */
const spindle = point(Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber));

/** Sums of a few products of inches: twelve digits are left of them. */
const DIGITS = 10;

describe("where the tab's hole goes", () => {
  it("is as far from the king-pin line as the triangle of tape lengths is high (Heron)", async () => {
    const { tab } = await sheet(file);
    const [a, b, c] = [distance(hole, lower), distance(hole, upper), distance(lower, upper)];
    const s = (a + b + c) / 2;
    const high = (2 / c) * Math.sqrt(s * (s - a) * (s - b) * (s - c));
    expect(tab.left.toKingPin).toBeCloseTo(high, DIGITS);
    expect(tab.right.toKingPin).toBeCloseTo(high, DIGITS);
    expect(tab.left.toLower).toBeCloseTo(a, DIGITS);
    expect(tab.left.toUpper).toBeCloseTo(b, DIGITS);
  });

  it("is as far from the spindle's line and inside the rim as Pythagoras has it", async () => {
    const { tab } = await sheet(file);
    const away = minus(hole, hub);
    const along = dot(away, spindle);
    expect(tab.left.toSpindle).toBeCloseTo(Math.sqrt(dot(away, away) - along * along), DIGITS);
    expect(tab.left.insideRim).toBeCloseTo(-along - drawn.rim.width / 2, DIGITS);
    expect((await sheet(work.put("bare.yaml", offset.replace(/^rim:.*\n/m, "")))).tab.left.insideRim).toBeNull();
  });

  it("lies by its angles from level where its lengths put it", async () => {
    const { tab } = await sheet(file);
    const { toLower, rise, inboard } = tab.left;
    const level = toLower * Math.cos(radians(rise));
    const back = level * Math.cos(radians(inboard));
    const put = point(
      lower.x - back,
      lower.y - level * Math.sin(radians(inboard)),
      lower.z + toLower * Math.sin(radians(rise)),
    );
    expect(distance(put, hole)).toBeLessThan(1e-9);
  });

  it("has a plate whose edges are square to the king-pin line", async () => {
    const { tab } = await sheet(file);
    const [front, outer] = [radians(tab.left.frontHigher), radians(tab.left.outerHigher)];
    const line = minus(upper, lower);
    expect(dot(point(Math.cos(front), 0, Math.sin(front)), line)).toBeCloseTo(0, DIGITS);
    expect(dot(point(0, Math.cos(outer), Math.sin(outer)), line)).toBeCloseTo(0, DIGITS);
  });
});

describe("what is cut", () => {
  it("has rods from hole to eye, and arms from pivot to joint, left and right apart", async () => {
    const { rods, arms } = await sheet(file);
    const rack = drawn.steering.rack;
    const eye = (hand: number) => point(rack.ahead, rack["eye-to-eye"] / 2 + hand * rack.offset, rack.up);
    expect(rods.left.eyeToEye).toBeCloseTo(distance(hole, eye(1)), DIGITS);
    expect(rods.right.eyeToEye).toBeCloseTo(distance(hole, eye(-1)), DIGITS);
    const lengths = arms.left.map(({ length: each }: { length: number }) => each);
    const own = ["lower-arm", "upper-arm"].flatMap((arm) => {
      const [front, rear, joint] = ["front", "rear", "joint"].map((key) => at(corner[arm][key]));
      if (front === undefined || rear === undefined || joint === undefined) throw new Error(arm);
      return [distance(front, joint), distance(rear, joint), distance(front, rear)];
    });
    expect(lengths).toHaveLength(own.length);
    for (const [i, each] of own.entries()) expect(lengths[i]).toBeCloseTo(each, DIGITS);
  });

  it("has tubes that with what is screwed in make up the rod", async () => {
    const { rods } = await sheet("check-before-welding");
    // length = tube + 2 reaches − both engagements, by the file's own 2.44 in of reach.
    for (const wheel of ["left", "right"]) {
      const { eyeToEye, tube, outerEngagement, innerEngagement } = rods[wheel];
      expect(tube + 2 * 2.44 - outerEngagement - innerEngagement).toBeCloseTo(eyeToEye, DIGITS);
    }
    expect(rods.left.tube).toBe(11);
  });
});

describe("what proves it", () => {
  it("has turn plates as an upright shows that is turned about its king pin until the rod fits", async () => {
    // In mm, like the preset; king pins fixed to the frame, so that nothing but the upright turns.
    const text = presetText("fixed-kingpin-yard-kart").replace(
      /^steering:[\s\S]*/m,
      "steering: { mechanism: rack, rack: { ahead: -130, up: 150, eye-to-eye: 300, offset: 10, tilt: 2, travel: 40 } }\n",
    );
    const kart = parse(text);
    const { turnPlates, rods } = await sheet(work.put("kart.yaml", text));
    const { "king-pin": pin, "tie-rod": rod, wheel } = kart.front.both;
    const [low, high, tab] = [at(pin.lower), at(pin.upper), at(rod.outer)];
    const axis = unit(minus(high, low));
    const [lean, in_] = [radians(wheel.camber ?? 0), radians(wheel.toe ?? 0)];
    const spin = point(Math.sin(in_) * Math.cos(lean), Math.cos(in_) * Math.cos(lean), -Math.sin(lean));
    const heading = (turn: number) => {
      const a = rotated(spin, times(axis, turn));
      return Math.atan2(a.x, a.y);
    };
    const { rack } = kart.steering;
    const tilt = radians(rack.tilt);
    for (const row of turnPlates) {
      // The left eye stands half of eye to eye and the rack's place along the tilted rack from the offset middle.
      const along = rack["eye-to-eye"] / 2 + row.rack;
      const eye = point(rack.ahead, rack.offset + along * Math.cos(tilt), rack.up + along * Math.sin(tilt));
      const gap = (turn: number) => {
        const turned = rotated(minus(tab, low), times(axis, turn));
        return length(minus(point(low.x + turned.x, low.y + turned.y, low.z + turned.z), eye)) - rods.left.eyeToEye;
      };
      // The left wheel between 60 degrees each way: the rod's length rises or falls through it once.
      let [from, to] = [-1, 1];
      const sign = Math.sign(gap(from));
      expect(Math.sign(gap(to))).toBe(-sign);
      for (let i = 0; i < 80; i++) {
        const middle = (from + to) / 2;
        if (Math.sign(gap(middle)) === sign) from = middle;
        else to = middle;
      }
      // Steer is to the left; on the left wheel that is toe-out.
      expect(row.turned.left).toBeCloseTo(degrees(heading(0) - heading(from)), 7);
    }
  });

  it("has board readings that are sides of the triangle that the board makes", async () => {
    const { board, turnPlates, bump } = await sheet(file);
    expect(board).toBe(24);
    const { locks } = JSON.parse((await run(["steer", file, "--json"])).out);
    expect(turnPlates[0].turned.left).toBeCloseTo(locks.left.left.steer - -0.1, 6);
    for (const row of turnPlates) {
      const steer = radians(row.turned.left) + radians(-0.1);
      expect(row.board.left).toBeCloseTo(24 * (Math.sin(steer) - Math.sin(radians(-0.1))), 6);
    }
    const table = JSON.parse((await run(["bump", file, "--from=-3", "--to=3", "--step=1", "--json"])).out);
    expect(bump).toHaveLength(7);
    for (const [i, row] of table.rows.entries()) {
      expect(bump[i].travel).toBeCloseTo(row.travel, 12);
      const [now, was] = [radians(row.right.toe), radians(row.right.toe - row.right.toeChange)];
      expect(bump[i].board.right).toBeCloseTo(24 * (Math.sin(now) - Math.sin(was)), 9);
      expect(bump[i].acrossTyre.right).toBeCloseTo(2 * drawn.tire.radius * Math.sin(radians(row.right.toeChange)), 9);
    }
  });
});

describe("what is changed of the present car", () => {
  const welded = presetText("check-before-welding");
  const withRods = (left: string, right: string, tubes = "    cut: 11.935\n") =>
    welded
      .replace(
        "  both:\n    lower-arm:\n      front: { ahead: 5.5",
        `  left: { tie-rod: { length: "${left}" } }\n  right: { tie-rod: { length: "${right}" } }\n  both:\n    lower-arm:\n      front: { ahead: 5.5`,
      )
      .replace("  left:\n    cut: 11\n", tubes);
  const now = work.put("now.yaml", withRods("14 7/8", "15"));
  const next = work.put("next.yaml", withRods("15", "14 7/8"));

  it("says rods in turns of their tubes: 1/8 in by 20 threads an inch at both ends is 1 1/4 turns", async () => {
    const { changes } = await sheet(next, "--from", now);
    // 1/2-20 right-hand and left-hand: a turn is 2/20 in (ASME B1.1, quoted from memory).
    const turned = { turns: expect.closeTo(1.25, 9), turned: "tube", fits: true, newTube: null };
    // The outer ends have the right-hand thread.
    expect(changes).toEqual([
      { wheel: "left", by: expect.closeTo(1 / 8, 9), ...turned, longerClockwiseFrom: "outer" },
      { wheel: "right", by: expect.closeTo(-1 / 8, 9), ...turned, longerClockwiseFrom: "outer" },
    ]);
    const { out } = await run(["sheet", next, "--from", now]);
    const text = out.replace(/\s+/g, " ");
    const turns = "1 1/4 turns (1.25) of the tube";
    expect(text).toContain(`Left tie rod 1/8 in (0.125) longer: ${turns}, clockwise seen from its outer end`);
    expect(text).toContain(`Right tie rod 1/8 in (0.125) shorter: ${turns}, anticlockwise seen from its outer end`);
    expect(text).toContain("Nothing else changes.");
  });

  it("promises nothing of a tube whose length is not in the present car's file", async () => {
    const loose = work.put("loose.yaml", withRods("14 7/8", "15", ""));
    const { changes } = await sheet(next, "--from", loose);
    expect(changes[0]).toMatchObject({ turns: expect.closeTo(1.25, 9), fits: null });
    const { out } = await run(["sheet", next, "--from", loose]);
    expect(out.replace(/\s+/g, " ")).toContain("measure first how much thread is in");
  });

  it("counts an end on its bolt by its own pitch where both threads are of one hand", async () => {
    const same = (text: string) => text.replace("hand: left", "hand: right");
    const [before, after] = [
      work.put("same-now.yaml", same(withRods("14 7/8", "15"))),
      work.put("same-next.yaml", same(withRods("14.975", "15"))),
    ];
    const { changes } = await sheet(after, "--from", before);
    // 0.1 in by 20 threads an inch: two turns of the end.
    expect(changes[0]).toMatchObject({ turns: expect.closeTo(2, 9), turned: "outer end", fits: true });
    const { out } = await run(["sheet", after, "--from", before]);
    expect(out.replace(/\s+/g, " ")).toContain("2 turns (2.00) of the outer end, off its bolt");
    expect(out).toContain("Right tie rod: stays");
  });

  it("turns no tube that is thrown away: a new one, and what to set it to", async () => {
    const other = work.put("other.yaml", withRods("15", "15", "    cut: 11.935\n  right:\n    cut: 12\n"));
    const { changes } = await sheet(other, "--from", now);
    expect(changes.map((each: { newTube: number | null }) => each.newTube)).toEqual([null, expect.closeTo(12, 9)]);
    expect(changes[1].turns).toBeNull();
    const { out } = await run(["sheet", other, "--from", now]);
    expect(out.replace(/\s+/g, " ")).toContain(
      "Right tie rod: a new tube, 12 in (12.000) long; set it to 15 in (15.000) eye to eye",
    );
  });

  it("refuses to make up with thread for a tube that is too short", async () => {
    const far = work.put("far.yaml", withRods("16 1/2", "15"));
    const { changes } = await sheet(far, "--from", now);
    expect(changes[0].fits).toBe(false);
    const { out } = await run(["sheet", far, "--from", now]);
    expect(out.replace(/\s+/g, " ")).toContain("MORE THAN ITS THREADS ALLOW, make another tube");
  });

  it("says what else moves, and which way", async () => {
    const moved = work.put(
      "moved.yaml",
      withRods("14 7/8", "15").replace('up: "9 7/16"', "up: 9.3125").replace("camber: -0.5", "camber: -1"),
    );
    const { out } = await run(["sheet", moved, "--from", now]);
    expect(out).toMatch(/Rack, up +9 7\/16 in +9\.3125 in +1\/8 in lower/);
    expect(out).toMatch(/Camber, each side +-0\.5° +-1° +-0\.50°/);
  });
});

describe("what goes on the frame, and through the joints", () => {
  it("has the file's own places of pivots, mounts and king pins, for every example", async () => {
    const ends: Readonly<Record<string, readonly string[]>> = {
      "double-arm": ["lower-arm.front", "lower-arm.rear", "upper-arm.front", "upper-arm.rear"],
      "trailing-arms": ["lower-arm.pivot", "upper-arm.pivot"],
      strut: ["lower-arm.front", "lower-arm.rear", "strut.top"],
      "pivoting-beam": ["beam.pivot", "beam.brace"],
      "fixed-kingpin": ["king-pin.lower", "king-pin.upper"],
    };
    for (const name of presetNames()) {
      const text = presetText(name);
      const { front, shock } = parse(text);
      const { frame } = await sheet(name);
      const both = front.both ?? front.left;
      const drawnPlaces = (ends[front.linkage] ?? []).map((id) => {
        const [part = "", end = ""] = id.split(".");
        return both[part][end];
      });
      const eye = shock === undefined ? [] : [(shock.both ?? shock.left).top];
      expect(frame.left, name).toHaveLength(drawnPlaces.length + eye.length);
      for (const [i, { ahead, out, up }] of [...drawnPlaces, ...eye].entries()) {
        const plain = [ahead, out, up].map(Number);
        const told = [frame.left[i].ahead, frame.left[i].out, frame.left[i].up];
        // Fractions as written are for the reader of lengths to test.
        for (const [k, value] of plain.entries())
          if (Number.isFinite(value)) expect(told[k], name).toBeCloseTo(value, 9);
      }
    }
  });

  it("says where the signs of the rack's place go", async () => {
    const text = presetText("widened-offset-rack").replace("offset: -2.5,", "offset: -2.5, tilt: -2,");
    const { out } = await run(["sheet", work.put("tilted.yaml", text)]);
    expect(out).toMatch(/Rack offset +2 1\/2 in \(2\.500\) right of/);
    expect(out).toMatch(/Rack tilt +2\.0° left end down/);
    expect(out).toMatch(/Rack, ahead +5 1\/2 in \(5\.500\) behind the/);
  });

  it("tells how the bolts of rod ends stand, and threads that are given", async () => {
    const { out } = await run(["sheet", "check-before-welding"]);
    const text = out.replace(/\s+/g, " ");
    expect(text).toContain("lower arm, outer joint bolt upright, 5/8-18 shank, 34.0° to each side");
    expect(text).toContain("never leave out the safety washer");
    expect((await run(["sheet", "balanced-two-seater"])).out).not.toContain("DRILL AND BOLT");
  });
});

describe("the places that are read to prove it", () => {
  it("are marks of a tape or a protractor, the stops, and straight ahead, which reads nothing", async () => {
    for (const [name, mark] of [
      ["balanced-two-seater", 0.5],
      ["cut-rods-off-middle", 5],
      ["fixed-kingpin-yard-kart", 5],
    ] as const) {
      const { turnPlates, bump } = await sheet(name);
      const places = turnPlates.map((row: { rack?: number; column?: number }) => row.rack ?? row.column);
      expect(places).toEqual(places.toSorted((a: number, b: number) => a - b));
      const straight = turnPlates.filter(
        (row: { turned: { left: number; right: number } }) =>
          Math.abs(row.turned.left) + Math.abs(row.turned.right) < 1e-9,
      );
      expect(straight, name).toHaveLength(1);
      const odd = places
        .slice(1, -1)
        .filter((place: number) => Math.abs(place / mark - Math.round(place / mark)) > 1e-9);
      // Only straight ahead may lie between two marks.
      expect(odd.length, name).toBeLessThanOrEqual(name === "cut-rods-off-middle" ? 1 : 0);
      if (bump.length > 0) expect(bump.filter((row: { travel: number }) => row.travel === 0)).toHaveLength(1);
    }
  });
});

describe("what is not given", () => {
  it("is asked for by its keys and made up nowhere", async () => {
    const { lacks } = await sheet(file);
    const keys = lacks.flatMap((each: { keys: string[] }) => each.keys);
    expect(keys).toEqual([
      "tubes: tie-rod",
      "hardware: walls: tie-rod",
      "tubes: lower-arm",
      "hardware: walls: lower-arm",
      "tubes: upper-arm",
      "hardware: walls: upper-arm",
      "threads",
      "hardware: bolts: tie-rod: outer",
      "hardware: bolts: tie-rod: inner",
      "hardware: tab: thickness",
      "hardware: tab: hole",
      "hardware: tab: end-radius",
      "hardware: tab: reach",
      "hardware: tab: foot",
      "hardware: rack: thickness",
      "hardware: rack: holes",
    ]);
    expect((await sheet("check-before-welding")).lacks).toEqual([
      {
        what: "The tab's plate",
        keys: ["hardware: tab: end-radius (right)", "hardware: tab: reach (right)", "hardware: tab: foot (right)"],
      },
    ]);
  });
});

describe("every preset's sheet", () => {
  it.each(presetNames())(
    "%s: says no number that is none, stays within 78 columns, and is the same bytes twice",
    async (name) => {
      for (const form of [[], ["--units", "mm"], ["--markdown"], ["--html"]]) {
        const { code, out } = await run(["sheet", name, ...form]);
        expect(code).toBe(0);
        expect(out).not.toMatch(/NaN|undefined|null|Infinity|\[object/);
        expect(out).toContain("This is geometry, not a strength check.");
        expect(out).not.toMatch(/(^|[^\w.])-0(\.0+)?(?![\d./])/);
        if (form.length === 0 || form[0] === "--units")
          for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(78);
        if (form[0] === "--html") expect((await run(["sheet", name, ...form])).out).toBe(out);
      }
    },
  );

  it("keeps what a file's words would do to a page out of it", async () => {
    const nasty = work.put(
      "nasty.yaml",
      offset.replace(/^title:.*$/m, `title: '<script>alert(1)</script> "a" & b'\nnotes: "<img src=x>"`),
    );
    const { out } = await run(["sheet", nasty, "--html"]);
    expect(out).not.toMatch(/<script|<img/);
    expect(out).toContain("&lt;script&gt;alert(1)&lt;/script&gt; &quot;a&quot; &amp; b");
  });
});

describe("a place that misses the goals of the file's own search", () => {
  const goalOf = (missed: readonly { goal: string }[]) => missed.map(({ goal }) => goal).sort();
  const flat = (out: string) => out.replace(/\s+/g, " ");

  it("is said before anything is cut and again where it is still to be decided, with the steer table's own numbers", async () => {
    const { out } = await run(["sheet", "tab-to-place"]);
    const [front = "", rest = ""] = out.split("CUT: TIE RODS");
    const [, open = ""] = rest.split("STILL TO BE DECIDED");
    const { rows } = JSON.parse((await run(["steer", "tab-to-place", "--json"])).out);
    const locks = [rows[0], rows.at(-1)];
    const inner = Math.min(...locks.map((row) => row.inner));
    const ackermann = Math.min(...locks.map((row) => row.ackermann));
    for (const part of [front, open]) {
      expect(flat(part)).toContain("Mind: This place misses 3 of the goals in the file's find:");
      expect(flat(part)).toContain(`want Smaller inner lock at least 30.0°, is ${inner.toFixed(1)}°`);
      expect(flat(part)).toContain(`want Ackermann 60 % to 110 %, is ${ackermann.toFixed(0)} %`);
      expect(flat(part)).toContain("nice Larger turning circle at most 30.0 ft, is");
      expect(flat(part)).toContain("Run rackwright find first");
    }
    expect(goalOf((await sheet("tab-to-place")).missed)).toEqual(["ackermann", "inner-lock", "turning-circle"]);
  });

  it("is none where all musts and wants are met: what would only be nice stops nobody", async () => {
    const text = presetText("tab-to-place").replace("least: 60, most: 110", "least: 10, most: 110");
    const met = work.put("met.yaml", text.replace("inner-lock: 30 ", "inner-lock: 20 "));
    expect((await sheet(met)).missed).toEqual([]);
    expect((await run(["sheet", met])).out).not.toContain("goals in the file's find");
    const must = work.put("must.yaml", text.replace("must: { rod-to-arm: 30 }", "must: { rod-to-arm: 60 }"));
    expect(goalOf((await sheet(must)).missed)).toEqual(["inner-lock", "rod-to-arm", "turning-circle"]);
  });

  it("is not held to be good where the file says too little to judge it: the sheet asks for what is lacking", async () => {
    const text = presetText("tab-to-place").replace("rod-to-arm: 30 }", "rod-to-arm: 30, clearance: 1/2 }");
    const untold = work.put("untold.yaml", text);
    expect((await sheet(untold)).notJudged).toEqual([{ goal: "clearance", needs: "tubes" }]);
    const [, open = ""] = (await run(["sheet", untold])).out.split("STILL TO BE DECIDED");
    expect(flat(open)).toContain("Judging the goal clearance tubes");
    expect((await sheet("tab-to-place")).notJudged).toEqual([]);
  });

  it("is none of a car that asks for nothing", async () => {
    expect((await sheet("balanced-two-seater")).missed).toEqual([]);
  });
});

describe("the plots", () => {
  /** What a coordinate stands for, by two marks of its axis and their words. */
  function reader(marks: readonly (readonly [place: number, value: number])[]) {
    const [[place, value] = [0, 0], [other, more] = [1, 1]] = [marks[0], marks.at(-1)];
    return (coordinate: number) => value + ((coordinate - place) / (other - place)) * (more - value);
  }

  it("read back by the marks on their axes as the steer table has it", async () => {
    const { out } = await run(["sheet", file, "--html"]);
    const svg = out.match(/<svg.*?<\/svg>/s)?.[0] ?? "";
    const texts = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" text-anchor="(\w+)">(-?[\d.]+)<\/text>/g)];
    const across = texts
      .filter(([, , , anchor]) => anchor === "middle")
      .map(([, x, , , words]) => [Number(x), Number(words)] as const);
    // The words of a mark stand 4 below it.
    const up = texts
      .filter(([, , , anchor]) => anchor === "end")
      .map(([, , y, , words]) => [Number(y) - 4, Number(words)] as const);
    const [x, y] = [reader(across), reader(up)];
    const paths = [...svg.matchAll(/<path d="(M[^"h]+)"/g)].map(([, d = ""]) =>
      d
        .split(/[ML]/)
        .filter((each) => each !== "")
        .map((each) => each.split(" ").map(Number)),
    );
    expect(paths).toHaveLength(2);
    const { rows } = JSON.parse((await run(["steer", file, "--json"])).out);
    for (const [i, wheel] of (["left", "right"] as const).entries())
      for (const [end, row] of [
        [0, rows[0]],
        [-1, rows.at(-1)],
      ] as const) {
        const [px = 0, py = 0] = paths[i]?.at(end) ?? [];
        // Coordinates are rounded to a tenth of a dot: of 568 dots for 4 in, of 224 for 80 degrees.
        expect(x(px)).toBeCloseTo(row.rack, 2);
        expect(Math.abs(y(py) - (row[wheel].steer - (wheel === "left" ? -0.1 : 0.1)))).toBeLessThan(0.1);
      }
  });
});
