import type { Study } from "../measures/study.ts";
import type { CheckItem, Fact, Part, State } from "../solve/check/item.ts";
import type { CheckReport } from "../solve/check/report.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { poundsPerInch } from "../vehicle/units/rate.ts";
import { directionWords } from "./direction.ts";
import type { Json } from "./json.ts";
import { noteLines } from "./notes.ts";
import { inUnits, unitsOf, written } from "./numbers.ts";
import { WIDTH, wrap } from "./table.ts";
import { cautions, degrees, far, fixed, inputPlace, type Length, travelPlace } from "./words.ts";

type Kind = Fact["kind"] | CheckItem["kind"];

/** The states in the order of their counts, and what a reader is told. */
const states: readonly State[] = ["broken", "close", "not given", "pass"];

/** A circle on the ground is told to what can be measured there: from here up, mm. */
const FAR = 3000;

/** "410 in (34.2 ft)", "10220 mm (10.22 m)": as the file has lengths, and as circles are told. */
function farBoth(mm: number, unit: LengthUnit): string {
  return `${far(mm, unit)} (${unit === "in" ? `${fixed(mm / 304.8, 1)} ft` : `${fixed(mm / 1000, 2)} m`})`;
}

/** A number of a check for a reader, unit included. */
function said(value: number, kind: Exclude<Kind, "direction">, unit: LengthUnit, length: Length): string {
  if (kind === "length") return value < 0 ? `-${length(-value)}` : value > FAR ? farBoth(value, unit) : length(value);
  if (kind === "fine length") return `${written(value, "length", unit)} ${unit}`;
  if (kind === "travel") return travelPlace(value, length);
  if (kind === "angle") return degrees(value);
  if (kind === "rate") return unit === "in" ? `${fixed(value / poundsPerInch, 0)} lb/in` : `${fixed(value, 1)} N/mm`;
  if (kind === "percent") return `${fixed(value, 0)} %`;
  return kind === "diameters" ? `${fixed(value, 2)} diameters` : fixed(value, 3);
}

/** One fact: "cut the tube to 11 3/4 in"; nothing where it is not known. */
function factWords(fact: Fact, unit: LengthUnit, length: Length): string | null {
  if (fact.kind === "direction") return `${fact.label} ${directionWords(fact.value)}`;
  return fact.value === null ? null : `${fact.label} ${said(fact.value, fact.kind, unit, length)}`;
}

/** "broken under 20.0°, close under 30.0°", and whose limit where the file sets it; null where nothing decides. */
export function limitWords({ limit, kind }: CheckItem, unit: LengthUnit, length: Length): string | null {
  if (limit === null) return null;
  const end = (value: number) => said(value, kind, unit, length);
  const close = limit.close === limit.broken ? "" : `, close ${limit.bad} ${end(limit.close)}`;
  return `broken ${limit.bad} ${end(limit.broken)}${close}${limit.from === "file" ? " by the file" : ""}`;
}

/** Where an item is at its worst: "rack 2 in left of its middle, 3 in droop"; null where it has no place. */
export function whereWords(study: Study, { where }: CheckItem, length: Length): string | null {
  if (where === null) return null;
  const travel = study.suspended ? `, ${travelPlace(where.travel, length)}` : "";
  return `${inputPlace(study, where.input, length)}${travel}`;
}

/** An item's value with its unit, "3/32 in"; null where it has none. */
export function valueWords(item: CheckItem, unit: LengthUnit, length: Length): string | null {
  if (item.value === null || item.id === "range") return null;
  if (item.part === "clearance" && item.value < 0) return `they overlap by ${length(-item.value)}`;
  return said(item.value, item.kind, unit, length);
}

/** An item and its value: "Left tie rod to lower arm: 3/32 in". */
export function itemBrief(item: CheckItem, unit: LengthUnit, length: Length): string {
  const value = valueWords(item, unit, length);
  return value === null ? item.label : `${item.label}: ${value}`;
}

/** An item in one sentence without its state: label, value, limit, where. */
export function itemWords(study: Study, item: CheckItem, unit: LengthUnit, length: Length): string {
  const limit = limitWords(item, unit, length);
  const where = whereWords(study, item, length);
  const brief = itemBrief(item, unit, length);
  return `${brief}${limit === null ? "" : ` (${limit})`}${where === null ? "" : `, at ${where}`}`;
}

/** What else an item tells, in sentences: its facts, and what to beware of. */
export function moreWords(item: CheckItem, unit: LengthUnit, length: Length): readonly string[] {
  const facts = item.facts.map((fact) => factWords(fact, unit, length)).filter((words) => words !== null);
  return facts.length === 0 ? [] : [`${facts.join("; ")}.`];
}

