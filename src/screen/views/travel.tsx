import type { BumpRow, BumpSide } from "../../measures/bumpTable.ts";
import { type Figure, figureOf, poseFigures } from "../../measures/figures.ts";
import type { Span } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import { type WorstToe, worstToeOf } from "../../measures/worstToe.ts";
import {
  bumpCure,
  degrees,
  fixed,
  inputPlace,
  type Length,
  noTravelWords,
  toeWay,
  travelPlace,
  worstToe,
} from "../../output/words.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { formatLength, type LengthStyle } from "../../vehicle/units/format.ts";
import { plotLines } from "../draw/plot.ts";
import { sayer, styleOf } from "../lengths.ts";
import type { Model } from "../model.ts";
import { cellWords } from "../view/cellWords.ts";
import { heading } from "../view/heading.ts";
import { beside, filled, type Line, Lines } from "../view/Lines.tsx";
import { roundSpan } from "../view/roundSpan.ts";
import { spaceFor } from "../view/space.ts";
import { type TableColumn, tableLines } from "../view/table.ts";
import { fitting, wrapped } from "../view/wrap.ts";
import { cursorKeys, pageKey, spotOf, spotWithin } from "./spot.ts";
import type { Room, View } from "./view.ts";

const name = "Travel";
const tableColumns = 80;
/** Rows below the table and the plots that say what the curves are. */
const wordRows = 2;
const mostRows = 21;
const curvePlaces = 41;
const roomy = { columns: 118, rows: 18 } as const;
const degree = Math.PI / 180;

/** A row with what the table shows of its whole pose. */
interface TravelRow extends BumpRow {
  readonly rollCentre: number | null;
}

interface Column extends TableColumn<TravelRow> {
  readonly figure: Pick<Figure, "label" | "sign" | "explanation"> | undefined;
  readonly wheel: Wheel | null;
  /** The value with its unit, for the words below. */
  readonly tell: (row: TravelRow) => string | null;
}

const travelWords = {
  label: "Travel",
  sign: "bump positive",
  explanation: "How far both wheel centres stand from ride height, the rack held still.",
} as const;

type Read = (row: TravelRow) => number | null;

function column(
  id: string,
  wheel: Wheel | null,
  head: string,
  width: number,
  read: Read,
  bare: (value: number) => string,
  unit: string,
): Column {
  const say = (row: TravelRow) => {
    const value = read(row);
    return value === null ? null : bare(value);
  };
  const tell = (row: TravelRow) => {
    const text = say(row);
    return text === null ? null : `${text}${unit}`;
  };
  return { figure: figureOf(id), wheel, head, width, say, tell };
}

/** Lengths that change little: in thousandths of an inch where inches are in decimals, as a tape shows them else. */
function columnsOf(model: Model): readonly Column[] {
  const style = styleOf(model.display);
  const long = (value: number) => formatLength(value, style);
  const small: LengthStyle = style.unit === "in" ? { unit: "in", decimals: 2 } : style;
  const short = (value: number) => formatLength(value, small);
  const angle = (value: number) => fixed(value / degree, 2);
  const both = (id: string, head: string, width: number, read: (side: BumpSide) => number | null, isAngle: boolean) =>
    (["left", "right"] as const).map((wheel) =>
      column(
        id,
        wheel,
        `${head} ${wheel === "left" ? "L" : "R"}`,
        width,
        (row) => read(row[wheel]),
        isAngle ? angle : short,
        isAngle ? "°" : ` ${style.unit}`,
      ),
    );
  return [
    {
      figure: travelWords,
      wheel: null,
      head: `travel ${style.unit}`,
      width: 9,
      say: (row) => long(row.travel),
      tell: (row) => `${long(row.travel)} ${style.unit}`,
    },
    ...both("toeChange", "toe°", 7, (side) => side.toeChange, true),
    column("bounceSteer", null, "both °", 7, (row) => row.bounceSteer, angle, "°"),
    ...both("camber", "cam°", 7, (side) => side.camber, true),
    ...both("caster", "cas°", 7, (side) => side.caster, true),
    ...both("trackChange", "trk", 7, (side) => side.trackChange, false),
    column("rollCentreHeight", null, "roll c", 7, (row) => row.rollCentre, short, ` ${style.unit}`),
  ];
}

