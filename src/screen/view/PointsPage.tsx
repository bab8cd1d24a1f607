import { Box, Text } from "ink";
import { surveyVerdict } from "../../output/survey.ts";
import { sheetLength } from "../lengths.ts";
import type { Model } from "../model.ts";
import { restWords, seenFrom } from "../paging.ts";
import { isOld, settledOf } from "../sheetState.ts";
import { filled, Lines } from "./Lines.tsx";

/** Rows of a window that are no lines of the page: title of the car, of the page, footer. */
export const pointsFrame = 3;

/** What the readings come to, in lines. */
export function pointLines({ sheet, columns }: Pick<Model, "sheet" | "columns">): readonly string[] {
  const settled = sheet === null ? null : settledOf(sheet);
  if (sheet === null || settled === null) return ["There is no point yet."];
  const { units } = settled.surveyed.survey;
  const old = isOld(sheet) ? ["OLD: what was read since is being brought together.", ""] : [];
  return [...old, ...surveyVerdict(settled, units, sheetLength(units), Math.min(columns, 100) - 1)];
}

/** All points with how near they are known, and what is said of the readings, from the line that the builder has come to. */
export function PointsPage({
  model,
  top,
  rows,
}: {
  readonly model: Model;
  readonly top: number;
  readonly rows: number;
}) {
  const room = rows - 1;
  const { shown, isMore } = seenFrom(pointLines(model), top, room);
  const title = ` EVERY POINT, BY THE READINGS: ${restWords(isMore)} `;
  return (
    <Box flexDirection="column" width={model.columns} height={rows}>
      <Text bold wrap="truncate">{`${title}${"─".repeat(Math.max(0, model.columns - title.length))}`}</Text>
      <Lines columns={model.columns} lines={filled(shown, room)} />
    </Box>
  );
}
