import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import type { PoseFigure, WheelFigure } from "../measures/figure.ts";
import { sideAt } from "../measures/points.ts";
import { placeOf, type Span } from "../measures/span.ts";
import type { Study } from "../measures/study.ts";
import type { Wheel } from "../vehicle/car.ts";
import type { Job } from "./job.ts";

/** What is mapped: a figure of one wheel or of both, over steering (across) and the travel of both wheels (down). */
export interface MapOf {
  readonly figure: WheelFigure | PoseFigure;
  /** The wheel that a figure of one wheel is read of. */
  readonly wheel: Wheel;
  /** mm of rack or rad of column. */
  readonly inputs: Span;
  /** mm. */
  readonly travels: Span;
}

/** A figure at one place: its value (mm, rad, percent); null where it says nothing; "open" where the linkage does not close. */
export type Cell = number | null | "open";

/** Cells in rows, one row for each travel; those that are not worked out yet are missing at the end. */
export type Cells = readonly Cell[];

/** A figure at a place of the steering and of both wheels. */
export function cellAt(
  study: Study,
  { figure, wheel }: MapOf,
  input: number,
  travel: number,
  poses = newPoses(1),
): Cell {
  solve(study.front, input, travel, travel, poses, 0);
  const [left, right] = [poses[Pose.Left + Side.Blame] !== 0, poses[Pose.Right + Side.Blame] !== 0];
  if (figure.of === "wheel" ? (wheel === "left" ? left : right) : left || right) return "open";
  return figure.read(poses, figure.of === "wheel" ? sideAt(wheel) : 0, study);
}

/** The map of a figure over the whole range, as a job whose pieces are cells. Its best is the cells that are done. */
export function mapJob(study: Study, map: MapOf): Job<Cells> {
  const { inputs, travels } = map;
  const count = inputs.rows * travels.rows;
  const cells: Cell[] = [];
  const poses = newPoses(1);
  return {
    step: (budget) => {
      const stop = Math.min(count, cells.length + budget);
      while (cells.length < stop) {
        const at = cells.length;
        const input = placeOf(inputs, at % inputs.rows);
        const travel = placeOf(travels, Math.floor(at / inputs.rows));
        cells.push(cellAt(study, map, input, travel, poses));
      }
      return cells.length === count;
    },
    progress: () => (count === 0 ? 1 : cells.length / count),
    best: () => [...cells],
  };
}