const rollCentre = poseFigures.find(({ id }) => id === "rollCentreHeight");

/** All of bump to droop where the rack stands now, in as many rows as there is room for. */
function tableRows(model: Model): readonly TravelRow[] {
  const { study } = model.bench;
  if ("refused" in study) return [];
  const { wheelTravel } = study;
  const rows = Math.max(2, Math.min(mostRows, spaceFor(model, false).room.rows - 2 - wordRows));
  const span = roundSpan({ from: wheelTravel.bump, to: -wheelTravel.droop, rows }, model.display.unit);
  return rowsOf(study, model.place.input, span);
}

function rowsOf(study: Study, input: number, span: Span): readonly TravelRow[] {
  const rows = study.bumpTable(input, span)?.rows ?? [];
  return rows.map((row) => ({
    ...row,
    rollCentre:
      row.blame === null ? (rollCentre?.read(study.pose(input, row.travel, row.travel), 0, study) ?? null) : null,
  }));
}

const size = (model: Model) => ({ rows: tableRows(model).length, columns: 11 });

/** What the wheels do up and down, with the steering held where it stands. */
export const travel: View = {
  name,
  key: "3",
  help: "bump to droop: toe, bounce steer, camber, caster, track and roll centre, wherever the steering stands",
  keys: [...cursorKeys(name, size, "look along the table:"), pageKey(name, ["table", "plots"])],
  explain,
  Body,
};

function isRoomy({ columns, rows }: Room): boolean {
  return columns >= roomy.columns && rows >= roomy.rows;
}

function explain(model: Model): string {
  const { study } = model.bench;
  if ("refused" in study || !study.suspended) return "";
  const spot = spotWithin(model, name, size);
  if (spot.page === 1 && !isRoomy(spaceFor(model, false).room))
    return "Toe across, travel upward. A straight slope: move the rod's inner end up or down. A bow: the rod is too long or too short for its arms.";
  const row = tableRows(model)[spot.row];
  const under = columnsOf(model)[spot.column];
  if (row === undefined || under?.figure === undefined) return "";
  const where = `${travelPlace(row.travel, sayer(model.display))}${under.wheel === null ? "" : `, ${under.wheel} wheel`}`;
  return cellWords(
    where.charAt(0).toUpperCase() + where.slice(1),
    under.figure,
    under.tell(row),
    pinnedWords(model, row.travel, under),
  );
}

/** What the pinned car has at the same place; null where none is pinned. */
function pinnedWords(model: Model, travel: number, under: Column): string | null {
  const { pin, place } = model;
  if (pin === null || "refused" in pin.study) return null;
  const [row] = rowsOf(pin.study, place.input, { from: travel, to: travel, rows: 1 });
  return row === undefined ? null : under.tell(row);
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { study } = model.bench;
  const length = sayer(model.display);
  if ("refused" in study)
    return <Lines columns={room.columns} lines={[heading(model, room.columns, "BUMP TO DROOP")]} />;
  const { input } = model.place;
  const straight = study.zero !== null && Math.abs(input - study.zero) < 1e-9;
  const place = straight ? "straight ahead" : inputPlace(study, input, length).replace(" of its middle", "");
  const title = heading(model, room.columns, `BUMP TO DROOP, ${place}`, `BUMP TO DROOP`);
  if (!study.suspended)
    return (
      <Lines
        columns={room.columns}
        lines={[title, ...wrapped(`Travel: ${noTravelWords(study)}.`, room.columns - 2).map((line) => ` ${line}`)]}
      />
    );
  const rows = room.rows - 1 - wordRows;
  const seen = isRoomy(room)
    ? beside(table(model), tableColumns, plots(study, model, room.columns - tableColumns, rows))
    : spotOf(model, name).page === 0
      ? table(model)
      : plots(study, model, room.columns, rows);
  return (
    <Lines
      columns={room.columns}
      lines={[title, ...filled(seen, rows), ...curveWords(study, input, length, room.columns)]}
    />
  );
}

