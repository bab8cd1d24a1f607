import type { Asked } from "./screen/run.ts";
import type { Surroundings } from "./screen/surroundings.ts";

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
  const openScreen = async (asked: Asked): Promise<number> =>
    (await import("./screen/run.ts")).runScreen(asked, around);
  try {
    return await (await import("./cli/main.ts")).main(argv, around, openScreen);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    around.stderr.write(`rackwright: a fault in the program itself, which should be reported: ${reason}\n`);
    return ownFault;
  }
}
