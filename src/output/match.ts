import type { Entangled, Matched, PartRow } from "../solve/match/matched.ts";
import type { Unknown } from "../solve/match/unknowns.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { borne } from "./borne.ts";
import { foreignLines, offLines } from "./matchOff.ts";
import { undecidedLines } from "./matchUndecided.ts";
import { premise, type ReadIn, readingWords, unknownWords } from "./matchWords.ts";
import { unitName } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { undecidedOf } from "./undecided.ts";
import { cautions, type Length } from "./words.ts";

/** Less likely than this, readings and their tolerances do not go together, whatever the car is. */
const UNLIKELY = 0.01;

/** What a built car most likely is, as a page of so many columns. */
export function matchText(
  matched: Matched,
  title: string | null,
  unit: LengthUnit,
  length: Length,
  width = WIDTH,
  readIn: ReadIn = "file",
): string[] {
  const isFew = undecidedOf(matched) === "few";
  return [
    ...wrap(`${matched.onFile.car.title}${title === null ? "" : `, beside: ${title}`}`, width),
    "",
    ...(isFew ? [] : [...foreignLines(matched, width), ...strainLines(matched, width)]),
    ...undecidedLines(matched, unit, length, width, readIn),
    ...(isFew ? [] : offLines(matched, unit, length, width, readIn)),
    ...readingTable(matched, unit, length, width, isFew),
    ...wrap(
      "Positive: turned toward the turn, toe-in, camber out at the top, caster back at the top. The bump gauge is the change of toe from ride height.",
      width,
    ),
    "",
    // What hardly anything was read of has no places to be told: they would only be believed.
    ...(isFew ? [] : restLines(matched, unit, width)),
    ...wrap(cautions.join(" "), width),
  ];
}

function restLines(matched: Matched, unit: LengthUnit, width: number): readonly string[] {
  return [
    ...fitLines(matched, width),
    ...partLines(matched, unit, width),
    ...untoldLines(matched, width),
    "",
    ...wrap(
      `${premise} Those are what the file of readings says, else what is usual. A place that is off by less than would have shown may stand unnamed, and what it does then stands with others: "or +-" holds that too, for one such place. What is off by more than its tolerance is told from all readings together: measure it once more before cutting anything.`,
      width,
    ),
  ];
}

/** The marks of readings; where there is little room they are signs. */
const again = (width: number) => (width < WIDTH ? "X" : "READ AGAIN");
const unchecked = (width: number) => (width < WIDTH ? "?" : "unchecked");

function readingTable(
  { onFile: { inputKind }, readings }: Matched,
  unit: LengthUnit,
  length: Length,
  width: number,
  isFew: boolean,
): readonly string[] {
  const rows = readings.map(({ prediction, onFile, matched, wrong, checked }) => {
    const say = (value: number) => borne(value, prediction.tolerance, prediction.kind, unit);
    const mark = wrong !== null ? again(width) : checked ? "" : unchecked(width);
    return [
      narrowed(readingWords(prediction, inputKind, length), width),
      say(prediction.read),
      say(onFile),
      say(matched),
      mark,
    ];
  });
  const heading = [narrowed(`reading (lengths ${unit}, angles deg)`, width), "read", "on file", "matched"];
  // Of so few readings nothing is matched: a number beside what was read would only be believed.
  if (isFew)
    return table(
      [heading.slice(0, -1)],
      rows.map((cells) => cells.slice(0, -2)),
      [0],
    );
  return rows.some(([, , , , mark]) => mark !== "")
    ? table([[...heading, width < WIDTH ? "" : "remark"]], rows, [0, 4])
    : table(
        [heading],
        rows.map((cells) => cells.slice(0, -1)),
        [0],
      );
}

/** Said before anything that is named: what does not go together says little of any one place. */
function strainLines({ chance }: Matched, width: number): readonly string[] {
  if (chance === null || chance >= UNLIKELY) return [];
  const words =
    "DO NOT BUILD ON THIS YET: all together still fit worse than their tolerances allow (less than 1 in 100). A reading is wrong that these cannot tell, some gauge is not as good as it is said to be, or the car is off in a way that its file cannot have. Read again what stands farthest off before anything below is believed.";
  return [...wrap(words, width), ""];
}

function fitLines({ converged, readings }: Matched, width: number): readonly string[] {
  const said = [
    ...(converged ? [] : ["The search was cut short: take these numbers for a beginning only."]),
    ...(width < WIDTH && readings.some(({ wrong }) => wrong !== null)
      ? [`${again(width)}: to be read again, left out.`]
      : []),
    ...(readings.some(({ checked }) => !checked)
      ? [`${unchecked(width)}: nothing else says what this one says, so that a slip in it would not show.`]
      : []),
  ];
  return said.length === 0 ? [] : [...said.flatMap((words) => wrap(words, width)), ""];
}

