import { bounceSteerFigure } from "./bounceSteer.ts";
import { bumpSteerFigure } from "./bumpSteer.ts";
import { camberFigures } from "./camber.ts";
import { type CarFigure, carFigures } from "./carFigures.ts";
import { casterFigure } from "./caster.ts";
import { ofSuspension, type PoseFigure, type WheelFigure } from "./figure.ts";
import { instantCentreFigures } from "./instantCentre.ts";
import { kingPinInclinationFigure } from "./kingPinInclination.ts";
import { rollCentreFigures } from "./rollCentre.ts";
import { scrubRadiusFigure } from "./scrubRadius.ts";
import { steerFigure } from "./steer.ts";
import { tieRodFigures } from "./tieRod.ts";
import { toeFigure } from "./toe.ts";
import { toeChangeFigure } from "./toeChange.ts";
import { trackChangeFigure } from "./trackChange.ts";
import { trailFigure } from "./trail.ts";
import { turningFigures } from "./turning.ts";

/** One output. Lengths mm, angles rad, angles per length rad/mm, percents as 100 = all. */
export type Figure = WheelFigure | PoseFigure | CarFigure;

/** Figures of one wheel in one pose. */
export const wheelFigures: readonly WheelFigure[] = [
  steerFigure,
  toeFigure,
  ...camberFigures,
  casterFigure,
  kingPinInclinationFigure,
  scrubRadiusFigure,
  trailFigure,
  ...tieRodFigures,
  ...[bumpSteerFigure, toeChangeFigure, trackChangeFigure, ...instantCentreFigures].map(ofSuspension),
];

/** Figures of one pose, both wheels. */
export const poseFigures: readonly PoseFigure[] = [
  ...turningFigures,
  ...[bounceSteerFigure, ...rollCentreFigures].map(ofSuspension),
];

/** The one list of outputs: tables, files, targets, limits, comparison and help are made from it. */
export const figures: readonly Figure[] = [...wheelFigures, ...poseFigures, ...carFigures];

const byId = new Map(figures.map((figure) => [figure.id, figure]));

/** The figure of that id; undefined when there is none. */
export function figureOf(id: string): Figure | undefined {
  return byId.get(id);
}
