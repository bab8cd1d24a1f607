import { goalWords } from "../output/findWords.ts";
import { readGoal, readLine, readRoom } from "../vehicle/find/words.ts";
import type { Quantity } from "../vehicle/quantity.ts";
import { type GoalKind, type GoalName, goalKinds, levels } from "../vehicle/sections/goals.ts";
import { readLength } from "../vehicle/units/length.ts";
import { goalsAbout, movableAbout, noneAbout, quantitiesOfPair, roomSaid, sidesSaid } from "./aims.ts";
import { sayer } from "./lengths.ts";
import type { AimStep, Model } from "./model.ts";

/** What can be typed where something is asked for. */
export const aimTypes = {
  size: "Type a length: 1/16 in or 1 mm.",
  length: "Type where it may be, such as -6 to -3, or how far it may go each way, such as 1 in or 25 mm.",
  angle: "Type where it may be, such as -2 to 4, or how far each way, such as 3: degrees.",
} as const;

/** What can be typed for a goal. */
export function goalTypes(name: GoalName): string {
  const kind: GoalKind = goalKinds[name];
  const part = kind.overLock ? " over 50 behind it: from half lock on, and not at full lock only." : "";
  if (kind.ends === "band") return `Type 60 to 110, at least 60 or at most 110, in percent;${part}`;
  const end = kind.ends === "least" ? "the least there may be" : "the most there may be";
  const like =
    kind.kind === "angle"
      ? "degrees, such as 30 or 1.5"
      : kind.kind === "ratio"
        ? "a number, such as 1.5"
        : kind.high > 1000
          ? "such as 30 ft or 9000 mm"
          : "such as 1/8 in or 3 mm";
  return `Type ${end}: ${like}${part === "" ? "." : `;${part}`}`;
}

/** What was typed so far, as it was read, or what is wrong with it; null while there is nothing to say. */
export function aimEcho(
  model: Model,
  asks: AimStep,
  text: string,
): { readonly text: string; readonly good: boolean } | null {
  const { display, bench } = model;
  if (text.trim() === "") return null;
  if (asks.step === "size") {
    const read = readLength(text, display.unit);
    return "complaint" in read
      ? { text: `That is ${read.complaint}`, good: false }
      : { text: `= ${read.echo}`, good: true };
  }
  const said =
    asks.step === "aim"
      ? readGoal("want", asks.name, text, display.unit)
      : asks.step === "within"
        ? readRoom(asks.pair, text, display.unit)
        : readLine(text, display.unit);
  if (said === null) return isNoneAbout(model, asks, text) ? { text: noneAbout[asks.step], good: false } : null;
  if ("complaint" in said) return { text: said.complaint, good: false };
  if ("level" in said) {
    const goal = { ...said.aim, name: said.name, level: said.level, from: "asked" } as const;
    const words = goalWords(goal, display.unit, sayer(display));
    return { text: asks.step === "aim" ? `= ${words}` : `= ${said.level}: ${words}. Enter takes it.`, good: true };
  }
  const [first] = quantitiesOfPair(bench.car, said.pair);
  if (first === undefined) return { text: `${said.pair}: this car has none`, good: false };
  return { text: `= ${roomWords(model, first, said.room)}`, good: true };
}

/** Whether a list that is narrowed by what was typed is left empty, and that is no beginning of a line typed whole. */
function isNoneAbout(
  { bench }: Pick<Model, "bench">,
  asks: AimStep,
  text: string,
): asks is AimStep & { readonly step: keyof typeof noneAbout } {
  if ([...levels, "move"].some((word) => word.startsWith(text.trim().toLowerCase()))) return false;
  if (asks.step === "goal") return goalsAbout(text).length === 0;
  return asks.step === "room" && movableAbout(bench.car, text).length === 0;
}

function roomWords(model: Model, { pair, label, kind }: Quantity, room: Parameters<typeof roomSaid>[2]): string {
  const sides = room.sides === null ? "" : sidesSaid(model.bench.car, pair, room.sides);
  return `${label}${sides === "" ? "" : `, ${sides}`}: ${roomSaid(model, kind, room)}`;
}
