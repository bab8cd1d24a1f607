import type { Bent } from "../solve/survey/bent.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { formatLength, type LengthStyle } from "../vehicle/units/format.ts";
import type { Json } from "./json.ts";
import { inUnits } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { cautions } from "./words.ts";

/** What the diagonals say, in sentences. */
export function bentWords({ diagonals, moved, corner }: Bent): readonly string[] {
  const missing = diagonals.filter(({ now }) => now === null).length;
  const read = diagonals.length - missing;
  const more =
    missing === 0 ? [] : [`${missing} of the six were not read: read them too, or a place that moved may not show.`];
  if (read === 0) return ["None of the six diagonals is on the sheet: read those above."];
  if (moved.length === 0)
    return [
      `No diagonal differs by more than two tapes can: by ${missing === 0 ? "these" : "those read"} the front stands as it was built.`,
      ...more,
    ];
  const sets = moved.map((places) => places.join(" and "));
  const [first = "", ...others] = sets;
  const where = corner === null ? "" : ` The ${corner} corner has moved.`;
  const what =
    others.length === 0
      ? `What changed is explained by ${first} alone being elsewhere than it was built.`
      : `What changed is explained by one of these being elsewhere than it was built: ${sets.slice(0, 4).join("; or ")}${sets.length > 4 ? "; or others" : ""}.`;
  return [
    `THE FRONT IS NOT AS IT WAS BUILT.${where} ${what} Look there for a bent arm, bracket or frame tube, and measure the whole sheet again.`,
    ...more,
  ];
}

/** The diagonals as text. */
export function bentText(title: string, bent: Bent, unit: LengthUnit): readonly string[] {
  const style: LengthStyle = unit === "in" ? { unit, decimals: 2 } : { unit };
  const say = (mm: number) => formatLength(mm, style);
  const rows = bent.diagonals.map(({ ends, built, now, changed }) => [
    changed ? "!" : "",
    ends.join(" to "),
    say(built),
    now === null ? "-" : say(now),
    now === null ? "-" : say(now - built),
  ]);
  return [
    `The six diagonals of the front, ${unit}, against ${title} as built; longer is positive`,
    "",
    ...table([["", "diagonal", "built", "now", "change"]], rows, [0, 1]),
    "",
    ...bentWords(bent).flatMap((words) => wrap(words, WIDTH)),
    "",
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

export function bentJson(bent: Bent, unit: LengthUnit): Json {
  const told = (mm: number | null) => (mm === null ? null : inUnits(mm, "length", unit));
  return {
    units: { length: unit, angle: "deg" },
    diagonals: bent.diagonals.map(({ ends, built, now, changed }) => ({
      ends: [...ends],
      built: told(built),
      now: told(now),
      change: now === null ? null : told(now - built),
      changed,
    })),
    moved: bent.moved.map((places) => [...places]),
    corner: bent.corner,
  };
}
