import { rodsOf, roomsOf } from "../../solve/find/room.ts";
import type { Goal } from "../../solve/goals/goals.ts";
import type { Car } from "../../vehicle/car.ts";
import { changed as spliced } from "../../vehicle/edits/change.ts";
import {
  type WrittenGoal,
  withGoal,
  withoutGoal,
  withoutRoom,
  withRods,
  withRoom,
  withStep,
} from "../../vehicle/find/edits.ts";
import { readGoal, readLine, readRoom, type SaidGoal, type SaidRoom } from "../../vehicle/find/words.ts";
import { aimsOf, sideWays } from "../../vehicle/sections/find.ts";
import { goalKinds, isKept, levels } from "../../vehicle/sections/goals.ts";
import { inch, readLength } from "../../vehicle/units/length.ts";
import {
  goalSaid,
  goalsAbout,
  type ListRow,
  listRows,
  movableAbout,
  noneAbout,
  otherGoals,
  quantitiesOfPair,
  roomSaid,
  roomsNow,
  sidesSaid,
} from "../aims.ts";
import { changed, undone } from "../bench.ts";
import type { AimStep, Focus, Model } from "../model.ts";
import { type Act, type Turn, turn } from "../turn.ts";

type OnAim = Focus & { readonly on: "aim" };

/** The list with its cursor on a row. */
function atRow(model: Model, cursor: number): Model {
  const last = listRows(model).length - 1;
  return { ...model, focus: { on: "aims", cursor: Math.max(0, Math.min(last, cursor)) } };
}

/** Back in the list after a change, its cursor on the line that is meant. */
function listed({ model, effects }: Turn, is: (row: ListRow) => boolean, otherwise: number): Turn {
  const at = listRows(model).findIndex(is);
  return turn(atRow(model, at < 0 ? otherwise : at), ...effects);
}

function asking(model: Model, asks: AimStep, back: number, cursor = 0): Turn {
  return turn({ ...model, focus: { on: "aim", asks, cursor, text: "", complaint: null, back } });
}

function complain(model: Model, focus: OnAim, complaint: string): Turn {
  return turn({ ...model, focus: { ...focus, complaint: /[.?]$/.test(complaint) ? complaint : `${complaint}.` } });
}

/** From here on, mm, a usual length is written to what can be measured on the ground. */
const far = 3000;

/** A usual goal as it is written down: a circle is as wide as the car now has it, to the next inch or centimetre. */
function writtenDown(car: Pick<Car, "form">, { name, level, least, most, over }: Goal): WrittenGoal | null {
  if (name === "range") return null;
  const size = car.form.units === "in" ? inch : 10;
  const up = (value: number | null) =>
    value === null || goalKinds[name].kind !== "length" || value < far ? value : Math.ceil(value / size) * size;
  return { name, level, aim: { least, most: up(most), over } };
}

/**
 * The car's text in which what only holds until the builder sets something of his own is written down, so that his first
 * change is the only one; without that one of it.
 */
function settled(model: Model, part: "goals" | "rooms", without: (row: string) => boolean = () => false): string {
  const { car } = model.bench;
  const { form } = car;
  if (part === "goals") {
    const others = otherGoals(model) ?? [];
    const usual = others.some(({ name }) => !isKept(name)) ? others : [];
    return usual
      .filter(({ name, level }) => !isKept(name) && !without(`${level} ${name}`))
      .reduce((text, goal) => {
        const down = writtenDown(car, goal);
        return down === null ? text : withGoal({ text, form }, down);
      }, car.text);
  }
  if (Object.keys(roomsOf(car)).length > 0) return car.text;
  return Object.entries(roomsNow(car))
    .filter(([pair]) => !without(pair))
    .reduce((text, [pair, room]) => withRoom({ text, form }, "length", { pair, room }), car.text);
}

const wait = "The usual goals are still being worked out: try again in a moment.";

function takenGoal(model: Model, focus: OnAim, said: SaidGoal, was: SaidGoal["level"] | null): Turn {
  if (otherGoals(model) === null) return complain(model, focus, wait);
  const { form } = model.bench.car;
  const { level, name } = said;
  const without = (row: string) => row === `${level} ${name}` || (was !== null && row === `${was} ${name}`);
  const before = settled(model, "goals", without);
  const moved = was !== null && was !== level ? withoutGoal({ text: before }, was, name) : before;
  const text = withGoal({ text: moved, form }, said);
  const [words, ends] = goalSaid(model, { ...said.aim, name, level, from: "asked" });
  const others = before === model.bench.car.text ? "" : ". The usual goals now stand in the file beside it";
  const what = `${level}: ${words} ${ends}${others}`;
  const after = changed(model, text, what);
  if (after.model.focus.on !== "bench") return complain(model, focus, after.model.notice?.text ?? "");
  return listed(after, (row) => row.is === "goal" && row.goal.name === name && row.goal.level === level, focus.back);
}

