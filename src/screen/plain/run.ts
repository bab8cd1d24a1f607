import { createInterface } from "node:readline";
import { checkText } from "../../output/check.ts";
import { printable, toAscii } from "../../output/printable.ts";
import { cautions } from "../../output/words.ts";
import { finished } from "../../solve/job.ts";
import { prepareProducts } from "../../vehicle/units/products.ts";
import { adjustables, isFirst } from "../adjust.ts";
import { doer } from "../effects.ts";
import { echoOf } from "../entry.ts";
import { partsFor, startingLines } from "../frontEnd.ts";
import { prepareSurvey } from "../lateSurvey.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { questionWords } from "../questions.ts";
import { sentences } from "../sentences.ts";
import type { Surroundings } from "../surroundings.ts";
import { verdictOf } from "../surveyWords.ts";
import type { Message, Opened } from "../turn.ts";
import { start, update } from "../update.ts";
import { pointLines } from "../view/PointsPage.tsx";
import { wrapped } from "../view/wrap.ts";
import { answers, lineHelp, readingAsked, surveyAsked, understand } from "./lines.ts";

/**
 * The bench in lines, for a screen reader or a terminal that can only print: what is typed is a name with its new value or a
 * command's words, and what is said back is only what changed, from what happened `first`, if anything. Gives the exit code.
 */
export async function runPlain(
  opened: Opened,
  { stdin, stdout, env }: Surroundings,
  { unicode }: { readonly unicode: boolean },
  first: Message | null,
): Promise<number> {
  await Promise.all([prepareProducts(), prepareSurvey()]);
  const { checkJob } = await import("../../solve/check/check.ts");
  let model: Model = start(opened, { columns: 80, rows: 24 });
  let said: readonly string[] = [];
  let code: number | null = null;
  const effects = doer(model, { env, send, quit });
  const reader = createInterface({ input: stdin, output: stdout, prompt: "> ", terminal: false });

  function quit(words: string | null): void {
    if (words !== null) say([words]);
    end(0);
  }

  function say(lines: readonly string[]): void {
    for (const line of lines.flatMap(folded)) stdout.write(`${unicode ? printable(line) : toAscii(printable(line))}\n`);
  }

  /** A sentence broken between words where the terminal says how wide it is; what follows stands in as far as its start. */
  function folded(line: string): readonly string[] {
    const indent = /^ */.exec(line)?.[0] ?? "";
    const width = stdout.columns ?? Number.POSITIVE_INFINITY;
    return line.length < width ? [line] : wrapped(line.trim(), width - indent.length - 1).map((part) => indent + part);
  }

  function send(message: Message): void {
    const next = update(model, message);
    model = next.model;
    for (const effect of next.effects) effects.do(effect, model);
    if (["opened", "listed", "readings", "sheetCounted", "keptSheet", "sheetOpened"].includes(message.is)) tell();
    if (message.is === "settled" && model.sheet !== null && model.focus.on === "survey")
      say([verdictOf(model.sheet).text.replace(/ \(Ctrl-[^)]*\)/g, "")]);
  }

  /** What the last thing did: its notice, what is asked, and every sentence that is not as it was. */
  function tell(): void {
    const { focus, notice } = model;
    const now = sentences(model);
    if (notice !== null) say([notice.text]);
    // What is spoken has no second Enter: that the sides differed was just said.
    if (focus.on === "entry" && focus.unlike) {
      send({ is: "key", chord: "enter" });
      tell();
      return;
    }
    if (focus.on === "entry") {
      say([echoOf(model)?.text ?? "That is no value."]);
      send({ is: "key", chord: "escape" });
    }
    if (focus.on === "saveAs") say([focus.complaint ?? "Type a file name to save as, or cancel."]);
    if (focus.on === "tape") say(readingAsked(model));
    if (focus.on === "survey") say(surveyAsked(model));
    if (focus.on === "points") {
      say(pointLines({ ...model, columns: stdout.columns ?? model.columns }));
      send({ is: "key", chord: "escape" });
    }
    if (focus.on === "open") {
      say(focus.choices.map(({ name, about }, index) => `${index + 1}: ${name}, ${about}`));
      say(["Type a number or a name, or cancel."]);
    }
    if (focus.on === "parts") {
      say(
        partsFor(model.bench.car).map(
          ({ label, gist, present }, at) => `${at + 1}: ${label}, ${gist}${present ? ", on this car" : ""}`,
        ),
      );
      say(["Type a number or a name, or cancel."]);
    }
    if (focus.on === "starting") {
      say([
        "These starting values were not measured on the car. Measure each, and say its value, or checked and its name:",
      ]);
      say(startingLines(model.bench.car).map(({ label }) => `  ${label}`));
      send({ is: "key", chord: "escape" });
    }
    // At first, what is moved first is enough to hear; later, whatever changed.
    const first = adjustables(model.bench.car).filter(isFirst);
    const told = said.length === 0 ? sentences(model, first) : now;
    say(told.filter((sentence) => !said.includes(sentence)));
    said = now;
    ask();
  }

  /** The question that holds everything else up, with its answers: last of all that is said, so that it is heard. */
  function ask(): void {
    const { focus } = model;
    if (focus.on === "question") say([questionWords(focus.question), "Type one of these:", ...answers(model)]);
  }

  /** The sentences with these words in them, or the help, if the line asks for that; null if it asks for something else. */
  function asked(line: string): readonly string[] | null {
    const [, words] = /^list\b\s*(.*)$/i.exec(line) ?? [];
    if (words !== undefined) return sentences(model).filter((each) => each.toLowerCase().includes(words.toLowerCase()));
    if (/^checks?$/i.test(line)) return checked();
    return /^(help|\?)$/i.test(line) ? lineHelp() : null;
  }

  /** What binds, what hits and what holds too little thread, worked out now. */
  function checked(): readonly string[] {
    const { bench, display } = model;
    if ("refused" in bench.study) return ["There is nothing to check before the parts fit together."];
    const report = finished(checkJob(bench.study));
    return report === null ? [] : checkText(bench.study, report, display.unit, sayer(display));
  }

  function end(exit: number): void {
    code = exit;
    reader.close();
  }

  function take(line: string): void {
    const { on } = model.focus;
    const answer = on === "bench" || on === "question" ? asked(line) : null;
    const understood = answer === null ? understand(model, line) : [];
    if (answer !== null || "complaint" in understood) {
      say(answer ?? ("complaint" in understood ? [understood.complaint] : []));
      ask();
    } else {
      for (const message of understood) send(message);
      if (code === null) tell();
    }
  }

  say([model.bench.car.title, ...cautions]);
  if (model.focus.on === "bench") say(["Type list to hear the rest of the car, help to hear what can be typed."]);
  if (first === null) tell();
  else send(first);
  return new Promise((resolve) => {
    reader.on("line", (line) => {
      if (line.trim() !== "" || ["saveAs", "tape", "survey"].includes(model.focus.on)) take(line.trim());
      else ask();
      if (code === null) reader.prompt();
    });
    reader.on("close", () => resolve(code ?? 0));
    reader.prompt();
  });
}
