import { Box, Text } from "ink";
import { sideWays } from "../../vehicle/sections/find.ts";
import { goalKinds, levels } from "../../vehicle/sections/goals.ts";
import {
  goalSaid,
  goalsAbout,
  levelWords,
  listRows,
  movableAbout,
  nowWords,
  quantitiesOfPair,
  readingSaid,
  roomSaid,
  sideWords,
  stepNow,
} from "../aims.ts";
import { aimEcho, aimTypes, goalTypes } from "../aimWords.ts";
import { sayer } from "../lengths.ts";
import type { Focus, Model } from "../model.ts";
import { windowOf } from "./AdjustList.tsx";
import { Field, type Typed } from "./Field.tsx";
import { filled, type Line, Lines, paragraph } from "./Lines.tsx";
import { fitting } from "./wrap.ts";

type OnAim = Focus & { readonly on: "aim" };

/** What is asked, how it is answered, and what can be chosen from. */
interface Asked {
  readonly title: string;
  /** Words before the field; null where nothing is typed. */
  readonly label: string | null;
  readonly hint: string;
  readonly about: string;
  readonly choices: readonly string[];
}

const labelColumns = 32;

/** One step of saying what a search aims at or may move: a field, a list to choose from, or both. */
export function AimPage({
  model,
  focus,
  rows,
  onTyped,
}: {
  readonly model: Model;
  readonly focus: OnAim;
  readonly rows: number;
  readonly onTyped: Typed;
}) {
  const { columns } = model;
  const { title, label, hint, about, choices } = askedOf(model, focus);
  const echo =
    focus.complaint === null ? aimEcho(model, focus.asks, focus.text) : { text: focus.complaint, good: false };
  const words = paragraph(echo?.text ?? hint, columns, echo?.good === false ? "bad" : undefined);
  const head: readonly Line[] = [...filled(words, 2), ...paragraph(about, columns), "─".repeat(columns)];
  const room = rows - 1 - (label === null ? 0 : 1) - head.length;
  const { from, to } = windowOf(choices.length, focus.cursor, room);
  const list = choices.slice(from, to).map((choice, i): Line => {
    const isHere = from + i === focus.cursor;
    const more = (i === 0 && from > 0 && "↑") || (from + i === to - 1 && to < choices.length && "↓") || " ";
    const text = `${isHere ? ">" : more} ${choice}`;
    return isHere ? [{ text, look: "marked" }] : text;
  });
  return (
    <Box flexDirection="column" width={columns} height={rows}>
      <Text bold wrap="truncate">{` ${title}`}</Text>
      {label === null ? null : (
        <Field key={focus.asks.step} labels={[label]} columns={columns} text={focus.text} onTyped={onTyped} />
      )}
      <Lines columns={columns} lines={[...head, ...filled(list, room)]} />
    </Box>
  );
}

function askedOf(model: Model, focus: OnAim): Asked {
  const { asks, text, cursor } = focus;
  const { car } = model.bench;
  switch (asks.step) {
    case "goal": {
      const names = goalsAbout(text);
      const here = names[cursor];
      return {
        title: "ANOTHER GOAL: what is the search to aim at?",
        label: "Narrow the list:",
        hint: "Type part of its name, or all in one line: must rod-to-arm 30. ↑↓ choose, Enter takes it.",
        about: here === undefined ? "" : goalKinds[here].help,
        choices: names.map((name) => `${goalKinds[name].label.padEnd(labelColumns)} ${name}`),
      };
    }
    case "room": {
      const parts = movableAbout(car, text);
      const here = parts[cursor];
      return {
        title: "SOMETHING ELSE THAT MAY MOVE: which part?",
        label: "Narrow the list:",
        hint: "Type part of its name, or all in one line: move rack.up 1/2. ↑↓ choose, Enter takes it.",
        about: here?.help ?? "",
        choices: parts.map(({ label, pair }) => {
          const now = `now ${nowWords(model, pair)}`;
          return fitting(
            [`${label.padEnd(labelColumns)} ${now.padEnd(26)} ${pair}`, `${label.padEnd(labelColumns)} ${now}`],
            model.columns - 3,
          );
        }),
      };
    }
    case "aim": {
      const { label, help } = goalKinds[asks.name];
      const row = listRows(model).find(
        (each) => each.is === "goal" && each.goal.name === asks.name && each.goal.level === asks.was,
      );
      const has = readingSaid(model, asks.name);
      const now = row?.is === "goal" ? goalSaid(model, row.goal)[1] : null;
      return {
        title: `${label.toUpperCase()}: how much?`,
        label: now === null ? `${label}:` : `${label} (now ${now}):`,
        hint: `${goalTypes(asks.name)}${now === null ? "" : " Left empty it stays."}`,
        about: has === null ? help : `${help} This car as it stands: ${has}.`,
        choices: [],
      };
    }
    case "level":
      return {
        title: `${goalKinds[asks.name].label.toUpperCase()}: how hard?`,
        label: null,
        hint: "↑↓ choose, Enter takes it.",
        about: "What must be met comes before all that is wanted, and that before what would be nice.",
        choices: levels.map((level) => `${level.padEnd(6)} ${levelWords[level]}`),
      };
    case "within": {
      const [first] = quantitiesOfPair(car, asks.pair);
      const label = first?.label ?? asks.pair;
      const kind = first?.kind === "angle" ? "angle" : "length";
      const was = asks.was === null ? "" : ` Its room now: ${roomSaid(model, kind, asks.was)}; left empty it stays.`;
      return {
        title: `${label.toUpperCase()}: how far may it go?`,
        label: `${label} (now ${nowWords(model, asks.pair)}):`,
        hint: `${aimTypes[kind]}${was}`,
        about: first?.help ?? "",
        choices: [],
      };
    }
    case "sides":
      return {
        title: `${(quantitiesOfPair(car, asks.pair)[0]?.label ?? asks.pair).toUpperCase()}: which sides?`,
        label: null,
        hint: "↑↓ choose, Enter takes it.",
        about: "",
        choices: sideWays.map((each) => sideWords[each]),
      };
    case "size":
      return {
        title: "STEPS: what can you measure and weld to?",
        label: `Steps (now ${sayer(model.display)(stepNow(model))}):`,
        hint: aimTypes.size,
        about: "Every move of an answer is a whole number of these.",
        choices: [],
      };
  }
}
