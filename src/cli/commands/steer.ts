import { Command } from "commander";
import { inputSpan } from "../../measures/steerTable.ts";
import { steerCsv, steerJson, steerText } from "../../output/steer.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { inputReader, type SpanOptions, spanOf } from "../lengths.ts";
import { tellUnreached, warnOfInput } from "../reach.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";
import { printOrWatch, type WatchOptions, watching } from "../watching.ts";

/** `rackwright steer FILE`: the lock-to-lock table. */
export function steerCommand(desk: Desk): Command {
  const command = new Command("steer")
    .description("How far each wheel turns as the rack or the column goes from lock to lock, at ride height.")
    .argument("<FILE>", "a car file, or a preset's name")
    .option(
      "--from <length>",
      "first place of the rack, from its middle, to the left positive; or of the column, in degrees (default: right end)",
    )
    .option("--to <length>", "last place (default: left end)")
    .option("--step <length>", "from row to row (default: 21 rows)");
  return watching(reporting(command, "table"))
    .addHelpText(
      "after",
      examples(
        ["rackwright steer car.yaml", "lock to lock in 21 rows"],
        ["rackwright steer car.yaml --from=-1 --to=1 --step='1/4 in'", "only the middle of the rack"],
        ["rackwright steer car.yaml --units mm --csv > steer.csv", "in millimetres, for a spreadsheet"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<ReportOptions & WatchOptions & SpanOptions>();
      await printOrWatch(desk, options, [file], async () => {
        const study = await openStudy(desk, file);
        const unit = options.units ?? study.car.form.units;
        const length = lengthsIn(unit);
        const span = spanOf(options, inputSpan(study), inputReader(study.inputKind, unit));
        warnOfInput(desk, study, [span.from, span.to], length);
        const table = study.steerTable(span);
        printReport(desk, options, {
          json: () => steerJson(study, table, unit),
          csv: () => steerCsv(study, table, unit),
          text: () => steerText(study, table, unit, length),
        });
        tellUnreached(
          desk,
          study,
          table.rows.map((row) => row.blame),
          length,
        );
      });
    });
}
