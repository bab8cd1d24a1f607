import { existsSync } from "node:fs";
import { loadText } from "../files/load.ts";
import { saveText } from "../files/save.ts";
import type { NoTapeCar, TapeCar } from "../measures/tapeCar.ts";
import { printable } from "../output/printable.ts";
import type { Tape } from "../vehicle/from-tape/readings.ts";
import { answersOn, sheetWith } from "../vehicle/from-tape/sheet.ts";
import { askTape } from "./askTape.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";
import { quoted, shortest, target } from "./newNames.ts";
import { write } from "./streams.ts";
import type { Answers } from "./tapeAnswers.ts";

/** Where the answers of a car are kept: beside it. */
function sheetBeside(path: string): string {
  return path.replace(/(\.ya?ml)?$/i, "-tape.yaml");
}

/** How a reading of a car that is made is put right: in its sheet, and the car made of it anew, in a sentence. */
export function howToCorrect(path: string, sheet: string): string {
  const again = shortest(path.replace(/(\.ya?ml)?$/i, "-again$1"));
  return `To correct a reading, change it in ${printable(sheet)} and make the car anew under a name of its own: rackwright new ${quoted(again)} --from-tape ${quoted(sheet)}`;
}

/** A car of what is asked one by one; every answer is kept on a sheet beside it as soon as it is given. */
export async function askedFor(desk: Desk, file: string, make: (tape: Tape) => TapeCar | NoTapeCar): Promise<TapeCar> {
  const path = target(file);
  const sheet = sheetBeside(path);
  const name = shortest(sheet);
  if (existsSync(path))
    throw new Ended(
      Exit.badInput,
      `${printable(file)}: cannot be made: there is a file of that name already.${existsSync(sheet) ? ` ${howToCorrect(path, name)}` : ""}`,
    );
  const there = existsSync(sheet) ? loadText(sheet) : null;
  const kept = there === null ? {} : "complaints" in there ? null : answersOn(there.text);
  if (kept === null)
    throw new Ended(
      Exit.badInput,
      `${printable(name)} is there, where the answers would be kept, and is no list of readings: give the car another name.`,
    );
  let hash = there !== null && "hash" in there ? there.hash : null;
  let failed: string | null = null;
  const keep = (answers: Answers) => {
    const saved = saveText(sheet, sheetWith(answers), hash);
    if (saved.saved) hash = saved.hash;
    else failed = "complaint" in saved ? saved.complaint : "it was changed elsewhere";
  };
  if (there !== null)
    await write(desk.streams.stderr, `Going on from the answers in ${printable(name)}; back goes to those before.\n\n`);
  const howToGoOn = () =>
    failed !== null
      ? `The answers could not be kept in ${printable(name)}: ${failed}.`
      : hash === null
        ? "Nothing was answered yet."
        : `The answers are kept in ${printable(name)}. Go on with them by the same command; or correct them there, then: rackwright new ${quoted(file)} --from-tape ${quoted(name)}`;
  const made = await askTape(desk.streams, { kept, keep, make, howToGoOn });
  if (failed === null) desk.note(`The readings are kept in ${printable(name)}. ${howToCorrect(path, name)}`);
  return made;
}
