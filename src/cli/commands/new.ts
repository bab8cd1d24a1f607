import { existsSync } from "node:fs";
import { relative } from "node:path";
import { Command } from "commander";
import { loadPreset } from "../../files/presets.ts";
import { newFile, pathOf } from "../../files/save.ts";
import { jsonText } from "../../output/json.ts";
import { printable } from "../../output/printable.ts";
import { firstPreset } from "../car.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { jsonOption } from "../report.ts";

/** `rackwright new FILE`: a car file to begin with, a copy of a preset. */
export function newCommand(desk: Desk): Command {
  const command = new Command("new")
    .description("Write a new car file to begin with, a copy of an example car. A file that is there is never touched.")
    .argument("<FILE>", "the file to write; .yaml is added where the name has no ending")
    .option("--from <PRESET>", "the example car to copy (default: the first)")
    .addOption(jsonOption())
    .addHelpText(
      "after",
      examples(
        ["rackwright new car.yaml", "a symmetric, sound car to change"],
        ["rackwright new car.yaml --from widened-offset-rack", "begin with another one"],
      ),
    );
  return command.action((file: string) => {
    const options = command.optsWithGlobals<{ json?: boolean; from?: string }>();
    const from = options.from ?? firstPreset();
    const preset = loadPreset(from);
    if ("complaints" in preset) throw new Ended(Exit.badInput, `${preset.complaints[0].message}.`);
    const made = newFile(target(file), preset.text);
    if (!made.saved)
      throw new Ended(Exit.badInput, `${printable(file)}: ${"complaint" in made ? made.complaint : made.ask}.`);
    const path = shortest(made.path);
    if (options.json) desk.print(jsonText({ file: made.path, from: preset.name }));
    desk.note(`Wrote ${path}, a copy of the preset ${preset.name}. Open it with: rackwright ${path}`);
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
