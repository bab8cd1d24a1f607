import { createInterface } from "node:readline";
import { type Reading, readings, type Tape } from "../vehicle/from-tape/readings.ts";
import { askOf, readReading } from "../vehicle/from-tape/sheet.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import { Ended, Exit } from "./exit.ts";
import { type Streams, write } from "./streams.ts";

/** One question after another, answered a line each. */
interface Talk {
  readonly say: (text: string) => Promise<void>;
  /** The next line without its end; null when there are no more. */
  readonly line: () => Promise<string | null>;
}

/**
 * The readings asked for one by one, on the terminal or from a pipe with one answer a line. An empty line leaves an
 * optional reading out; a doubtful answer is asked again. `from` ends the asking early: page 2 can be left for later.
 */
export async function askTape(streams: Streams): Promise<Tape> {
  const lines = createInterface({ input: streams.stdin, terminal: false });
  const next = lines[Symbol.asyncIterator]();
  const talk: Talk = {
    say: (text) => write(streams.stderr, text),
    line: async () => {
      const { value, done } = await next.next();
      return done ? null : String(value);
    },
  };
  try {
    return await asked(talk);
  } finally {
    lines.close();
  }
}

async function asked(talk: Talk): Promise<Tape> {
  await talk.say(
    "Readings with the car on stands, at ride height, wheels straight ahead.\nEnter leaves out what has (optional) after it; fractions as the tape shows them.\n\n",
  );
  const units = await unitsAsked(talk);
  const numbers = new Map<string, number>();
  let rackGoes: "left" | "right" = "right";
  let skipping = false;
  for (const [i, each] of readings.entries()) {
    if (each.page === 2 && !skipping && readings[i - 1]?.page === 1) skipping = !(await wantsPageTwo(talk));
    if (skipping) break;
    const answer = await answerTo(talk, each, units, numbers, `${i + 1}/${readings.length} `);
    if (typeof answer === "string") rackGoes = answer;
    else if (answer !== null) numbers.set(each.key, answer);
  }
  return { title: null, units, numbers, rackGoes };
}

async function unitsAsked(talk: Talk): Promise<LengthUnit> {
  for (;;) {
    await talk.say("Inches or millimetres? in or mm: ");
    const line = await talk.line();
    if (line === null) throw cutShort("in or mm");
    const word = line.trim().toLowerCase();
    if (word === "" || word === "in") return "in";
    if (word === "mm") return "mm";
    await talk.say(`  "${word.slice(0, 20)}" is neither: write in or mm.\n`);
  }
}

async function wantsPageTwo(talk: Talk): Promise<boolean> {
  await talk.say("\nPage 2, arms and wheel travel, for bump steer. Go on with it? yes or no: ");
  const line = await talk.line();
  return line !== null && /^y/i.test(line.trim());
}

async function answerTo(
  talk: Talk,
  each: Reading,
  units: LengthUnit,
  numbers: ReadonlyMap<string, number>,
  count: string,
): Promise<number | "left" | "right" | null> {
  const unit = each.kind === "length" ? `, ${units}` : "";
  for (;;) {
    await talk.say(`${count}${askOf(each)}${each.required ? "" : " (optional)"}${unit}: `);
    const line = await talk.line();
    if (line === null && each.required) throw cutShort(each.ask);
    if (line === null || (line.trim() === "" && !each.required)) return null;
    if (line.trim() === "") {
      await talk.say("  This one is needed.\n");
      continue;
    }
    const read = readReading(each, line, units, numbers.get("hub-height") ?? null);
    if (typeof read !== "object") return read;
    await talk.say(`  "${line.trim().slice(0, 40)}" is ${read.complaint}.\n`);
  }
}

function cutShort(ask: string): Ended {
  return new Ended(Exit.badInput, `the readings end before "${ask}": nothing was written.`);
}
