import { Box, Text } from "ink";
import { adjustActs } from "../acts/adjust.ts";
import { adjustableOf, adjustables, isFirst, whyFixed } from "../adjust.ts";
import { isStarting } from "../frontEnd.ts";
import { sayer } from "../lengths.ts";
import type { Model, Sides } from "../model.ts";
import { stepsFor } from "../steps.ts";
import { AdjustList } from "../view/AdjustList.tsx";
import { PlacePanel } from "../view/PlacePanel.tsx";
import { Tables, tableColumns, tableHeading } from "../view/Tables.tsx";
import { whyNotAdjusted } from "../why.ts";
import type { Room, View, ViewKey } from "./view.ts";

const listColumns = 44;
const fewestTableRows = 5;
const mostTableRows = 21;

const listKeys: readonly ViewKey[] = [
  { keys: ["up"], shown: "↑", footer: null, help: "choose what to adjust, up the list", act: adjustActs.previous },
  { keys: ["down"], shown: "↓", footer: "↑↓ choose", help: "the same, down the list", act: adjustActs.next },
  {
    keys: ["{"],
    shown: "{",
    footer: null,
    help: "to the group before: tab, rod, rack ...",
    act: adjustActs.previousGroup,
  },
  { keys: ["}"], shown: "}", footer: null, help: "to the next group", act: adjustActs.nextGroup },
  { keys: ["left"], shown: "←", footer: null, help: "less, by one step", off: whyNotAdjusted, act: adjustActs.less },
  {
    keys: ["right"],
    shown: "→",
    footer: "←→ change",
    help: "more, by one step",
    off: whyNotAdjusted,
    act: adjustActs.more,
  },
];

/** The list of things to adjust, and beside it where the wheels are: the first view. */
export const adjust: View = {
  name: "Adjust",
  key: "1",
  help: "what can be moved, and where the wheels are",
  small: true,
  alone: () => true,
  keys: listKeys,
  explain: (model) => {
    const line = adjustableOf(model.bench.car, model.selected);
    const guess = isStarting(model.bench.car, line) ? "STARTING VALUE: measure it; x once it is right. " : "";
    return guess + (whyFixed(model.bench.car, line, model.sides) ?? line.quantities[0]?.help ?? "");
  },
  Body,
};

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { study } = model.bench;
  const length = sayer(model.display);
  const list = adjustables(model.bench.car);
  // Where there is room for tables, the list keeps to what is moved first; the rest of it scrolls.
  const first = list.filter(isFirst).length;
  const withTables = room.rows - 1 - first - tableHeading >= fewestTableRows;
  const rows = withTables ? first : Math.min(room.rows - 1, list.length);
  const left = room.rows - 1 - rows - tableHeading;
  const place = room.columns - listColumns - 1;
  return (
    <>
      <Heading model={model} columns={room.columns} />
      <Box height={rows}>
        <Box flexDirection="column" width={listColumns}>
          <AdjustList model={model} columns={listColumns} rows={rows} />
        </Box>
        <Box flexDirection="column" width={place + 1} paddingLeft={1}>
          {"refused" in study ? null : (
            <PlacePanel study={study} place={model.place} length={length} columns={place} rows={rows} />
          )}
        </Box>
      </Box>
      {left < fewestTableRows || "refused" in study ? null : (
        <Tables
          study={study}
          length={length}
          unit={model.display.unit}
          rows={Math.min(left, mostTableRows)}
          count={room.columns >= 2 * tableColumns + 1 ? 2 : 1}
        />
      )}
    </>
  );
}

function sidesWords(sides: Sides): string {
  return sides === "both" ? "both sides" : `${sides} only`;
}

function Heading({ model, columns }: { readonly model: Model; readonly columns: number }) {
  const { bench, display, sides, moving } = model;
  const line = adjustableOf(bench.car, model.selected);
  const step = stepsFor(line.quantities[0]?.kind ?? "length", display)[display.step]?.words ?? "";
  const adjusting = `─ ADJUST ${sidesWords(sides)} (Tab) by ${step} (,.) `;
  const place = ` WHEELS HERE, moving ${moving} (e) `;
  return (
    <Text bold wrap="truncate">
      {`${adjusting.padEnd(listColumns, "─")}${place}`.padEnd(columns, "─")}
    </Text>
  );
}
