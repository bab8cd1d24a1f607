import { Command, Option } from "commander";
import { type Study, studyOf } from "../../measures/study.ts";
import { bewareOf } from "../../output/beware.ts";
import { uprightChangeText, uprightJson, uprightText } from "../../output/upright.ts";
import type { LengthUnit, Wheel } from "../../vehicle/car.ts";
import { type UprightChange, whyNoUpright, withUpright } from "../../vehicle/hang.ts";
import { readCar } from "../../vehicle/read.ts";
import { uprightFields } from "../../vehicle/upright-fields.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { angleOf, lengthOf } from "../lengths.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

type UprightOptions = ReportOptions & {
  readonly side: "both" | Wheel;
  readonly take?: boolean;
} & { readonly [key: string]: unknown };

/** `rackwright upright FILE`: the uprights as bench parts, and hung at a wanted camber and caster. */
export function uprightCommand(desk: Desk): Command {
  const command = new Command("upright")
    .description(
      "The uprights as they lie on the bench, and what becomes of the car when they are made otherwise or hung at another camber and caster. What is not given stays as it is; the lower joints and the toe stay.",
    )
    .argument("<FILE>", "a car file, or a preset's name")
    .addOption(new Option("--side <side>", "which upright").choices(["both", "left", "right"]).default("both"));
  for (const { option, kind, help } of uprightFields)
    command.option(`--${option} <${kind === "length" ? "length" : "degrees"}>`, help);
  command.option("--take", "print the car's text with it, to be a new file");
  return reporting(command, "whole")
    .addHelpText(
      "after",
      examples(
        ["rackwright upright car.yaml", "both uprights, measured as on the bench"],
        ["rackwright upright car.yaml --camber=-1 --caster 8", "the same uprights hung so, and what that does"],
        ["rackwright upright car.yaml --tab-back '4 1/2' --take > new.yaml", "with the hole elsewhere, as a new file"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<UprightOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      const why = whyNoUpright(study.car);
      if (why !== null) throw new Ended(Exit.badInput, why);
      const change = changeFrom(options, unit);
      const after = Object.keys(change).length === 0 ? study : hungOn(study, options.side, change);
      if (options.take) {
        for (const words of bewareOf(study, after, lengthsIn(unit))) desk.note(`warning: ${words}.`);
        return desk.print(after.car.text);
      }
      printReport(desk, options, {
        json: () => uprightJson(after, unit),
        text: () =>
          after === study ? uprightText(study, unit) : uprightChangeText(study, after, unit, lengthsIn(unit)),
      });
    });
}

function changeFrom(options: UprightOptions, unit: LengthUnit): UprightChange {
  const given = uprightFields.flatMap(({ key, option, kind }) => {
    const { [key]: text } = options;
    if (typeof text !== "string") return [];
    const name = `--${option}`;
    return [[key, kind === "length" ? lengthOf(name, text, unit) : angleOf(name, text)] as const];
  });
  return Object.fromEntries(given);
}

/** The study of the car with its uprights changed; ends the command where they cannot hang so. */
function hungOn({ car }: Study, side: "both" | Wheel, change: UprightChange): Study {
  const made = withUpright(car, side, change);
  if ("complaint" in made) throw new Ended(Exit.badInput, made.complaint);
  const read = readCar(made.text);
  if ("complaints" in read) {
    const [{ part, message }] = read.complaints;
    throw new Ended(Exit.badInput, `these uprights make no car: ${part}: ${message}.`);
  }
  const study = studyOf(read);
  if ("refused" in study) throw new Ended(Exit.badInput, `these uprights make no car. ${study.refused}`);
  return study;
}
