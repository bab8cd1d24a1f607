import { existsSync } from "node:fs";
import { Command, Option } from "commander";
import { newFile, pathOf } from "../../files/save.ts";
import type { Study } from "../../measures/study.ts";
import { findJson, findText } from "../../output/find.ts";
import { partWords } from "../../output/findWords.ts";
import { printable } from "../../output/printable.ts";
import { WIDTH, wrap } from "../../output/table.ts";
import { brokenIn, type Found, findJob } from "../../solve/find/find.ts";
import { questFor, type SetQuest } from "../../solve/find/quest.ts";
import type { Rooms } from "../../solve/find/room.ts";
import { answerText } from "../../solve/find/taken.ts";
import { readingOf } from "../../solve/goals/readings.ts";
import { missedMusts } from "../../solve/goals/score.ts";
import type { LengthUnit } from "../../vehicle/car.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import { readCar } from "../../vehicle/read.ts";
import { movable } from "../../vehicle/sections/find.ts";
import { type GoalName, goalKinds, goalNames, type Level, levels } from "../../vehicle/sections/goals.ts";
import { complaintOn } from "../../vehicle/sound.ts";
import { openStudy } from "../car.ts";
import type { Desk } from "../desk.ts";
import { driven } from "../driven.ts";
import { examples } from "../examples.ts";
import { Ended, Exit } from "../exit.ts";
import { goalAsked, roomAsked } from "../findOptions.ts";
import { lengthOf } from "../lengths.ts";
import { lengthsIn, printReport, type ReportOptions, reporting } from "../report.ts";

type FindOptions = ReportOptions & {
  readonly [L in Level]?: readonly string[];
} & {
  readonly move?: readonly string[];
  readonly rods?: "follow" | "keep";
  readonly step?: string;
  readonly write?: string;
  readonly answer?: string;
};

function collect(text: string, before: readonly string[] = []): readonly string[] {
  return [...before, text];
}

/** `rackwright find FILE`: where tab, rack and rods do best within the room there is. */
export function findCommand(desk: Desk): Command {
  const command = new Command("find")
    .description(
      "Where the tie-rod tab, the rack or other parts do best, within the room there is and in steps that can be measured. What to aim at and what may move stand in the file (find:) or are given here; with neither, the tab is moved for the usual aims.",
    )
    .argument("<FILE>", "a car file, or a preset's name");
  const help: Readonly<Record<Level, string>> = {
    must: "has to be met, such as rod-to-arm=30 (may be given more than once)",
    want: "is worth much, such as toe-change=1/8 or 'ackermann=60 to 110 over 50'",
    nice: "decides between places that are alike otherwise",
  };
  for (const level of levels) command.option(`--${level} <goal=value>`, help[level], collect);
  command
    .option("--move <part=room>", "may move: rack.up=1 for 1 each way, or 'tie-rod.outer.ahead=-6 to -3'", collect)
    .addOption(
      new Option(
        "--rods <way>",
        "tie rods cut to fit, or kept as long as they are (default: kept where the file gives lengths)",
      ).choices(["follow", "keep"]),
    )
    .option("--step <length>", "what can be measured and welded to (default: 1/16 in or 1 mm)")
    .option("--write <FILE>", "write the car with the first answer as a new file")
    .option("--answer <number>", "which answer to write");
  return reporting(command, "whole")
    .addHelpText(
      "after",
      listed(
        "Goals",
        goalNames.map((name) => [name, goalKinds[name].label]),
      ),
    )
    .addHelpText(
      "after",
      listed(
        "What may move, as far as the car has it (left., right. or each. before it: one side, each by itself)",
        movableLines(),
      ),
    )
    .addHelpText(
      "after",
      examples(
        ["rackwright find car.yaml", "where the tabs do best, for the usual aims"],
        [
          "rackwright find car.yaml --want toe-change=1/16 --move rack.up=1",
          "the rack's height for the least bump steer",
        ],
        ["rackwright find car.yaml --must rod-to-arm=30 --write better.yaml", "the best car as a new file"],
      ),
    )
    .action(async (file: string) => {
      const options = command.optsWithGlobals<FindOptions>();
      const study = await openStudy(desk, file);
      const unit = options.units ?? study.car.form.units;
      if (options.write !== undefined && existsSync(pathOf(options.write)))
        throw new Ended(
          Exit.badInput,
          `--write ${printable(pathOf(options.write))}: there is a file of that name, and find writes new ones only.`,
        );
      if (options.answer !== undefined && options.write === undefined)
        throw new Ended(Exit.badInput, "--answer says which answer --write writes: give --write FILE with it.");
      const quest = questOf(study, options, unit, file);
      const found = await driven(findJob(quest), "Searching", desk.streams);
      const readOf = (name: GoalName, of: Study) => readingOf(name, 1, of);
      const report = { found, step: quest.step, unjudged: quest.unjudged, readOf };
      const length = lengthsIn(unit);
      printReport(desk, options, {
        json: () => findJson(report, unit, length),
        text: () => findText(report, unit, length),
      });
      desk.exit = exitOf(found);
      if (options.write !== undefined) writeAnswer(desk, found, options.write, options.answer ?? "1");
    });
}

