import type { NextReading } from "../solve/survey/next.ts";
import type { Surveyed } from "../solve/survey/survey.ts";
import { setAside } from "../vehicle/set-aside.ts";
import type { SurveyReading } from "../vehicle/survey/readings.ts";
import { degrees, type Length } from "./words.ts";

/** How a reading of each kind is off: too much, too little. */
const ways: Readonly<Record<SurveyReading["kind"], readonly [more: string, less: string]>> = {
  distance: ["long", "short"],
  plumb: ["long", "short"],
  line: ["long", "short"],
  height: ["high", "low"],
  out: ["too far out", "too far in"],
  ahead: ["too far ahead", "too far back"],
  angle: ["too steep", "too flat"],
};

/** Whether a reading is in degrees. */
export const isAngle = ({ kind }: Pick<SurveyReading, "kind">) => kind === "angle";

/** A reading's value as it is said in a sentence. */
export function sayReading(reading: Pick<SurveyReading, "kind">, value: number, length: Length): string {
  return isAngle(reading) ? degrees(value, 2) : length(value);
}

/** "3/4 in long": by how much and which way a reading is off, positive too much. */
export function offBy(reading: Pick<SurveyReading, "kind">, by: number, length: Length): string {
  const [more, less] = ways[reading.kind];
  return `${sayReading(reading, Math.abs(by), length)} ${by > 0 ? more : less}`;
}

function withLine({ name, line }: SurveyReading): string {
  return line === null ? name : `${name} (line ${line})`;
}

/** The readings that do not fit, each in a sentence or two. */
export function blunderWords({ blunders, readings }: Surveyed, length: Length): readonly string[] {
  return blunders.map(({ reading: at, or }) => {
    const { reading, computed } = readings[at];
    const off = offBy(reading, reading.value - computed, length);
    const beside = `read ${sayReading(reading, reading.value, length)}, they make it ${sayReading(reading, computed, length)}`;
    const others = or.map((each) => withLine(readings[each].reading));
    const which =
      others.length === 0
        ? "Measure it again."
        : `Or another is wrong in its stead, and the sheet cannot tell which: measure again this one and ${others.slice(0, 3).join("; ")}.`;
    return `${withLine(reading)} reads ${off} against all the others: ${beside}. ${which}`;
  });
}

const axes = ["ahead", "out", "up"] as const;

/** What of each point is not settled: "left eye: ahead, up". */
export function unsettledWords({ points, survey }: Surveyed): readonly string[] {
  return points.flatMap(({ point, deviations }) => {
    const loose = axes.filter((_, axis) => deviations[axis] === "undetermined");
    return loose.length === 0 ? [] : [`${survey.points[point].name}: ${loose.join(", ")}`];
  });
}

/** Which points no reading names: they stand in a car as assumed. */
export function unreadPoints({ points, survey }: Surveyed): readonly string[] {
  const read = new Set(points.map(({ point }) => point));
  return survey.points.filter((_, i) => !read.has(i)).map(({ name }) => name);
}

/** What is to be known where nothing tells ahead from behind, in a sentence; none where something does. */
export function facingWords({ facesRead }: Surveyed): readonly string[] {
  return facesRead
    ? []
    : [
        "Nothing on the sheet tells ahead from behind: the mirror image fits as well, and the one that is more like a front end mostly is was taken. Read how far ahead one point is of another.",
      ];
}

/**
 * What to read next, in a sentence or two; null where nothing more can be read. Points that no reading names come first: what
 * settles the others settles none of them.
 */
export function nextWords(next: readonly NextReading[], unread: number, length: Length): string | null {
  const [first, ...more] = next;
  const points = unread === 1 ? "the point that is" : `the ${unread} points that are`;
  const missing =
    unread === 0
      ? null
      : `First ${points} not read at all, unless what is assumed of ${unread === 1 ? "it" : "them"} will do.`;
  if (first === undefined) return missing;
  if (first.settles) {
    const names = more.map(({ name }) => name).join("; ");
    const words =
      more.length === 0
        ? `One more reading settles it: ${first.name}.`
        : `What settles most: ${first.name}; then ${names}.`;
    const others = `Of the others ${first.name} settles most${more.length === 0 ? "" : `; then ${names}`}.`;
    return missing === null ? words : `${missing} ${others}`;
  }
  const { before = 0, after = 0 } = first.spread ?? {};
  const gain = (1 - after / before) * 100;
  const settled = `verything is settled. Of one more reading ${first.name} would gain most: the points, ${length(before)} off on average, come ${gain.toFixed(0)} % nearer.`;
  return missing === null ? `E${settled}` : `${missing} Of the others e${settled}`;
}

/** More scatter than that is hardly chance: the readings are not as good as the sheet says, or a part moved meanwhile. */
const hardly = 0.01;

/** How good readings are said to be, and how well they fit each other. */
export function scatterWords({ scatter, chance, survey }: Surveyed, length: Length): string {
  const each = `each to ${length(survey.tolerance)} unless the sheet says otherwise, 19 of 20 nearer than that`;
  if (scatter === null) return `${each}. No reading checks another: a wrong one would not show`;
  const size = scatter.toFixed(2);
  const verdict =
    chance !== null && chance < hardly
      ? "more than chance explains: they are coarser than the sheet says, or something moved between two of them"
      : scatter < 0.5
        ? "they are better than the sheet says"
        : "as the sheet says";
  return `${each}. Those that fit scatter ${size} times as much: ${verdict}`;
}

/** Comments for the top of a car file of a sheet: where it is from, and what must not be overlooked. */
export function surveyHeads(surveyed: Surveyed, source: string, length: Length): readonly string[] {
  const unsettled = unsettledWords(surveyed);
  const unread = unreadPoints(surveyed);
  return [
    `Points from the tape, by the sheet ${source}. What was not measured is assumed, and its line says so until you change it.`,
    ...blunderWords(surveyed, length).map((words) => `${setAside} ${words}`),
    ...(surveyed.free.length === 0 ? [] : [`Where the whole stands ${surveyed.free.join(", ")} was not read.`]),
    ...facingWords(surveyed),
    ...(unsettled.length === 0 ? [] : [`Not settled: ${unsettled.join("; ")}.`]),
    ...(unread.length === 0 ? [] : [`Not read: ${unread.join(", ")}.`]),
  ];
}
