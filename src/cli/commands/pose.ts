import { Command } from "commander";
import { blameOf } from "../../measures/blame.ts";
import { poseJson, poseText } from "../../output/pose.ts";
import { outOfReach } from "../../output/words.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { type InputOptions, inputOf, lengthOf } from "../lengths.ts";
import { noTravelOf, noteOfMiddle, warnOfInput, warnOfTravel } from "../reach.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

interface PoseOptions extends ReportOptions, InputOptions {
  readonly travel?: string;
  readonly travelLeft?: string;
  readonly travelRight?: string;
}

/** `rackwright pose FILE`: every number and point of both wheels at one place. */
export function poseCommand(desk: Desk): Command {
  const command = new Command("pose")
    .description("Every angle, length and point of both wheels in one position.")
    .argument("<FILE>", "a car file, or a preset's name")
    .option("--rack <length>", "where the rack is, from its middle, to the driver's left positive (default: 0)")
    .option("--column <angle>", "likewise the column, in degrees, where there is no rack")
    .option("--travel <length>", "how far both wheels are from ride height, bump positive (default: 0)")
    .option("--travel-left <length>", "the left wheel's own travel")
    .option("--travel-right <length>", "the right wheel's own travel");
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright pose car.yaml", "as it stands at ride height, rack in its middle"],
        ["rackwright pose car.yaml --rack='-12.7 mm' --travel='1 1/2 in'", "lengths with their own units"],
        ["rackwright pose car.yaml --travel-left=2 --travel-right=-2 --json", "one wheel up, the other down, as JSON"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<PoseOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const length = lengthsIn(unit);
      const asked = (name: string, text: string | undefined, otherwise: number) =>
        text === undefined ? otherwise : lengthOf(name, text, unit);
      const input = inputOf(options, study.inputKind, unit);
      const travel = asked("--travel", options.travel, 0);
      const left = asked("--travel-left", options.travelLeft, travel);
      const right = asked("--travel-right", options.travelRight, travel);
      noteOfMiddle(desk, study, options.rack !== undefined || options.column !== undefined, length);
      warnOfInput(desk, study, [input], length);
      if (!study.suspended && (left !== 0 || right !== 0)) throw new Ended(Exit.badInput, noTravelOf(study));
      warnOfTravel(desk, study, [left, right], length);
      const pose = study.pose(input, left, right);
      const blame = blameOf(pose, 0);
      if (blame !== null) throw new Ended(Exit.doesNotClose, `${outOfReach(study, blame, length)}.`);
      const place = { input, left, right };
      printReport(desk, options, {
        json: () => poseJson(study, place, pose, unit),
        text: () => poseText(study, place, pose, unit, length),
      });
    });
}
