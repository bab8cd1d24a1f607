import { existsSync } from "node:fs";
import { Command, Option } from "commander";
import { loadText } from "../../files/load.ts";
import { begunFrom, loadPreset } from "../../files/presets.ts";
import { newFile } from "../../files/save.ts";
import { carOfTape } from "../../measures/tapeCar.ts";
import { jsonText } from "../../output/json.ts";
import { printable } from "../../output/printable.ts";
import { WIDTH, wrap } from "../../output/table.ts";
import { priceOfAssuming, tapeNotes } from "../../output/tapeNotes.ts";
import type { LengthUnit } from "../../vehicle/car.ts";
import { changeFrontEnd, type FrontEndChange } from "../../vehicle/change.ts";
import { changed } from "../../vehicle/edits/change.ts";
import type { Tape } from "../../vehicle/from-tape/readings.ts";
import { blankSheet, readSheet } from "../../vehicle/from-tape/sheet.ts";
import { kingPinSketch } from "../../vehicle/from-tape/sketch.ts";
import { labelNames, withLabel } from "../../vehicle/labels.ts";
import { linkages } from "../../vehicle/linkages.ts";
import { mechanisms } from "../../vehicle/mechanisms.ts";
import { readCar } from "../../vehicle/read.ts";
import { startingValues } from "../../vehicle/starting/marks.ts";
import { firstPreset } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { quoted, shortest, target } from "../newNames.ts";
import { jsonOption, lengthsIn } from "../report.ts";
import { askedFor, howToCorrect } from "../tapeQuestions.ts";

interface NewOptions extends FrontEndChange {
  readonly json?: boolean;
  readonly from?: string;
  readonly fromTape?: string | true;
  readonly tapeSheet?: boolean;
  readonly rods?: "to-fit" | "as-cut";
  readonly units?: LengthUnit;
  readonly title?: string;
  readonly job?: string;
  readonly date?: string;
}

/** A car's text to begin with, where it is from, and what has to be said of it. */
interface Begun {
  readonly text: string;
  /** "a copy of the preset x", as the note says it. */
  readonly words: string;
  readonly from: string;
  readonly filled: readonly string[];
  readonly notes: readonly string[];
  /** How to make it anew where a reading of it was wrong; null where it was not read. */
  readonly again: string | null;
}

/** `rackwright new FILE`: a car file to begin with, a copy of another car or from readings with a tape. */
export function newCommand(desk: Desk): Command {
  const command = new Command("new")
    .description(
      "Write a new car file to begin with: a copy of an example or of another car, or from readings with a tape. A file that is there is never touched.",
    )
    .argument("[FILE]", "the file to write; .yaml is added where the name has none")
    .option("--from <CAR>", "the car file or the example to copy (default: the first example)")
    .option("--from-tape [SHEET]", "from readings with a tape: a filled-in sheet, or asked for one by one")
    .option("--tape-sheet", "print the blank list of readings, to take to the car or to fill in")
    .addOption(
      new Option("--rods <which>", "of a car from the tape: as they were taped, or to fit the other readings").choices([
        "to-fit",
        "as-cut",
      ]),
    )
    .addOption(new Option("--units <unit>", "of the blank list").choices(["in", "mm"]))
    .option("--title <words>", "what the new car is called")
    .option("--job <words>", "whose job it is, or its number")
    .option("--date <words>", "its date")
    .addOption(
      new Option("--linkage <name>", "with another linkage, its points given starting values").choices(
        linkages.map(({ name }) => name),
      ),
    )
    .addOption(
      new Option("--mechanism <name>", "likewise with another steering mechanism").choices([
        ...new Set(mechanisms.map(({ word }) => word)),
      ]),
    )
    .addOption(new Option("--take-off <where>", "where a rack's tie rods start").choices(["end", "centre"]))
    .addOption(jsonOption())
    .addHelpText(
      "after",
      `\n${wrap(`From a tape, what is not read is assumed, and marked so. ${priceOfAssuming}`, WIDTH).join("\n")}`,
    )
    .addHelpText(
      "after",
      `\nWhat a tape's tie-rod hole is read from:\n\n${kingPinSketch.map((line) => `  ${line}`.trimEnd()).join("\n")}`,
    )
    .addHelpText(
      "after",
      examples(
        ["rackwright new car.yaml", "a symmetric, sound car to change"],
        ["rackwright new --tape-sheet > sheet.yaml", "the readings to take, to print or to fill in"],
        ["rackwright new car.yaml --from-tape sheet.yaml", "the car that the filled-in sheet describes"],
        ["rackwright new car.yaml --from-tape", "the same, asked for one by one"],
        ["rackwright new next.yaml --from car.yaml --job 'Job 12'", "begin with another car, for the next customer"],
        ["rackwright new car.yaml --linkage strut --mechanism relay", "begin with the parts that are on the stand"],
      ),
    );
  return command.action(async (file: string | undefined) => {
    const options = command.optsWithGlobals<NewOptions>();
    if (options.tapeSheet) return desk.print(blankSheet(options.units ?? "in"));
    if (file === undefined)
      throw new Ended(Exit.badInput, "new lacks FILE: name the file to write, as in rackwright new my-car.");
    if (options.units !== undefined)
      throw new Ended(
        Exit.badInput,
        "--units is of the blank list (--tape-sheet) alone: a new car keeps the units of the car or the readings that it is made from. For millimetres begin with a car in mm, such as --from cut-rods-off-middle.",
      );
    const begun =
      options.fromTape === undefined ? copied(options) : await fromTape(desk, file, options.fromTape, options);
    const made = newFile(target(file), labelled(begun.text, options));
    if (!made.saved)
      throw new Ended(
        Exit.badInput,
        `${printable(file)}: ${"complaint" in made ? made.complaint : made.ask}.${begun.again === null ? "" : ` ${begun.again}`}`,
      );
    const path = shortest(made.path);
    if (options.json) desk.print(jsonText({ file: made.path, from: begun.from, filled: begun.filled }));
    desk.note(`Wrote ${path}, ${begun.words}. Open it with: rackwright ${quoted(path)}`);
    for (const note of begun.notes) desk.note(note);
  });
}