/** "2 broken, 1 close, 3 not given, 14 pass". */
export function countWords({ items }: CheckReport): string {
  return states.map((state) => `${items.filter((item) => item.state === state).length} ${state}`).join(", ");
}

/** The counts, the worst that is broken or close, and where all of it is told. */
export function checksBrief(report: CheckReport, worst: CheckItem | null, unit: LengthUnit, length: Length): string {
  const words = worst === null ? "" : ` Worst: ${itemBrief(worst, unit, length)}.`;
  return `${countWords(report)}.${words} The command check tells each.`;
}

function partLines(study: Study, part: Part, items: readonly CheckItem[], unit: LengthUnit, length: Length) {
  const lines = items.flatMap((item) => {
    const head = `${item.state.toUpperCase().padEnd(9)}  `;
    const own = item.state === "not given" ? [...item.cautions] : [];
    return [
      ...wrap(itemWords(study, item, unit, length), WIDTH, head, 11),
      ...[...moreWords(item, unit, length), ...own].flatMap((words) => wrap(words, WIDTH, " ".repeat(11), 11)),
    ];
  });
  const mind = new Set(items.filter((item) => item.state !== "not given").flatMap((item) => item.cautions));
  return [
    `${part.charAt(0).toUpperCase()}${part.slice(1)}`,
    ...lines,
    ...[...mind].flatMap((words) => wrap(words, WIDTH, "Mind:      ", 11)),
    "",
  ];
}

/** The car and its counts on one line, or where they are too long for it on two. */
function headLines(title: string, counts: string): readonly string[] {
  const line = `${title}: ${counts}`;
  return line.length <= WIDTH ? [line] : [...wrap(`${title}:`, WIDTH), counts];
}

/** A check for a reader: a line an item, part by part. */
export function checkText(study: Study, { items }: CheckReport, unit: LengthUnit, length: Length): readonly string[] {
  const parts = [...new Set(items.map((item) => item.part))];
  return [
    ...headLines(study.car.title, countWords({ items })),
    ...noteLines(study.car),
    "",
    ...parts.flatMap((part) =>
      partLines(
        study,
        part,
        items.filter((item) => item.part === part),
        unit,
        length,
      ),
    ),
    ...(items.some(({ state }) => state === "not given")
      ? wrap("How a file says what is not given here: rackwright presets check-before-welding shows one.", WIDTH)
      : []),
    ...wrap(
      "Limits are common practice, which no standard or handbook stands behind, unless the file sets them.",
      WIDTH,
    ),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

function number(value: number | null, kind: Exclude<Kind, "direction">, unit: LengthUnit): number | null {
  if (value === null) return null;
  if (kind === "travel") return inUnits(value, "length", unit);
  if (kind === "length" || kind === "fine length") return inUnits(value, "length", unit);
  if (kind === "angle") return inUnits(value, kind, unit);
  return kind === "rate" && unit === "in" ? value / poundsPerInch : value;
}

function factJson(fact: Fact, unit: LengthUnit): Json {
  return fact.kind === "direction" ? fact.value : number(fact.value, fact.kind, unit);
}

function itemJson(study: Study, item: CheckItem, unit: LengthUnit): Json {
  const { limit, where, kind } = item;
  return {
    id: item.id,
    part: item.part,
    label: item.label,
    state: item.state,
    value: number(item.value, kind, unit),
    kind,
    limit:
      limit === null
        ? null
        : {
            bad: limit.bad,
            close: number(limit.close, kind, unit),
            broken: number(limit.broken, kind, unit),
            from: limit.from,
          },
    wheel: item.wheel,
    otherSide: item.sides === null ? null : number(item.sides.other, kind, unit),
    where:
      where === null
        ? null
        : {
            [study.inputKind]: inUnits(where.input, study.inputKind === "rack" ? "length" : "angle", unit),
            travel: inUnits(where.travel, "length", unit),
          },
    facts: Object.fromEntries(item.facts.map((fact) => [fact.id, factJson(fact, unit)])),
    cautions: item.cautions,
  };
}

/** A check for other programs. */
export function checkJson(study: Study, { items }: CheckReport, unit: LengthUnit): Json {
  return {
    units: { ...unitsOf(unit), rate: unit === "in" ? "lb/in" : "N/mm" },
    counts: Object.fromEntries(states.map((state) => [state, items.filter((item) => item.state === state).length])),
    items: items.map((item) => itemJson(study, item, unit)),
    cautions,
  };
}
