import type { BumpRow, BumpSide } from "../../measures/bumpTable.ts";
import { type Figure, figureOf, poseFigures } from "../../measures/figures.ts";
import type { Span } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import { type WorstToe, worstToeOf } from "../../measures/worstToe.ts";
import {
  bumpMove,
  degrees,
  far,
  fixed,
  type InnerEnd,
  innerEndBrief,
  inputPlace,
  keepsToe,
  type Length,
  noTravelWords,
  type Rod,
  toeWords as toeSaid,
  toeWay,
  travelPlace,
  worstToeAndCure,
} from "../../output/words.ts";
import type { LengthUnit, Wheel } from "../../vehicle/car.ts";
import { formatLength, type LengthStyle } from "../../vehicle/units/format.ts";
import { type Curve, plotLines } from "../draw/plot.ts";
import { sayer, styleOf } from "../lengths.ts";
import type { Model } from "../model.ts";
import { cellWords } from "../view/cellWords.ts";
import { heading } from "../view/heading.ts";
import { beside, filled, type Line, Lines } from "../view/Lines.tsx";
import { roundSpan } from "../view/roundSpan.ts";
import { spaceFor } from "../view/space.ts";
import { changeColumns, type NumberColumn, tableLines } from "../view/table.ts";
import { fitting, wrapped } from "../view/wrap.ts";
import { cursorKeys, noPin, pageKey, spotOf, spotWithin } from "./spot.ts";
import type { Room, View } from "./view.ts";

const name = "Travel";
const tableColumns = 80;
/** Rows below the table and the plots that say what the curves are. */
const wordRows = 2;
const headRows = 2;
const mostRows = 21;
const curvePlaces = 41;
const roomy = { columns: 118, rows: 18 } as const;
const degree = Math.PI / 180;

/** A row with what the table shows of its whole pose. */
interface TravelRow extends BumpRow {
  readonly rollCentre: number | null;
  /** How far to the driver's left the lines meet that make the roll centre. */
  readonly rollAside: number | null;
}

interface Column extends NumberColumn<TravelRow> {
  readonly figure: Pick<Figure, "label" | "sign" | "explanation"> | undefined;
  readonly wheel: Wheel | null;
}

const travelWords = {
  label: "Travel",
  sign: "bump positive",
  explanation: "How far both wheel centres stand from ride height, the steering held still.",
} as const;

type Read = (row: TravelRow) => number | null;

/** The value with its unit, for the words below. */
function tell({ say, unit }: Column, row: TravelRow): string | null {
  const text = say(row);
  return text === null ? null : `${text}${unit}`;
}

/** Lengths that change little are in hundredths of an inch, where inches are shown. */
function columnsOf(model: Model): readonly Column[] {
  const style = styleOf(model.display);
  const small: LengthStyle = style.unit === "in" ? { unit: "in", decimals: 2 } : style;
  const angle = { bare: (value: number) => fixed(value / degree, 2), unit: "°" };
  const short = { bare: (value: number) => formatLength(value, small), unit: ` ${style.unit}` };
  const long = { bare: (value: number) => formatLength(value, style), unit: ` ${style.unit}` };
  const column = (
    figure: Column["figure"],
    wheel: Wheel | null,
    heads: readonly [over: string, head: string],
    width: number,
    read: Read,
    { bare, unit }: Pick<Column, "bare" | "unit">,
  ): Column => {
    const say = (row: TravelRow) => {
      const value = read(row);
      return value === null ? null : bare(value);
    };
    return { figure, wheel, over: heads[0], head: heads[1], width, read, say, bare, unit };
  };
  const each = (id: string, over: string, read: (side: BumpSide) => number | null, how: typeof angle) =>
    (["left", "right"] as const).map((wheel) =>
      column(
        figureOf(id),
        wheel,
        [over, `${wheel === "left" ? "L" : "R"} ${how.unit.trim()}`],
        7,
        (row) => read(row[wheel]),
        how,
      ),
    );
  const changes = (id: string, over: string, read: (side: BumpSide) => number | null) =>
    (["left", "right"] as const).map((wheel) => {
      const heads = [`${over} ${wheel === "left" ? "L" : "R"}°`, "change"] as const;
      return column(figureOf(id), wheel, heads, 7, (row) => read(row[wheel]), angle);
    });
  return [
    column(travelWords, null, ["travel", style.unit], 9, (row) => row.travel, long),
    ...changes("toeChange", "toe", (side) => side.toeChange),
    column(figureOf("bounceSteer"), null, ["steer", "both °"], 7, (row) => row.bounceSteer, angle),
    ...each("camber", "camber", (side) => side.camber, angle),
    ...each("caster", "caster", (side) => side.caster, angle),
    ...each("trackChange", "track", (side) => side.trackChange, short),
    column(figureOf("rollCentreHeight"), null, ["roll", `ctr ${style.unit}`], 7, (row) => row.rollCentre, short),
  ];
}

