import { scalar } from "../edits/written.ts";
import { linkageOf } from "../linkages.ts";
import { mechanismOf } from "../mechanisms.ts";
import { remark } from "../remark.ts";
import type { LengthUnit } from "../words.ts";
import { askedOfCar } from "./asked.ts";
import { diagonalsOf } from "./diagonals.ts";
import type { Grown } from "./grown.ts";
import { floorMarks, planOf, type ToTake } from "./plan.ts";
import { pointsOf, type SurveyForm } from "./points.ts";
import { type Kind, ways } from "./readings.ts";

/** How to take the readings of a group, for the sheet. */
const advice: Readonly<Partial<Record<Kind, string>>> = {
  height:
    "1. Heights above the floor, to the middle of each bolt or ball. A level floor, or a jig table: then write how high the table stands under table-height.",
  out: "2. Drop a plumb line from every point and mark the floor. Stretch a string along the middle of the car: from it, square, to each mark. Out is positive on a point's own side; of a point in the middle, to the driver's left.",
  ahead:
    "3. Draw the front-axle line on the floor, through the plumb marks of both hubs: from it, square, to each mark. Behind it is negative. Or name any bolt under datum, and read all of these from there.",
  distance:
    "4. The tape from centre to centre. These check all the readings above: the more of them, the surer a wrong one is found.",
};

function keyOf({ names }: ToTake): string {
  return names.join(" to ");
}

/** What a floor mark is read as by how it was made: on the floor, on the axle line. */
function drawn({ kind, names: [first = ""] }: ToTake): string {
  const isMark = floorMarks.some(({ name }) => name === first);
  return isMark && (kind === "height" || kind === "ahead") ? " 0" : "";
}

/** Every point with what it is, for who does not know its name. */
function pointLines(form: SurveyForm): readonly string[] {
  const own = pointsOf(form).filter(({ wheel }) => wheel !== "right");
  return own.flatMap(({ name, help }) =>
    remark(`${name.replace(/^left /, "left/right ")}: ${help.replace(/left tie rod/, "tie rod")}`),
  );
}

interface Nest {
  [key: string]: Nest | string;
}

/** What the sheet asks of the car beside its points, nested as in a car file. */
function carLines(form: SurveyForm, { car }: Grown): readonly string[] {
  const nest: Nest = {};
  const put = (path: readonly string[], help: string) => {
    let at = nest;
    path.forEach((key, depth) => {
      if (depth === path.length - 1) at[key] = help;
      else {
        const below = at[key];
        const next = typeof below === "object" ? below : {};
        at[key] = next;
        at = next;
      }
    });
  };
  for (const { path, help } of askedOfCar(form)) put(path, help);
  const written = (inside: Nest, indent: string, above: string): readonly string[] =>
    Object.entries(inside).flatMap(([key, below]) => {
      const path = `${above}${key}`;
      return typeof below === "string"
        ? [...remark(below, indent), `${indent}${key}:${filled(car[path])}`]
        : [`${indent}${key}:`, ...written(below, `${indent}  `, `${path}.`)];
    });
  return ["car:", ...written(nest, "  ", "")];
}

/** The six diagonals alone, to fill in beside the file of the car as it was built. */
export function blankDiagonals(form: SurveyForm, units: LengthUnit): string {
  return [
    ...remark(
      "The six diagonals of the front, from centre to centre, wheels straight, at ride height. Then: rackwright tape THIS-FILE --against AS-BUILT-CAR",
    ),
    `units: ${units}`,
    `linkage: ${form.linkage}`,
    `mechanism: ${form.mechanism}`,
    `tolerance: ${units === "in" ? "1/8" : "3"}`,
    "distances:",
    ...diagonalsOf(form).map((pair) => `  ${pair.join(" to ")}:`),
    "",
  ].join("\n");
}

const nothing: Grown = { readings: {}, car: {} };

function filled(answer: string | undefined): string {
  return answer === undefined ? "" : ` ${scalar(answer)}`;
}

/**
 * The list of readings of a front end, in working order, to print and take along or to fill in as a file: blank, or with what
 * is known of it already.
 */
export function blankSurvey(form: SurveyForm, units: LengthUnit, known: Grown = nothing): string {
  const plan = planOf(form);
  const groups = ways.flatMap(({ kind, group }) => {
    const { [kind]: own = {} } = known.readings;
    const taken = plan.filter((each) => each.kind === kind);
    const keys = taken.map(keyOf);
    const lines = [
      ...taken.map((each) => `  ${keyOf(each)}:${filled(own[keyOf(each)]) || drawn(each)}`),
      ...Object.entries(own).flatMap(([key, text]) => (keys.includes(key) ? [] : [`  ${key}:${filled(text)}`])),
    ];
    return lines.length === 0 ? [] : ["", ...remark(advice[kind] ?? ""), `${group}:`, ...lines];
  });
  return [
    ...remark(
      `Readings between the points of a front end: ${linkageOf(form.linkage).label}, ${mechanismOf(form.mechanism).label}. Then: rackwright tape THIS-FILE`,
    ),
    ...remark(
      "The car on stands, at ride height, wheels and steering wheel straight. Fractions as the tape shows them: 14 3/8. What was not read stays blank; a reading taken twice stands as [14 3/8, 14 7/16]; a doubtful one as 14 3/8 +- 1/4. More readings than needed are welcome: they find the wrong one.",
    ),
    `title:${filled(known.title)}`,
    `units: ${units}`,
    `linkage: ${form.linkage}`,
    `mechanism: ${form.mechanism}`,
    ...remark("How far one reading between centres may be off: 19 of 20 are nearer than this."),
    `tolerance: ${units === "in" ? "1/8" : "3"}`,
    ...remark("The jig table's height above the ground, where heights are read from one."),
    "table-height:",
    ...remark("What the sheet calls the points:"),
    ...pointLines(form),
    ...remark(
      "Points of your own, left, right or middle. The two marks on the floor are to be drawn on the front-axle line, each about under the middle of its lower arm: a tape held slantwise to them checks all three numbers of a point at once.",
    ),
    "marks:",
    ...floorMarks.map(({ name, wheel }) => `  ${name}: ${wheel}`),
    ...groups,
    "",
    ...remark("What no tape reads between points; what stays blank is assumed, and marked so in the car file."),
    ...carLines(form, known),
    "",
  ].join("\n");
}
