import { Box, Text } from "ink";
import { matchText } from "../../output/match.ts";
import { readingWords } from "../../output/matchWords.ts";
import { matchedHere } from "../gaugeMatch.ts";
import { unitsOf } from "../gauges.ts";
import { rowLength } from "../gaugeWords.ts";
import type { Model } from "../model.ts";
import { restWords, seenFrom } from "../paging.ts";
import { whyNoMatched } from "../why.ts";
import { filled, Lines } from "./Lines.tsx";
import { fitting, wrapped } from "./wrap.ts";

/** Rows of a window that are no lines of the page: title of the car, of the page, notice, footer. */
export const matchedFrame = 4;

/** What is to be done with what is seen, in ways that take less and less room. */
const takeWords = [
  "t puts this car on the bench, as one change: u takes it back.",
  "t puts this car on the bench; u takes it back.",
];

/** Wider than this, lines get too long to follow. */
const widest = 100;

/** What the match says, in lines. */
export function matchedLines(model: Model): readonly string[] {
  const { columns, display, bench, work, gauges } = model;
  const width = Math.min(columns, widest) - 2;
  const shown = matchedHere(model);
  const length = rowLength(unitsOf(gauges?.answers ?? {}));
  if (shown === null) return wrapped(waiting(work), width);
  const { outcome } = shown;
  if ("unreached" in outcome) {
    const kind = "refused" in bench.study ? "rack" : bench.study.inputKind;
    return outcome.unreached.flatMap((each) =>
      wrapped(
        `${readingWords(each, kind, length)}: the car on the bench cannot be brought there. Read it again, or empty it.`,
        width,
      ),
    );
  }
  return matchText(outcome, gauges?.answers.title || null, display.unit, length, width, "form");
}

function waiting(work: Model["work"]): string {
  return work?.state === "stopped"
    ? "Stopped before it was through. Until the last wrong reading is out each may bend every number, so that there is nothing to show yet. Esc, then Enter, begins it again."
    : "Every part is moved a little either way, to see which of them the readings speak of ...";
}

/** What is off on the built car, from the line that the builder has come to. */
export function MatchedPage({
  model,
  top,
  rows,
}: {
  readonly model: Model;
  readonly top: number;
  readonly rows: number;
}) {
  const { columns, work, notice } = model;
  const room = rows - 2;
  const { shown, isMore } = seenFrom(matchedLines(model), top, room);
  const isKnown = matchedHere(model) !== null;
  const far = work?.state === "running" ? `${Math.round(work.progress * 100)} %, Esc stops` : "stopped";
  const sign = isKnown ? restWords(isMore) : far;
  const title = ` THE BUILT CAR, MATCHED: ${sign} `;
  const said = notice?.text ?? (isKnown ? (whyNoMatched(model) ?? fitting(takeWords, columns - 2)) : "");
  return (
    <Box flexDirection="column" width={columns} height={rows}>
      <Text bold wrap="truncate">{`${title}${"─".repeat(Math.max(0, columns - title.length))}`}</Text>
      <Lines
        columns={columns}
        lines={filled(
          shown.map((line) => ` ${line}`),
          room,
        )}
      />
      <Text wrap="truncate">{` ${said}`}</Text>
    </Box>
  );
}
