import type { Car } from "../../vehicle/car.ts";
import { type Adjustable, adjustables } from "../adjust.ts";
import { partsFor } from "../frontEnd.ts";
import type { Binding } from "../keys/binding.ts";
import { bindingsNow, keys } from "../keys.ts";
import type { Model, Sides } from "../model.ts";
import { linesOf } from "../survey.ts";
import { saidOfLine } from "../surveyWords.ts";
import { beforeMaking, crossCheck, tapeRows } from "../tape.ts";
import type { Message } from "../turn.ts";
import { isTyping } from "../typing.ts";

/** Keys that only make sense where a list is seen: in lines, a name does their work. */
const drawnOnly = [
  "previous",
  "next",
  "less",
  "more",
  "type",
  "sides",
  "rightAsItIs",
  "upright",
  "guide",
  "endGuide",
  "smallerStep",
  "largerStep",
  "help",
  "listUp",
  "listDown",
  "accept",
  // Readings beside what a car gives are a table; the command reads them from a file.
  "gauges",
];

/** A key's command as words to type: "wheelLeft" is "wheel left". */
function wordsOf(binding: Binding): string {
  if (!("command" in binding)) return binding.help;
  return binding.command.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
}

/** Whether a key's work can be asked for in words: that of a view cannot, since views are only drawn. */
function isSaid(binding: Binding): boolean {
  return "command" in binding && !drawnOnly.includes(binding.command);
}

/** What can be typed, with what it does: made from the list of keys. */
export function lineHelp(): readonly string[] {
  const commands = keys.bench
    .flatMap((group) => group.bindings)
    .filter(isSaid)
    .map((binding) => `  ${wordsOf(binding)}: ${binding.help}`);
  return [
    "Name a value and say what it becomes:",
    "  tab out = 14 3/8",
    "  left tab up +1/16",
    "  rack offset = 0",
    "  checked strut top up: a starting value is right as it is",
    "In the form for a new car from a tape: the reading, Enter to leave it as it is, back, page 2, page 3, make or cancel.",
    "In the one for readings between points, page 3: the reading, Enter, back, next, wrong, points, end or cancel.",
    "Or type one of these:",
    "  list: say everything",
    "  list tab: say what has these words in it",
    "  checks: what binds, what hits, what holds too little thread",
    "  help: this",
    ...commands,
  ];
}

/** The answers to the question that is asked, with the words to type for each. */
export function answers(model: Model): readonly string[] {
  return bindingsNow(model).map((binding) => `  ${wordsOf(binding)}: ${binding.help}`);
}

/** The question of the row of the form that is asked for, with what stands there and what all readings make. */
export function readingAsked({ focus, tape }: Model): readonly string[] {
  const row = focus.on === "tape" ? tapeRows[focus.cursor] : undefined;
  if (focus.on !== "tape" || row === undefined) return [];
  const now = tape ?? {};
  const complaint = focus.complaint === null ? [] : [focus.complaint];
  if (row.is === "make")
    return [
      ...complaint,
      ...(crossCheck(now)?.words ?? []),
      beforeMaking(now),
      "Type Enter to make it, page 2, back or cancel.",
    ];
  const stands = focus.text === "" ? "" : ` It stands as ${focus.text}; Enter keeps it.`;
  return [...complaint, `${row.name}: ${row.ask}${stands}`];
}

/** The line of the form for readings between points that is asked for, with what stands there and what the others say of it. */
export function surveyAsked({ focus, sheet }: Model): readonly string[] {
  const form = sheet === null ? null : linesOf(sheet.text);
  const line = focus.on === "survey" ? form?.lines[focus.cursor] : undefined;
  if (focus.on !== "survey" || sheet === null || form === null || line === undefined) return [];
  const name = line.is === "reading" ? line.ask : `${line.name}:`;
  if (focus.complaint !== null) return [focus.complaint, name];
  const stands = focus.text === "" ? "" : ` It stands as ${focus.text}; Enter keeps it.`;
  return [`${name}${stands}`, saidOfLine(line, form, sheet, focus.text).words];
}

/** Lines of the list whose label has every one of these words, or words that begin so. */
function named(car: Car, words: readonly string[]): readonly Adjustable[] {
  return adjustables(car).filter(({ label }) => {
    const own = label.toLowerCase().split(/[\s,-]+/);
    return words.every((word) => own.some((each) => each.startsWith(word)));
  });
}

/** What a typed line asks for: messages, or a sentence about what is not understood. */
export type Understood = readonly Message[] | { readonly complaint: string };

function sidesOf(words: string[]): Sides {
  const [first] = words;
  if (first !== "left" && first !== "right" && first !== "both") return "both";
  words.shift();
  return first;
}

/** The line that a name means, selected with its sides, and what is then done with it. */
function onLine(model: Model, name: string, then: readonly Message[]): Understood {
  const words = name
    .toLowerCase()
    .split(/[\s,-]+/)
    .filter((word) => word !== "");
  const sides = sidesOf(words);
  const found = words.length === 0 ? [] : named(model.bench.car, words);
  const [line, another] = found;
  if (line === undefined)
    return { complaint: `Nothing that can be adjusted is called "${name.trim()}". Say list to hear them all.` };
  if (another !== undefined) {
    return { complaint: `"${name.trim()}" may be ${found.map(({ label }) => label).join(" or ")}.` };
  }
  return [{ is: "selected", pair: line.pair, sides }, ...then];
}

