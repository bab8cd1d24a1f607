import { whyNeedless } from "../vehicle/from-tape/needless.ts";
import { readReading, readUnit } from "../vehicle/from-tape/reading.ts";
import { type Reading, readings, type Tape, tapeOf } from "../vehicle/from-tape/readings.ts";
import { doubtful, impossible } from "../vehicle/from-tape/together.ts";
import type { LengthUnit } from "../vehicle/words.ts";

/** What was answered so far, as it was typed, by the readings' keys and "units". */
export type Answers = Readonly<Record<string, string>>;

/** What is asked at one time. */
export type Step =
  | { readonly is: "units" }
  | { readonly is: "page 2" }
  | { readonly is: "reading"; readonly reading: Reading };

/** All that is asked, in the order of a walk around the car. */
export const steps: readonly Step[] = [
  { is: "units" },
  ...readings.filter(({ page }) => page === 1).map((reading) => ({ is: "reading", reading }) as const),
  { is: "page 2" },
  ...readings.filter(({ page }) => page === 2).map((reading) => ({ is: "reading", reading }) as const),
];

/** The answer that stands for a step; null where there is none. */
export function answerTo(step: Step, answers: Answers): string | null {
  return step.is === "page 2" ? null : (answers[step.is === "units" ? "units" : step.reading.key] ?? null);
}

/** The shock is asked for where bump and droop were not read, and which rods to take where both were taped. */
export function isNeedless(step: Step, answers: Answers): boolean {
  if (step.is !== "reading") return false;
  return whyNeedless(step.reading, (key) => answers[key] !== undefined) !== null;
}

/** The unit of bare lengths. */
export function unitsOf({ units }: Answers): LengthUnit {
  return readUnit(units ?? "") ?? "in";
}

type Taken =
  | { readonly answers: Answers; readonly isLast: boolean; readonly mind: readonly string[] }
  | { readonly complaint: string };

/** What a line answers, or what is wrong with it. */
export function taking(step: Step, text: string, answers: Answers): Taken {
  const on = (to: Answers, isLast = false, mind: readonly string[] = []): Taken => ({ answers: to, isLast, mind });
  if (step.is === "page 2") {
    if (/^(y|yes)$/i.test(text)) return on(answers);
    return /^(n|no|)$/i.test(text)
      ? on(answers, true)
      : { complaint: `"${text.slice(0, 20)}" is neither: write yes or no.` };
  }
  if (text === "" && answerTo(step, answers) !== null) return on(answers);
  if (step.is === "units") {
    const units = readUnit(text || "in");
    return units !== null
      ? on({ ...answers, units })
      : { complaint: `"${text.slice(0, 20)}" is neither: write in or mm.` };
  }
  return takingReading(step.reading, text, answers);
}

function takingReading(reading: Reading, text: string, answers: Answers): Taken {
  const { [reading.key]: _, ...others } = answers;
  if (text === "" || /^none$/i.test(text))
    return reading.required ? { complaint: "This one is needed." } : { answers: others, isLast: false, mind: [] };
  const now = { ...answers, [reading.key]: text };
  const worth = worthOf(now);
  const value = worth.get(reading.key);
  if (typeof value === "object") return { complaint: `"${text.slice(0, 40)}" is ${value.complaint}.` };
  const tape = tapeIn(now);
  const clash = impossible(tape).find(({ at }) => at === reading.key);
  if (clash !== undefined) return { complaint: `${clash.words}. Write this one again, or back to go to one before.` };
  const mind = doubtful(tape).filter(({ at }) => at === reading.key);
  return { answers: now, isLast: false, mind: mind.map(({ words }) => `Is that so? ${words}. If not: back.`) };
}

type Worth = ReturnType<typeof readReading>;

function worthOf(answers: Answers): ReadonlyMap<string, Worth> {
  const worth = new Map<string, Worth>();
  for (const reading of readings) {
    const text = answers[reading.key];
    if (text === undefined) continue;
    const hub = worth.get("hub-height");
    worth.set(reading.key, readReading(reading, text, unitsOf(answers), typeof hub === "number" ? hub : null));
  }
  return worth;
}

function tapeIn(answers: Answers): Tape {
  const sound = [...worthOf(answers)].flatMap(([key, value]) =>
    typeof value === "object" ? [] : [[key, value] as const],
  );
  return tapeOf(new Map(sound), { title: answers.title ?? null, units: unitsOf(answers) });
}

/** The tape of all answers; or the first thing that keeps them from being one, in a sentence. */
export function tapeFrom(answers: Answers): Tape | { readonly complaint: string } {
  const worth = worthOf(answers);
  for (const reading of readings) {
    const value = worth.get(reading.key);
    if (value === undefined && reading.required) return { complaint: `"${reading.name}" is still needed.` };
    if (typeof value === "object")
      return { complaint: `"${reading.name}": "${answers[reading.key]}" is ${value.complaint}.` };
  }
  const tape = tapeIn(answers);
  const [clash] = impossible(tape);
  return clash === undefined ? tape : { complaint: `${clash.words}.` };
}
