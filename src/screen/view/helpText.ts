import { carFigures } from "../../measures/carFigures.ts";
import { wheelFigures } from "../../measures/figures.ts";
import { cautions, degrees, fixed } from "../../output/words.ts";
import { linkages } from "../../vehicle/linkages.ts";
import { type TargetName, targetKinds, targetNames, targetOf } from "../../vehicle/sections/targets.ts";
import { sectionField, sectionNames } from "../../vehicle/sections.ts";
import { allKeys, bindingsNow } from "../keys.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { viewOf } from "../views/views.ts";
import { sectionFragments } from "./sectionFragments.ts";
import { wrapped } from "./wrap.ts";

const keyColumns = 9;

/** Lines of the help page that are seen at a time: all but title, footer and the line that says where it stands. */
export function helpRoom({ rows }: Pick<Model, "rows">): number {
  return Math.max(1, rows - 3);
}

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
  const [own = [], ...groups] = allKeys(model).map(({ heading, bindings }) => [
    heading,
    ...bindings.flatMap((binding) => {
      const why = now.has(binding) ? binding.off?.({ ...model, focus: { on: "bench" } }) : null;
      const off = why ? ` (off just now). ${why}` : "";
      return indented(`${binding.help}${off}`, `  ${binding.shown}`, keyColumns);
    }),
    "",
  ]);
  const figures = [...carFigures, ...wheelFigures].filter(({ id }) => explained.includes(id));
  const numbers = figures.flatMap(({ label, sign, explanation }) =>
    indented(`${label}: ${explanation}${sign === "" ? "" : ` (${sign}.)`}`, "  ", 4),
  );
  const curves = indented(
    `In BUMP: a slope is toe-in in bump and toe-out in droop, or the other way round: the rod's inner end stands too high or too low. A bow goes the same way in bump and in droop: the rod is too long or too short for its arms, so its inner end has to go in or out, and the rod is cut to it; another length of the rod alone only sets the toe. The row says which way, tried out on this car with the rods cut to follow. The inner end is Rack up and Rack eye to eye in the list, or the eye of a bar, a plate or a centre link; where one side asks for out and the other for in, it is Rack offset. Where the row says that it is not the inner end, no place of it near by takes a quarter off: look at the tab.`,
    "  ",
    4,
  );
  const view = viewOf(model.view);
  const under = view.explain(model);
  return [
    ...(under === ""
      ? []
      : [`IN THE VIEW "${view.name.toUpperCase()}", UNDER THE CURSOR`, ...indented(under, "  ", 2), ""]),
    ...own,
    ...(model.view === "Car" ? [...sectionLines(model, indented), ""] : []),
    ...start,
    "",
    ...groups.flat(),
    "WHAT THE NUMBERS MEAN",
    ...numbers,
    ...curves,
    "",
    "TARGETS: THE SMALL MARKS ON THE GAUGES",
    ...targetNames.flatMap((name) => indented(targetWords(model, name), "  ", 4)),
    ...(model.view === "Car" ? [] : ["", ...sectionLines(model, indented)]),
    "",
    "BEFORE DRIVING",
    ...cautions.flatMap((caution) => indented(caution, "  ", 4)),
  ];
}

/** Of each optional section what it is, whether the file has it, and how one is begun. */
function sectionLines(
  { bench: { car } }: Model,
  indented: (text: string, first: string, indent: number) => readonly string[],
): readonly string[] {
  const linked = linkages.filter(({ name }) => name === car.form.linkage);
  return [
    "OPTIONAL SECTIONS OF THE CAR'S FILE",
    ...indented(
      "What stands in one is listed in 7 Car, below all other numbers, and typed over there. To begin one, write such lines at the end of the file in any text editor, with your own numbers in the file's unit; in inches for a double-arm front end they look so. rackwright schema tells every key.",
      "  ",
      2,
    ),
    ...sectionNames.flatMap((name) => [
      ...indented(
        `${name}${car.sections[name] === null ? "" : " (in this file)"}: ${sectionField(name, linked).help}`,
        "  ",
        4,
      ),
      ...sectionFragments[name].map((line) => `      ${line}`),
    ]),
  ];
}

/** The line of the help page that explains a key of the view that is seen, or of the bench; null where it means nothing. */
export function helpLineOf(model: Model, columns: number, chord: string): number | null {
  const bench: Model = { ...model, focus: { on: "bench" } };
  const meant = bindingsNow(bench).find(({ keys }) => keys.includes(chord));
  if (meant === undefined) return null;
  const head = `  ${meant.shown}`.padEnd(keyColumns) + (meant.help.split(" ")[0] ?? "");
  const at = helpLines(model, columns).findIndex((line) => line.startsWith(head));
  return at < 0 ? null : at;
}

/** A target with its levels, and where those come from. */
function targetWords({ bench, display }: Model, name: TargetName): string {
  const { kind, help } = targetKinds[name];
  const { warn, bad, wrong, from } = targetOf(bench.car.sections.targets, name);
  const length = sayer(display);
  const say = (value: number) =>
    kind === "length" ? length(value) : kind === "angle" ? degrees(value) : `${fixed(value, 0)} %`;
  const where = from === "file" ? "set in the car's file" : "common practice";
  return `${name}: ${help} Doubtful ${wrong} ${say(warn)}, bad ${wrong} ${say(bad)} (${where}).`;
}
