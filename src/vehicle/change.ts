import type { Car } from "./car.ts";
import { type Change, changed } from "./edits/change.ts";
import { flowMap } from "./edits/flow.ts";
import { written } from "./edits/written.ts";
import { type LinkageName, linkageOf } from "./linkages.ts";
import { type MechanismName, type MechanismWord, mechanismOf, mechanisms } from "./mechanisms.ts";
import { quantitiesOf, quantityOf } from "./quantities.ts";
import type { Quantity } from "./quantity.ts";
import { readCar } from "./read.ts";
import { isSection } from "./sections.ts";
import { eyesOf } from "./starting/eyes.ts";
import { type Line, withLines } from "./starting/layout.ts";
import { linkageStarts } from "./starting/linkages.ts";
import { startingValues, withoutMarks } from "./starting/marks.ts";
import { eyeAmong, mechanismStarts } from "./starting/mechanisms.ts";
import type { Start } from "./starting/place.ts";
import { tabIsBehind } from "./starting/steering-axis.ts";
import { inch } from "./units/length.ts";
import type { LengthUnit, Wheel } from "./words.ts";

/** What a front end is to become; what is left out stays as it is. */
export interface FrontEndChange {
  readonly linkage?: LinkageName;
  readonly mechanism?: MechanismWord;
  /** Of a rack, which it implies: as it is, else at its ends. */
  readonly takeOff?: "end" | "centre";
}

/** A car changed to another linkage or mechanism. */
export interface ChangedFrontEnd {
  readonly text: string;
  /** The ids of the quantities that were given starting values: the builder has to measure them. */
  readonly filled: readonly string[];
}

const wheels: readonly Wheel[] = ["left", "right"];

function mechanismFor({ mechanism, takeOff }: FrontEndChange, now: MechanismName): MechanismName {
  const word = mechanism ?? (takeOff === undefined ? mechanismOf(now).word : "rack");
  const candidates = mechanisms.filter((each) => each.word === word);
  const end =
    takeOff ?? (mechanism === undefined || mechanism === mechanismOf(now).word ? mechanismOf(now).takeOff : "end");
  return (candidates.find((each) => each.takeOff === end) ?? candidates[0] ?? mechanisms[0]).name;
}

/** Wheel travel that a car without suspension had no use for, mm. */
const freshTravel = 75;

/** Everything that the new form could be started with, by its ids. */
function startsFor({ numbers, form }: Car, linkage: LinkageName, mechanism: MechanismName): readonly Start[] {
  const alike = mechanismOf(form.mechanism).section === mechanismOf(mechanism).section;
  const behind = tabIsBehind(numbers, form.linkage, "left");
  const steering = mechanismStarts(mechanism, { eyes: eyesOf(numbers, form, alike), behind });
  const drawn = eyesOf(numbers, form, false);
  const eye = (wheel: Wheel) => eyeAmong(mechanism === form.mechanism ? [] : steering, drawn, wheel);
  return [
    { id: "wheel-travel.bump", value: freshTravel },
    { id: "wheel-travel.droop", value: freshTravel },
    ...wheels.flatMap((wheel) => linkageStarts(numbers, form.linkage, linkage, wheel, eye(wheel))),
    ...steering,
  ];
}

/** Invented lengths stand on a sixteenth of an inch or a millimetre, as a tape shows them. */
function onTheTape(value: number, { kind }: Quantity, units: LengthUnit): number {
  const step = units === "in" ? inch / 16 : 1;
  return kind === "length" ? Math.round(value / step) * step : value;
}

/** The paths of what goes: each as high up as nothing that stays is below it. */
function droppedPaths(gone: readonly Quantity[], stay: readonly Quantity[]): readonly (readonly string[])[] {
  const places = ({ path, shared }: Quantity) => (shared === null ? [path] : [path, shared]);
  const kept = new Set(
    stay.flatMap(places).flatMap((path) => path.map((_, depth) => path.slice(0, depth + 1).join("."))),
  );
  const tops = gone.flatMap(places).map((path) => {
    const depth = path.findIndex((_, at) => at > 0 && !kept.has(path.slice(0, at + 1).join(".")));
    return path.slice(0, path[0] === "wheel-travel" ? 1 : depth < 0 ? path.length : depth + 1);
  });
  return [...new Map(tops.map((path) => [path.join("."), path])).values()];
}

/** A filled quantity and its text in the file. */
interface Filled {
  readonly quantity: Quantity;
  readonly text: string;
}

/** Where a filled quantity is written: at the place of both sides where they are alike, else at its own. */
function pathOf({ quantity, text }: Filled, all: readonly Filled[]): readonly string[] {
  const { shared, pair, path } = quantity;
  const alike = all.filter((each) => each.quantity.pair === pair).every((each) => each.text === text);
  return shared !== null && alike ? shared : path;
}

const coordinates = new Set(["ahead", "out", "offset", "up"]);

