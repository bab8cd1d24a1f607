import { goalKinds } from "../../vehicle/sections/goals.ts";
import {
  goalSaid,
  type ListRow,
  levelWords,
  listRows,
  nowWords,
  otherGoals,
  quantitiesOfPair,
  rodsSaid,
  roomSaid,
  sidesSaid,
  stepNow,
  whence,
} from "../aims.ts";
import { aimTypes } from "../aimWords.ts";
import { sayer } from "../lengths.ts";
import type { Focus, Model } from "../model.ts";
import { windowOf } from "./AdjustList.tsx";
import { filled, type Line, Lines, paragraph } from "./Lines.tsx";
import { fitting } from "./wrap.ts";

const nameColumns = 37;

/** Wider than this, a line is hard to follow from its name to its end. */
const widest = 100;

/** One line of the page: a heading, or a row of the list. */
interface Shown {
  readonly line: Line;
  readonly row: ListRow | null;
}

const headings: Readonly<Partial<Record<ListRow["is"], string>>> = {
  goal: "WHAT TO LOOK FOR",
  room: "WHAT MAY MOVE",
  rods: "AND HOW",
};

/** What the search aims at and what it may move, line by line, the one under the cursor explained below. */
export function AimsPage({
  model,
  focus,
  rows,
}: {
  readonly model: Model;
  readonly focus: Focus & { on: "aims" };
  readonly rows: number;
}) {
  const { columns, notice } = model;
  const list = listRows(model);
  const at = Math.min(focus.cursor, list.length - 1);
  const here = list[at];
  const below = [
    "─".repeat(columns),
    ...(notice === null ? [] : paragraph(notice.text, columns, notice.tone === "wrong" ? "bad" : "strong")),
    ...paragraph(here === undefined ? "" : about(model, here), columns),
  ];
  const shown = list.flatMap((row, i): readonly Shown[] => {
    const head = headings[row.is];
    const isNew = head !== undefined && list[i - 1]?.is !== row.is;
    const line = rowLine(model, row, i === at);
    return isNew
      ? [
          { line: [{ text: ` ${head}`, look: "strong" }], row: null },
          { line, row },
        ]
      : [{ line, row }];
  });
  const room = rows - Math.max(belowRows, below.length);
  const { from, to } = windowOf(
    shown.length,
    shown.findIndex(({ row }) => row === here),
    room,
  );
  const seen = shown.slice(from, to).map(({ line }) => line);
  return <Lines columns={columns} lines={[...filled(seen, room), ...filled(below, rows - room)]} />;
}

/** Rows below the list at least, so that it does not jump as the words below it change. */
const belowRows = 5;

function rowLine(model: Model, row: ListRow, isHere: boolean): Line {
  const text = `${isHere ? ">" : " "} ${rowWords(model, row)}`;
  return isHere ? [{ text: text.padEnd(Math.min(model.columns, widest) - 2), look: "marked" }] : text;
}

/** A row in columns: its name, its value, and at the end where it comes from. */
function columnsOf({ columns }: Model, name: string, values: readonly string[], end = ""): string {
  const room = Math.min(columns, widest) - nameColumns - end.length - 4;
  return `${fitting([name], nameColumns - 1).padEnd(nameColumns)}${fitting(values, room).padEnd(room)} ${end}`.trimEnd();
}

function rowWords(model: Model, row: ListRow): string {
  const { car } = model.bench;
  switch (row.is) {
    case "goal": {
      const [name, ends] = goalSaid(model, row.goal);
      return columnsOf(model, `${row.goal.level.padEnd(5)} ${name}`, [ends], whence(row));
    }
    case "newGoal":
      return otherGoals(model) === null ? "... the usual goals are being worked out" : "+ another goal";
    case "room": {
      const { label = row.pair, kind = "length" } = quantitiesOfPair(car, row.pair)[0] ?? {};
      const sides = sidesSaid(car, row.pair, row.room.sides);
      const name = sides === "" ? label : `${label}, ${sides}`;
      const said = roomSaid(model, kind, row.room);
      const values = [`${said}, now ${nowWords(model, row.pair)}`, said];
      return columnsOf(model, name, values, row.own ? "yours" : "usual");
    }
    case "newRoom":
      return "+ something else that may move";
    case "rods":
      return columnsOf(model, "Tie rods", [rodsSaid(model)]);
    case "step":
      return columnsOf(model, "Moves go in whole steps of", [sayer(model.display)(stepNow(model))]);
  }
}

/** What is under the cursor, and what can be done with it. */
function about(model: Model, row: ListRow): string {
  switch (row.is) {
    case "goal": {
      const { goal, own } = row;
      const means = `${goal.level}: it ${levelWords[goal.level]}. ${goalKinds[goal.name].help}`;
      if (goal.lacks !== null) return `Not judged, since the file says nothing of ${goal.lacks}. ${means}`;
      if (own) return `${means} Enter changes it, d removes it.`;
      return whence(row) === "always"
        ? `${means} Every car must keep it; Enter sets another value.`
        : `${means} From targets and limits in the file, else common practice. Enter changes it, d removes it.`;
    }
    case "newGoal":
      return "Enter: choose what else the search is to aim at, by its name, then say how much and how hard. Or type it there in one line, such as: must rod-to-arm 30.";
    case "room":
      return `${quantitiesOfPair(model.bench.car, row.pair)[0]?.help ?? ""} Enter changes its room, d makes it stay where it is.`;
    case "newRoom":
      return "Enter: choose what else may be moved, then how far. Only what stands here is moved. Or type it there in one line, such as: move rack.up 1/2.";
    case "rods":
      return "Enter changes it: tie rods cut to fit the toe wherever things go, or kept as long as they are, so that toe changes as things move.";
    case "step":
      return `What you can measure and weld to. ${aimTypes.size}`;
  }
}
