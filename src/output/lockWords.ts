import type { LockShare } from "../measures/lockShares.ts";
import type { Stop } from "../measures/stops.ts";
import type { Study } from "../measures/study.ts";
import { threadsOf } from "../measures/threads.ts";
import type { Wheel } from "../vehicle/car.ts";
import { degrees, fixed, type Length } from "./words.ts";

function side(size: number): string {
  return size > 0 ? "left" : "right";
}

/** "rack offset, 2 1/2 in to the right": a cause of unequal locks and how large it is. */
export function causeWords(study: Study, { cause, size }: LockShare, length: Length): string {
  const input = study.inputKind;
  const far = (value: number) => length(Math.abs(value));
  switch (cause) {
    case "rack off its middle": {
      const off = input === "rack" ? far(size ?? 0) : degrees(Math.abs(size ?? 0));
      return `${input} set ${off} ${side(size ?? 0)} of its middle`;
    }
    case "offset":
      return `${input === "rack" ? "rack" : "inner eyes"} offset ${far(size ?? 0)} to the ${side(size ?? 0)}`;
    case "unequal tabs":
      return `tabs unlike by ${far(size ?? 0)}`;
    case "unequal stops":
      return "unequal stops";
    case "unequal rods":
      return rodsWords(study, length);
    case "rest":
      return "all else that is unlike";
  }
}

/** What wrongly cut rods do: they take straight ahead away from where it was meant to be. */
function rodsWords(study: Study, length: Length): string {
  if (study.zero === null) return "rods cut unequally";
  const off = study.zero - study.straightAhead;
  const far = study.inputKind === "rack" ? length(Math.abs(off)) : degrees(Math.abs(off));
  return `rods cut wrong: ${study.inputKind} ${far} ${side(off)}`;
}

const stopNames: Readonly<Record<Exclude<Stop["kind"], "end">, string>> = {
  collar: "a collar on the rack",
  upright: "upright stop",
  tyreRub: "tyre rubs",
};

/** What ends a lock: "the rack's end", "a collar on the rack", "the left upright stop", "the right tyre rubs". */
export function stopWords(study: Study, lock: Wheel): string | null {
  if (study.inputLeftTurns === null) return null;
  const end: Wheel = study.inputLeftTurns === "left" ? lock : lock === "left" ? "right" : "left";
  const { kind, wheel } = study.acting[end];
  if (kind === "end") return `the ${study.inputKind}'s own end`;
  return wheel === null ? stopNames[kind] : `the ${wheel} ${stopNames[kind]}`;
}

/** Both locks at once; null while nothing but the steering's own ends stops them. */
export function stopsWords(study: Study): string | null {
  if (study.acting.left.kind === "end" && study.acting.right.kind === "end") return null;
  return `left lock ended by ${stopWords(study, "left")}, right lock by ${stopWords(study, "right")}`;
}

function threadOf(study: Study, wheel: Wheel, length: Length): string | null {
  const fit = threadsOf(study, wheel);
  if (fit === null) return null;
  if (!fit.isCut) return `${wheel} tube to be cut to ${length(fit.tube)}`;
  if (fit.longer < 0) return `${wheel} tube ${length(-fit.longer)} TOO SHORT, make a new one`;
  if (fit.shorter < 0) return `${wheel} tube ${length(-fit.shorter)} too long, shorten it`;
  const held = Math.min(...fit.ends.map(({ diameters }) => diameters));
  return `${wheel} tube stays, ${fixed(held, 1)} diameters of thread held`;
}

/** What the rods' lengths ask of their tubes and threads; null where the file says nothing of those. */
export function threadWords(study: Study, length: Length): string | null {
  const said = (["left", "right"] as const).flatMap((wheel) => threadOf(study, wheel, length) ?? []);
  return said.length === 0 ? null : `Threads: ${said.join("; ")}.`;
}
