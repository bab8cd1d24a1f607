import { presetNames } from "../../src/files/presets.ts";
import { bindingsNow } from "../../src/screen/keys.ts";
import type { Effect, Message } from "../../src/screen/turn.ts";
import { settleSheet } from "../../src/solve/survey/settled.ts";
import { Bench, opened } from "../screen/support/bench.tsx";
import { type Chance, chanceOf } from "./chance.ts";

const sizes = [
  [80, 24],
  [120, 40],
  [60, 20],
  [200, 60],
  [30, 8],
  [1, 1],
] as const;

const typed = [
  "14 3/8",
  "14 3/8, 14 7/16",
  "left eye to right wheel.center",
  "+1/16",
  "-=1/16",
  "365 mm",
  "1e400",
  "",
  "0",
  "-",
  "must rod-to-arm 30",
  "x".repeat(300),
  "12 ° 漢👍🏽",
  "(1+2)*3",
  "../../x",
];

/** What a number or a name that went missing looks like on a screen. */
const unfit = /\b(?:NaN|Infinity|undefined|null)\b|\[object/;

/** Nothing is written or read: what a builder's disk would answer is that it cannot. Long work gets a few pieces done. */
function answerTo(effect: Effect, chance: Chance): readonly Message[] {
  switch (effect.do) {
    case "work": {
      const done = effect.job.step(1 + chance.below(3));
      return [{ is: "worked", key: effect.key, progress: effect.job.progress(), done, result: effect.job.best() }];
    }
    case "list":
      return [{ is: "listed", choices: [] }];
    case "readings":
      return [{ is: "readings", kept: null }];
    case "keptSheet":
      return [{ is: "keptSheet", kept: null }];
    case "settle":
      return [{ is: "settled", answer: { text: effect.text, outcome: settleSheet(effect.text) } }];
    case "openSheet":
    case "writeSheet":
    case "save":
    case "write":
    case "open":
    case "begin":
    case "lookFor":
      return [{ is: "failed", words: "The disk is full." }];
    default:
      return [];
  }
}

function press(bench: Bench, chance: Chance): void {
  const { focus } = bench.model;
  if ("text" in focus && chance.below(3) > 0) bench.press(`=${chance.one(typed)}`);
  const offered = bindingsNow(bench.model).flatMap(({ keys }) => keys);
  bench.press(chance.below(10) === 0 ? chance.one(["x", "é", "ctrl+k", "f13", "漢"]) : chance.one(offered));
}

/** A few dozen keys from the hands of a cat. Null where all is well, else what is wrong and after which keys. */
export function keyShare(seed: number): string | null {
  const chance = chanceOf(seed);
  const bench = new Bench(opened(chance.one(presetNames())), ...chance.one(sizes));
  const before = bench.model.bench.car.text;
  const pressed: string[] = [];
  for (let count = 5 + chance.below(30); count > 0; count -= 1) {
    press(bench, chance);
    for (let answered = 0; answered < 20 && bench.effects.length > 0; answered += 1)
      for (const effect of bench.effects.splice(0)) for (const message of answerTo(effect, chance)) bench.send(message);
    if (chance.below(20) === 0) {
      const [columns, rows] = chance.one(sizes);
      bench.send({ is: "resized", columns, rows });
    }
    pressed.push(bench.model.focus.on);
    if (chance.below(8) > 0) continue;
    const shown = bench.text();
    if (unfit.test(shown)) return `${pressed.join(" ")}: ${shown.split("\n").find((line) => unfit.test(line))}`;
  }
  return undone(bench, before);
}

/** Every change can be taken back, to the last byte, in a window that shows what it does. */
function undone(bench: Bench, before: string): string | null {
  bench.send({ is: "resized", columns: 80, rows: 24 });
  for (let i = 0; i < 10 && bench.model.focus.on !== "bench"; i += 1) bench.press("escape");
  if (bench.model.focus.on !== "bench") return `Esc does not lead back from ${bench.model.focus.on}`;
  for (let i = 0; i < 200 && bench.model.bench.car.text !== before; i += 1) bench.press("u");
  return bench.model.bench.car.text === before ? null : "undo does not bring back the same bytes";
}
