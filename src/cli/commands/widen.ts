import { Command, Option } from "commander";
import { bewareOf } from "../../output/beware.ts";
import { widenJson, widenText } from "../../output/widen.ts";
import { finished } from "../../solve/job.ts";
import {
  usualWidening,
  type Widened,
  type Widening,
  type WidenKind,
  widenJob,
  widenKinds,
} from "../../solve/widen/widen.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { lengthOf } from "../lengths.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

interface WidenOptions extends ReportOptions {
  readonly by?: string;
  readonly take?: WidenKind;
}

/** More than this a side is another car, mm. */
const most = 600;

/** `rackwright widen FILE`: the ways to make a front end wider, side by side. */
export function widenCommand(desk: Desk): Command {
  const command = new Command("widen")
    .description(
      "The front end made wider in four ways, side by side: longer arms, wider pivots with the rack kept, spacers, longer rack ends.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--by <length>", "how much wider a side (default: 2 in or 50 mm)")
    .addOption(new Option("--take <way>", "print the car's text widened so").choices(widenKinds));
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright widen car.yaml", "the four ways by 2 in a side, with what each does"],
        ["rackwright widen car.yaml --by='1 1/2' --json", "by an inch and a half, for other programs"],
        ["rackwright widen car.yaml --by=2 --take arms > wide.yaml", "the car with longer arms, as a new file"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<WidenOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const length = lengthsIn(unit);
      const by = options.by === undefined ? usualWidening(unit) : lengthOf("--by", options.by, unit);
      if (!(by > 0 && by <= most))
        throw new Ended(
          Exit.badInput,
          `--by "${options.by}" is no widening: it must be above 0 and at most ${length(most)}.`,
        );
      const ways = finished(widenJob(study, by));
      if (options.take !== undefined) {
        const way = taken(ways, options.take);
        for (const words of bewareOf(study, way.after, length)) desk.note(`warning: ${words}.`);
        return desk.print(way.text());
      }
      const report = { study, by, ways };
      printReport(desk, options, {
        json: () => widenJson(report, unit),
        text: () => widenText(report, unit, length),
      });
    });
}

/** The car widened in that way. */
function taken(ways: readonly Widening[], key: WidenKind): Widened {
  const way = ways.find((each) => each.key === key);
  if (way === undefined || "why" in way)
    throw new Ended(Exit.badInput, `--take ${key}: ${way === undefined ? "there is no such way" : way.why}.`);
  return way;
}
