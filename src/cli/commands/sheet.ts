import { Command } from "commander";
import { proofPlaces } from "../../measures/bench/proof.ts";
import { sheetJson } from "../../output/sheet/json.ts";
import { sheetPaper } from "../../output/sheet/sheet.ts";
import { writingIn } from "../../output/sheet/writing.ts";
import { checkJob } from "../../solve/check/check.ts";
import { missedGoals, unjudgedGoals } from "../../solve/goals/missed.ts";
import { finished } from "../../solve/job.ts";
import { proofSpreadOf } from "../../solve/tolerance/proofSpread.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { type PaperOptions, papering, printPaper } from "../report.ts";
import { printOrWatch, type WatchOptions, watching } from "../watching.ts";

interface SheetOptions extends PaperOptions {
  readonly from?: string;
}

/** `rackwright sheet FILE`: what to cut, weld, mount, set and prove, in working order. */
export function sheetCommand(desk: Desk): Command {
  const command = new Command("sheet")
    .description(
      "The build sheet, in working order: what to cut, jig, weld, mount and set, the readings that prove it with room for yours, the checks and what is still to be decided.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--from <OLD>", "the car as it is now: the sheet then says what to change, rods in turns");
  return watching(papering(command))
    .addHelpText(
      "after",
      examples(
        ["rackwright sheet car.yaml --html > sheet.html", "one file to print on A4 or Letter and take to the bench"],
        ["rackwright sheet car.yaml --pdf > sheet.pdf", "the same as a PDF, on Letter or, in millimetres, on A4"],
        ["rackwright sheet new.yaml --from now.yaml", "with what to change of the car as it is now"],
        ["rackwright sheet car.yaml --units mm --markdown", "in millimetres, for the job's notes"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<SheetOptions & WatchOptions>();
      await printOrWatch(desk, options, [file, ...(options.from === undefined ? [] : [options.from])], async () => {
        const from = options.from === undefined ? null : await openStudy(desk, options.from, "leave");
        const study = await openStudy(desk, file);
        const unit = options.units ?? study.car.form.units;
        const checks = finished(checkJob(study)) ?? { items: [] };
        const report = {
          study,
          from,
          checks,
          missed: missedGoals(study),
          unjudged: unjudgedGoals(study),
          spread: proofSpreadOf(study, proofPlaces(study, unit)),
        };
        await printPaper(desk, options, unit, {
          json: () => sheetJson(report, unit),
          paper: () => sheetPaper(report, writingIn(unit)),
        });
      });
    });
}
