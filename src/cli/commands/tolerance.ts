import { Command } from "commander";
import { toleranceText } from "../../output/tolerance.ts";
import { toleranceCsv, toleranceJson } from "../../output/toleranceData.ts";
import { type Asked, usually } from "../../solve/tolerance/result.ts";
import { toleranceJob } from "../../solve/tolerance/tolerance.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { driven } from "../driven.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { numberOf } from "../lengths.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

interface ToleranceOptions extends ReportOptions {
  readonly builds?: string;
  readonly seed?: string;
}

const mostBuilds = 100_000;
const mostSeed = 2 ** 31 - 2;

/** `rackwright tolerance FILE`: how the car comes out when it is built as closely as a shop can. */
export function toleranceCommand(desk: Desk): Command {
  const command = new Command("tolerance")
    .description(
      "How the car comes out when every size is built to its tolerance (1/16 in or 1 mm, unless the file's tolerances: say otherwise) and toe, camber and caster are set again: what 5, 50 and 95 of 100 builds come to, how many keep each limit, and what to hold best.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--builds <number>", `how many builds are tried, from 100 to ${mostBuilds} (default: ${usually.builds})`)
    .option("--seed <number>", `which builds: the same seed gives the same ones (default: ${usually.seed})`);
  return reporting(command, "table")
    .addHelpText(
      "after",
      examples(
        ["rackwright tolerance car.yaml", "how many builds come out well, and what to jig"],
        ["rackwright tolerance car.yaml --builds 1000", "the same sooner, and less sure"],
        ["rackwright tolerance car.yaml --csv > spread.csv", "every number's spread for a spreadsheet"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<ToleranceOptions>();
      const asked: Asked = {
        builds: wholeOf("--builds", options.builds, usually.builds, 100, mostBuilds),
        seed: wholeOf("--seed", options.seed, usually.seed, 1, mostSeed),
      };
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const job = toleranceJob(study, asked);
      if ("refused" in job) throw new Ended(Exit.badInput, job.refused);
      const result = await driven(job, "Building", desk.streams);
      if (result.tried === 0)
        throw new Ended(Exit.badInput, "stopped before the first build: there is nothing to tell.");
      const length = lengthsIn(unit);
      printReport(desk, options, {
        json: () => toleranceJson(result, unit),
        csv: () => toleranceCsv(result, unit),
        text: () => toleranceText(result, unit, length),
      });
    });
}

/** A whole number given to an option, within its range; ends the command where it is none. */
function wholeOf(option: string, text: string | undefined, usual: number, least: number, most: number): number {
  if (text === undefined) return usual;
  const value = numberOf(option, text);
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new Ended(Exit.badInput, `${option} "${text}" must be a whole number from ${least} to ${most}.`);
}
