import { Text } from "ink";
import type { Choice, Model } from "../model.ts";
import { questionWords } from "../questions.ts";
import { least } from "../room.ts";
import { windowOf } from "./AdjustList.tsx";
import { helpLines } from "./helpText.ts";
import { fitting } from "./wrap.ts";

/** The help page, from the line that the builder has come to; its end is never passed. */
export function HelpPage({ model, top, rows }: { readonly model: Model; readonly top: number; readonly rows: number }) {
  const lines = helpLines(model, model.columns);
  const room = rows - 1;
  const from = Math.min(top, Math.max(0, lines.length - room));
  const shown = lines.slice(from, from + room);
  const [page, pages] = [Math.ceil((from + room) / room), Math.ceil(lines.length / room)];
  const sign =
    from + room < lines.length
      ? `page ${page} of ${pages}, more below: Space or ↓; any key: its line`
      : `page ${pages} of ${pages}, the end`;
  return (
    <>
      <Text wrap="truncate">{[...shown, ...blanks(room - shown.length)].map((line) => ` ${line}`).join("\n")}</Text>
      <Text bold wrap="truncate">{` ─ ${sign} ${"─".repeat(Math.max(0, model.columns - sign.length - 4))}`}</Text>
    </>
  );
}

const nameColumns = 28;

/** The cars that can be opened. */
export function OpenPage({
  choices,
  cursor,
  columns,
  rows,
}: {
  readonly choices: readonly Choice[];
  readonly cursor: number;
  readonly columns: number;
  readonly rows: number;
}) {
  const { from, to } = windowOf(choices.length, cursor, rows - 2);
  const shown = choices.slice(from, to);
  return (
    <>
      <Text bold wrap="truncate">
        {" OPEN A CAR"}
      </Text>
      <Text wrap="truncate"> Examples open as new cars without a name. T begins one from a tape instead.</Text>
      {shown.map((choice, index) => {
        const isSelected = from + index === cursor;
        return (
          <Text
            key={`${"sheet" in choice ? "sheet" : choice.source.from} ${choice.name}`}
            bold={isSelected}
            inverse={isSelected}
            wrap="truncate"
          >
            {` ${isSelected ? ">" : " "} ${choice.name.padEnd(nameColumns)} ${fitting([choice.about], columns - nameColumns - 5)}`}
          </Text>
        );
      })}
      {blanks(rows - 2 - shown.length).map((blank, index) => (
        <Text key={-index}>{blank}</Text>
      ))}
    </>
  );
}

function blanks(count: number): readonly string[] {
  return Array.from({ length: Math.max(0, count) }, () => " ");
}

/** What is said where the bench does not fit. */
export function TooSmall({ model }: { readonly model: Model }) {
  const { columns, rows, focus } = model;
  const size = `The window is too small: ${columns} columns by ${rows} rows. Make it at least ${least.columns} by ${least.rows}.`;
  const asked = focus.on === "question" ? questionWords(focus.question) : "Your car is safe. q quit";
  return <Text wrap="wrap">{`${size} ${asked}`}</Text>;
}