function takenRoom(model: Model, focus: OnAim, said: SaidRoom): Turn {
  const { car } = model.bench;
  const { pair, room } = said;
  const of = quantitiesOfPair(car, pair);
  const [first] = of;
  if (first === undefined) return complain(model, focus, `${pair}: this car has none`);
  const before = settled(model, "rooms", (row) => row === pair);
  const text = withRoom({ text: before, form: car.form }, first.kind, said);
  const sides = sidesSaid(car, pair, room.sides);
  const others = before === car.text ? "" : ". The usual room of the tabs now stands in the file beside it";
  const words = `${first.label}${sides === "" ? "" : `, ${sides}`}: may move, ${roomSaid(model, first.kind, room)}${others}`;
  const after = changed(model, text, words);
  if (after.model.focus.on !== "bench") return complain(model, focus, after.model.notice?.text ?? "");
  return listed(after, (row) => row.is === "room" && row.pair === pair, focus.back);
}

/** A line typed whole, or the figure or part under the cursor, whose value is asked for next. */
function acceptWhich(model: Model, focus: OnAim): Turn {
  const { text, cursor, asks, back } = focus;
  const said = readLine(text, model.display.unit);
  if (said !== null) {
    if ("complaint" in said) return complain(model, focus, said.complaint);
    return "level" in said ? takenGoal(model, focus, said, null) : takenRoom(model, focus, said);
  }
  if (asks.step === "goal") {
    const name = goalsAbout(text)[cursor];
    return name === undefined
      ? complain(model, focus, noneAbout.goal)
      : asking(model, { step: "aim", name, was: null }, back);
  }
  const part = movableAbout(model.bench.car, text)[cursor];
  if (part === undefined) return complain(model, focus, noneAbout.room);
  const was = roomsNow(model.bench.car)[part.pair] ?? null;
  return asking(model, { step: "within", pair: part.pair, was }, back);
}

/** The goal of the list that is being changed. */
function goalAt(model: Model, name: SaidGoal["name"], level: SaidGoal["level"] | null): Goal | undefined {
  return listRows(model).flatMap((row) =>
    row.is === "goal" && row.goal.name === name && row.goal.level === level ? [row.goal] : [],
  )[0];
}

/** Takes what is asked for and asks for what comes next; at the end changes the car. */
export function acceptAim(model: Model, focus: OnAim): Turn {
  const { asks, text, cursor, back } = focus;
  const { unit } = model.display;
  const { car } = model.bench;
  switch (asks.step) {
    case "goal":
    case "room":
      return acceptWhich(model, focus);
    case "aim": {
      const { name, was } = asks;
      const stays = text.trim() === "" && goalAt(model, name, was) !== undefined;
      const said = stays ? null : readGoal("want", name, text, unit);
      if (said !== null && "complaint" in said) return complain(model, focus, said.complaint);
      return asking(model, { step: "level", name, was, typed: text }, back, levels.indexOf(was ?? "want"));
    }
    case "level": {
      const { name, was, typed } = asks;
      const level = levels[cursor] ?? "want";
      const now = goalAt(model, name, was);
      if (typed.trim() === "" && now !== undefined) {
        const down = writtenDown(car, { ...now, level });
        if (down === null) return turn(model);
        return takenGoal(model, focus, { least: null, most: null, ...down }, was);
      }
      const said = readGoal(level, name, typed, unit);
      return "complaint" in said ? complain(model, focus, said.complaint) : takenGoal(model, focus, said, was);
    }
    case "within": {
      const { pair, was } = asks;
      const said = text.trim() === "" && was !== null ? null : readRoom(pair, text, unit);
      if (said !== null && "complaint" in said) return complain(model, focus, said.complaint);
      if (quantitiesOfPair(car, pair).length < 2)
        return said === null ? turn(atRow(model, back)) : takenRoom(model, focus, said);
      const at = sideWays.indexOf(was?.sides ?? "alike");
      return asking(model, { step: "sides", pair, was, typed: text }, back, at);
    }
    case "sides": {
      const { pair, was, typed } = asks;
      const sides = sideWays[cursor] ?? "alike";
      if (typed.trim() === "" && was !== null)
        return takenRoom(model, focus, { pair, room: { ...was, sides }, from: null, to: null, within: null });
      const said = readRoom(`${sides}.${pair}`, typed, unit);
      return "complaint" in said ? complain(model, focus, said.complaint) : takenRoom(model, focus, said);
    }
    case "size": {
      if (text.trim() === "") return turn(atRow(model, back));
      const read = readLength(text, unit);
      if ("complaint" in read) return complain(model, focus, `That is ${read.complaint}`);
      const after = changed(
        model,
        withStep(car, { value: read.mm, as: text.trim() }),
        `Moves go in steps of ${read.echo}`,
      );
      if (after.model.focus.on !== "bench") return complain(model, focus, after.model.notice?.text ?? "");
      return listed(after, (row) => row.is === "step", back);
    }
  }
}

