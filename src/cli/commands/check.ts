import { Command } from "commander";
import { checkJson, checkText } from "../../output/check.ts";
import { checkJob } from "../../solve/check/check.ts";
import { countOf } from "../../solve/check/report.ts";
import { finished } from "../../solve/job.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Exit } from "../exit.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";
import { printOrWatch, type WatchOptions, watching } from "../watching.ts";

/** `rackwright check FILE`: what binds, what hits, what holds too little thread; exit 1 when a limit is broken. */
export function checkCommand(desk: Desk): Command {
  const command = new Command("check")
    .description(
      "Whether anything binds, hits or holds too little thread, at every place of the steering by every travel. Ends with exit code 1 when a limit is broken.",
    )
    .argument("<FILE>", "a car file, or a preset's name");
  return watching(reporting(command, "whole"))
    .addHelpText(
      "after",
      examples(
        ["rackwright check car.yaml", "one line an item: pass, close, broken, not given"],
        ["rackwright check car.yaml --json", "the same for other programs"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<ReportOptions & WatchOptions>();
      await printOrWatch(desk, options, [file], async () => {
        const study = await openStudy(desk, file);
        const unit = options.units ?? study.car.form.units;
        const report = finished(checkJob(study));
        if (report === null) return;
        printReport(desk, options, {
          json: () => checkJson(study, report, unit),
          text: () => checkText(study, report, unit, lengthsIn(unit)),
        });
        if (countOf(report, "broken") > 0) desk.exit = Exit.limitBroken;
      });
    });
}
