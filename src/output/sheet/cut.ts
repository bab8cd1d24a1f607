import { armLengths } from "../../measures/bench/armLengths.ts";
import type { Study } from "../../measures/study.ts";
import { type EndFit, threadsOf } from "../../measures/threads.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { limitOf } from "../../vehicle/sections/limits.ts";
import { written } from "../numbers.ts";
import { type Block, mind, type PaperPart, words } from "../paper/paper.ts";
import { fixed } from "../words.ts";
import { type SideRow, sideTable, type Writing, wheels } from "./writing.ts";

const NOT_GIVEN = "not given";

/** "3/4 in, wall 0.156 in": a tube of that body, as far as the file says. */
function tubeWords({ car }: Pick<Study, "car">, wheel: Wheel, body: string, { length, unit }: Writing): string {
  const diameter = car.sections.tubes?.[wheel]?.diameters[body] ?? null;
  const wall = car.sections.hardware?.walls?.[wheel]?.[body] ?? null;
  if (diameter === null && wall === null) return NOT_GIVEN;
  const thick = wall === null ? "wall not given" : `wall ${written(wall, "length", unit)} ${unit}`;
  return `${diameter === null ? "diameter not given" : length(diameter)}, ${thick}`;
}

/** "1/2-20 right-hand, tapped 1 3/16 in deep or more: 31/32 in of thread in (1.94 diameters)"; loud where that is too little. */
function endWords(study: Study, end: EndFit, { length }: Writing): string {
  const { thread, engagement, diameters, jamNutRoom } = end;
  // All of the thread that its nut leaves may come to be screwed in.
  const hole = thread.depth ?? engagement + Math.max(0, jamNutRoom);
  const fitting = thread.fitting === "tapped" ? `tapped ${length(hole)} deep or more` : thread.fitting;
  const least = limitOf(study.car.sections.limits, "engagement").broken;
  const little = diameters < least ? `, TOO LITTLE: ${fixed(least, 2)} diameters at least` : "";
  return `${thread.size.name} ${thread.hand}-hand, ${fitting}: ${length(engagement)} of thread in (${fixed(diameters, 2)} diameters${little})`;
}

function rodRows(study: Study, writing: Writing): readonly SideRow[] {
  const fits = { left: threadsOf(study, "left"), right: threadsOf(study, "right") };
  const { cut, length } = writing;
  const rows: readonly SideRow[] = [
    { label: "Eye to eye", of: (wheel) => cut(study.rodLengths[wheel]) },
    {
      label: "That length",
      of: (wheel) => (study.car.form.rods[wheel] === "fit" ? "fits the drawn toe" : "is the file's own, as cut"),
    },
    { label: "Tube", of: (wheel) => tubeWords(study, wheel, "tie-rod", writing) },
    {
      label: "Tube's length",
      of: (wheel) => {
        const { [wheel]: fit } = fits;
        return fit === null ? NOT_GIVEN : `${cut(fit.tube)}${fit.isCut ? ", as cut" : ""}`;
      },
    },
  ];
  if (fits.left === null && fits.right === null) return rows;
  const ends = ([0, 1] as const).map(
    (i): SideRow => ({
      label: i === 0 ? "Outer end" : "Inner end",
      of: (wheel) => {
        const { [wheel]: fit } = fits;
        return fit === null ? NOT_GIVEN : endWords(study, fit.ends[i], writing);
      },
    }),
  );
  const left: SideRow = {
    label: "Can still be turned",
    of: (wheel) => {
      const { [wheel]: fit } = fits;
      if (fit === null) return NOT_GIVEN;
      return fit.longer < 0
        ? `${length(-fit.longer)} TOO LONG for its threads`
        : fit.shorter < 0
          ? `${length(-fit.shorter)} TOO SHORT for its threads`
          : `${length(fit.longer)} longer, ${length(fit.shorter)} shorter`;
    },
  };
  return [...rows, ...ends, left];
}

function boltWords({ car }: Study, wheel: Wheel, end: "outer" | "inner"): string {
  return car.sections.hardware?.bolts?.[wheel]?.["tie-rod"]?.[end]?.name ?? NOT_GIVEN;
}

/** The tie rods: lengths, tubes, threads, bolts. */
export function rodPart(study: Study, writing: Writing): PaperPart {
  const donor = wheels.some((wheel) => threadsOf(study, wheel)?.ends.some(({ thread }) => thread.fitting === "donor"));
  const blocks: readonly Block[] = [
    sideTable("Tie rod", [
      ...rodRows(study, writing),
      { label: "Bolt, outer end", of: (wheel) => boltWords(study, wheel, "outer") },
      { label: "Bolt, inner end", of: (wheel) => boltWords(study, wheel, "inner") },
    ]),
    words("Eye to eye is from the middle of one ball to the middle of the other. A jam nut at every end, tight."),
    ...(donor
      ? [mind("Never weld, heat or bend the donor's forged inner rod: it would break without a sign. Thread only.")]
      : []),
  ];
  return { heading: "Cut: tie rods", blocks };
}

/** The arms between their pivots and joints; null where there are none. */
export function armPart(study: Study, writing: Writing): PaperPart | null {
  const both = { left: armLengths(study, "left"), right: armLengths(study, "right") };
  if (both.left.length === 0) return null;
  const arms = [...new Set(both.left.map(({ arm }) => arm))];
  const rows = arms.flatMap((arm): readonly SideRow[] => {
    const own = both.left.filter((each) => each.arm === arm);
    const label = own[0]?.label ?? arm;
    return [
      ...own.map(
        ({ from, to, square }): SideRow => ({
          label: `${label}: ${from} to ${to}${square ? ", seen from the side" : ""}`,
          of: (wheel) => {
            const found = both[wheel].find((each) => each.arm === arm && each.from === from && each.to === to);
            return found === undefined ? "-" : writing.cut(found.mm);
          },
        }),
      ),
      { label: `${label}: tube`, of: (wheel) => tubeWords(study, wheel, arm, writing) },
    ];
  });
  return {
    heading: "Cut: arms",
    blocks: [
      sideTable("Centre to centre", rows),
      words("Straight from centre to centre; what a joint or a bush takes up comes off the tube."),
    ],
  };
}
