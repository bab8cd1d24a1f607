import { isMap, type YAMLMap } from "yaml";
import { linkageOf } from "../linkages.ts";
import { nearest } from "../nearest.ts";
import { indexOf } from "../quantities.ts";
import { safe } from "../shown.ts";
import { degree } from "../value.ts";
import type { Wheel } from "../words.ts";
import { below, complain, lineOf, mappingOf, type Part, rowsOf, type Sheet, textOf } from "./nodes.ts";
import { pointNames } from "./points.ts";
import type { CarReading } from "./reading.ts";
import type { Gauge } from "./tolerances.ts";
import { angleAt, inputOf, lengthAt, placeAt, type Range, toeAt, toleranceAt } from "./values.ts";

/** What gauges show at all: beyond these a reading is a slip of the pen. */
const turned: Range = [0, 80 * degree];
const toes: Range = [-10 * degree, 10 * degree];
const leans: Range = [-30 * degree, 30 * degree];
const travels: Range = [-800, 800];
const rods: Range = [20, 2500];
const tapes: Range = [1, 10000];
const racks = 500;
const columns = 1000 * degree;

const wheels: readonly Wheel[] = ["left", "right"];

/** One of these words at a key. */
function wordAt<W extends string>(sheet: Sheet, part: Part, words: readonly W[]): W | null {
  const text = textOf(sheet, part)?.toLowerCase() ?? null;
  if (text === null) return null;
  const found = words.find((word) => word === text) ?? null;
  if (found === null) complain(sheet, part, `found "${safe(text)}", expected ${words.join(" or ")}`);
  return found;
}

/** The word that a row has to have. */
function neededWord<W extends string>(
  sheet: Sheet,
  map: YAMLMap,
  row: Part,
  key: string,
  words: readonly W[],
): W | null {
  const part = below(sheet, map, key, row.name);
  if (part !== null) return wordAt(sheet, part, words);
  complain(sheet, row, `missing: ${key}: ${words.join(" or ")}`);
  return null;
}

function turnRow(sheet: Sheet, row: Part, tolerance: number, board: number | null): readonly CarReading[] {
  const input = inputOf(sheet);
  const map = mappingOf(sheet, row, ["turn", "left", "right", "inner", "outer", input, "at", "tolerance"]);
  if (map === null) return [];
  const turn = neededWord(sheet, map, row, "turn", wheels);
  if (turn === null) return [];
  const read = (key: string) => {
    const part = below(sheet, map, key, row.name);
    return part === null ? null : angleAt(sheet, part, turned, board);
  };
  const [inner, outer] = [read("inner"), read("outer")];
  const other = turn === "left" ? "right" : "left";
  const both = { [turn]: inner ?? read(turn), [other]: outer ?? read(other) };
  const [left, right] = [both.left ?? null, both.right ?? null];
  const at = below(sheet, map, "at", row.name);
  const place = below(sheet, map, input, row.name);
  const lock = at === null ? null : wordAt(sheet, at, ["lock"]);
  const stood = lock ?? (place === null ? null : placeAt(sheet, place, input, input === "rack" ? racks : columns));
  if (left === null && right === null)
    complain(sheet, row, "missing: what a turn plate reads: inner and outer, or left and right");
  else if (stood === null && (left === null || right === null))
    complain(sheet, row, `missing: the other wheel's turn, or ${input}: where it stood, or at: lock`);
  return [
    {
      kind: "turn",
      turn,
      left,
      right,
      stood,
      line: lineOf(sheet, row),
      tolerance: toleranceAt(sheet, map, row.name, "turn-plates", tolerance),
    },
  ];
}

function bumpRow(sheet: Sheet, row: Part, tolerance: number, board: number | null): readonly CarReading[] {
  const map = mappingOf(sheet, row, ["wheel", "travel", "toe", "tolerance"]);
  if (map === null) return [];
  const wheel = neededWord(sheet, map, row, "wheel", wheels);
  const [travelPart, toePart] = [below(sheet, map, "travel", row.name), below(sheet, map, "toe", row.name)];
  if (travelPart === null) complain(sheet, row, "missing: travel: how far the wheel is up, down negative");
  if (toePart === null) complain(sheet, row, "missing: toe: how much it changed from ride height, toe-in positive");
  const travel = travelPart === null ? null : lengthAt(sheet, travelPart, travels);
  const toe = toePart === null ? null : angleAt(sheet, toePart, toes, board);
  if (wheel === null || travel === null || toe === null) return [];
  return [
    {
      kind: "bump",
      wheel,
      travel,
      toe,
      line: lineOf(sheet, row),
      tolerance: toleranceAt(sheet, map, row.name, "bump-gauge", tolerance),
    },
  ];
}