/** Points stand in braces on one line; anything else has a line of its own. */
function linesOf(filled: readonly Filled[]): readonly Line[] {
  const texts = new Map(filled.map((each) => [pathOf(each, filled).join("\0"), each.text]));
  const paths = [...texts.keys()].map((path) => path.split("\0"));
  const isPoint = (above: readonly string[]) => {
    const keys = paths.filter((path) => path.slice(0, -1).join() === above.join()).map((path) => path.at(-1) ?? "");
    return keys.length === 3 && keys.every((key) => coordinates.has(key)) && above.length > 2;
  };
  const lines = new Map<string, Line>();
  for (const path of paths) {
    const above = path.slice(0, -1);
    const point = isPoint(above);
    const entries = paths
      .filter((other) => other.slice(0, -1).join() === above.join())
      .map((other) => [other.at(-1) ?? "", texts.get(other.join("\0")) ?? ""] as const);
    const line = point ? { path: above, text: flowMap(entries) } : { path, text: texts.get(path.join("\0")) ?? "" };
    lines.set(line.path.join("\0"), { ...line, marked: true });
  }
  return [...lines.values()];
}

/** The words that the new mechanism needs beside its numbers: the way it has to move for the car to steer rightly. */
function wordLines(car: Car, to: MechanismName): readonly Line[] {
  const { section, takeOff } = mechanismOf(to);
  const line = (key: string, text: string): Line => ({ path: ["steering", section, key], text, marked: false });
  const fresh = mechanismOf(car.form.mechanism).section !== section;
  const moves = tabIsBehind(car.numbers, car.form.linkage, "left") ? "right" : "left";
  return [
    ...(takeOff === "centre" ? [line("take-off", "centre")] : []),
    ...(takeOff !== null && fresh ? [line("wheel-left-moves", moves)] : []),
    ...(to === "relay" ? [line("turns", "with")] : []),
  ];
}

/** The places in optional sections that a text's linkage has no use for, such as the rod end of an arm that is gone. */
function strayPaths(text: string): readonly (readonly string[])[] {
  const read = readCar(text);
  const complaints = "complaints" in read ? read.complaints : [];
  return complaints.map(({ part }) => part.split(".")).filter(([root = ""]) => isSection(root));
}

/** A text without what its optional sections say of parts that its linkage has not; a section that needs one goes whole. */
function withoutStrays(text: string): string {
  const drop = (from: string, paths: readonly (readonly string[])[]) =>
    changed(
      from,
      paths.map((path) => ({ path, text: null })),
    );
  const once = drop(text, strayPaths(text));
  return drop(
    once,
    strayPaths(once).map((path) => path.slice(0, 1)),
  );
}

/**
 * A car's text with another linkage or steering mechanism. What both have is kept: wheel, tab, rack, a shared arm. The
 * rest gets starting values made from the present ones, each marked by a comment: the steering axis stays where it is,
 * and so do the tie rods' inner joints, unless they are put on a plate or on the ends of a rack; there, rods are cut to
 * fit. A fresh mechanism is made to steer the right way. The same text where nothing changes.
 */
export function changeFrontEnd(car: Car, change: FrontEndChange): ChangedFrontEnd {
  const { form } = car;
  const linkage = change.linkage ?? form.linkage;
  const mechanism = mechanismFor(change, form.mechanism);
  if (linkage === form.linkage && mechanism === form.mechanism) return { text: car.text, filled: [] };
  const before = quantitiesOf(form);
  const after = quantitiesOf({ linkage, mechanism });
  const starts = new Map(startsFor(car, linkage, mechanism).map(({ id, value }) => [id, value]));
  const filled = after.flatMap((quantity): readonly Filled[] => {
    const value = starts.get(quantity.id);
    if (value === undefined || before.includes(quantity)) return [];
    return [
      {
        quantity,
        text: written({ kind: quantity.kind, value: onTheTape(value, quantity, form.units), units: form.units }),
      },
    ];
  });
  const moved = mechanism !== form.mechanism && (mechanism === "rack" || mechanism === "steering-plate");
  const rods = moved ? wheels.map((wheel) => quantityOf(`${wheel}.tie-rod.length`)) : [];
  const gone = [...before.filter((each) => !after.includes(each)), ...rods];
  const drops: readonly Change[] = droppedPaths(
    gone,
    after.filter((each) => !rods.includes(each)),
  ).map((path) => ({ path, text: null }));
  const leaves = mechanismOf(form.mechanism).section !== mechanismOf(mechanism).section;
  const text = changed(car.text, [
    ...drops,
    ...(leaves ? [{ path: ["steering", mechanismOf(form.mechanism).section], text: null }] : []),
    ...(mechanism === form.mechanism ? [] : [{ path: ["steering", "rack", "take-off"], text: null }]),
    { path: ["front", "linkage"], text: linkageOf(linkage).name },
    { path: ["steering", "mechanism"], text: mechanismOf(mechanism).word },
  ]);
  const words = mechanism === form.mechanism ? [] : wordLines(car, mechanism);
  const ids = filled.map(({ quantity }) => quantity.id);
  const result = { text: withoutStrays(withLines(text, [...words, ...linesOf(filled)])), form: { linkage, mechanism } };
  // A comment speaks for its whole line, which may hold values that were kept.
  const guessed = new Set([...ids, ...startingValues(car)]);
  const kept = [...startingValues(result)].filter((id) => !guessed.has(id));
  return { text: withoutMarks(result, new Set(kept)), filled: ids };
}
