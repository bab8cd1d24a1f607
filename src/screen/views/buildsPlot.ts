import { degrees, inputPlace, travelPlace } from "../../output/words.ts";
import type { Tolerance } from "../../solve/tolerance/result.ts";
import type { Spread } from "../../solve/tolerance/sample.ts";
import { dotted } from "../draw/canvas.ts";
import { axisOver, type Curve, plotLines } from "../draw/plot.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import type { Line } from "../view/Lines.tsx";

const degree = Math.PI / 180;

/** One curve of the builds: what it is, over what, and its places. */
interface BuildsPlot {
  readonly title: string;
  readonly over: "travel" | "steering";
  readonly rows: (result: Tolerance) => readonly { readonly place: number; readonly spread: Spread | null }[];
}

function overTravel(key: "left" | "right" | "bounce", title: string): BuildsPlot {
  return {
    title,
    over: "travel",
    rows: ({ bands }) => bands.travel.map(({ place, of }) => ({ place, spread: of[key] })),
  };
}

/** The plots that builds are shown in, in order. */
export const buildsPlots: readonly BuildsPlot[] = [
  overTravel("left", "Left toe change over the travel, in upward"),
  overTravel("right", "Right toe change over the travel, in upward"),
  overTravel("bounce", "Steer of both wheels over the travel, left upward"),
  {
    title: "Inner wheel short of ideal over the steering",
    over: "steering",
    rows: ({ bands }) => bands.steer.map(({ place, of }) => ({ place, spread: of.innerShortOfIdeal })),
  },
];

/** A plot of what 5, 50 and 95 of 100 builds do not exceed; in words where there is nothing to draw. */
export function buildsPlotLines(
  { display }: Model,
  plot: BuildsPlot,
  result: Tolerance,
  columns: number,
  rows: number,
): readonly Line[] {
  const all = plot.rows(result);
  if (all.length < 2) return [" This front end has no wheel travel to look along."];
  const curve = (read: (spread: Spread) => number): Curve["points"] =>
    all.map(({ place, spread }) => [place, spread === null ? null : read(spread)]);
  const [low, middle, high] = [curve(({ low }) => low), curve(({ middle }) => middle), curve(({ high }) => high)];
  const values = [...low, ...high].map(([, value]) => value);
  const [first, last] = [all[0].place, all[all.length - 1].place];
  const length = sayer(display);
  const say = (place: number) =>
    plot.over === "travel" ? travelPlace(place, length) : inputPlace(result.study, place, length);
  return plotLines(
    {
      title: ` ${plot.title}; dotted: 5 and 95 of 100`,
      x: { from: first, to: last, words: [say(first), say(last)] },
      y: axisOver(values, 0.05 * degree, (value) => degrees(value, 2)),
      curves: [{ points: low, stroke: dotted }, { points: middle }, { points: high, stroke: dotted }],
      linesAcross: [0],
    },
    columns,
    rows,
  );
}
