import type { Study } from "../../measures/study.ts";
import type { QuantityKind } from "../../vehicle/quantity.ts";
import type { Reading } from "../sensitivity/readings.ts";
import type { SetAgain } from "./built.ts";
import type { Count } from "./chance.ts";
import type { Bands } from "./curves.ts";
import type { Held } from "./held.ts";
import type { Judge } from "./judged.ts";
import type { LinearBand } from "./linear.ts";
import type { Spread } from "./sample.ts";

/** How many builds, from which seed: the same of both give the same result to the last bit. */
export interface Asked {
  readonly builds: number;
  readonly seed: number;
}

export const usually: Asked = { builds: 10_000, seed: 1 };

/** Sizes of one name, of one side or of both, and how much of a spread they carry: from 0 to 1. */
export interface Carrier {
  readonly pair: string;
  readonly label: string;
  readonly kind: QuantityKind;
  readonly sides: "both" | "left" | "right" | null;
  readonly tolerance: number;
  readonly share: number;
}

/** One figure over all builds. Of a worst value, its size. mm, rad, percent or rad/mm. */
export interface FigureSpread {
  readonly reading: Reading;
  /** Of the car without errors, set as every build is. */
  readonly set: number | null;
  readonly linear: LinearBand | null;
  readonly builds: Spread | null;
  /** Whether both bands tell the same; null where one of them is not there. */
  readonly alike: boolean | null;
}

/** A limit or a target, and how many builds meet it. */
export interface Chance {
  readonly judge: Judge;
  readonly set: number | null;
  /** True where the car misses even its limit as drawn: no jig helps, only another drawing. */
  readonly missedAsDrawn: boolean;
  readonly builds: Spread | null;
  /** Good, and not broken (of a target: not bad). */
  readonly aim: Count;
  readonly limit: Count;
  /** What carries its spread, the most first. */
  readonly carriers: readonly Carrier[];
}

/** What to hold more closely than the rest, and what that would bring: the same builds with those sizes twice as close. */
export interface Jig {
  /** The three that matter most for what is missed, the most first. */
  readonly carriers: readonly Carrier[];
  /** Of some builds, how many keep all that the car keeps as drawn; and how many once it is held so: null while that is not tried. */
  readonly before: Count;
  readonly after: Count | null;
}

/** What is known of the builds so far. */
export interface Tolerance {
  /** The car as its file says it, and without errors as every build is set. */
  readonly study: Study;
  readonly set: Study;
  readonly setAgain: SetAgain;
  readonly held: readonly Held[];
  readonly asked: Asked;
  /** Builds that were tried, and of those the ones that do not go together. */
  readonly tried: number;
  readonly apart: number;
  readonly figures: readonly FigureSpread[];
  readonly chances: readonly Chance[];
  /** Builds that meet all that every build is held against. */
  readonly all: { readonly aim: Count; readonly limit: Count };
  readonly jig: Jig | null;
  readonly bands: Bands;
  readonly done: boolean;
}

/** A car of which no build can be tried, and why, in a sentence. */
export interface NoTolerance {
  readonly refused: string;
}
