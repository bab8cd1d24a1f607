import { findForScreen } from "./car.ts";
import { commandNames } from "./commandNames.ts";
import { Desk, type OpenScreen } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";
import { onTerminal, type Streams } from "./streams.ts";

/** The command line: what was typed after the program's name, and its streams, to an exit code. */
export async function main(argv: readonly string[], streams: Streams, openScreen: OpenScreen): Promise<number> {
  const desk = new Desk(streams, openScreen);
  try {
    if (asksForScreen(argv, streams)) {
      return await openScreen(findForScreen(argv[0]));
    }
    const { runProgram } = await import("./program.ts");
    await runProgram(argv, desk);
  } catch (error) {
    const { said, exit } = endOf(error);
    desk.note(said);
    desk.exit = exit;
  }
  try {
    await desk.flush();
  } catch (error) {
    const { said, exit } = endOf(error);
    streams.stderr.write(`${said}\n`);
    return exit;
  }
  return desk.exit;
}

/** The screen is opened without waiting for the parser of options when there is nothing for it to do. */
function asksForScreen(argv: readonly string[], streams: Streams): boolean {
  const [first = "", ...more] = argv;
  return onTerminal(streams) && more.length === 0 && !first.startsWith("-") && !commandNames.includes(first);
}

/** Any end of a command. A mistake in the program is said in one line, since nobody at the bench can read a list of its functions. */
function endOf(error: unknown): Ended {
  if (error instanceof Ended) return error;
  if (error instanceof Error && "syscall" in error && error.syscall === "uv_cwd")
    return new Ended(Exit.badInput, "the folder that it was started in is no longer there: go to another one with cd.");
  const words = error instanceof Error ? error.message : String(error);
  return new Ended(
    Exit.fault,
    `a fault in the program, not in your file: ${words}. Please report it with the car file.`,
  );
}
