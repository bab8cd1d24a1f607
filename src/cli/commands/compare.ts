import { Command } from "commander";
import { compareJson, comparePaper } from "../../output/compare.ts";
import { checkJob } from "../../solve/check/check.ts";
import { type Compared, compare } from "../../solve/compare/compare.ts";
import { finished } from "../../solve/job.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { lengthsIn, type PaperOptions, papering, printPaper } from "../report.ts";

/** `rackwright compare A B [C…]`: cars beside each other. */
export function compareCommand(desk: Desk): Command {
  const command = new Command("compare")
    .description(
      "Cars beside each other: the inputs that differ as their builders wrote them, every figure with its change against the first car, and the checks that come out otherwise.",
    )
    .argument("<A>", "the car that the others are held against: a car file, or a preset's name")
    .argument("<B>", "another car")
    .argument("[more...]", "further cars");
  return papering(command)
    .addHelpText(
      "after",
      examples(
        ["rackwright compare before.yaml after.yaml", "what was changed, and what it did"],
        ["rackwright compare now.yaml tab.yaml rack.yaml", "two cures beside the car as it is"],
        ["rackwright compare before.yaml after.yaml --html > change.html", "one file to print or to send"],
      ),
    )
    .action(async (a: string, b: string, more: readonly string[]) => {
      const options = command.optsWithGlobals<PaperOptions>();
      const cars: Compared[] = [];
      for (const name of [a, b, ...more]) {
        const study = await openStudy(desk, name);
        cars.push({ name, study, checks: finished(checkJob(study)) ?? { items: [] } });
      }
      const unit = options.units ?? cars[0]?.study.car.form.units ?? "in";
      const length = lengthsIn(unit);
      const comparison = compare(cars);
      await printPaper(desk, options, unit, {
        json: () => compareJson(comparison, unit, length),
        paper: () => comparePaper(comparison, unit, length),
      });
    });
}
