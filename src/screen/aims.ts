import { goalEnds, goalName, readingWords } from "../output/findWords.ts";
import { degrees } from "../output/words.ts";
import { type Rooms, rodsOf, roomsOf, usualRooms, usualStep } from "../solve/find/room.ts";
import type { Goal } from "../solve/goals/goals.ts";
import type { Car } from "../vehicle/car.ts";
import { quantitiesOf } from "../vehicle/quantities.ts";
import type { Quantity } from "../vehicle/quantity.ts";
import { aimsOf, movable, type Room, type SideWay } from "../vehicle/sections/find.ts";
import { aimAt, type GoalName, goalKinds, goalNames, isKept, type Level } from "../vehicle/sections/goals.ts";
import { searchOf } from "./found.ts";
import { bothValues, sayer } from "./lengths.ts";
import type { Model } from "./model.ts";

/** A goal in force, other than that the front end goes together. */
export interface AimRow extends Goal {
  readonly name: GoalName;
  /** What the file lacks for it to be judged; null where it lacks nothing. */
  readonly lacks: string | null;
}

/** A line of the list of what is looked for and what may move. */
export type ListRow =
  | { readonly is: "goal"; readonly goal: AimRow; readonly own: boolean }
  | { readonly is: "room"; readonly pair: string; readonly room: Room; readonly own: boolean }
  | { readonly is: "newGoal" | "newRoom" | "rods" | "step" };

/** The goals in force that the car's own part does not set, as the search has them; none while they are being read. */
export function otherGoals(model: Model): readonly Goal[] | null {
  const result = searchOf(model);
  if (result === null) return null;
  const all =
    "why" in result ? result.goals : [...result.quest.goals, ...result.quest.unjudged.map(({ goal }) => goal)];
  const own = aimsOf(model.bench.car.sections.find);
  return all.filter((goal) => !own.some(({ name, level }) => name === goal.name && level === goal.level));
}

/** Every line of the list: the builder's own goals first. */
export function listRows(model: Model): readonly ListRow[] {
  const { car } = model.bench;
  const result = searchOf(model);
  const unjudged = result === null || "why" in result ? [] : result.quest.unjudged;
  const row = (goal: Goal, own: boolean): readonly ListRow[] => {
    const { name, level } = goal;
    if (name === "range") return [];
    const lacks = unjudged.find((each) => each.goal.name === name && each.goal.level === level)?.lacks ?? null;
    return [{ is: "goal", goal: { ...goal, name, lacks }, own }];
  };
  const rooms = roomsOf(car);
  const own = Object.keys(rooms).length > 0;
  return [
    ...aimsOf(car.sections.find).flatMap((aim) => row({ ...aim, from: "file" }, true)),
    ...(otherGoals(model) ?? []).flatMap((goal) => row(goal, false)),
    { is: "newGoal" },
    ...Object.entries(roomsNow(car)).map(([pair, room]): ListRow => ({ is: "room", pair, room, own })),
    { is: "newRoom" },
    { is: "rods" },
    { is: "step" },
  ];
}

/** The room that each part has, by the pairs of its quantities: the file's own, else the usual. */
export function roomsNow(car: Car): Rooms {
  const own = roomsOf(car);
  return Object.keys(own).length > 0 ? own : usualRooms(car);
}

/** The quantities of a pair that the car has. */
export function quantitiesOfPair({ form }: Pick<Car, "form">, pair: string): readonly Quantity[] {
  return quantitiesOf(form).filter((each) => each.pair === pair);
}

/** What a search could move on this car, one of each pair. */
export function movableOn(car: Pick<Car, "form">): readonly Quantity[] {
  const pairs = new Set(quantitiesOf(car.form).map(({ pair }) => pair));
  return movable.filter(({ pair }) => pairs.has(pair));
}

/** What a part is worth now, both sides where they differ. */
export function nowWords({ bench, display }: Pick<Model, "bench" | "display">, pair: string): string {
  const values = quantitiesOfPair(bench.car, pair).map((quantity) => ({
    quantity,
    value: bench.car.numbers[quantity.index],
  }));
  return bothValues(values, display);
}

