import { placeOf } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import { inputFigure } from "../column.ts";
import { inUnits, unitName } from "../numbers.ts";
import type { Block } from "../paper/paper.ts";
import type { Curve } from "../paper/plotShapes.ts";
import { type Writing, wheels } from "./writing.ts";

const ROWS = 61;

const strokes = {
  left: { now: "solid", before: "faint" },
  right: { now: "dashed", before: "faint dashed" },
} as const;

/** Curves of both wheels, and of those of the car that is compared, drawn faintly. */
function curvesOf(
  study: Study,
  before: Study | null,
  points: (study: Study, wheel: "left" | "right") => Curve["points"],
): readonly Curve[] {
  const of = (each: Study, when: "now" | "before") =>
    wheels.map((wheel) => ({
      name: when === "now" ? `${wheel} wheel` : `${wheel}, now`,
      points: points(each, wheel),
      stroke: strokes[wheel][when],
    }));
  return [...(before === null ? [] : of(before, "before")), ...of(study, "now")];
}

/** How far the wheels turn over the rack or the column, and how their toe changes over the travel; only what can be drawn. */
export function plotBlocks(study: Study, before: Study | null, { unit }: Writing): readonly Block[] {
  const kind = inputFigure(study.inputKind);
  const alike = before !== null && before.inputKind === study.inputKind ? before : null;
  const steer = curvesOf(study, alike, (each, wheel) => {
    const span = { from: -each.acting.right.at, to: each.acting.left.at, rows: ROWS };
    const straight = each.zeroSteer?.[wheel] ?? 0;
    return each.steerTable(span).rows.map((row) => {
      const { steer: at } = row[wheel];
      return [inUnits(row.input, kind, unit), at === null ? null : inUnits(at - straight, "angle", unit)] as const;
    });
  });
  const blocks: Block[] = [
    {
      kind: "drawing",
      plot: {
        across: `${study.inputKind} from its middle, to the left positive, ${unitName(kind, unit)}`,
        up: "wheel turned from straight, left +, deg",
        curves: steer,
      },
      text: "Steering at ride height.",
    },
  ];
  if (!study.suspended) return blocks;
  const travelled = before?.suspended === true ? before : null;
  const bump = curvesOf(study, travelled, (each, wheel) => {
    const { bump: up, droop } = each.wheelTravel;
    const span = { from: -droop, to: up, rows: ROWS };
    const table = each.bumpTable(each.zero ?? each.straightAhead, span);
    return (table?.rows ?? []).map((row, i) => {
      const { toeChange } = row[wheel];
      const travel = inUnits(placeOf(span, i), "length", unit);
      return [travel, toeChange === null ? null : inUnits(toeChange, "angle", unit)] as const;
    });
  });
  blocks.push({
    kind: "drawing",
    plot: {
      across: `travel from ride height, bump positive, ${unit}`,
      up: "toe change, toe-in +, deg",
      curves: bump,
    },
    text: "Toe over the travel, the steering held straight.",
  });
  return blocks;
}
