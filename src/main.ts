import type { Asked, Surroundings } from "./screen/run.ts";

/**
 * The program: the command line, with the screen as what it opens when asked for no command. The two do not know each
 * other, and each is loaded only when it is run.
 *
 * @param argv what stands after the program's name
 * @returns the exit code
 */
export async function main(argv: readonly string[], around: Surroundings): Promise<number> {
  const openScreen = async (asked: Asked): Promise<number> =>
    (await import("./screen/run.ts")).runScreen(asked, around);
  return (await import("./cli/main.ts")).main(argv, around, openScreen);
}