/** What Enter does on a line of the list. */
export function acceptAims(model: Model, { cursor }: Focus & { readonly on: "aims" }): Turn {
  const row = listRows(model)[cursor];
  switch (row?.is) {
    case "goal":
      return asking(model, { step: "aim", name: row.goal.name, was: row.goal.level }, cursor);
    case "room":
      return asking(model, { step: "within", pair: row.pair, was: row.room }, cursor);
    case "newGoal":
      return asking(model, { step: "goal" }, cursor);
    case "newRoom":
      return asking(model, { step: "room" }, cursor);
    case "step":
      return asking(model, { step: "size" }, cursor);
    case "rods": {
      const { car } = model.bench;
      const isFollowing = rodsOf(car) === "follow";
      const what = isFollowing ? "Tie rods are kept as long as they are" : "Tie rods are cut to fit wherever things go";
      return listed(
        changed(model, withRods(car, isFollowing ? "keep" : "follow"), what),
        (each) => each.is === "rods",
        cursor,
      );
    }
    default:
      return turn(model);
  }
}

function refused(model: Model, text: string): Turn {
  return turn({ ...model, notice: { text, tone: "wrong" } });
}

/** Takes the line under the cursor out of what is searched for. */
const removeAim: Act = (model) => {
  const { focus, bench } = model;
  const row = focus.on === "aims" ? listRows(model)[focus.cursor] : undefined;
  if (focus.on !== "aims" || row === undefined) return turn(model);
  const { car } = bench;
  const back = (text: string, what: string) => {
    const after = listed(changed(model, text, what), () => false, focus.cursor);
    const { sections } = after.model.bench.car;
    const isLast = (row.is === "goal" ? aimsOf(sections.find) : Object.keys(roomsOf({ sections }))).length === 0;
    if (!isLast || (row.is !== "goal" && row.is !== "room")) return after;
    const usual =
      row.is === "goal"
        ? "None of yours is left: the usual goals hold again"
        : "None of yours is left: the tabs may move as usual";
    return turn({ ...after.model, notice: { text: `${what}. ${usual}.`, tone: "change" } }, ...after.effects);
  };
  switch (row.is) {
    case "goal": {
      const { name, level } = row.goal;
      const { label } = goalKinds[name];
      if (row.own) return back(withoutGoal(car, level, name), `${label}: no goal of yours any more`);
      if (isKept(name))
        return refused(model, `${label}: a limit that every car must keep. Enter sets another value for it.`);
      return back(
        settled(model, "goals", (each) => each === `${level} ${name}`),
        `${label}: left out`,
      );
    }
    case "room": {
      const text = row.own ? withoutRoom(car, row.pair) : settled(model, "rooms", (each) => each === row.pair);
      return back(text, `${quantitiesOfPair(car, row.pair)[0]?.label ?? row.pair}: stays where it is`);
    }
    case "rods":
    case "step": {
      if ((car.sections.find?.[row.is] ?? null) === null) return refused(model, "That is as usual already.");
      return back(spliced(car.text, [{ path: ["find", row.is], text: null }]), "As usual again");
    }
    default:
      return refused(model, "There is nothing to remove on this line: Enter adds something.");
  }
};

const undoAim: Act = (model) => {
  const { focus } = model;
  const after = undone(model);
  return focus.on === "aims" ? listed(after, () => false, focus.cursor) : after;
};

/** How many choices are offered just now. */
export function choicesOf(model: Model, { asks, text }: OnAim): number {
  if (asks.step === "goal") return goalsAbout(text).length;
  if (asks.step === "room") return movableAbout(model.bench.car, text).length;
  return asks.step === "level" ? levels.length : asks.step === "sides" ? sideWays.length : 0;
}

/** A line of the list, or a choice, up or down. */
export function moveInAims(model: Model, ways: number): Turn {
  const { focus } = model;
  if (focus.on === "aims") return turn(atRow(model, focus.cursor + ways));
  if (focus.on !== "aim") return turn(model);
  const cursor = Math.max(0, Math.min(choicesOf(model, focus) - 1, focus.cursor + ways));
  return turn({ ...model, focus: { ...focus, cursor } });
}

/** What was typed narrows the choices, from whose first one then starts. */
export function typeInAim(model: Model, focus: OnAim, text: string): Model {
  if (focus.asks.step === "level" || focus.asks.step === "sides") return model;
  return { ...model, focus: { ...focus, text, cursor: 0, complaint: null } };
}

/** Back to the list, nothing changed. */
export function cancelAim(model: Model, { back }: OnAim): Turn {
  return turn(atRow(model, back));
}

export const aimActs = {
  aims: (model) => turn(atRow(model, 0)),
  removeAim,
  undoAim,
} satisfies Record<string, Act>;