const [rollCentre, rollAside] = ["rollCentreHeight", "rollCentreOffset"].map((id) =>
  poseFigures.find((figure) => figure.id === id),
);

/** All of bump to droop where the rack stands now, in as many rows as there is room for. */
function tableRows(model: Model): readonly TravelRow[] {
  const { study } = model.bench;
  if ("refused" in study) return [];
  const { wheelTravel } = study;
  const rows = Math.max(2, Math.min(mostRows, spaceFor(model, false).room.rows - 1 - headRows - wordRows));
  const span = roundSpan({ from: wheelTravel.bump, to: -wheelTravel.droop, rows }, model.display.unit);
  return rowsOf(study, model.place.input, span);
}

function rowsOf(study: Study, input: number, span: Span): readonly TravelRow[] {
  const rows = study.bumpTable(input, span)?.rows ?? [];
  return rows.map((row) => {
    if (row.blame !== null) return { ...row, rollCentre: null, rollAside: null };
    const pose = study.pose(input, row.travel, row.travel);
    return {
      ...row,
      rollCentre: rollCentre?.read(pose, 0, study) ?? null,
      rollAside: rollAside?.read(pose, 0, study) ?? null,
    };
  });
}

const size = (model: Model) => ({ rows: tableRows(model).length, columns: 11 });

/** What the wheels do up and down, with the steering held where it stands. */
export const travel: View = {
  name,
  key: "3",
  help: "bump to droop: toe, bounce steer, camber, caster, track and roll centre, wherever the steering stands",
  keys: [
    ...cursorKeys(name, size, "look along the table:"),
    pageKey(name, ["table", "plots", "changes from the pinned car"]),
  ],
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
    return "Toe across, travel upward. A straight slope asks for another height of the rod's inner end; a bow for another width, with the rod cut to it.";
  const row = tableRows(model)[spot.row];
  const under = columnsOf(model)[spot.column];
  if (row === undefined || under?.figure === undefined) return "";
  const length = sayer(model.display);
  const where = `${travelPlace(row.travel, length)}${under.wheel === null ? "" : `, ${under.wheel} wheel`}`;
  return cellWords(
    where.charAt(0).toUpperCase() + where.slice(1),
    under.figure,
    valueWords(under, row, model.display.unit),
    pinnedWords(model, row.travel, under),
  );
}

/** The value under the cursor; of a toe change also the toe it makes, and of a roll centre why it is left out. */
function valueWords(under: Column, row: TravelRow, unit: LengthUnit): string | null {
  const said = tell(under, row);
  const toe = under.wheel === null ? null : row[under.wheel].toe;
  if (said !== null && under.figure?.label === "Toe change" && toe !== null)
    return `${said}, which makes ${toeSaid(toe)}`;
  if (said !== null || under.figure?.label !== rollCentre?.label || row.rollAside === null) return said;
  return `left out, the lines of both sides are nearly parallel: they meet ${far(Math.abs(row.rollAside), unit)} to the ${row.rollAside > 0 ? "left" : "right"}`;
}

/** What the pinned car has at the same place; null where none is pinned. */
function pinnedWords(model: Model, travel: number, under: Column): string | null {
  const { pin, place } = model;
  if (pin === null || "refused" in pin.study) return null;
  const [row] = rowsOf(pin.study, place.input, { from: travel, to: travel, rows: 1 });
  return row === undefined ? null : tell(under, row);
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { study } = model.bench;
  const length = sayer(model.display);
  if ("refused" in study) return null;
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
    : spotOf(model, name).page !== 1
      ? table(model)
      : plots(study, model, room.columns, rows);
  return (
    <Lines
      columns={room.columns}
      lines={[title, ...filled(seen, rows), ...curveWords(study, input, length, room.columns)]}
    />
  );
}

