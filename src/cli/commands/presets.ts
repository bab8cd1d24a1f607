import { Command } from "commander";
import { listPresets, loadPreset, type Preset } from "../../files/presets.ts";
import { listSheets, loadSheet, sheetNames } from "../../files/sheets.ts";
import { jsonText } from "../../output/json.ts";
import { WIDTH, wrap } from "../../output/table.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { asciiOption, jsonOption, readable } from "../report.ts";

/** `rackwright presets [NAME]`: the example cars, or the text of one. */
export function presetsCommand(desk: Desk): Command {
  const command = new Command("presets")
    .description("List the example cars and sheets of readings, or print the file of one.")
    .argument("[NAME]", "the example whose file to print")
    .addOption(jsonOption())
    .addOption(asciiOption())
    .addHelpText(
      "after",
      examples(
        ["rackwright presets", "what there is, and what is odd about each"],
        ["rackwright presets widened-offset-rack", "its car file, comments and all"],
      ),
    );
  return command.action((name: string | undefined) => {
    const options = command.optsWithGlobals<{ json?: boolean; ascii?: boolean }>();
    if (name === undefined) list(desk, options);
    else print(desk, options, name);
  });
}

function list(desk: Desk, options: { json?: boolean; ascii?: boolean }): void {
  const presets = listPresets();
  const sheets = listSheets("sheets");
  const readings = listSheets("readings");
  if (options.json) {
    const told =
      (kind: "car" | "sheet" | "readings") =>
      ({ name, title, about }: Preset) => ({ name, kind, title, about });
    const all = [...presets.map(told("car")), ...sheets.map(told("sheet")), ...readings.map(told("readings"))];
    desk.print(jsonText(all));
    return;
  }
  const lines = ({ name, title, about }: Preset) => [
    name,
    `    ${title}`,
    ...(about === "" ? [] : wrap(about, WIDTH, "    ")),
    "",
  ];
  desk.print(
    readable(desk, options, [
      ...presets.flatMap(lines),
      "Any command takes one of these names in place of a file.",
      "",
      "Sheets of readings with a tape, for rackwright tape:",
      "",
      ...sheets.flatMap(lines),
      "Readings on a car that was built, for rackwright match:",
      "",
      ...readings.flatMap(lines).slice(0, -1),
    ]),
  );
}

function print(desk: Desk, options: { json?: boolean }, name: string): void {
  const folder = (["sheets", "readings"] as const).find((each) => sheetNames(each).includes(name));
  const loaded = folder === undefined ? loadPreset(name) : loadSheet(folder, name);
  if ("complaints" in loaded) throw new Ended(Exit.badInput, `${loaded.complaints[0].message}.`);
  desk.print(options.json ? jsonText({ name: loaded.name, text: loaded.text }) : loaded.text);
}
