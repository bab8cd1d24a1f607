import { Command, CommanderError } from "commander";
import { version } from "../../package.json";
import { Ended, Exit } from "./exit.ts";
import { type Streams, write } from "./streams.ts";

/** Opens the screen on a car file or a preset, until the builder leaves it; gives the exit code. */
export type OpenScreen = (asked: { file?: string; preset?: string; ascii?: boolean }) => Promise<number>;

/** The command line: what was typed after the program's name, and its streams, to an exit code. */
export async function main(argv: readonly string[], streams: Streams, _openScreen: OpenScreen): Promise<number> {
  const said: string[] = [];
  const complained: string[] = [];
  const program = new Command("rackwright")
    .description("Steering and front suspension geometry for the fabrication bench.")
    .version(version)
    .exitOverride()
    .configureOutput({ writeOut: (text) => said.push(text), writeErr: (text) => complained.push(text) });
  try {
    await program.parseAsync(argv, { from: "user" });
    return Exit.done;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? Exit.done : Exit.badInput;
    if (error instanceof Ended) {
      complained.push(`${error.message}\n`);
      return error.exit;
    }
    throw error;
  } finally {
    await write(streams.stdout, said.join(""));
    await write(streams.stderr, complained.join(""));
  }
}
