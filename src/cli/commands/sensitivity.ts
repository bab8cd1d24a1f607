import { Command } from "commander";
import { figureText, sensitivityCsv, sensitivityJson, sensitivityText } from "../../output/sensitivity.ts";
import { finished } from "../../solve/job.ts";
import { readings } from "../../solve/sensitivity/readings.ts";
import { sensitivityJob } from "../../solve/sensitivity/sensitivity.ts";
import { nearest } from "../../vehicle/nearest.ts";
import { safe } from "../../vehicle/shown.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

interface SensitivityOptions extends ReportOptions {
  readonly figure?: string;
}

/** `rackwright sensitivity FILE`: what must be held tightly, and what does not matter. */
export function sensitivityCommand(desk: Desk): Command {
  const command = new Command("sensitivity")
    .description(
      "What 1/16 in (1 mm) of each size of the car does to each number: what must be held tightly, and what does not matter.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--figure <name>", "look at one number alone, by its name, such as worstToeAcrossTyreLeft or left.camber");
  return reporting(command, "table")
    .addHelpText(
      "after",
      examples(
        ["rackwright sensitivity car.yaml", "what to hold tightly, what to watch, what does not matter"],
        ["rackwright sensitivity car.yaml --figure lockDifferenceInner", "what makes the inner locks unequal"],
        ["rackwright sensitivity car.yaml --units mm --csv > all.csv", "every size by every number, 1 mm each"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<SensitivityOptions>();
      const figure = options.figure === undefined ? null : figureNamed(options.figure);
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const length = lengthsIn(unit);
      const report = { study, rows: finished(sensitivityJob(study, unit)) };
      printReport(desk, options, {
        json: () => sensitivityJson(report, figure, unit),
        csv: () => sensitivityCsv(report, figure, unit),
        text: () => (figure === null ? sensitivityText(report, unit, length) : figureText(report, figure, unit)),
      });
    });
}

/** The name of a figure as it was typed; ends the command where there is none of that name. */
function figureNamed(name: string): string {
  const names = readings.map(({ id }) => id);
  if (names.includes(name)) return name;
  const meant = nearest(name, names);
  const advice = meant === null ? `The numbers are ${names.join(", ")}.` : `Did you mean "${meant}"?`;
  throw new Ended(Exit.badInput, `--figure "${safe(name)}" is no number of a car. ${advice}`);
}