/** On its third page how much each number changed since the car was pinned. */
function table(model: Model): readonly Line[] {
  const columns = columnsOf(model);
  const rows = tableRows(model);
  const spot = spotWithin(model, name, size);
  if (spot.page !== 2) return tableLines(columns, rows, spot);
  const { pin, place } = model;
  if (pin === null || "refused" in pin.study) return noPin;
  const { study } = pin;
  const before = ({ travel: at }: TravelRow) => rowsOf(study, place.input, { from: at, to: at, rows: 1 })[0];
  return tableLines(changeColumns(columns, before), rows, spot);
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
    const words =
      worst === null
        ? ["cannot be reached"]
        : toeWords(worst, study.car.form.rods[wheel], wayAt(study, input, wheel), length);
    return `${label}${fitting(words, columns - label.length)}`;
  });
}

/** Which way an inner end has to go is known of the wheels straight ahead alone. */
function wayAt(study: Study, input: number, wheel: Wheel): InnerEnd {
  const straight = study.zero ?? study.straightAhead;
  return Math.abs(input - straight) < 1e-6 ? study.innerEnds[wheel] : undefined;
}

function toeWords(worst: WorstToe, rod: Rod, way: InnerEnd, length: Length): readonly string[] {
  const all = worstToeAndCure(worst, rod, way, length);
  if (keepsToe(worst) || way === "here") return [all];
  const brief = `toes ${toeWay(worst.toeChange)} ${length(Math.abs(worst.acrossTyre))} at ${travelPlace(worst.travel, length)}`;
  const a = `a ${worst.chiefly}`;
  return [all, `${brief}, ${a}: ${bumpMove(worst, rod, way)}`, `${brief}, ${a}: ${innerEndBrief(worst, way)}`, brief];
}

function worstOf(rows: readonly BumpRow[], wheel: Wheel, tireRadius: number): WorstToe | null {
  const known = rows.filter((row) => row[wheel].toeChange !== null);
  const travels = Float64Array.from(known, (row) => row.travel);
  const changes = Float64Array.from(known, (row) => row[wheel].toeChange ?? 0);
  return worstToeOf(travels, changes, known.length, tireRadius);
}

/** Least that a plot of toe reaches either way: 0.1 degrees, below which a curve would only show rounding. */
const leastToe = 0.1 * degree;

/** Columns that a plot beside others needs for its title and its ends. */
const narrowest = 26;

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
  const panel = (
    title: string,
    words: readonly [string, string],
    size: { readonly columns: number; readonly rows: number },
    ...reads: readonly Shown[]
  ) =>
    plotLines(
      {
        title: ` ${title}`,
        x: { from: -reach, to: reach, words: [words[0], `${words[1]} ${degrees(reach, 2)}`] },
        y: { from: -droop, to: bump, words: [say(-droop), say(bump)] },
        curves: reads.map(({ read, ...look }) => ({ points: all.map((row) => [read(row), row.travel]), ...look })),
        linesUp: [0],
        linesAcross: [0],
      },
      size.columns,
      size.rows,
    );
  const left: Shown = { read: (row) => row.left.toeChange };
  const right: Shown = { read: (row) => row.right.toeChange };
  const both: Shown = { read: (row) => (row.bounceSteer === null ? null : -row.bounceSteer) };
  if (columns < 3 * narrowest) {
    const first = { columns, rows: Math.ceil(rows / 2) };
    return [
      ...panel(
        "toe, left wheel L, right wheel R",
        ["out", "in"],
        first,
        { ...left, letter: "L" },
        {
          ...right,
          letter: "R",
        },
      ),
      ...panel("both steer", ["left", "right"], { columns, rows: rows - first.rows }, both),
    ];
  }
  const each = { columns: Math.floor(columns / 3), rows };
  return beside(
    beside(
      panel("LEFT wheel toe", ["out", "in"], each, left),
      each.columns,
      panel("RIGHT wheel toe", ["out", "in"], each, right),
    ),
    2 * each.columns,
    panel("both steer", ["left", "right"], each, both),
  );
}

/** A curve of the plots. */
interface Shown extends Pick<Curve, "letter"> {
  readonly read: (row: BumpRow) => number | null;
}
