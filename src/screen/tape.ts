import { carOfTape, type NoTapeCar, type TapeCar } from "../measures/tapeCar.ts";
import { assumedInTape, noBumpYet, priceOf } from "../output/tapeNotes.ts";
import { degrees } from "../output/words.ts";
import { disagreements } from "../vehicle/from-tape/checks.ts";
import { assumptions, layoutOf, rodsOf } from "../vehicle/from-tape/layout.ts";
import { whyNeedless } from "../vehicle/from-tape/needless.ts";
import { readReading, readUnit, sayReading } from "../vehicle/from-tape/reading.ts";
import { type Reading, readings, type Tape, tapeOf } from "../vehicle/from-tape/readings.ts";
import { askOf } from "../vehicle/from-tape/sheet.ts";
import { impossible } from "../vehicle/from-tape/together.ts";
import { sayLength } from "../vehicle/units/format.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import type { Answers } from "./model.ts";

/** A row of the form for a new car from a tape. */
export type TapeRow = Asked &
  (
    | { readonly is: "reading"; readonly reading: Reading }
    | { readonly is: "units" }
    | { readonly is: "file" }
    /** Not a field: it makes the car. */
    | { readonly is: "make" }
    /** Nor this: it goes on to the form for readings between all points. */
    | { readonly is: "survey" }
  );

interface Asked {
  /** What the answer is kept by; each row's own. */
  readonly key: string;
  readonly page: 1 | 2;
  readonly name: string;
  /** The question in whole. */
  readonly ask: string;
}

const make = (page: 1 | 2): TapeRow => ({
  is: "make",
  key: `make-${page}`,
  page,
  name: page === 1 ? "MAKE THE CAR; page 2 can wait" : "MAKE THE CAR",
  ask: "",
});

const survey: TapeRow = {
  is: "survey",
  key: "survey",
  page: 2,
  name: "PAGE 3: EVERY POINT",
  ask: "Where everything on the front end is, from as many readings between its points as you can take: they check each other, and the wrong one is found. What is typed here goes along.",
};

function readingRows(page: 1 | 2): readonly TapeRow[] {
  return readings
    .filter((each) => each.page === page)
    .map((reading) => ({
      is: "reading",
      key: reading.key,
      page,
      name: reading.name,
      ask: `${askOf(reading)}.`,
      reading,
    }));
}

/** Every row, in the order of a walk around the car. */
export const tapeRows: readonly TapeRow[] = [
  {
    is: "file",
    key: "file",
    page: 1,
    name: "Name of the new car's file",
    ask: "What to call the new car's file, such as my-car. A file that is there already is never written over.",
  },
  { is: "units", key: "units", page: 1, name: "Inches or mm", ask: "What the tape reads: in or mm." },
  ...readingRows(1),
  make(1),
  ...readingRows(2),
  make(2),
  survey,
];

/** The unit that bare lengths of the form are in. */
export function unitsOf({ units = "" }: Answers): LengthUnit {
  return readUnit(units) ?? "in";
}

/** What an answer is worth, or what is wrong with it; null where there is none. */
type Worth = ReturnType<typeof readReading> | null;

function worthOf(reading: Reading, answers: Answers): Worth {
  const text = answers[reading.key] ?? "";
  if (text.trim() === "") return null;
  const hub = reading.key === "toe" ? readings.find(({ key }) => key === "hub-height") : undefined;
  const height = hub === undefined ? null : worthOf(hub, answers);
  return readReading(reading, text, unitsOf(answers), typeof height === "number" ? height : null);
}

/** Why a row's answer is none, in a sentence; null where it is one, or may be left out. */
export function wrongWith(row: TapeRow, answers: Answers): string | null {
  const text = (answers[row.key] ?? "").trim();
  switch (row.is) {
    case "make":
    case "survey":
      return null;
    case "file":
      return text === "" ? "Type a name for the file, such as my-car." : null;
    case "units":
      return text === "" || readUnit(text) !== null ? null : `"${text}" is neither: type in or mm.`;
    case "reading": {
      const worth = worthOf(row.reading, answers);
      if (worth === null) return row.reading.required ? "This one is needed." : null;
      if (typeof worth === "object") return `"${text}" is ${worth.complaint}.`;
      const clash = impossible(tapeFrom(answers)).find(({ at }) => at === row.key);
      return clash === undefined ? null : `${clash.words}.`;
    }
  }
}

