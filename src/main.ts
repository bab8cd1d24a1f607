import { reasonOf } from "./files/reason.ts";
import { writeWhole } from "./files/wholeOutput.ts";
import type { Asked } from "./screen/run.ts";
import type { Surroundings } from "./screen/surroundings.ts";
import { endWithTerminal, isGone } from "./terminal/gone.ts";
import { endBySignal } from "./terminal/raise.ts";

/** What it prints cannot be written: the exit code of the command line for whatever it cannot use. */
const badOutput = 2;

/** The exit code for a fault of the program's own, as sysexits.h numbers it; no command ends with it on purpose. */
const ownFault = 70;

/**
 * The program: the command line, with the screen as what it opens when asked for no command. The two do not know each
 * other, and each is loaded only when it is run. Never rejects: a fault of its own is told in a line.
 *
 * @param argv what stands after the program's name
 * @returns the exit code
 */
export async function main(argv: readonly string[], around: Surroundings): Promise<number> {
  endWithTerminal(around.stdout);
  const code = await run(argv, around);
  // Node's own way out sets terminals right once more, and ends in a fault where one has gone.
  if ([around.stdin, around.stdout, around.stderr].some(isGone)) endBySignal("SIGHUP");
  return code;
}

async function run(argv: readonly string[], around: Surroundings): Promise<number> {
  let unwritten: unknown = null;
  writeWhole(around.stdout);
  // A stream that fails with nobody listening ends the program with a list of its functions.
  around.stderr.on("error", () => undefined);
  around.stdout.on("error", (error: NodeJS.ErrnoException) => {
    // A reader who has gone, as in `| head`, has read all that he wanted.
    if (error.code !== "EPIPE") unwritten ??= error;
  });
  const openScreen = async (asked: Asked): Promise<number> =>
    (await import("./screen/run.ts")).runScreen(asked, around);
  try {
    const code = await (await import("./cli/main.ts")).main(argv, around, openScreen);
    if (unwritten === null || code !== 0) return code;
    around.stderr.write(`rackwright: what it prints cannot be written: ${reasonOf(unwritten)}.\n`);
    return badOutput;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    around.stderr.write(`rackwright: a fault in the program itself, which should be reported: ${reason}\n`);
    return ownFault;
  }
}
