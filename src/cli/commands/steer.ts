import { Command } from "commander";
import { rackSpan } from "../../measures/steerTable.ts";
import { steerCsv, steerJson, steerText } from "../../output/steer.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { type SpanOptions, spanOf } from "../lengths.ts";
import { tellUnreached, warnOfRack } from "../reach.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

/** `rackwright steer FILE`: the lock-to-lock table. */
export function steerCommand(desk: Desk): Command {
  const command = new Command("steer")
    .description("How far each wheel turns as the rack goes from lock to lock, at ride height.")
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--from <length>", "first rack place, from its middle, to the driver's left positive (default: right end)")
    .option("--to <length>", "last rack place (default: left end)")
    .option("--step <length>", "from row to row (default: 21 rows)");
  return reporting(command, "table")
    .addHelpText(
      "after",
      examples(
        ["rackwright steer car.yaml", "lock to lock in 21 rows"],
        ["rackwright steer car.yaml --from=-1 --to=1 --step='1/4 in'", "only the middle of the rack"],
        ["rackwright steer car.yaml --units mm --csv > steer.csv", "in millimetres, for a spreadsheet"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<ReportOptions & SpanOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const length = lengthsIn(unit);
      const span = spanOf(options, rackSpan(study), unit, (words) => desk.note(words));
      warnOfRack(desk, study, [span.from, span.to], length);
      const table = study.steerTable(span);
      printReport(desk, options, {
        json: () => steerJson(study, table, unit),
        csv: () => steerCsv(table, unit),
        text: () => steerText(study, table, unit, length),
      });
      tellUnreached(
        desk,
        table.rows.map((row) => row.blame),
        length,
      );
    });
}
