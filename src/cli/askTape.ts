import { createInterface } from "node:readline";
import { WIDTH, wrap } from "../output/table.ts";
import { readings, type Tape } from "../vehicle/from-tape/readings.ts";
import { askOf } from "../vehicle/from-tape/sheet.ts";
import { Ended, Exit } from "./exit.ts";
import { type Streams, write } from "./streams.ts";
import { type Answers, answerTo, isNeedless, type Step, steps, taking, tapeFrom, unitsOf } from "./tapeAnswers.ts";

/** What the questions are to lead to. */
export interface Asking<T> {
  /** Answers of an earlier time, to go on from. */
  readonly kept: Answers;
  /** Called after every answer, so that none is ever lost. */
  readonly keep: (answers: Answers) => void;
  /** What all answers make; or why they make nothing, in a sentence. */
  readonly make: (tape: Tape) => T | { readonly complaint: string };
  /** Where the answers are and how to go on with them, in a sentence: said when the asking ends early. */
  readonly howToGoOn: () => string;
}

/** One question after another, answered a line each. */
interface Talk {
  readonly say: (text: string) => Promise<void>;
  /** The next line without its end; null when there are no more. Ends the asking where the builder breaks it off. */
  readonly line: () => Promise<string | null>;
}

/**
 * The readings asked for one by one, on the terminal or from a pipe with one answer a line. An empty line leaves an
 * optional reading out, "back" goes to the question before, and an answer that cannot be is asked again. Where all of them
 * make nothing, one can be corrected.
 */
export async function askTape<T>(streams: Streams, asking: Asking<T>): Promise<T> {
  const lines = createInterface({ input: streams.stdin, terminal: false });
  const next = lines[Symbol.asyncIterator]();
  let interrupted = () => {};
  const brokenOff = new Promise<"broken off">((resolve) => {
    interrupted = () => resolve("broken off");
  });
  process.once("SIGINT", interrupted);
  const talk: Talk = {
    say: (text) => write(streams.stderr, text),
    line: async () => {
      const found = await Promise.race([next.next(), brokenOff]);
      if (found === "broken off") {
        await write(streams.stderr, "\n");
        throw new Ended(Exit.interrupted, `broken off. ${asking.howToGoOn()}`);
      }
      return found.done ? null : String(found.value);
    },
  };
  try {
    return await asked(talk, asking);
  } finally {
    process.off("SIGINT", interrupted);
    lines.close();
  }
}

async function asked<T>(talk: Talk, { kept, keep, make, howToGoOn }: Asking<T>): Promise<T> {
  await sayWrapped(
    talk,
    "Readings with the car on stands, at ride height, wheels straight ahead. Fractions as the tape shows them, 14 3/8. Enter leaves out what is optional, and keeps an answer that stands in [ ]. back goes to the question before.",
  );
  let answers = kept;
  let at = steps.findLastIndex((step) => answerTo(step, answers) !== null) + 1;
  for (;;) {
    const step = steps[at];
    if (step === undefined) {
      const tape = tapeFrom(answers);
      const made = isComplaint(tape) ? tape : make(tape);
      if (!isComplaint(made)) return made;
      await sayWrapped(talk, made.complaint);
      const next = await toCorrect(talk);
      if (next === null) throw new Ended(Exit.badInput, `nothing was written. ${howToGoOn()}`);
      at = next;
      continue;
    }
    if (isNeedless(step, answers)) {
      at++;
      continue;
    }
    const line = await put(talk, step, answers);
    if (line === null && step.is === "reading" && step.reading.required)
      throw new Ended(
        Exit.badInput,
        `the readings end before "${step.reading.ask}": nothing was written. ${howToGoOn()}`,
      );
    const text = line?.trim() ?? "";
    if (/^(back|b|<)$/i.test(text)) {
      at = before(at, answers);
      continue;
    }
    const taken = taking(step, text, answers);
    if ("complaint" in taken) {
      await sayWrapped(talk, taken.complaint, "  ");
      continue;
    }
    answers = taken.answers;
    keep(answers);
    for (const words of taken.mind) await sayWrapped(talk, words, "  ");
    at = taken.isLast ? steps.length : at + 1;
  }
}

function isComplaint(made: unknown): made is { readonly complaint: string } {
  return typeof made === "object" && made !== null && "complaint" in made;
}

function sayWrapped({ say }: Talk, words: string, indent = ""): Promise<void> {
  return say(`${wrap(words, WIDTH, indent).join("\n")}\n`);
}

/** The question that was asked before one. */
function before(at: number, answers: Answers): number {
  const earlier = steps.findLastIndex((step, i) => i < at && !isNeedless(step, answers));
  return Math.max(0, earlier);
}

const countOf = { 1: readings.filter(({ page }) => page === 1).length, 2: readings.length } as const;

/** Asks a step's question, with the answer that stands there, and gives the line that answers it. */
async function put(talk: Talk, step: Step, answers: Answers): Promise<string | null> {
  const stands = answerTo(step, answers);
  const standing = stands === null ? "" : ` [${stands}]`;
  const words = {
    units: () => "Inches or millimetres? in or mm (Enter: in)",
    "page 2": () =>
      "Page 2, arms and wheel travel, for bump steer: twelve readings and more. Go on with it? yes or no (Enter: no)",
    reading: () => {
      if (step.is !== "reading") return "";
      const { reading } = step;
      const unit = reading.kind === "length" ? `, ${unitsOf(answers)}` : "";
      const number = readings.indexOf(reading) + 1;
      return `${number} of ${countOf[reading.page]}  ${askOf(reading)}${reading.required ? "" : " (optional)"}${unit}`;
    },
  }[step.is]();
  await talk.say(`${wrap(`${words}${standing}:`, WIDTH).join("\n")} `);
  return talk.line();
}

/** Which question is to be asked again; null for none, or where there are no more lines. */
async function toCorrect(talk: Talk): Promise<number | null> {
  for (;;) {
    await talk.say("Which reading is to be corrected? Its number or its name (Enter leaves off): ");
    const text = (await talk.line())?.trim().toLowerCase() ?? "";
    if (text === "") return null;
    const reading =
      readings[Number(text) - 1] ??
      readings.find(({ key, name }) => key === text || name.toLowerCase() === text) ??
      readings.find(({ name }) => name.toLowerCase().startsWith(text));
    if (reading !== undefined) return steps.findIndex((step) => step.is === "reading" && step.reading === reading);
    await talk.say(`  No reading is called "${text.slice(0, 40)}".\n`);
  }
}
