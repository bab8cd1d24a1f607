import type { Streams } from "./cli/streams.ts";

/**
 * The whole program: what was typed after its name, and the streams it may use, to an exit code. The command line and
 * the screen are each loaded on first use, so that neither waits for the other.
 */
export async function main(argv: readonly string[], streams: Streams): Promise<number> {
  const { main } = await import("./cli/main.ts");
  return main(argv, streams);
}
