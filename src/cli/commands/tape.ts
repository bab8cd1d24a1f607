import { Command, Option } from "commander";
import { newFile } from "../../files/save.ts";
import { bentJson, bentText } from "../../output/bent.ts";
import { printable } from "../../output/printable.ts";
import { surveyJson, surveyText } from "../../output/survey.ts";
import { blunderWords, surveyHeads } from "../../output/surveyWords.ts";
import { carOfSurvey } from "../../solve/survey/car.ts";
import { linkages } from "../../vehicle/linkages.ts";
import { mechanisms } from "../../vehicle/mechanisms.ts";
import { blankDiagonals, blankSurvey } from "../../vehicle/survey/blank.ts";
import type { SurveyForm } from "../../vehicle/survey/points.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { tapeGoodTo } from "../lengths.ts";
import { quoted, shortest, target } from "../newNames.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";
import type { Sheet } from "../surveySheet.ts";

interface TapeOptions extends ReportOptions {
  readonly blank?: SurveyForm["linkage"] | true;
  readonly mechanism?: SurveyForm["mechanism"];
  readonly readings?: boolean;
  readonly out?: string;
  readonly section?: "front" | "steering";
  readonly diagonals?: boolean;
  readonly against?: string;
}

/** `rackwright tape SHEET`: the points of a front end from readings between them. */
export function tapeCommand(desk: Desk): Command {
  const command = new Command("tape")
    .description(
      "Points from a tape: where everything on a front end is, from distances between any two points, heights, plumb marks and angles. Finds the reading that does not fit, says what is not settled and what to read next, and writes the car.",
    )
    .argument("[SHEET]", "a sheet of readings, or the name of an example of one")
    .addOption(
      new Option("--blank [linkage]", "print the list of readings to take, in working order").choices(
        linkages.map(({ name }) => name),
      ),
    )
    .addOption(
      new Option("--mechanism <name>", "of the blank list: what steers (default: rack)").choices(
        mechanisms.map(({ name }) => name),
      ),
    )
    .option("--diagonals", "of the blank list: the six diagonals of the front alone, for --against")
    .option("--against <car>", "is the car bent? The sheet's six diagonals beside those of its file as built")
    .option("--readings", "show every reading beside what the points make of it, not the worst alone")
    .option(
      "--out <file>",
      "write the car file; what was not read is assumed and marked. A file that is there is never touched",
    )
    .addOption(
      new Option("--section <name>", "print that part of the car file alone, to put into another").choices([
        "front",
        "steering",
      ]),
    );
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright tape --blank double-arm > sheet.yaml", "the readings to take, to print or to fill in"],
        [
          "rackwright tape short.yaml --blank double-arm > sheet.yaml",
          "the same, with what the short list says filled in",
        ],
        ["rackwright tape sheet.yaml", "the points, what does not fit, and what to read next"],
        ["rackwright tape short.yaml", "the same of a short list, as far as it goes"],
        ["rackwright tape sheet.yaml --out my-car", "the same, and the car written to my-car.yaml"],
        ["rackwright tape --blank double-arm --diagonals", "six readings, to see whether a car is bent"],
        ["rackwright tape six.yaml --against my-car.yaml", "those beside the car as it was built"],
        ["rackwright tape sheet.yaml --section front", "the part front of a car file with these points"],
      ),
    )
    .addHelpText("after", `\n${tapeGoodTo}`)
    .action(async (sheet: string | undefined) => {
      const options = command.optsWithGlobals<TapeOptions>();
      if (options.blank === true)
        throw new Ended(
          Exit.badInput,
          `--blank needs the front end that is to be read, one of:\n${linkages.map(({ name, label }) => `  ${name.padEnd(16)}${label}`).join("\n")}`,
        );
      if (options.blank !== undefined) {
        const form = { linkage: options.blank, mechanism: options.mechanism ?? "rack" };
        if (sheet !== undefined) {
          const { grownSheet } = await import("../surveySheet.ts");
          return desk.print(await grownSheet(desk, sheet, form));
        }
        const blank = options.diagonals ? blankDiagonals : blankSurvey;
        return desk.print(blank(form, options.units ?? "in"));
      }
      if (sheet === undefined)
        throw new Ended(
          Exit.badInput,
          "tape lacks SHEET: name a sheet of readings, or print the blank one with --blank double-arm.",
        );
      if (options.against !== undefined) return against(desk, sheet, options.against, options);
      // Linear algebra is loaded only for who asks for it.
      const [{ openSheet }, { nextReadings }] = await Promise.all([
        import("../surveySheet.ts"),
        import("../../solve/survey/next.ts"),
      ]);
      const opened = await openSheet(desk, sheet);
      const { surveyed } = opened;
      const unit = options.units ?? surveyed.survey.units;
      const length = lengthsIn(unit);
      if (options.section !== undefined) return desk.print(sectionOf(opened, options.section));
      if (options.out !== undefined) writeCar(desk, opened, options.out);
      const report = { surveyed, next: nextReadings(surveyed) };
      printReport(desk, options, {
        json: () => surveyJson(report, unit),
        text: () => surveyText(report, unit, length, options.readings === true),
      });
    });
}

/** A sheet's diagonals against those of the car that was built. */
async function against(desk: Desk, name: string, file: string, options: TapeOptions): Promise<void> {
  const [{ readSheetOf }, { bentOf }] = await Promise.all([
    import("../surveySheet.ts"),
    import("../../solve/survey/bent.ts"),
  ]);
  const { survey, source } = await readSheetOf(desk, name);
  const { car } = await openStudy(desk, file);
  const { linkage, mechanism } = survey.form;
  if (linkage !== car.form.linkage || mechanism !== car.form.mechanism)
    throw new Ended(
      Exit.badInput,
      `${source} is of ${linkage} and ${mechanism}, ${printable(file)} of ${car.form.linkage} and ${car.form.mechanism}: they are not the same front end.`,
    );
  const unit = options.units ?? survey.units;
  const bent = bentOf(survey, car);
  printReport(desk, options, {
    json: () => bentJson(bent, unit),
    text: () => bentText(car.title, bent, unit),
  });
}

function writeCar(desk: Desk, { surveyed, source }: Sheet, out: string): void {
  const length = lengthsIn(surveyed.survey.units);
  const made = carOfSurvey(surveyed, surveyHeads(surveyed, source, length));
  if ("complaint" in made) throw new Ended(Exit.badInput, `${source}: ${made.complaint} Nothing was written.`);
  const saved = newFile(target(out), made.text);
  if (!saved.saved)
    throw new Ended(Exit.badInput, `${printable(out)}: ${"complaint" in saved ? saved.complaint : saved.ask}.`);
  const path = shortest(saved.path);
  desk.note(`Wrote ${path}. Open it with: rackwright ${quoted(path)}`);
  for (const words of blunderWords(surveyed, length)) desk.note(`warning: ${words}`);
  if (made.assumed.length > 0)
    desk.note(
      `Assumed, and marked "starting value" in the file: ${made.assumed.length} ${made.assumed.length === 1 ? "number" : "numbers"}. The screen marks them ~ and lists them under Car.`,
    );
}

/** One part of the car's text, with its key. */
function sectionOf({ surveyed }: Sheet, section: "front" | "steering"): string {
  const { text } = carOfSurvey(surveyed, []);
  const [, part = ""] = new RegExp(`^(${section}:\\n(?: .*\\n)*)`, "m").exec(text) ?? [];
  return part;
}
