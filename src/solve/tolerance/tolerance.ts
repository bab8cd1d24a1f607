import type { Study } from "../../measures/study.ts";
import type { QuantityKind } from "../../vehicle/quantity.ts";
import { type Job, jobOf, type Piece } from "../job.ts";
import { type Reading, readings } from "../sensitivity/readings.ts";
import { type Build, buildOf, type SetAgain, setAgainOn } from "./built.ts";
import { type Count, counted } from "./chance.ts";
import { type Bands, type Curves, curvesOf } from "./curves.ts";
import { type Drawn, errorsFrom } from "./errors.ts";
import { type Held, heldOf } from "./held.ts";
import { type Judge, judgesOf, meets } from "./judged.ts";
import { alike, comparedOf, type Effects, effectsOf, type LinearBand, linearBand } from "./linear.ts";
import { newSample, put, type Sample, type Spread, spreadOf } from "./sample.ts";
import { classOf, shareOf, varianceOf } from "./shares.ts";

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

/** What takes long to read is read of no more builds than about this many. */
const DEAR_BUILDS = 250;

/** Builds that are tried again with what matters most held twice as closely. */
const JIG_BUILDS = 2000;
const JIGGED = 3;
/** How many times as closely. */
const TIGHTER = 2;

/** Whether a build meets every aim, every limit, and all that the car keeps as drawn, of what every build is held against. */
interface Verdict {
  readonly aim: boolean;
  readonly limit: boolean;
  readonly kept: boolean;
}

const failed: Verdict = { aim: false, limit: false, kept: false };

/** The tighter end that the car keeps as drawn, its aim or its limit; null where it misses both: then no jig helps. */
function keptOf(judge: Judge, set: number | null): number | null {
  if (meets(judge, set, judge.aim)) return judge.aim;
  return meets(judge, set, judge.limit) ? judge.limit : null;
}

type Judging = (values: readonly (number | null)[]) => Verdict;

/** How builds are judged beside the car as drawn, by what judges read of each. */
function judging(judges: readonly Judge[], set: Study): Judging {
  const always = judges.flatMap((judge, i) => (judge.dear ? [] : [{ judge, i, kept: keptOf(judge, judge.read(set)) }]));
  return (values) => ({
    aim: always.every(({ judge, i }) => meets(judge, values[i], judge.aim)),
    limit: always.every(({ judge, i }) => meets(judge, values[i], judge.limit)),
    kept: always.every(({ judge, i, kept }) => kept === null || meets(judge, values[i], kept)),
  });
}

function share(verdicts: readonly Verdict[], which: keyof Verdict): Count {
  return counted(verdicts.filter((each) => each[which]).length, verdicts.length);
}

/** All that is noted of builds while they are tried. */
interface Notes {
  readonly judges: readonly Judge[];
  readonly verdict: Judging;
  readonly figures: readonly Sample[];
  readonly values: readonly Sample[];
  /** Which builds each judge looked at. */
  readonly looked: readonly Uint8Array[];
  /** By size: the class of its error in each build. */
  readonly classes: readonly Uint8Array[];
  readonly verdicts: Verdict[];
  readonly curves: Curves;
  apart: number;
}

function note(notes: Notes, build: number, { shares }: Drawn, study: Study | null, withDear: boolean): void {
  const { judges, figures, values, looked, classes, curves } = notes;
  for (const [i, of] of classes.entries()) of[build] = classOf(shares[i]);
  const judged = judges.map((judge, i) => {
    if (judge.dear && !withDear) return null;
    looked[i][build] = 1;
    return study === null ? null : judge.read(study);
  });
  for (const [i, value] of judged.entries()) put(values[i], build, value);
  notes.verdicts.push(study === null ? failed : notes.verdict(judged));
  if (study === null) {
    notes.apart++;
    return;
  }
  for (const [i, reading] of readings.entries()) put(figures[i], build, reading.read(study));
  curves.note(study, build);
}

