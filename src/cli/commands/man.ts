import { Command } from "commander";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { manual } from "../shells/manual.ts";

/** `rackwright man`: all the help there is as one page for man. */
export function manCommand(desk: Desk): Command {
  const command = new Command("man")
    .description(
      "Print the manual page: the help of every command on one page, for man. An installed package has it already.",
    )
    .addHelpText("after", examples(["rackwright man | man -l -", "read it where man is on hand"]));
  return command.action(() => desk.print(manual(command.parent ?? command)));
}
