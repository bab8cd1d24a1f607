import { Command } from "commander";
import { travelSpan } from "../../measures/bumpTable.ts";
import { bumpCsv, bumpJson, bumpText } from "../../output/bump.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { type InputOptions, inputOf, lengthReader, type SpanOptions, spanOf } from "../lengths.ts";
import { noTravelOf, noteOfMiddle, tellUnreached, warnOfInput, warnOfTravel } from "../reach.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";
import { printOrWatch, type WatchOptions, watching } from "../watching.ts";

/** `rackwright bump FILE`: what both wheels do as they go up and down together. */
export function bumpCommand(desk: Desk): Command {
  const command = new Command("bump")
    .description(
      "What toe, camber, caster and track do as both wheels go up and down together, the steering held still.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--rack <length>", "where the rack is held, from its middle, to the driver's left positive (default: 0)")
    .option("--column <angle>", "likewise the column, in degrees, where there is no rack")
    .option("--from <length>", "first travel of the wheels, bump positive (default: full droop)")
    .option("--to <length>", "last travel (default: full bump)")
    .option("--step <length>", "from row to row (default: 21 rows)");
  return watching(reporting(command, "table"))
    .addHelpText(
      "after",
      examples(
        ["rackwright bump car.yaml", "full droop to full bump, rack in its middle"],
        ["rackwright bump car.yaml --rack='-1 1/2 in'", "with the rack 1 1/2 in to the right"],
        ["rackwright bump car.yaml --from=-50 --to=50 --step=5 --units mm", "in millimetres, every 5 mm"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<ReportOptions & WatchOptions & SpanOptions & InputOptions>();
      await printOrWatch(desk, options, [file], async () => {
        const study = await openStudy(desk, file);
        const unit = options.units ?? study.car.form.units;
        const length = lengthsIn(unit);
        const input = inputOf(options, study.inputKind, unit);
        const span = spanOf(options, travelSpan(study), lengthReader(unit));
        noteOfMiddle(desk, study, options.rack !== undefined || options.column !== undefined, length);
        warnOfInput(desk, study, [input], length);
        warnOfTravel(desk, study, [span.from, span.to], length);
        const table = study.bumpTable(input, span);
        if (table === null) throw new Ended(Exit.badInput, noTravelOf(study));
        printReport(desk, options, {
          json: () => bumpJson(study, table, unit),
          csv: () => bumpCsv(table, unit),
          text: () => bumpText(study, table, unit, length),
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
