import { carFigures } from "../../measures/carFigures.ts";
import { wheelFigures } from "../../measures/figures.ts";
import { cautions } from "../../output/words.ts";
import { allKeys, bindingsNow } from "../keys.ts";
import type { Model } from "../model.ts";
import { wrapped } from "./wrap.ts";

const keyColumns = 8;

/** Figures that the bench always shows, explained once for both sides. */
const explained = [
  "leftLockInner",
  "lockDifferenceInner",
  "zero",
  "leftLockAckermann",
  "leftLockPercentOfIdealInner",
  "worstToeAcrossTyreLeft",
  "worstBounceSteer",
  "leastRodAngleLeft",
  "rodLengthLeft",
  "steer",
  "toe",
  "transmissionAngle",
];

/** The help page in lines: what to do, every key there is, what the numbers mean, and what to check before driving. */
export function helpLines(model: Model, columns: number): readonly string[] {
  const width = Math.min(columns, 100) - 2;
  const indented = (text: string, first: string, indent: number) =>
    wrapped(text, width - indent).map(
      (line, index) => `${index === 0 ? first.padEnd(indent) : " ".repeat(indent)}${line}`,
    );
  const start = wrapped(
    "Choose a line of the list with the up and down arrows, change it with the left and right arrows, and watch the numbers above. " +
      "Turn the wheel and move the suspension to see the angles at any place. Nothing is written to the file until you save.",
    width,
  );
  const now = new Set(bindingsNow({ ...model, focus: { on: "bench" } }));
  const groups = allKeys(model).flatMap(({ heading, bindings }) => [
    "",
    heading,
    ...bindings.flatMap((binding) => {
      const why = now.has(binding) ? binding.off?.({ ...model, focus: { on: "bench" } }) : null;
      const off = why ? ` (off just now). ${why}` : "";
      return indented(`${binding.help}${off}`, `  ${binding.shown}`, keyColumns);
    }),
  ]);
  const figures = [...carFigures, ...wheelFigures].filter(({ id }) => explained.includes(id));
  const numbers = figures.flatMap(({ label, sign, explanation }) =>
    indented(`${label}: ${explanation}${sign === "" ? "" : ` (${sign}.)`}`, "  ", 4),
  );
  return [
    ...start,
    ...groups,
    "",
    "WHAT THE NUMBERS MEAN",
    ...numbers,
    "",
    "BEFORE DRIVING",
    ...cautions.flatMap((caution) => indented(caution, "  ", 4)),
  ];
}