/** How sides go, in a builder's words. */
export const sideWords: Readonly<Record<SideWay, string>> = {
  alike: "both sides alike",
  each: "each side by itself",
  left: "left side alone",
  right: "right side alone",
};

/** How the sides of a part move, in words; "" where the car has only one of it. */
export function sidesSaid(car: Pick<Car, "form">, pair: string, sides: SideWay | null): string {
  return quantitiesOfPair(car, pair).length < 2 ? "" : sideWords[sides ?? "alike"];
}

/** The room of a part in words: "-6 in to -3 in", "1/2 in each way". */
export function roomSaid({ display }: Pick<Model, "display">, kind: Quantity["kind"], room: Room): string {
  const length = sayer(display);
  const say = (value: number) => (kind === "angle" ? degrees(value) : value < 0 ? `-${length(-value)}` : length(value));
  const { from, to, within } = room;
  return within === null ? `${say(from ?? 0)} to ${say(to ?? 0)}` : `${say(within)} each way`;
}

/** A goal in words, name and ends apart. */
export function goalSaid({ display }: Pick<Model, "display">, goal: Goal): readonly [name: string, ends: string] {
  return [goalName(goal), goalEnds(goal, display.unit, sayer(display))];
}

/** What the car as it stands gives of a figure, in words; null while that is not known, or cannot be told. */
export function readingSaid(model: Model, name: GoalName): string | null {
  const reading = searchOf(model)?.readOf(name) ?? null;
  if (reading === null) return null;
  const goal: Goal = { ...aimAt(name, 0), name, level: "want", from: "asked" };
  return readingWords(goal, reading, model.display.unit, sayer(model.display));
}

/** What becomes of the tie rods, in words. */
export function rodsSaid({ bench }: Pick<Model, "bench">): string {
  return rodsOf(bench.car) === "follow" ? "cut to fit wherever things go" : "kept as long as they are now";
}

/** The step that moves are whole numbers of, mm. */
export function stepNow({ bench: { car } }: Pick<Model, "bench">): number {
  return car.sections.find?.step ?? usualStep(car);
}

/** Where a goal comes from, as the list says it at the end of its line. */
export function whence({ goal, own }: { readonly goal: AimRow; readonly own: boolean }): string {
  if (goal.lacks !== null) return `not judged: no ${goal.lacks}`;
  if (own) return "yours";
  return isKept(goal.name) ? "always" : "usual";
}

/** Whether texts are about something: every word that was typed is somewhere in them. */
function isAbout(words: string, texts: readonly string[]): boolean {
  const all = texts.join(" ").toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}

/** What a text is about, first what is called so, then what is only said to be about it. */
function namedFirst<T>(
  all: readonly T[],
  words: string,
  textsOf: (each: T) => readonly [names: readonly string[], help: string],
): readonly T[] {
  const named = all.filter((each) => isAbout(words, textsOf(each)[0]));
  const told = all.filter((each) => !named.includes(each) && isAbout(words, textsOf(each).flat()));
  return [...named, ...told];
}

/** The figures that can be aimed at and are about what was typed. */
export function goalsAbout(words: string): readonly GoalName[] {
  return namedFirst(goalNames, words, (name) => [[name, goalKinds[name].label], goalKinds[name].help]);
}

/** What could be moved and is about what was typed. */
export function movableAbout(car: Pick<Car, "form">, words: string): readonly Quantity[] {
  return namedFirst(movableOn(car), words, ({ pair, label, help }) => [[pair, label], help]);
}

/** What is said where nothing that can be chosen is about what was typed. */
export const noneAbout = {
  goal: "Nothing in the list is about that: type another word, or Ctrl-U for the whole list.",
  room: "Nothing that can move is about that: type another word, or Ctrl-U for the whole list.",
} as const;

/** What each level means, in a builder's words. */
export const levelWords: Readonly<Record<Level, string>> = {
  must: "has to be met",
  want: "is worth much",
  nice: "decides between places that are alike otherwise",
};
