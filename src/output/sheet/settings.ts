import { wheelFigures } from "../../measures/figures.ts";
import { sideAt } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import { toe } from "../../measures/toe.ts";
import { acrossTyre } from "../../measures/worstToe.ts";
import { isAssumedAngle } from "../assumed.ts";
import { figureWords, written } from "../numbers.ts";
import { type PaperPart, tableOf, words } from "../paper/paper.ts";
import { toeWay } from "../words.ts";
import { type Writing, wheels } from "./writing.ts";

/** What is set, and what is read beside it, by the figures' ids. */
const ids = ["toe", "camber", "caster", "kpi", "scrubRadius", "trail"] as const;

/** How the wheels are to be set, with blanks for how they stand. */
export function settingsPart(study: Study, { unit, length }: Writing): PaperPart {
  const pose = study.ridePose(study.zero ?? study.straightAhead);
  const rows = ids.flatMap((id) => {
    const figure = wheelFigures.find((each) => each.id === id);
    if (figure === undefined) return [];
    const cells = wheels.map((wheel) => {
      const value = figure.read(pose, sideAt(wheel), study);
      const mark = isAssumedAngle(study.car, id, wheel) ? "~" : "";
      return mark + figureWords(value, figure.kind, unit, (mm) => `${written(mm, "length", unit)} ${unit}`);
    });
    const sign = figure.sign === "" ? "" : ` (${figure.sign})`;
    return [[`${figure.label}${sign}`, cells[0] ?? "-", null, cells[1] ?? "-", null]];
  });
  const total = wheels.reduce((sum, wheel) => sum + acrossTyre(toe(pose, sideAt(wheel)), study.tireRadius), 0);
  const size =
    unit === "in"
      ? `${length(Math.abs(total))} (${written(Math.abs(total), "length", unit)})`
      : length(Math.abs(total));
  const across = length(Math.abs(total)) === length(0) ? size : `${size} toe-${toeWay(total)}`;
  return {
    heading: "Set: alignment",
    blocks: [
      tableOf(["At ride height, wheels straight", "left", "read", "right", "read"], rows),
      tableOf(
        ["Both wheels", "", "read"],
        [
          ["Toe in all, across the tyres at the hubs' height", across, null],
          ["Hub centres above the ground", length(study.tireRadius), null],
        ],
        [0, 1],
      ),
      words("Ride height, tyre pressures and camber first, toe last."),
    ],
  };
}
