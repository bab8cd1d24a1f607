import { existsSync } from "node:fs";
import { Command } from "commander";
import { newFile, pathOf } from "../../files/save.ts";
import type { Study } from "../../measures/study.ts";
import { matchText } from "../../output/match.ts";
import { matchCsv, matchJson } from "../../output/matchData.ts";
import { ambiguousWords, readingWords } from "../../output/matchWords.ts";
import { printable } from "../../output/printable.ts";
import type { Matched } from "../../solve/match/matched.ts";
import { readCarReadings } from "../../vehicle/car-readings/read.ts";
import type { CarReadings } from "../../vehicle/car-readings/reading.ts";
import { openStudy, refusal } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { tapeGoodTo } from "../lengths.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";
import { sheetText } from "../sheetText.ts";

type MatchOptions = ReportOptions & { readonly out?: string };

/** `rackwright match FILE READINGS`: what a built car most likely is, from what was read on it. */
export function matchCommand(desk: Desk): Command {
  const command = new Command("match")
    .description(
      "After welding: what was read on the car beside what its file says, which part is most likely off and by how much, which reading to take again, and what the readings cannot tell.",
    )
    .argument("<FILE>", "the car file as it was to be built, or a preset's name")
    .argument("<READINGS>", "a file of what was read on the car: turn plates, bump gauge, toe, camber, caster, lengths")
    .option("--out <FILE>", "write the car as it most likely is as a new file, rods as cut");
  return reporting(command, "table")
    .addHelpText("after", formatHelp)
    .addHelpText(
      "after",
      examples(
        ["rackwright match car.yaml readings.yaml", "what is off, and what to read again"],
        ["rackwright match car.yaml readings.yaml --out as-built.yaml", "the car as it is, to go on with"],
        ["rackwright match balanced-two-seater as-built", "an example's readings, invented"],
      ),
    )
    .action(async (file: string, name: string) => {
      const options = command.optsWithGlobals<MatchOptions>();
      const study = await openStudy(desk, file);
      if (options.out !== undefined && existsSync(pathOf(options.out)))
        throw new Ended(
          Exit.badInput,
          `--out ${printable(pathOf(options.out))}: there is a file of that name, and match writes new ones only.`,
        );
      const unit = options.units ?? study.car.form.units;
      const length = lengthsIn(unit);
      const readings = await openReadings(desk, name, study);
      // Linear algebra is loaded only for who asks for it.
      const { matchOf } = await import("../../solve/match/match.ts");
      const matched = matchOf(study, readings);
      if ("unreached" in matched) {
        const complaints = matched.unreached.map((prediction) => ({
          line: prediction.reading.line,
          column: null,
          part: "",
          message: `${readingWords(prediction, study.inputKind, length)}: the car on file cannot be brought there, so that nothing can be said of it; read it again, or leave it out`,
        }));
        throw refusal(printable(name), complaints);
      }
      printReport(desk, options, {
        json: () => matchJson(matched, readings.title, unit, length),
        csv: () => matchCsv(matched, unit, length),
        text: () => matchText(matched, readings.title, unit, length),
      });
      if (options.out !== undefined) await write(desk, matched, options.out, ambiguousWords(matched, unit, length));
    });
}

const formatHelp = `
READINGS is a YAML file. Angles are degrees, or a length over a board:
7 1/4 over 24. Any part may be left out.
  units: in                    # or mm; what bare lengths are in
  turn-plates:                 # zeroed with the wheels straight
    tolerance: 0.5             # what the gauge is good to, 19 times of 20
    rows:
      - { turn: left, left: 20, right: 17.5 }
      - { turn: left, rack: 1 right, left: 14, right: 13.5 }
      - { turn: right, at: lock, inner: 28.75, outer: 22.75 }
  bump-gauge:                  # change of toe from ride height, toe-in positive
    board: 24                  # bare numbers below are then lengths over it
    rows:
      - { wheel: left, travel: -3, toe: 1/32 }
  toe: 1/8 total               # across both tyres; or of a wheel: 0.1 deg
  camber: { left: -0.5, right: -0.5 }
  caster: { left: 7.5, right: 7.5, tolerance: 0.5 }
  rods: { left: 14 13/16, right: 15 1/16 }           # eye to eye
  straight-ahead: 1/8 left     # the rack, from its middle, wheels straight
  lengths:
    rows:
      - { from: left.tie-rod.outer, to: right.tie-rod.outer, is: 44 3/4 }
  built-to: { lengths: 1/16, angles: 0.5, rack.offset: 1/4 }
built-to: how far the car may be off its file. Usual tolerances: plates and
caster 0.5, camber 0.25, bump gauge and toe 0.1 degree, what is built 1/16 in
or 1 mm and 0.5 degree, tapes 1/16 in or 1 mm (common practice, no source).
${tapeGoodTo}
rack: a rack set by tape may be off by 1/16 in or 1 mm too, and what that turns
the wheels by is added to the plates' tolerance (as the root of the sum of the
squares). at: lock is free of it: a stop needs no tape.`;

async function openReadings(desk: Desk, name: string, study: Study): Promise<CarReadings> {
  const { text, source } = await sheetText(desk, "readings", name);
  const readings = readCarReadings(text, study.car);
  if ("complaints" in readings) throw refusal(source, readings.complaints);
  return readings;
}

/** `doubts`: which cause the file takes where another fits as well, said in the file and beside it. */
async function write(desk: Desk, matched: Matched, name: string, doubts: readonly string[]): Promise<void> {
  const { matchedText } = await import("../../solve/match/written.ts");
  const comment = doubts.map((doubt) => `# More than one cause fits: ${printable(doubt)}.\n`).join("");
  const text = matchedText(matched).replace(/^\uFEFF?/, (mark) => `${mark}${comment}`);
  const made = newFile(pathOf(name), text);
  if (!made.saved)
    throw new Ended(Exit.badInput, `${printable(name)}: ${"complaint" in made ? made.complaint : made.ask}.`);
  desk.note(`Wrote ${printable(made.path)}.`);
  for (const doubt of doubts) desk.note(`note: more than one cause fits: ${printable(doubt)}.`);
}