/** The text with the new car's title, job and date. */
function labelled(text: string, options: NewOptions): string {
  return labelNames.reduce((so, name) => {
    const words = name === "as-built" ? undefined : options[name];
    return words === undefined ? so : withLabel({ text: so }, name, words);
  }, text);
}

/** A copy of a car file or an example; what belongs to the other job alone does not come along. */
function copied(options: NewOptions): Begun {
  const name = options.from ?? firstPreset();
  const isFile = existsSync(name);
  const loaded = isFile ? loadText(name) : loadPreset(name);
  if ("complaints" in loaded)
    throw new Ended(Exit.badInput, `${isFile ? `${printable(name)}: ` : ""}${loaded.complaints[0].message}.`);
  const car = readCar(loaded.text);
  if ("complaints" in car)
    throw new Ended(
      Exit.badInput,
      `${printable(name)} cannot be copied: ${car.complaints[0].part}: ${car.complaints[0].message}.`,
    );
  const { text, filled } = startedWith(loaded.text, options);
  const fresh = isFile
    ? changed(
        text,
        ["job", "date", "as-built"].map((key) => ({ path: [key], text: null })),
      )
    : filled.length > 0
      ? withLabel({ text: begunFrom({ name, text }) }, "title", unmeasuredTitle(text))
      : begunFrom({ name, text });
  return {
    text: fresh,
    from: isFile ? name : "name" in loaded ? loaded.name : name,
    filled,
    again: null,
    words: `${filled.length === 0 ? "a copy of" : "begun from"} ${isFile ? printable(name) : `the preset ${name}`}`,
    notes:
      filled.length > 0
        ? ['Its lines marked "starting value" are guesses to begin with: measure and correct them.']
        : [],
  };
}

/** "Strut, relay: to be measured": an example's own title would be untrue of another front end. */
function unmeasuredTitle(text: string): string {
  const car = readCar(text);
  if ("complaints" in car) return "New car";
  const words = `${car.form.linkage}, ${car.form.mechanism}`.replaceAll("-", " ");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}: to be measured`;
}

/** A car from a filled-in sheet, or from what is asked for one by one. */
async function fromTape(desk: Desk, file: string, sheet: string | true, options: NewOptions): Promise<Begun> {
  if (options.from !== undefined)
    throw new Ended(Exit.badInput, "--from and --from-tape are two ways to begin: give one of them.");
  if (options.linkage !== undefined || options.mechanism !== undefined || options.takeOff !== undefined)
    throw new Ended(
      Exit.badInput,
      "a tape's readings describe two arms a side and a rack: change the linkage or the mechanism afterwards, with new --from.",
    );
  const asCut = options.rods === undefined ? null : options.rods === "as-cut";
  const make = (read: Tape) => carOfTape(asCut === null ? read : { ...read, rodsAsCut: asCut });
  const made = sheet === true ? await askedFor(desk, file, make) : make(readSheetFile(sheet));
  if ("complaint" in made) throw new Ended(Exit.badInput, asSaid(made.complaint));
  const from = sheet === true ? "tape" : sheet;
  const notes = tapeNotes(made, lengthsIn(made.tape.units));
  // Where it was asked for, the sheet was named with it already.
  const again = sheet === true ? null : howToCorrect(target(file), sheet);
  return {
    text: made.text,
    from,
    filled: [...startingValues(made.car)],
    words: "from the tape",
    notes: [...notes, ...(again !== null && notes.some((note) => note.startsWith("warning")) ? [again] : [])],
    again,
  };
}

function asSaid(sentence: string): string {
  return `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;
}

function readSheetFile(file: string): Tape {
  const loaded = loadText(file);
  if ("complaints" in loaded) throw new Ended(Exit.badInput, `${printable(file)}: ${loaded.complaints[0].message}.`);
  const tape = readSheet(loaded.text);
  if (!("complaints" in tape)) return tape;
  const lines = tape.complaints.map(({ line, column, part, message }) =>
    [printable(file), line, column, ` ${part === "" ? "" : `${part}: `}${message}`]
      .filter((each) => each !== null)
      .join(":"),
  );
  throw new Ended(Exit.badInput, lines.join("\n"), true);
}

/** A preset's text, changed to the linkage and mechanism asked for, and the quantities that were given starting values. */
function startedWith(
  text: string,
  { linkage, mechanism, takeOff }: NewOptions,
): { readonly text: string; readonly filled: readonly string[] } {
  if (takeOff !== undefined && mechanism !== undefined && mechanism !== "rack")
    throw new Ended(Exit.badInput, `--take-off is for a rack: a ${mechanism} has none.`);
  const car = readCar(text);
  if ("complaints" in car) return { text, filled: [] };
  return changeFrontEnd(car, {
    ...(linkage && { linkage }),
    ...(mechanism && { mechanism }),
    ...(takeOff && { takeOff }),
  });
}