/** What carries the spread of some samples together, by name: the shares of both sides added, weighed by variance. */
function carriersOf(
  samples: readonly Sample[],
  { classes, verdicts }: Pick<Notes, "classes" | "verdicts">,
  held: readonly Held[],
): readonly Carrier[] {
  const count = verdicts.length;
  const variances = samples.map((sample) => varianceOf(sample, count));
  const whole = variances.reduce((sum, each) => sum + each, 0);
  if (whole === 0) return [];
  const found = new Map<string, Carrier>();
  for (const [i, { quantity, tolerance }] of held.entries()) {
    if (tolerance === 0) continue;
    const { pair, label, kind, wheel } = quantity;
    const share = samples.reduce(
      (sum, sample, s) => sum + (variances[s] / whole) * (shareOf(sample, count, classes[i]) ?? 0),
      0,
    );
    const other = found.get(pair);
    found.set(pair, {
      pair,
      label,
      kind,
      tolerance,
      sides: other === undefined ? wheel : "both",
      share: share + (other?.share ?? 0),
    });
  }
  return [...found.values()]
    .map((each) => ({ ...each, share: Math.min(1, Math.max(0, each.share)) }))
    .sort((a, b) => b.share - a.share);
}

/** What the carriers of all that is judged come to, each judge weighed by how often what the car keeps as drawn is missed. */
function overall(chances: readonly Chance[]): readonly Carrier[] {
  const missed = ({ judge, set, aim, limit }: Chance) => {
    const end = keptOf(judge, set);
    if (end === null || aim.of === 0) return 0;
    return 1 - (end === judge.aim ? aim : limit).met / aim.of;
  };
  const counted = chances.filter(({ carriers }) => carriers.length > 0);
  const whole = counted.reduce((sum, chance) => sum + missed(chance), 0);
  if (whole === 0) return [];
  const found = new Map<string, Carrier>();
  for (const chance of counted)
    for (const carrier of chance.carriers) {
      const share = (missed(chance) / whole) * carrier.share + (found.get(carrier.pair)?.share ?? 0);
      found.set(carrier.pair, { ...carrier, share });
    }
  return [...found.values()].sort((a, b) => b.share - a.share).slice(0, JIGGED);
}

/** Less than this is no matter for a figure, mm, rad, percent or rad/mm: a reader would not see it. */
const nothing: Readonly<Record<Reading["kind"], number>> = {
  length: 0.01,
  angle: 1e-4,
  percent: 0.05,
  "angle-per-length": 1e-6,
};

function figureSpread(reading: Reading, set: Study, effects: Effects | null, sample: Sample, count: number, i: number) {
  const now = comparedOf(reading, set);
  const linear = effects === null ? null : linearBand(now, effects[i]);
  const builds = spreadOf(sample, count, reading.bySize);
  return {
    reading,
    set: now,
    linear,
    builds,
    alike: linear === null || builds === null ? null : alike(linear, builds, nothing[reading.kind]),
  };
}

function chanceOf(judge: Judge, i: number, notes: Notes, set: Study, held: readonly Held[]): Chance {
  const count = notes.verdicts.length;
  const { [i]: sample } = notes.values;
  const { [i]: looked } = notes.looked;
  const met = (end: number): Count => {
    let [yes, of] = [0, 0];
    for (let build = 0; build < count; build++) {
      if (looked[build] === 0) continue;
      of++;
      if (sample.told[build] === 1 && meets(judge, sample.values[build], end)) yes++;
    }
    return counted(yes, of);
  };
  const own = readings.flatMap(({ id }, r) => (judge.figures.includes(id) ? [notes.figures[r]] : []));
  const asDrawn = judge.read(set);
  return {
    judge,
    set: asDrawn,
    missedAsDrawn: keptOf(judge, asDrawn) === null,
    builds: spreadOf(sample, count),
    aim: met(judge.aim),
    limit: met(judge.limit),
    carriers: carriersOf(own.length > 0 ? own : [sample], notes, held),
  };
}

/** Everything of a run but its notes. */
interface Run {
  readonly study: Study;
  readonly set: Study;
  readonly held: readonly Held[];
  readonly asked: Asked;
}