/** What may move, the three coordinates of a place on one line. */
function movableLines(): readonly (readonly [string, string])[] {
  const partOf = ({ label }: (typeof movable)[number]) => partWords({ label, sides: null });
  const placeOf = (each: (typeof movable)[number]) => `${each.pair.split(".").slice(0, -1).join(".")} ${partOf(each)}`;
  return [...new Set(movable.map(placeOf))].map((place) => {
    const [first, ...rest] = movable.filter((each) => placeOf(each) === place) as [Quantity, ...Quantity[]];
    const keys = [first.pair, ...rest.map(({ pair }) => `.${pair.split(".").at(-1)}`)];
    return [keys.join(" "), partOf(first)] as const;
  });
}

function listed(title: string, lines: readonly (readonly [string, string])[]): string {
  const width = Math.max(...lines.map(([name]) => name.length));
  return `\n${wrap(`${title}:`, WIDTH).join("\n")}\n${lines.map(([name, words]) => `  ${name.padEnd(width)}  ${words}`).join("\n")}`;
}

/** The step asked for, mm. */
function stepOf(text: string, unit: LengthUnit): number {
  const step = lengthOf("--step", text, unit);
  if (step >= 0.1 && step <= 50) return step;
  throw new Ended(Exit.badInput, `--step "${text}" is no step: it must be from 0.1 mm to 50 mm.`);
}

/** What the file and the options ask for together. Ends the command where a room is none. */
function questOf(study: Study, options: FindOptions, unit: LengthUnit, file: string): SetQuest {
  const { text } = study.car;
  const rooms: Rooms = Object.fromEntries((options.move ?? []).map((each) => roomAsked(each, unit)));
  const quest = questFor(study, {
    goals: levels.flatMap((level) => (options[level] ?? []).map((each) => goalAsked(level, each, unit))),
    rooms,
    ...(options.rods && { rods: options.rods }),
    ...(options.step !== undefined && { step: stepOf(options.step, unit) }),
  });
  if (!("why" in quest)) return quest;
  const { pair, why } = quest;
  if (Object.hasOwn(rooms, pair)) throw new Ended(Exit.badInput, `--move ${pair}: ${why}.`);
  const { line, column, part } = complaintOn(text, ["find", "move", pair], why);
  const place = [printable(file), line, column].filter((each) => each !== null).join(":");
  throw new Ended(Exit.badInput, `${place}: ${part}: ${why}.`, true);
}

/** 3 where nothing goes together in the room; 1 where a must is missed or a limit broken by the answer; else 0. */
function exitOf({ answers: [best] }: Found): number {
  if (best === undefined) return Exit.doesNotClose;
  return missedMusts(best.snapped.score).length > 0 || brokenIn(best.check) > 0 ? Exit.limitBroken : Exit.done;
}

function writeAnswer(desk: Desk, found: Found, name: string, which: string): void {
  const answer = found.answers[Number(which) - 1];
  if (answer === undefined)
    throw new Ended(
      Exit.badInput,
      `--answer "${which}": there ${found.answers.length === 1 ? "is 1 answer" : `are ${found.answers.length} answers`}.`,
    );
  const text = answerText(found.quest, answer.snapped);
  const car = readCar(text);
  if ("complaints" in car) throw new Ended(Exit.badInput, `that car cannot be written: ${car.complaints[0].message}.`);
  const made = newFile(pathOf(name), text);
  if (!made.saved)
    throw new Ended(Exit.badInput, `${printable(name)}: ${"complaint" in made ? made.complaint : made.ask}.`);
  desk.note(`Wrote ${printable(made.path)}.`);
}
