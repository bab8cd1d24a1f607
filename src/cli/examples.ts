/** The examples at the end of a command's help: what to type and what it does, a pair of lines each. */
export function examples(...pairs: readonly (readonly [typed: string, does: string])[]): string {
  return `\nExamples:\n${pairs.map(([typed, does]) => `  ${typed}\n      ${does}`).join("\n")}`;
}
