import { appendFileSync } from "node:fs";
import { Box, render, Text } from "ink";
import type { Capabilities } from "../../../src/terminal/capabilities.ts";
import { chord, type Key } from "../../../src/terminal/key.ts";
import { createSession, type Session } from "../../../src/terminal/session.ts";
import { TextField } from "../../../src/terminal/TextField.tsx";

/*
 * A small program on the session: a count, the last keys, a field of Ink's own kind, and a fault for each key that the
 * tests press. State outside React, as in the program itself.
 */

const model = {
  keys: [] as string[],
  count: 0,
  field: undefined as string | undefined,
  entries: [] as string[],
  broken: false,
};

let session: Session;

function Screen() {
  if (model.broken) throw new Error("broken in a render");
  const { columns, rows } = session.size();
  return (
    <Box flexDirection="column" width={columns} height={rows} borderStyle="round">
      <Text bold>Harness {`${columns}x${rows}`} toe 0.10° ±</Text>
      <Text color="red">
        count {model.count} pid {process.pid}
      </Text>
      <Text>keys {model.keys.slice(-8).join(" ")}</Text>
      <Text>
        entries {model.entries.slice(-4).join(",")} of {model.entries.length}
      </Text>
      {model.field === undefined ? (
        <Text dimColor>no field</Text>
      ) : (
        <TextField
          columns={columns - 2}
          text={model.field}
          onTyped={(text) => {
            model.field = text;
          }}
          onSubmit={(text) => {
            model.entries.push(text);
            model.field = undefined;
          }}
        />
      )}
    </Box>
  );
}

const faults: Record<string, () => void> = {
  q: () => session.quit(0),
  Q: () => session.quit(1),
  "ctrl+c": () => session.quit(130),
  H: () => {
    throw new Error("broken in a key");
  },
  T: () => {
    setTimeout(() => {
      throw new Error("broken in a timer");
    });
  },
  P: () => {
    Promise.reject(new Error("broken in a promise"));
  },
  R: () => {
    model.broken = true;
  },
  // A key that takes its time, as one does that makes a car be solved anew on an old machine.
  B: () => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20),
  W: () => process.stderr.write("a word from a library\n"),
};

function onKey(key: Key): void {
  const name = chord(key);
  model.count += 1;
  if (model.field !== undefined) {
    if (name === "escape") model.field = undefined;
    else session.sendToInk(key);
  } else if (name === "enter") {
    model.field = "";
  } else {
    model.keys.push(key.name === "paste" ? `paste:${key.text}` : name);
    faults[name]?.();
  }
  session.invalidate();
}

/** Runs until it is left; gives the exit code. */
export function runApp(capabilities: Capabilities): Promise<number> {
  const { stdin, stdout, stderr, env } = process;
  session = createSession({ stdin, stdout, stderr, capabilities });
  return session.run({
    render,
    view: () => <Screen />,
    onKey,
    onEnd: (end) => {
      if (env.HARNESS_LOG !== undefined) appendFileSync(env.HARNESS_LOG, `${end.kind}\n`);
    },
  });
}
