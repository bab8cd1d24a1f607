import { Box, Text } from "ink";
import { adjustables } from "../adjust.ts";
import { isUnsaved } from "../bench.ts";
import { sayer } from "../lengths.ts";
import type { Model, Sides } from "../model.ts";
import { stepsFor } from "../steps.ts";
import { AdjustList } from "./AdjustList.tsx";
import { Footer, type Typed, Words } from "./Bottom.tsx";
import { PartsPage, StartingPage } from "./FrontEndPages.tsx";
import { type Layout, layoutOf } from "./layout.ts";
import { Numbers } from "./Numbers.tsx";
import { HelpPage, OpenPage, TooSmall } from "./Pages.tsx";
import { PlacePanel } from "./PlacePanel.tsx";
import { Tables } from "./Tables.tsx";
import { tones } from "./tone.ts";
import { fitting, wrapped } from "./wrap.ts";

/** Said beside the numbers at all times, since they can hurt someone. */
export const caution = "Geometry only, not strength. Check lock to lock through full travel on stands.";

/** Everything there is to see, drawn from the model alone. */
export function Screen({ model, onTyped }: { readonly model: Model; readonly onTyped: Typed }) {
  const layout = layoutOf(model);
  if (layout === null) {
    return (
      <Box flexDirection="column" width={model.columns} height={model.rows}>
        <TooSmall model={model} />
        {model.focus.on === "question" ? <Footer model={model} /> : null}
      </Box>
    );
  }
  const { focus } = model;
  const page = ["help", "open", "parts", "starting"].includes(focus.on);
  return (
    <Box flexDirection="column" width={layout.columns} height={model.rows}>
      <Title model={model} columns={layout.columns} />
      {focus.on === "help" ? <HelpPage model={model} top={focus.top} rows={model.rows - 2} /> : null}
      {focus.on === "open" ? (
        <OpenPage choices={focus.choices} cursor={focus.cursor} columns={layout.columns} rows={model.rows - 2} />
      ) : null}
      {focus.on === "parts" ? <PartsPage model={model} cursor={focus.cursor} rows={model.rows - 2} /> : null}
      {focus.on === "starting" ? <StartingPage model={model} cursor={focus.cursor} rows={model.rows - 2} /> : null}
      {page ? null : <Bench model={model} layout={layout} onTyped={onTyped} />}
      <Footer model={model} />
    </Box>
  );
}

function Title({ model, columns }: { readonly model: Model; readonly columns: number }) {
  const { path } = model.origin;
  const state = isUnsaved(model) ? "NOT SAVED, s saves" : path === null ? "from an example" : "saved";
  const right = `${path === null ? "new car" : (path.split(/[\\/]/).at(-1) ?? path)}, ${state} `;
  const title = fitting([` ${model.bench.car.title}`], columns - right.length - 1);
  return (
    <Text bold wrap="truncate">
      {title.padEnd(columns - right.length) + right}
    </Text>
  );
}

function Bench({
  model,
  layout,
  onTyped,
}: {
  readonly model: Model;
  readonly layout: Layout;
  readonly onTyped: Typed;
}) {
  const { study, before } = model.bench;
  const length = sayer(model.display);
  const { list, place } = layout;
  return (
    <>
      {layout.banners.map(({ text, tone }) => (
        <Text key={text} {...tones[tone]} wrap="truncate">
          {text}
        </Text>
      ))}
      {"refused" in study ? (
        <Refusal words={study.refused} layout={layout} canUndo={model.bench.undo.length > 0} />
      ) : (
        <Numbers study={study} before={before} length={length} widths={layout} />
      )}
      <Headings model={model} layout={layout} />
      <Box height={list.rows}>
        <Box flexDirection="column" width={list.columns}>
          <AdjustList model={model} columns={list.columns} rows={list.rows} />
        </Box>
        <Box flexDirection="column" width={place.columns + 1} paddingLeft={1}>
          {"refused" in study ? null : (
            <PlacePanel study={study} place={model.place} length={length} columns={place.columns} rows={list.rows} />
          )}
        </Box>
      </Box>
      {layout.tableRows === 0 || "refused" in study ? null : (
        <Tables study={study} length={length} unit={model.display.unit} rows={layout.tableRows} count={layout.tables} />
      )}
      <Box flexGrow={1} />
      <Words model={model} onTyped={onTyped} />
      <Text wrap="truncate">{` ${caution}`}</Text>
    </>
  );
}

/** Rows that the five numbers take, which stay empty or say why there are none. */
const numberRows = 11;

function Refusal({
  words,
  layout,
  canUndo,
}: {
  readonly words: string;
  readonly layout: Layout;
  readonly canUndo: boolean;
}) {
  const cure = canUndo
    ? "Press u to take the last change back, or move something until it fits."
    : "Move something until it fits: the list below still works.";
  return (
    <Box flexDirection="column" height={numberRows} paddingLeft={2}>
      <Text {...tones.bad}>{["DOES NOT GO TOGETHER", " ", ...wrapped(words, layout.columns - 4)].join("\n")}</Text>
      <Text>{`\n${cure}`}</Text>
    </Box>
  );
}

function sidesWords(sides: Sides): string {
  return sides === "both" ? "both sides" : `${sides} only`;
}

function Headings({ model, layout }: { readonly model: Model; readonly layout: Layout }) {
  const { bench, display, sides, moving } = model;
  const list = adjustables(bench.car);
  const selected = list.find((each) => each.pair === model.selected);
  const step = stepsFor(selected?.quantities[0]?.kind ?? "length", display)[display.step]?.words ?? "";
  const adjust = `─ ADJUST ${sidesWords(sides)} (Tab) by ${step} (1-5) `;
  const place = ` WHEELS HERE, moving ${moving} (e) `;
  return (
    <Text bold wrap="truncate">
      {`${adjust.padEnd(layout.list.columns, "─")}${place}`.padEnd(layout.columns, "─")}
    </Text>
  );
}
