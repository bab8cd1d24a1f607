/*
 * Frames at 80 by 24 as a screen of this kind draws them: a list with the chosen row inverse, panels of figures with
 * degree signs and signs of good and bad in colour, a strip of bars, a page of help.
 */

interface Scene {
  readonly name: string;
  readonly frames: readonly string[];
}

interface State {
  readonly chosen: number;
  readonly rack: number;
  readonly values: readonly number[];
}

const labels = ["Tab ahead", "Tab out", "Tab up", "Rack ahead", "Rack up", "Offset", "Upper ahead", "Upper out"];
const figures = [
  "Toe",
  "Camber",
  "Caster",
  "King-pin incl.",
  "Scrub radius",
  "Trail",
  "Rod-to-arm angle",
  "Steer",
  "Bump steer",
];

const inverse = (text: string) => `\x1b[7m${text}\x1b[27m`;
const bold = (text: string) => `\x1b[1m${text}\x1b[22m`;
const dim = (text: string) => `\x1b[2m${text}\x1b[22m`;
const colored = (code: number, text: string) => `\x1b[${code}m${text}\x1b[39m`;

/** A number that moves smoothly with everything, as a figure does. */
function figure(index: number, side: number, state: State): number {
  const moved = state.values.reduce((sum, value, at) => sum + value * Math.sin(1 + at + index), 0);
  return 10 * Math.sin(index * 2.1 + side * 0.7 + state.rack * (1 + index / 3)) + moved / (3 + index);
}

function frame(state: State): string {
  const rows = Array.from({ length: 20 }, (_, row) => `│${listRow(row, state)}│${figureRow(row, state)}│`);
  const title = bold(" Rail two-seater ");
  return [
    `╭─${title}${"─".repeat(25 - 17)}┬${"─".repeat(51)}╮`,
    ...rows,
    `├${"─".repeat(26)}┴${"─".repeat(51)}┤`,
    `│${bars(state)}│`,
    `╰${"─".repeat(78)}╯`,
  ].join("\n");
}

function listRow(row: number, state: State): string {
  const label = labels[row % labels.length];
  const value = (14 + row / 8 + (state.values[row] ?? 0)).toFixed(3);
  const text = `${row === state.chosen ? ">" : " "}${label.padEnd(14)}${value.padStart(8)} in`;
  return row === state.chosen ? inverse(text) : text;
}

function figureRow(row: number, state: State): string {
  if (row >= figures.length * 2) return " ".repeat(51);
  if (row % 2 === 1) return " ".repeat(51);
  const index = row / 2;
  const [left, right] = [figure(index, 0, state), figure(index, 1, state)];
  const worst = Math.max(Math.abs(left), Math.abs(right));
  const verdict = worst > 8 ? colored(31, "too much") : worst > 5 ? colored(33, "look    ") : colored(32, "good    ");
  const value = (number: number) => `${number.toFixed(2).padStart(7)}°`;
  return ` ${figures[index].padEnd(17)} ${value(left)}  ${value(right)}   ${dim("was")} ${verdict}  `;
}

function bars(state: State): string {
  const at = Math.round(39 + state.rack * 18);
  return `${"░".repeat(at)}█${"░".repeat(77 - at)}`;
}

function help(page: number): string {
  const text =
    "The rack moves to the left with the arrow, a step a press; hold Shift for ten steps at once, Enter to type.";
  const rows = Array.from({ length: 22 }, (_, row) => {
    const start = (row * 7 + page * 3) % 40;
    return `│ ${row % 6 === 0 ? bold("Keys".padEnd(8)) : " ".repeat(8)}${text.slice(start, start + 20 + ((row * 11) % 45)).padEnd(69)}│`;
  });
  return [`╭${"─".repeat(78)}╮`, ...rows, `╰${"─".repeat(78)}╯`].join("\n");
}

const start: State = { chosen: 0, rack: 0, values: labels.map(() => 0) };

function times<T>(count: number, make: (step: number) => T): T[] {
  return Array.from({ length: count }, (_, step) => make(step));
}

export const scenes: readonly Scene[] = [
  { name: "choose", frames: times(20, (step) => frame({ ...start, chosen: step })) },
  {
    name: "one-value",
    frames: times(20, (step) => frame(start).replace(" 14.000", ` ${(14 + step / 16).toFixed(3)}`)),
  },
  {
    name: "adjust",
    frames: times(40, (step) =>
      frame({ ...start, chosen: 3, values: start.values.map((_, at) => (at === 3 ? step / 16 : 0)) }),
    ),
  },
  { name: "steer", frames: times(40, (step) => frame({ ...start, rack: step / 20 - 1 })) },
  { name: "pages", frames: times(12, (step) => (step % 2 === 0 ? frame({ ...start, rack: step / 12 }) : help(step))) },
  { name: "help", frames: times(8, help) },
];
