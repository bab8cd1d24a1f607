import { Command } from "commander";
import { jsonSchema } from "../../vehicle/json-schema.ts";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { jsonOption } from "../report.ts";

/** `rackwright schema`: the car file described for editors and other programs. */
export function schemaCommand(desk: Desk): Command {
  return new Command("schema")
    .description("Describe the car file as a JSON Schema: an editor that reads it completes keys and marks mistakes.")
    .addOption(jsonOption())
    .addHelpText("after", examples(["rackwright schema > car.schema.json", "keep it beside the car files"]))
    .action(() => desk.print(`${JSON.stringify(jsonSchema(), null, 2)}\n`));
}
