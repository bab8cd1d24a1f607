import { render } from "ink";
import { printableText } from "../output/printable.ts";
import type { Capabilities } from "../terminal/capabilities.ts";
import { chord, type Key } from "../terminal/key.ts";
import { createSession } from "../terminal/session.ts";
import { prepareProducts } from "../vehicle/units/products.ts";
import { checker } from "./checker.ts";
import { doer } from "./effects.ts";
import { greeted } from "./guide.ts";
import { bindingOf } from "./keys.ts";
import type { Model } from "./model.ts";
import type { Surroundings } from "./surroundings.ts";
import type { Message, Opened } from "./turn.ts";
import { start, update } from "./update.ts";
import { Screen } from "./view/Screen.tsx";

/** Runs the drawn screen on a terminal, from what happened `first`, if anything, until the builder leaves it; gives the exit code. */
export function runLive(
  opened: Opened,
  { stdin, stdout, stderr, env }: Surroundings,
  capabilities: Capabilities,
  first: Message | null,
): Promise<number> {
  const session = createSession({ stdin, stdout, stderr, capabilities });
  let model: Model = greeted(start(opened, session.size()));
  let lastWords: string | null = null;
  const effects = doer(model, { env, send, quit });
  const checks = checker(send);

  function quit(words: string | null): void {
    lastWords = words;
    checks.end();
    session.quit(0);
  }

  /** One message, and all that follows from it: the edit is on disk before the frame that shows it is drawn. */
  function send(message: Message): void {
    const next = update(model, message);
    model = next.model;
    for (const effect of next.effects) effects.do(effect, model);
    checks.see(model);
    session.invalidate();
  }

  /** A key that the list of keys does not claim goes into the text field that is open, if one is. */
  function onKey(key: Key): void {
    const pressed = chord(key);
    const typing = "text" in model.focus;
    if (typing && bindingOf(model, pressed) === undefined) session.sendToInk(key);
    else send({ is: "key", chord: pressed });
  }

  const left = session.run({
    render,
    view: () => <Screen model={model} onTyped={(text) => send({ is: "typed", text })} />,
    onKey,
    onResize: (size) => send({ is: "resized", ...size }),
  });
  if (first !== null) send(first);
  // Products and brackets in a typed length need a large reader, which is fetched once the first frame stands.
  setImmediate(() => checks.see(model));
  setImmediate(() => prepareProducts().then(session.invalidate, () => undefined));
  return left.then((code) => {
    if (lastWords !== null) stderr.write(`${printableText(lastWords)}\n`);
    return code;
  });
}
