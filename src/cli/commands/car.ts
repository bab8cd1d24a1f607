import type { Command } from "commander";
import type { Study } from "../../measures/study.ts";
import { summaryJson, summaryText } from "../../output/summary.ts";
import { finished } from "../../solve/job.ts";
import type { LengthUnit } from "../../vehicle/car.ts";
import { findForScreen, openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";
import { onTerminal } from "../streams.ts";

/** `rackwright [FILE]`: the screen on a car, or its summary where there is no terminal or where that is asked for. */
export function carAction(program: Command, desk: Desk): Command {
  program
    .description(
      "Steering and front suspension geometry for the fabrication bench.\n\nWithout a command: opens the screen on a car, or prints its summary where there is no terminal.",
    )
    .usage("[FILE] [options]\n       rackwright COMMAND [options]")
    .argument(
      "[FILE]",
      "a car file or a sheet of readings between points, or the name of an example of one; left out, the first preset",
    )
    .option("--summary", "print the summary, also in a terminal")
    .option("--plain", "talk in lines instead of drawing a screen, as for a screen reader");
  return reporting(program, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright", "the screen, on an example car"],
        ["rackwright car.yaml", "the screen, on your car"],
        ["rackwright car.yaml --summary", "the car on one page"],
        ["rackwright -- -car.yaml", "a file whose name begins with a dash"],
        ["rackwright steer --help", "what a command does and its options"],
      ),
    )
    .action(async (name: string | undefined) => {
      const options = program.opts<ReportOptions & { summary?: boolean; plain?: boolean }>();
      const { ascii = false, plain = false } = options;
      if ((plain || onTerminal(desk.streams)) && !options.summary && !options.json && !options.units) {
        desk.exit = await desk.openScreen({ ...findForScreen(name), ascii, plain });
        return;
      }
      const study = await openStudy(desk, name, "leave");
      const unit = options.units ?? study.car.form.units;
      const checks = options.json ? "" : await checkedWords(study, unit);
      printReport(desk, options, {
        json: () => summaryJson(study, unit),
        text: () => summaryText(study, checks, unit, lengthsIn(unit)),
      });
    });
}

/** What the checks over the whole range come to; they are loaded here, so that the screen does not wait for them. */
async function checkedWords(study: Study, unit: LengthUnit): Promise<string> {
  const [{ checkJob }, { worstOf }, { checksBrief }] = await Promise.all([
    import("../../solve/check/check.ts"),
    import("../../solve/check/report.ts"),
    import("../../output/check.ts"),
  ]);
  const report = finished(checkJob(study));
  return report === null ? "not done" : checksBrief(report, worstOf(report), unit, lengthsIn(unit));
}