/** What an answer was read as, short: "14 3/8 in"; what stands in its place while there is none. */
export function echoOfRow(row: TapeRow, answers: Answers): { readonly text: string; readonly good: boolean } {
  if (row.is !== "reading") return { text: "", good: true };
  const worth = worthOf(row.reading, answers);
  if (worth === null) return { text: whyPassedOver(row, answers) ?? leftOut(row.reading), good: true };
  if (typeof worth === "object") return { text: "not understood", good: false };
  if (typeof worth === "string") return { text: "", good: true };
  return { text: `= ${sayReading(row.reading, worth, unitsOf(answers))}`, good: true };
}

/** Why a row without an answer needs none, in few words; null where it is asked for. */
export function whyPassedOver(row: TapeRow, answers: Answers): string | null {
  const has = (key: string) => (answers[key] ?? "").trim() !== "";
  return row.is === "reading" && !has(row.key) ? whyNeedless(row.reading, has) : null;
}

/** What stands in the place of a reading that was not taken. */
function leftOut({ key, required }: Reading): string {
  if (required) return "";
  const assumed = key in assumptions ? assumptions[key as keyof typeof assumptions] : null;
  return assumed === null ? "may be left out" : `else assumed ${degrees(assumed, 0)}`;
}

/** The readings that are some, as they were typed, with their unit: what another sheet can take of them. */
export function readAnswers(answers: Answers): Answers {
  const good = tapeRows.flatMap((row) => {
    const text = (answers[row.key] ?? "").trim();
    return row.is === "reading" && text !== "" && wrongWith(row, answers) === null ? [[row.key, text] as const] : [];
  });
  return { ...Object.fromEntries(good), units: unitsOf(answers) };
}

/** The readings as a tape gives them; what is missing or wrong is left out. */
function tapeFrom(answers: Answers): Tape {
  const worth = readings.flatMap((reading) => {
    const value = worthOf(reading, answers);
    return value === null || typeof value === "object" ? [] : [[reading.key, value] as const];
  });
  return tapeOf(new Map(worth), { title: titleOf(answers), units: unitsOf(answers) });
}

/** A car is called as its file is, until it has a title of its own. */
function titleOf({ file = "" }: Answers): string | null {
  const name = (file.trim().split(/[\\/]/).at(-1) ?? "").replace(/\.ya?ml$/i, "");
  return name === "" ? null : name;
}

/** The first row that keeps the car from being made, and why; null where nothing does. */
export function firstWrong(answers: Answers): { readonly cursor: number; readonly complaint: string } | null {
  for (const [cursor, row] of tapeRows.entries()) {
    const complaint = wrongWith(row, answers);
    if (complaint !== null) return { cursor, complaint: `${row.name}: ${complaint}` };
  }
  return null;
}

/** The readings' car as text, or why they make none, in a sentence. */
export function carOf(answers: Answers): TapeCar | NoTapeCar {
  return carOfTape(tapeFrom(answers));
}

/** Both rods as the readings make them, and where readings disagree; null while some that it takes are missing. */
export function crossCheck(answers: Answers): { readonly agree: boolean; readonly words: readonly string[] } | null {
  const isNeeded = (row: TapeRow) => row.is === "reading" && row.reading.required;
  if (tapeRows.some((row) => isNeeded(row) && wrongWith(row, answers) !== null)) return null;
  const tape = tapeFrom(answers);
  const layout = layoutOf(tape);
  const length = (mm: number) => sayLength(mm, tape.units === "in" ? { unit: "in", fraction: 32 } : { unit: "mm" });
  const said = disagreements(tape, layout, length);
  if (said.length > 0) return { agree: false, words: said };
  const { left, right } = rodsOf(layout);
  const isTaped = tape.numbers.has("left-rod") && tape.numbers.has("right-rod");
  const words = `rods of ${length(left)} left and ${length(right)} right`;
  const verdict = isTaped ? `The readings agree: they make ${words}.` : `They make ${words}: check them on the car.`;
  return { agree: true, words: [verdict] };
}

/** What the car will have that was not read, and what that costs: said before it is made. */
export function beforeMaking(answers: Answers): string {
  const wrong = firstWrong(answers);
  if (wrong !== null) return `Still to do: ${wrong.complaint} Enter goes there.`;
  const made = carOf(answers);
  if ("complaint" in made) return made.complaint;
  const { layout, found } = made;
  const doubts = found.doubts.map((words) => `${words} `).join("");
  const assumed = assumedInTape(layout);
  if (assumed === null) return `${doubts}Enter writes the car's file and opens it.`;
  const bump = layout.assumed.has("travel") ? ` ${noBumpYet}` : "";
  return `${doubts}Enter writes the car's file and opens it. Assumed, and marked ~ until you change it: ${assumed}.${bump}${priceOf(layout)}`;
}
