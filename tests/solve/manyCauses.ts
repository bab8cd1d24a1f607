import fc from "fast-check";
import { parse, stringify } from "yaml";
import { lockSharesOf } from "../../src/measures/lockShares.ts";
import type { Study } from "../../src/measures/study.ts";
import { studyOf } from "../../src/measures/study.ts";
import { remediesFor } from "../../src/solve/remedies/remedies.ts";
import { notAsked } from "../../src/solve/remedies/remedy.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { between, built, plausible, textOf } from "../measures/plausibleCars.ts";

/** A car whose locks differ for several causes at once, as a builder's file that was read by a general YAML library. */
type File = {
  front: { [side in "both" | "left" | "right"]?: { "tie-rod"?: { outer?: Record<string, number>; length?: number } } };
  steering: { rack: Record<string, unknown> };
  stops?: { collar?: Record<"left" | "right", number> };
};

const causes = fc.record({
  plausible,
  rods: fc.option(fc.tuple(between(-4, 4), between(-4, 4))),
  tab: fc.option(fc.tuple(between(-6, 6), between(-6, 6))),
  stops: fc.option(between(0.85, 1)),
  collar: fc.option(fc.tuple(between(0, 4), between(0, 4))),
});

function studyIn(text: string): Study | null {
  const car = readCar(text);
  if ("complaints" in car) return null;
  const study = studyOf(car);
  return "refused" in study ? null : study;
}

/** Random cars with some of: rack off its middle, offset, rods cut wrong, tabs unlike, stops unlike, a collar at each end. */
export function manyCauses(runs: number, seed: number): readonly { readonly file: File; readonly study: Study }[] {
  return fc.sample(causes, { numRuns: runs, seed }).flatMap((each) => {
    const whole = built(each.plausible);
    if (whole === null) return [];
    const file = parse(textOf(each.plausible)) as File;
    const { rack } = file.steering;
    const outer = file.front.both?.["tie-rod"]?.outer;
    if (each.tab !== null && outer !== undefined)
      file.front.right = {
        "tie-rod": { outer: { ahead: (outer.ahead ?? 0) + each.tab[0], out: (outer.out ?? 0) + each.tab[1] } },
      };
    if (each.rods !== null)
      for (const [i, side] of (["left", "right"] as const).entries()) {
        const rod = file.front[side]?.["tie-rod"] ?? {};
        file.front[side] = { "tie-rod": { ...rod, length: whole.rodLengths[side] + (each.rods[i] ?? 0) } };
      }
    if (each.stops !== null) rack.travel = { left: each.plausible.travel, right: each.plausible.travel * each.stops };
    if (each.collar !== null) file.stops = { collar: { left: each.collar[0], right: each.collar[1] } };
    const study = studyIn(stringify(file));
    return study === null ? [] : [{ file, study }];
  });
}

const measures = ["inner", "outer", "turnRadius"] as const;

/** How far the shares of each difference are from adding up to it, rad or mm, and how many causes there are. */
export function sharesOff(study: Study) {
  const { shares, difference } = lockSharesOf(study);
  const off = measures.flatMap((measure) => {
    const whole = difference[measure];
    const parts = shares.map((share) => share[measure]);
    if (whole === null || parts.some((part) => part === null)) return [];
    return [{ measure, whole, off: Math.abs(parts.reduce<number>((so, part) => so + (part ?? 0), 0) - whole) }];
  });
  return { off, causes: shares.filter(({ cause }) => cause !== "rest").length };
}

/** The file with a remedy done by hand; what a remedy searched for is read from the file that it writes. */
function byHand(file: File, key: string, written: File): File {
  const mine = structuredClone(file);
  const { rack } = mine.steering;
  const found = written.steering.rack;
  const refit = () => {
    for (const side of ["left", "right"] as const) delete mine.front[side]?.["tie-rod"]?.length;
  };
  const apart = 2 * Math.abs(Number(rack.offset));
  if (key === "collar") {
    mine.stops = written.stops ?? {};
    return mine;
  }
  refit();
  if (key === "off-middle" || key === "off-middle-circles") rack["straight-ahead"] = found["straight-ahead"];
  else rack["straight-ahead"] = 0;
  if (key === "shift" || key === "extender" || key === "bracket") rack.offset = 0;
  if (key === "shift-half") rack.offset = Number(file.steering.rack.offset) / 2;
  if (key === "extender") rack["eye-to-eye"] = Number(rack["eye-to-eye"]) + apart;
  if (key === "bracket") rack["eye-to-eye"] = Number(rack["eye-to-eye"]) - apart;
  if (key === "tab")
    for (const side of ["left", "right"] as const) {
      const outer = written.front[side]?.["tie-rod"]?.outer;
      if (outer !== undefined) mine.front[side] = { ...mine.front[side], "tie-rod": { outer } };
    }
  return mine;
}

/** Each remedy's file beside the same remedy by hand: the worst that their locks are apart, rad; null where one does not stand. */
export function remediesOff({ file, study }: { readonly file: File; readonly study: Study }) {
  return remediesFor(study, notAsked).offered.map(({ key, text }) => {
    const theirs = studyIn(text);
    const mine = studyIn(stringify(byHand(file, key, parse(text) as File)));
    const ends = (["left", "right"] as const).flatMap((side) =>
      (["inner", "outer"] as const).map((wheel) => {
        const [a, b] = [theirs?.locks[side]?.[wheel] ?? null, mine?.locks[side]?.[wheel] ?? null];
        return a === null || b === null ? Number.POSITIVE_INFINITY : Math.abs(a - b);
      }),
    );
    return { key, off: Math.max(...ends) };
  });
}