/** A typed line as messages: an answer to a question, a file name, a command's words, or a value to change. */
export function understand(model: Model, line: string): Understood {
  const text = line.trim();
  const wanted = text.toLowerCase();
  const known = bindingsNow(model).filter((each) => model.focus.on !== "bench" || isSaid(each));
  const binding = known.find((each) => wordsOf(each) === wanted || (each.keys.includes(text) && text.length === 1));
  if (model.focus.on === "saveAs") {
    return wanted === "cancel"
      ? [{ is: "key", chord: "escape" }]
      : [
          { is: "typed", text },
          { is: "key", chord: "enter" },
        ];
  }
  if (model.focus.on === "tape") return reading(model, text);
  if (model.focus.on === "survey") return surveyReading(model, text);
  if (model.focus.on === "open")
    return choose(
      model.focus.choices.map(({ name }) => name),
      model.focus.cursor,
      "car",
      text,
    );
  if (model.focus.on === "parts")
    return choose(
      partsFor(model.bench.car).map(({ label }) => label),
      model.focus.cursor,
      "part",
      text,
    );
  if (binding !== undefined) {
    return [{ is: "key", chord: binding.keys[0] ?? "" }];
  }
  if (model.focus.on === "question" && /^(quit|exit|q)$/i.test(text)) return leaving(model);
  if (model.focus.on !== "bench") return { complaint: `"${text}" is no answer to this question.` };
  const [, checked] = /^checked\s+(.+)$/i.exec(text) ?? [];
  if (checked !== undefined) return onLine(model, checked, [{ is: "key", chord: "x" }]);
  const [, name, value] = /^([a-z][a-z\s,-]*?)\s*(?:=|\bto\b)?\s*((?:\+|-=|[-\d.½¼¾]).*)$/i.exec(text) ?? [];
  if (name === undefined || value === undefined)
    return { complaint: `"${text}" is not understood. Say help to hear what is.` };
  return onLine(model, name, [
    { is: "key", chord: "enter" },
    { is: "typed", text: value },
    { is: "key", chord: "enter" },
  ]);
}

/** Out of a form, where the first Esc may only stop the typing. */
function leavingForm(model: Model): Understood {
  const out = { is: "key", chord: "escape" } as const;
  return isTyping(model) ? [out, out] : [out];
}

/** An answer to the form for a new car from a tape. */
function reading(model: Model, text: string): Understood {
  const { tape, focus } = model;
  const wanted = text.toLowerCase();
  if (wanted === "cancel") return leavingForm(model);
  if (wanted === "back") return [{ is: "key", chord: "up" }];
  if (wanted === "make")
    return [
      { is: "key", chord: "end" },
      { is: "key", chord: "enter" },
    ];
  const pages =
    Number(/^page ([23])$/.exec(wanted)?.[1] ?? 0) - (tapeRows[focus.on === "tape" ? focus.cursor : 0]?.page ?? 1);
  if (/^page [23]$/.test(wanted))
    return Array.from({ length: Math.max(0, pages) }, () => ({ is: "key", chord: "pageDown" }));
  // An empty line leaves the reading as it stands.
  return text === "" || tape === null
    ? [{ is: "key", chord: "enter" }]
    : [
        { is: "typed", text },
        { is: "key", chord: "enter" },
      ];
}

const surveyWords: Readonly<Record<string, string>> = {
  back: "up",
  next: "down",
  wrong: "ctrl+n",
  points: "ctrl+p",
  end: "end",
};

/** An answer to the form for readings between points. */
function surveyReading(model: Model, text: string): Understood {
  if (text.toLowerCase() === "cancel") return leavingForm(model);
  const chord = surveyWords[text.toLowerCase()];
  if (chord !== undefined) return [{ is: "key", chord }];
  return text === ""
    ? [{ is: "key", chord: "enter" }]
    : [
        { is: "typed", text },
        { is: "key", chord: "enter" },
      ];
}

/** Leaving while a question is asked: what was found stays for next time, but what would be lost is asked for first. */
function leaving({ focus }: Model): Understood {
  const isKept = focus.on === "question" && focus.question.about === "recover";
  if (!isKept) return { complaint: "Nothing is left before this is answered." };
  return [
    { is: "key", chord: "escape" },
    { is: "key", chord: "q" },
  ];
}

/** The name that is meant by a number, by the whole of it or by a beginning that no other has; -1 where there is none. */
function meantOf(names: readonly string[], text: string): number {
  if (/^\d+$/.test(text)) return Number(text) - 1;
  const wanted = text.toLowerCase();
  const whole = names.findIndex((name) => name.toLowerCase() === wanted);
  const begun = names.filter((name) => name.toLowerCase().startsWith(wanted));
  return whole >= 0 || begun.length !== 1 ? whole : names.indexOf(begun[0] ?? "");
}

/** An answer to a list: the keys that lead from the cursor to what is meant. */
function choose(names: readonly string[], cursor: number, what: string, text: string): Understood {
  if (text.toLowerCase() === "cancel") return [{ is: "key", chord: "escape" }];
  const at = meantOf(names, text);
  if (names[at] === undefined)
    return { complaint: `There is no ${what} "${text}". Say its number or its name, or cancel.` };
  const chord = at < cursor ? "up" : "down";
  const moves = Array.from({ length: Math.abs(at - cursor) }, (): Message => ({ is: "key", chord }));
  return [...moves, { is: "key", chord: "enter" }];
}
