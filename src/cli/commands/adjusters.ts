import { Command } from "commander";
import { adjustersJson, adjustersText } from "../../output/adjusters.ts";
import { type AdjusterRow, adjustersJob, settingsNow, usualAmounts } from "../../solve/adjusters/adjusters.ts";
import { finished } from "../../solve/job.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { lengthOf, numberOf } from "../lengths.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

interface AdjustersOptions extends ReportOptions {
  readonly turns?: string;
  readonly shim?: string;
  readonly rideHeight?: string;
  readonly tyre?: string;
  readonly take?: string;
}

/** `rackwright adjusters FILE`: what a turn of each rod end, a shim, ride height and a tyre change. */
export function adjustersCommand(desk: Desk): Command {
  const command = new Command("adjusters")
    .description(
      "What turns of each rod end, a shim under the rack, ride height or another tyre does to camber, caster, toe and bump.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--turns <number>", "how far each rod end is screwed out, in negative (default: 1)")
    .option("--shim <length>", "how much higher the rack is shimmed (default: 1/8 in or 3 mm)")
    .option("--ride-height <length>", "how much higher the body stands, lower negative (default: 1 in or 25 mm)")
    .option("--tyre <length>", "how much more loaded radius another tyre has (default: 1 in or 25 mm)")
    .option("--take <key>", "print the car's text with that one done, by its key, such as left.tie-rod.outer");
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright adjusters car.yaml", "the table for the wall of the trailer"],
        ["rackwright adjusters car.yaml --ride-height=-1/2 --tyre='25 mm'", "the car lower, on a larger tyre"],
        ["rackwright adjusters car.yaml --take ride-height > higher.yaml", "ground and body moved, as a new file"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<AdjustersOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const usual = usualAmounts(unit);
      const asked = (name: string, text: string | undefined, otherwise: number) =>
        text === undefined ? otherwise : lengthOf(name, text, unit);
      const amounts = {
        turns: options.turns === undefined ? usual.turns : numberOf("--turns", options.turns),
        shim: asked("--shim", options.shim, usual.shim),
        rideHeight: asked("--ride-height", options.rideHeight, usual.rideHeight),
        tyre: asked("--tyre", options.tyre, usual.tyre),
      };
      const rows = finished(adjustersJob(study, amounts));
      if (options.take !== undefined) return desk.print(taken(rows, options.take));
      const report = { study, now: settingsNow(study), rows, amounts };
      printReport(desk, options, {
        json: () => adjustersJson(report, unit),
        text: () => adjustersText(report, unit, lengthsIn(unit)),
      });
    });
}

/** The text of the car with the adjuster of that key turned. */
function taken(rows: readonly AdjusterRow[], key: string): string {
  const row = rows.find((each) => each.key === key);
  if (row === undefined)
    throw new Ended(
      Exit.badInput,
      `--take "${key}" is none of this car's adjusters: there are ${rows.map((each) => each.key).join(", ")}.`,
    );
  if ("why" in row) throw new Ended(Exit.badInput, `--take ${key}: ${row.why}.`);
  return row.text();
}
