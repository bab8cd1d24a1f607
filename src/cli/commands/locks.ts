import { Command, Option } from "commander";
import { lockSharesOf } from "../../measures/lockShares.ts";
import { bewareOf } from "../../output/beware.ts";
import { locksJson, locksText } from "../../output/locks.ts";
import { written } from "../../output/numbers.ts";
import type { Length } from "../../output/words.ts";
import { remediesFor } from "../../solve/remedies/remedies.ts";
import type { Remedy } from "../../solve/remedies/remedy.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

interface LocksOptions extends ReportOptions {
  readonly columnMoves?: "yes" | "no";
  readonly uprights?: "made" | "to-make";
  readonly take?: string;
}

/** `rackwright locks FILE`: why left and right lock differ, and what would help. */
export function locksCommand(desk: Desk): Command {
  const command = new Command("locks")
    .description("Why the car turns further one way than the other: the share of each cause, and what would help.")
    .argument("<FILE>", "a car file, or a preset's name")
    .addOption(
      new Option(
        "--column-moves <answer>",
        "whether the steering column could follow a rack that is shifted sideways",
      ).choices(["yes", "no"]),
    )
    .addOption(new Option("--uprights <state>", "whether they are still to be made").choices(["made", "to-make"]))
    .option("--take <remedy>", "print the car's text with that remedy, by its word or its number");
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright locks car.yaml", "the shares of the difference, and the remedies with their figures"],
        ["rackwright locks car.yaml --column-moves no --uprights to-make", "ranked by what can still be done"],
        ["rackwright locks car.yaml --take recut > mended.yaml", "the car with one of them, as a new file"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<LocksOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const remedies = remediesFor(study, {
        columnCanMove: options.columnMoves === undefined ? null : options.columnMoves === "yes",
        uprightsToMake: options.uprights === undefined ? null : options.uprights === "to-make",
      });
      if (options.take !== undefined) {
        const remedy = taken(remedies.offered, options.take);
        for (const words of bewareOf(study, remedy.after, lengthsIn(unit))) desk.note(`warning: ${words}.`);
        return desk.print(remedy.text);
      }
      const report = { study, shares: lockSharesOf(study), remedies };
      const length = lengthsIn(unit);
      // Locks feel less than a tape's mark: 1/64 in of rack is most of a degree between them.
      const fine: Length = (mm) => (unit === "in" ? `${length(mm)} (${written(mm, "length", unit)})` : length(mm));
      if (options.columnMoves === undefined || options.uprights === undefined)
        desk.note(
          "note: --column-moves yes or no, and --uprights made or to-make, would put the remedies in a better order.",
        );
      printReport(desk, options, {
        json: () => locksJson(report, unit),
        text: () => locksText(report, unit, length, fine),
      });
    });
}

/** The remedy of that word or number. */
function taken(offered: readonly Remedy[], name: string): Remedy {
  const found = offered.find(({ key }, i) => key === name || String(i + 1) === name);
  if (found !== undefined) return found;
  const choices = offered.map(({ key }) => key).join(", ");
  throw new Ended(
    Exit.badInput,
    `--take "${name}" is none of this car's remedies: ${choices === "" ? "it has none" : `there are ${choices}`}.`,
  );
}