function lengthRow(sheet: Sheet, row: Part, tolerance: number): readonly CarReading[] {
  const map = mappingOf(sheet, row, ["from", "to", "is", "tolerance"]);
  if (map === null) return [];
  const [from, to] = ["from", "to"].map((key) => pointAt(sheet, map, row, key));
  const is = below(sheet, map, "is", row.name);
  if (is === null) complain(sheet, row, "missing: is: the length, eye to eye");
  const value = is === null ? null : lengthAt(sheet, is, tapes);
  if (from == null || to == null || value === null) return [];
  if (from === to) complain(sheet, row, `found ${from} twice, expected two points`);
  return [
    {
      kind: "between",
      from,
      to,
      value,
      line: lineOf(sheet, row),
      tolerance: toleranceAt(sheet, map, row.name, "lengths", tolerance),
    },
  ];
}

function pointAt(sheet: Sheet, map: YAMLMap, row: Part, key: string): string | null {
  const part = below(sheet, map, key, row.name);
  if (part === null) complain(sheet, row, `missing: ${key}: a point, such as left.tie-rod.outer`);
  const name = part === null ? null : textOf(sheet, part);
  if (part === null || name === null) return null;
  const known = pointNames(sheet.car);
  if (known.includes(name)) return name;
  const near = nearest(name, known);
  complain(
    sheet,
    part,
    `"${safe(name)}" is no point of this car: ${near === null ? `there are ${known.join(", ")}` : `did you mean "${near}"?`}`,
  );
  return null;
}

type ReadRow = (sheet: Sheet, row: Part, tolerance: number, board: number | null) => readonly CarReading[];

function listed(gauge: Gauge, hasBoard: boolean, row: ReadRow): ReadSection {
  return (sheet, part) => {
    const map = mappingOf(sheet, part, ["tolerance", ...(hasBoard ? ["board"] : []), "rows"]);
    if (map === null) return [];
    const rows = below(sheet, map, "rows", part.name);
    if (rows === null) complain(sheet, part, "missing: rows: the readings, each on a line that begins with a hyphen");
    const boardPart = hasBoard ? below(sheet, map, "board", part.name) : null;
    const board = boardPart === null ? null : lengthAt(sheet, boardPart, [50, 5000]);
    const tolerance = toleranceAt(sheet, map, part.name, gauge);
    return rows === null ? [] : rowsOf(sheet, rows).flatMap((each) => row(sheet, each, tolerance, board));
  };
}

/** One reading for each wheel. */
function sided(gauge: "camber" | "caster" | "rods"): ReadSection {
  return (sheet, part) => {
    const map = mappingOf(sheet, part, ["left", "right", "tolerance"]);
    if (map === null) return [];
    const tolerance = toleranceAt(sheet, map, part.name, gauge);
    return wheels.flatMap((wheel): readonly CarReading[] => {
      const each = below(sheet, map, wheel, part.name);
      if (each === null) return [];
      const value = gauge === "rods" ? lengthAt(sheet, each, rods) : angleAt(sheet, each, leans);
      if (value === null) return [];
      return [{ kind: gauge === "rods" ? "rod" : gauge, wheel, value, tolerance, line: lineOf(sheet, each) }];
    });
  };
}

/** One reading, alone or with its tolerance: `toe: 1/8 total`, or `toe: { reads: 1/8 total, tolerance: 0.1 }`. */
function single(
  gauge: "toe" | "straight-ahead",
  kind: "toe" | "straight",
  read: (sheet: Sheet, part: Part) => number | null,
): ReadSection {
  return (sheet, part) => {
    const map = isMap(part.node) ? mappingOf(sheet, part, ["reads", "tolerance"]) : null;
    const reads = map === null ? part : below(sheet, map, "reads", part.name);
    if (reads === null) complain(sheet, part, "missing: reads: what was read");
    const value = reads === null ? null : read(sheet, reads);
    if (value === null) return [];
    return [{ kind, value, tolerance: toleranceAt(sheet, map, part.name, gauge), line: lineOf(sheet, part) }];
  };
}

export type ReadSection = (sheet: Sheet, part: Part) => readonly CarReading[];

const radius = indexOf("tire.radius");

/** What a file of readings may hold beside its title, units and what the car was built to. */
export const gaugeSections: Readonly<Record<Gauge, ReadSection>> = {
  "turn-plates": listed("turn-plates", true, turnRow),
  "bump-gauge": (sheet, part) => {
    const why = linkageOf(sheet.car.form.linkage).noTravel;
    if (why !== undefined) complain(sheet, part, "this car has no suspension, so that there is no travel to read at");
    return why === undefined ? listed("bump-gauge", true, bumpRow)(sheet, part) : [];
  },
  toe: single("toe", "toe", (sheet, part) => toeAt(sheet, part, toes, 2 * sheet.car.numbers[radius])),
  camber: sided("camber"),
  caster: sided("caster"),
  rods: sided("rods"),
  "straight-ahead": single("straight-ahead", "straight", (sheet, part) => {
    const input = inputOf(sheet);
    return placeAt(sheet, part, input, input === "rack" ? racks : columns);
  }),
  lengths: listed("lengths", false, lengthRow),
};
