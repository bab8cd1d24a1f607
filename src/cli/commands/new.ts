import { existsSync } from "node:fs";
import { relative } from "node:path";
import { Command, Option } from "commander";
import { loadPreset } from "../../files/presets.ts";
import { newFile, pathOf } from "../../files/save.ts";
import { jsonText } from "../../output/json.ts";
import { printable } from "../../output/printable.ts";
import { changeFrontEnd, type FrontEndChange } from "../../vehicle/change.ts";
import { linkages } from "../../vehicle/linkages.ts";
import { mechanisms } from "../../vehicle/mechanisms.ts";
import { readCar } from "../../vehicle/read.ts";
import { firstPreset } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { jsonOption } from "../report.ts";

interface NewOptions extends FrontEndChange {
  readonly json?: boolean;
  readonly from?: string;
}

/** `rackwright new FILE`: a car file to begin with, a copy of a preset. */
export function newCommand(desk: Desk): Command {
  const command = new Command("new")
    .description("Write a new car file to begin with, a copy of an example car. A file that is there is never touched.")
    .argument("<FILE>", "the file to write; .yaml is added where the name has no ending")
    .option("--from <PRESET>", "the example car to copy (default: the first)")
    .addOption(
      new Option("--linkage <name>", "with another linkage, its points given starting values").choices(
        linkages.map(({ name }) => name),
      ),
    )
    .addOption(
      new Option("--mechanism <name>", "likewise with another steering mechanism").choices([
        ...new Set(mechanisms.map(({ word }) => word)),
      ]),
    )
    .addOption(new Option("--take-off <where>", "where a rack's tie rods start").choices(["end", "centre"]))
    .addOption(jsonOption())
    .addHelpText(
      "after",
      examples(
        ["rackwright new car.yaml", "a symmetric, sound car to change"],
        ["rackwright new car.yaml --from widened-offset-rack", "begin with another one"],
        ["rackwright new car.yaml --linkage strut --mechanism relay", "begin with the parts that are on the stand"],
      ),
    );
  return command.action((file: string) => {
    const options = command.optsWithGlobals<NewOptions>();
    const from = options.from ?? firstPreset();
    const preset = loadPreset(from);
    if ("complaints" in preset) throw new Ended(Exit.badInput, `${preset.complaints[0].message}.`);
    const { text, filled } = startedWith(preset.text, options);
    const made = newFile(target(file), text);
    if (!made.saved)
      throw new Ended(Exit.badInput, `${printable(file)}: ${"complaint" in made ? made.complaint : made.ask}.`);
    const path = shortest(made.path);
    if (options.json) desk.print(jsonText({ file: made.path, from: preset.name, filled }));
    const copy = filled.length === 0 ? "a copy of" : "begun from";
    desk.note(`Wrote ${path}, ${copy} the preset ${preset.name}. Open it with: rackwright ${path}`);
    if (filled.length > 0)
      desk.note('Its lines marked "starting value" are guesses to begin with: measure and correct them.');
  });
}

/** A preset's text, changed to the linkage and mechanism asked for, and the quantities that were given starting values. */
function startedWith(
  text: string,
  { linkage, mechanism, takeOff }: NewOptions,
): { readonly text: string; readonly filled: readonly string[] } {
  if (takeOff !== undefined && mechanism !== undefined && mechanism !== "rack")
    throw new Ended(Exit.badInput, `--take-off is for a rack: a ${mechanism} has none.`);
  const car = readCar(text);
  if ("complaints" in car) return { text, filled: [] };
  return changeFrontEnd(car, {
    ...(linkage && { linkage }),
    ...(mechanism && { mechanism }),
    ...(takeOff && { takeOff }),
  });
}

/** Where to write: the name as it stands when there is something of that name, which will then be refused. */
function target(file: string): string {
  return file.trim() === "" || existsSync(file) ? file : pathOf(file);
}

/** A path as short as it can be said from here. */
function shortest(path: string): string {
  const fromHere = relative(process.cwd(), path);
  return fromHere.startsWith("..") ? path : fromHere;
}
