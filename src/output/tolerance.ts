import type { FigureKind } from "../measures/figure.ts";
import type { Chance, FigureSpread, Tolerance } from "../solve/tolerance/result.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { assumedWords } from "./assumed.ts";
import { inUnits, unitName, written } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import {
  briefLabel,
  carriedWords,
  carrierWords,
  endWords,
  heldWords,
  jigWords,
  judgedValue,
  judgeName,
  ofHundred,
  setAgainWords,
} from "./toleranceWords.ts";
import { cautions, fixed, type Length } from "./words.ts";

/** Where both bands do not tell the same. */
const UNLIKE = "!";

/** Whether a figure varies enough over the builds for a reader to see it. */
function varies({ reading: { kind }, builds, set }: FigureSpread, unit: LengthUnit): boolean {
  if (builds === null || set === null) return builds !== null;
  const said = (value: number) => written(value, kind, unit);
  return said(builds.low) !== said(builds.high);
}

/** A number as a table has room for it: what is longer than any rod is told less finely. */
function fine(value: number, kind: FigureKind, unit: LengthUnit): string {
  const own = inUnits(value, kind, unit);
  if (kind !== "length" || Math.abs(own) < 30) return written(value, kind, unit);
  return fixed(own, unit === "mm" ? (Math.abs(own) < 1000 ? 1 : 0) : Math.abs(own) < 100 ? 2 : 1);
}

/** Figures that stand in the list twice, as the car's and as a wheel's. */
const twice: ReadonlySet<string> = new Set(["left.tieRodLength", "right.tieRodLength"]);

function figureRow({ reading, set, builds, linear, alike }: FigureSpread, unit: LengthUnit): readonly string[] {
  const { kind } = reading;
  const said = (value: number | undefined | null) =>
    value === null || value === undefined ? "-" : fine(value, kind, unit);
  const per = kind === "angle-per-length";
  return [
    per ? `${briefLabel(reading)}, ${unitName(kind, unit)}` : briefLabel(reading),
    per ? "" : unitName(kind, unit),
    said(set),
    said(builds?.low),
    said(builds?.middle),
    said(builds?.high),
    said(linear?.low),
    said(linear?.high),
    alike === false ? UNLIKE : "",
  ];
}

/** Rows with a column of words, one of units and columns of numbers as narrow as they can be. */
function narrow(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  const rest = widths.slice(1).reduce((sum, width) => sum + width + 1, 0);
  const label = Math.min(widths[0], WIDTH - rest);
  return rows.map(([name, unit, ...numbers]) =>
    [
      name.slice(0, label).padEnd(label),
      unit.padEnd(widths[1]),
      ...numbers.map((text, i) => text.padStart(widths[i + 2])),
    ]
      .join(" ")
      .trimEnd(),
  );
}

function figureTable({ figures }: Tolerance, unit: LengthUnit): readonly string[] {
  const heads = ["", "", "set", "5 %", "50 %", "95 %", "line 5", "95", ""];
  return narrow([
    heads,
    ...figures.filter((each) => varies(each, unit) && !twice.has(each.reading.id)).map((each) => figureRow(each, unit)),
  ]);
}

function chanceRow({ judge, set, aim, limit }: Chance, length: Length): readonly string[] {
  return [
    `${judgeName(judge)}${judge.dear ? " *" : ""}`,
    judge.id === "range" ? "" : judgedValue(judge, set, length),
    endWords(judge, judge.aim, length),
    ofHundred(aim),
    endWords(judge, judge.limit, length),
    ofHundred(limit),
  ];
}

function chanceTable({ chances, all }: Tolerance, length: Length): readonly string[] {
  return table(
    [["", "set", "good", "of 100", "limit", "of 100"]],
    [
      ...chances.map((each) => chanceRow(each, length)),
      ["all of these at once", "", "", ofHundred(all.aim), "", ofHundred(all.limit)],
    ],
    [0, 2, 4],
  );
}

function jigLines({ jig, chances }: Tolerance, unit: LengthUnit): readonly string[] {
  const missed = chances.filter((each) => each.missedAsDrawn).map(({ judge }) => judgeName(judge));
  const drawn =
    missed.length === 0
      ? []
      : wrap(`Past its limit as drawn, so that no jig helps: ${missed.join("; ")}. Move parts first.`, WIDTH, "  ", 2);
  if (jig === null)
    return [...wrap("Nothing: every build keeps what the car as drawn keeps.", WIDTH, "  ", 2), ...drawn];
  const { before, after, carriers } = jig;
  const lines = carriers.flatMap((each, i) =>
    wrap(`${jigWords(each, unit)} It carries ${carriedWords(each)} of what is missed.`, WIDTH, `  ${i + 1}. `, 5),
  );
  const held =
    after === null
      ? []
      : wrap(
          `Held so, ${ofHundred(after)} of 100 builds keep all that the car keeps as drawn, instead of ${ofHundred(before)}.`,
          WIDTH,
          "  ",
          2,
        );
  return [...lines, ...held, ...drawn];
}

function apartWords({ apart, tried }: Tolerance): string {
  return apart === 0 ? "All of them go together." : `${apart} of ${tried} did not go together: parts would not meet.`;
}

/** The report for reading. */
export function toleranceText(result: Tolerance, unit: LengthUnit, length: Length): string[] {
  const { study, asked, tried, done, chances, figures, held } = result;
  const stopped = done ? "" : ` STOPPED after ${tried} of ${asked.builds}: what follows is of these.`;
  const dear = chances.find(({ judge }) => judge.dear);
  const assumed = assumedWords(study.car);
  const unlike = figures.some((each) => each.alike === false && varies(each, unit));
  return [
    ...wrap(study.car.title, WIDTH),
    "",
    ...wrap(
      `${tried} builds (seed ${asked.seed}), every size off at random: ${heldWords(held, unit)}. Errors are normal, 95 of 100 within the tolerance: what adds up from measuring, cutting and the weld's pull comes out so. ${setAgainWords(result)} So what is left is what cannot be set. ${apartWords(result)}${stopped}`,
      WIDTH,
    ),
    ...(assumed === null ? [] : wrap(assumed, WIDTH)),
    "",
    "HOW MANY OF 100 BUILDS KEEP EACH LIMIT AND TARGET",
    ...chanceTable(result, length),
    ...(dear === undefined
      ? []
      : wrap(
          `* held against ${dear.aim.of} builds only, and not in the last line; looked at in 5 by 5 places of steering and travel, where check looks at 41 by 41: check is the closer look.`,
          WIDTH,
        )),
    "",
    "WHAT EACH OF THEM HANGS ON: the share of its spread that one size carries",
    ...chances
      .filter(({ carriers }) => carriers.length > 0)
      .flatMap(({ judge, carriers }) => wrap(`${judgeName(judge)}: ${carrierWords(carriers)}`, WIDTH, "  ", 4)),
    "",
    "SO HOLD THESE BEST",
    ...jigLines(result, unit),
    "",
    "WHAT 5, 50 AND 95 OF 100 BUILDS DO NOT EXCEED, and the same by straight lines",
    ...figureTable(result, unit),
    ...wrap(
      `${unlike ? `${UNLIKE} straight lines do not tell it: it bends, or it is the worse of two ends. Believe the builds. ` : "Straight lines tell the same as the builds. "}Worst values are told by their size. What does not vary is left out.`,
      WIDTH,
    ),
    "",
    ...wrap(
      "--csv and --json have every number; --builds and --seed try others. Play in joints and the strength of a weld are not in it.",
      WIDTH,
    ),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}