/** Where parts most likely are that stand out though they are not named as off, by whether they are within what is built to. */
function partLines({ parts }: Matched, unit: LengthUnit, width: number): readonly string[] {
  const rest = parts.filter(({ off }) => off === null);
  const beyond = rest.filter((part) => part.beyond);
  const seen = rest.filter((part) => part.standsOut && !part.beyond);
  const still = rest.filter(({ standsOut }) => !standsOut);
  return [
    ...(beyond.length === 0
      ? []
      : ["MOVED FURTHER THAN THE CAR IS BUILT TO, THOUGH NOT SURELY", ...partTable(beyond, unit, width), ""]),
    "WITHIN WHAT THE CAR IS BUILT TO",
    ...(seen.length === 0 ? [] : partTable(seen, unit, width)),
    ...wrap(
      still.length === 0
        ? "These are all that the readings have a say in."
        : stillWords(still, seen.length + beyond.length > 0, unit),
      width,
      "  ",
    ),
    "",
  ];
}

/** A name in a page that is narrower than text usually is: sides by a letter, and no word that goes without saying. */
function narrowed(name: string, width: number): string {
  if (width >= WIDTH) return name;
  return name
    .replace(/\b(left|right)$/, (side) => (side === "left" ? "L" : "R"))
    .replace(/, eye to eye|\(lengths (\w+), angles deg\)/, (_, unit) => (unit === undefined ? "" : `(${unit}, deg)`));
}

function partTable(parts: readonly PartRow[], unit: LengthUnit, width: number): readonly string[] {
  return table(
    [["part", "on file", "matched", "+-", "or +-", ""]],
    parts.map(({ unknown, moved, deviation, hidden }) => {
      const kind = unknown.quantities[0].kind === "length" ? "length" : "angle";
      const say = (value: number) => borne(value, 2 * deviation, kind, unit);
      return [
        narrowed(unknownWords(unknown), width),
        say(unknown.onFile),
        say(unknown.onFile + moved),
        say(2 * deviation),
        say(2 * deviation + hidden),
        unitName(kind, unit),
      ];
    }),
    [0, 5],
  );
}

/** Parts that are where the file has them, and how far off one of them would have shown. */
function stillWords(still: readonly PartRow[], more: boolean, unit: LengthUnit): string {
  const lengths = still.filter(({ unknown }) => unknown.quantities[0].kind === "length");
  const found = lengths.flatMap(({ leastFound }) => leastFound ?? []);
  const doubt = Math.max(...lengths.map(({ deviation }) => 2 * deviation));
  const say = (value: number) => borne(value, doubt, "length", unit);
  const shows =
    found.length === 0
      ? ""
      : ` A place off by ${say(Math.min(...found))} to ${say(Math.max(...found))} ${unit} or more, depending on which it is, would most likely have shown.`;
  return `${still.length} ${more ? "more " : ""}parts that the readings have a say in are where the file has them, as far as can be told.${shows}`;
}

/** What could be anything in its tolerance for all that was read, and what is told only together. */
function untoldLines({ untold, entangled }: Matched, width: number): readonly string[] {
  const pair = ({ parts: [a, b], correlation }: Entangled) =>
    `${unknownWords(a.unknown)} and ${unknownWords(b.unknown)} (${correlation > 0 ? "both more" : "one more, the other less"} fits as well)`;
  const names = grouped(untold);
  return [
    "WHAT THESE READINGS CANNOT TELL",
    ...wrap(
      names.length === 0
        ? "Nothing: they have a say in every part."
        : `${names.join("; ")}. These could be anywhere in what the car is built to.`,
      width,
      "  ",
    ),
    ...(entangled.length === 0 ? [] : wrap(`Told only together: ${entangled.map(pair).join("; ")}.`, width, "  ")),
  ];
}

/** Each point once, with its directions: "Lower arm, front pivot (ahead, out, up)". */
function grouped(untold: readonly Unknown[]): readonly string[] {
  const points = new Map<string, Set<string>>();
  for (const {
    quantities: [{ label }],
  } of untold) {
    const [, point, way] = /^(.*), (ahead|out|offset|up)$/.exec(label) ?? [null, label, null];
    const known = points.get(point) ?? new Set();
    if (way !== null) known.add(way);
    points.set(point, known);
  }
  return [...points].map(([point, ways]) => (ways.size === 0 ? point : `${point} (${[...ways].join(", ")})`));
}