function told(run: Run, notes: Notes, effects: Effects | null, after: Jig["after"], done: boolean): Tolerance {
  const { study, set, held, asked } = run;
  const count = notes.verdicts.length;
  const chances = notes.judges.map((judge, i) => chanceOf(judge, i, notes, set, held));
  const carriers = overall(chances);
  return {
    study,
    set,
    setAgain: setAgainOn(study.car),
    held,
    asked,
    tried: count,
    apart: notes.apart,
    figures: readings.map((reading, i) => figureSpread(reading, set, effects, notes.figures[i], count, i)),
    chances,
    all: { aim: share(notes.verdicts, "aim"), limit: share(notes.verdicts, "limit") },
    jig: carriers.length === 0 ? null : { carriers, before: share(notes.verdicts.slice(0, JIG_BUILDS), "kept"), after },
    bands: notes.curves.bands(count),
    done,
  };
}

function newNotes(set: Study, held: readonly Held[], builds: number): Notes {
  const judges = judgesOf(set);
  return {
    judges,
    verdict: judging(judges, set),
    figures: readings.map(() => newSample(builds)),
    values: judges.map(() => newSample(builds)),
    looked: judges.map(() => new Uint8Array(builds)),
    classes: held.map(() => new Uint8Array(builds)),
    verdicts: [],
    curves: curvesOf(set, builds),
    apart: 0,
  };
}

/** What part of all the work each stage is, by builds. */
function* pieces(run: Run, build: Build): Generator<Piece<() => Tolerance>, void, void> {
  const { set, held, asked } = run;
  const { builds, seed } = asked;
  const notes = newNotes(set, held, builds);
  const again = Math.min(builds, JIG_BUILDS);
  const all = 2 * held.length + builds + again;
  let last = () => told(run, notes, null, null, false);
  const slopes = effectsOf(build, held);
  let slope = slopes.next();
  for (; !slope.done; slope = slopes.next()) yield { progress: (slope.value * 2 * held.length) / all, best: last };
  const { value: effects } = slope;
  const every = Math.max(1, Math.floor(builds / DEAR_BUILDS));
  const next = errorsFrom(seed, held);
  last = () => told(run, notes, effects, null, false);
  for (let i = 0; i < builds; i++) {
    const drawn = next();
    note(notes, i, drawn, build(drawn.errors), i % every === 0);
    yield { progress: (2 * held.length + i + 1) / all, best: last };
  }
  const { jig } = last();
  if (jig !== null) {
    const names = new Set(jig.carriers.map(({ pair }) => pair));
    const closer = errorsFrom(seed, held, ({ quantity }) => (names.has(quantity.pair) ? TIGHTER : 1));
    const verdicts: Verdict[] = [];
    for (let i = 0; i < again; i++) {
      const built = build(closer().errors);
      const values = notes.judges.map((judge) => (judge.dear || built === null ? null : judge.read(built)));
      verdicts.push(built === null ? failed : notes.verdict(values));
      yield { progress: (2 * held.length + builds + i + 1) / all, best: last };
    }
    last = () => told(run, notes, effects, share(verdicts, "kept"), true);
  } else last = () => told(run, notes, effects, null, true);
  const whole = last();
  yield { progress: 1, best: () => whole };
}

/**
 * Tries out how a car comes out when every size is built to its tolerance and what can be set is set again: straight lines
 * first, then so many builds, then the same with what matters most held twice as closely. A piece is one size, or one build;
 * its best is what the builds so far say. Refused where the car cannot even be set without errors.
 */
export function toleranceJob(study: Study, asked: Asked = usually): Job<Tolerance> | NoTolerance {
  const held = heldOf(study.car);
  const build = buildOf(study, held);
  const set = build(new Float64Array(held.length));
  if (set === null)
    return {
      refused: "The front end does not go together once its wheels are set to the drawn toe, camber and caster.",
    };
  const run: Run = { study, set, held, asked };
  const job = jobOf<() => Tolerance>(() => told(run, newNotes(set, held, 0), null, null, false), pieces(run, build));
  let known: { readonly of: () => Tolerance; readonly at: number; readonly value: Tolerance } | null = null;
  return {
    ...job,
    best: () => {
      const of = job.best();
      const at = job.progress();
      if (known === null || known.of !== of || known.at !== at) known = { of, at, value: of() };
      return known.value;
    },
  };
}
