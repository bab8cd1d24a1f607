import { Argument, Command } from "commander";
import type { Desk } from "../desk.ts";
import { examples } from "../examples.ts";
import { bashScript } from "../shells/bash.ts";
import { fishScript } from "../shells/fish.ts";
import { type Table, tableOf } from "../shells/table.ts";
import { zshScript } from "../shells/zsh.ts";

const scripts = { bash: bashScript, zsh: zshScript, fish: fishScript } as const satisfies Readonly<
  Record<string, (table: Table) => string>
>;

type Shell = keyof typeof scripts;

/** `rackwright completion SHELL`: what a shell reads to complete commands, options, examples and files. */
export function completionCommand(desk: Desk): Command {
  const command = new Command("completion")
    .description("Print what a shell reads so that its Tab key completes commands, options and names of cars.")
    .addArgument(new Argument("<SHELL>", "the shell").choices(Object.keys(scripts)))
    .addHelpText(
      "after",
      examples(
        ["rackwright completion bash >> ~/.bash_completion", "for bash, from the next shell on"],
        ["rackwright completion zsh > ~/.zfunc/_rackwright", "for zsh, in a folder of its fpath"],
        ["rackwright completion fish > ~/.config/fish/completions/rackwright.fish", "for fish"],
      ),
    );
  return command.action((shell: Shell) => desk.print(scripts[shell](tableOf(command.parent ?? command))));
}