function table(model: Model): readonly Line[] {
  return tableLines(columnsOf(model), tableRows(model), spotWithin(model, name, size));
}

function curveOf(study: Study, input: number): readonly BumpRow[] {
  const { wheelTravel } = study;
  return study.bumpTable(input, { from: -wheelTravel.droop, to: wheelTravel.bump, rows: curvePlaces })?.rows ?? [];
}

/** Of each wheel: its worst toe here, and whether that is a slope or a bow. */
function curveWords(study: Study, input: number, length: Length, columns: number): readonly Line[] {
  const rows = curveOf(study, input);
  return (["left", "right"] as const).map((wheel) => {
    const worst = worstOf(rows, wheel, study.tireRadius);
    const label = ` ${`${wheel} wheel`.padEnd(12)}`;
    return `${label}${fitting(worst === null ? ["cannot be reached"] : toeWords(worst, length), columns - label.length)}`;
  });
}

function toeWords(worst: WorstToe, length: Length): readonly string[] {
  const all = worstToe(worst, length);
  if (Math.abs(worst.toeChange) < 0.005 * degree) return [all];
  const brief = `toes ${toeWay(worst.toeChange)} ${length(Math.abs(worst.acrossTyre))} at ${travelPlace(worst.travel, length)}`;
  const cure = worst.chiefly === "slope" ? "a slope: inner end's height" : "a bow: rod's length";
  return [`${all}, ${bumpCure(worst)}`, `${brief}, ${bumpCure(worst)}`, `${brief}, ${cure}`, brief];
}

function worstOf(rows: readonly BumpRow[], wheel: Wheel, tireRadius: number): WorstToe | null {
  const known = rows.filter((row) => row[wheel].toeChange !== null);
  const travels = Float64Array.from(known, (row) => row.travel);
  const changes = Float64Array.from(known, (row) => row[wheel].toeChange ?? 0);
  return worstToeOf(travels, changes, known.length, tireRadius);
}

/** Least that a plot of toe reaches either way: 0.1 degrees, below which a curve would only show rounding. */
const leastToe = 0.1 * degree;

/** Travel upward, as the wheel goes; toe of the left wheel, of the right, and the steer of both, across. */
function plots(study: Study, { place, display }: Model, columns: number, rows: number): readonly Line[] {
  const all = curveOf(study, place.input);
  const { bump, droop } = study.wheelTravel;
  const say = (mm: number) => formatLength(mm, styleOf(display));
  const reach = Math.max(
    leastToe,
    ...all
      .flatMap((row) => [row.left.toeChange, row.right.toeChange, row.bounceSteer])
      .map((value) => Math.abs(value ?? 0)),
  );
  const each = Math.floor(columns / 3);
  const panel = (title: string, words: readonly [string, string], read: (row: BumpRow) => number | null) =>
    plotLines(
      {
        title: ` ${title}`,
        x: { from: -reach, to: reach, words: [`${words[0]} ${degrees(reach, 2)}`, `${words[1]} ${degrees(reach, 2)}`] },
        y: { from: -droop, to: bump, words: [say(-droop), say(bump)] },
        curves: [{ points: all.map((row) => [read(row), row.travel] as const) }],
        linesUp: [0],
        linesAcross: [0],
      },
      each,
      rows,
    );
  return beside(
    beside(
      panel("LEFT wheel toe", ["out", "in"], (row) => row.left.toeChange),
      each,
      panel("RIGHT wheel toe", ["out", "in"], (row) => row.right.toeChange),
    ),
    2 * each,
    panel("both steer", ["left", "right"], (row) => (row.bounceSteer === null ? null : -row.bounceSteer)),
  );
}
