import { type Capabilities, capabilitiesOf, type Environment, type Wanted } from "./capabilities.ts";

/**
 * What Ink and the libraries under it read from the environment when they are imported, set right beforehand. Must run
 * before anything imports Ink:
 *
 *     const capabilities = prepareEnvironment(process.env, { ascii: true }, process);
 *     const { run } = await import("../screen/run.ts");
 *
 * - NODE_ENV: without `production` a redraw costs three times as much and leaks memory.
 * - DEV: makes Ink look for developer tools that are not there, and fail.
 * - CI: keeps Ink from drawing anything before it ends.
 * - FORCE_COLOR: always on. The terminal layer drops colours itself where they are not wanted; off, the library would
 *   drop the mark of the text cursor with them. NO_COLOR goes, since Node complains on the screen when it finds both.
 *
 * Returns what the terminal can do, read before anything is changed.
 */
export function prepareEnvironment(
  env: Record<string, string | undefined>,
  wanted: Wanted,
  streams: { readonly stdin: { readonly isTTY?: boolean }; readonly stdout: { readonly isTTY?: boolean } },
): Capabilities {
  const before: Environment = { ...env };
  const isTerminal = { stdin: streams.stdin.isTTY === true, stdout: streams.stdout.isTTY === true };
  const capabilities = capabilitiesOf(before, wanted, isTerminal);
  env.NODE_ENV = "production";
  delete env.DEV;
  if (capabilities.interactive) {
    env.CI = "false";
    env.CONTINUOUS_INTEGRATION = "false";
    delete env.NO_COLOR;
    env.FORCE_COLOR = "1";
  }
  return capabilities;
}
