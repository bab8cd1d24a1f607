import { render } from "ink";
import { capabilitiesOf } from "../../../src/terminal/capabilities.ts";
import { createSession } from "../../../src/terminal/session.ts";
import { View } from "./view.tsx";

/** The same screen on the program's own session. */
const { stdin, stdout, stderr, env } = process;
const capabilities = capabilitiesOf(env, {}, { stdin: true, stdout: true });
const session = createSession({ stdin, stdout, stderr, capabilities });
let count = 0;
process.exitCode = await session.run({
  render,
  view: () => <View count={count} {...session.size()} />,
  onKey(key) {
    if (key.text === "q") session.quit(0);
    count += 1;
    session.invalidate();
  },
});
