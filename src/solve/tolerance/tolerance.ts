import type { Study } from "../../measures/study.ts";
import { type Job, jobOf, type Piece } from "../job.ts";
import { type Reading, readings } from "../sensitivity/readings.ts";
import { type Build, buildOf, setAgainOn } from "./built.ts";
import { carriersOf, overall } from "./carriers.ts";
import { type Count, counted } from "./chance.ts";
import { errorsFrom } from "./errors.ts";
import { type Held, heldOf } from "./held.ts";
import { type Judge, meets } from "./judged.ts";
import { alike, comparedOf, type Effects, effectsOf, linearBand } from "./linear.ts";
import { type Notes, newNotes, note } from "./notes.ts";
import { type Asked, type Chance, type Jig, type NoTolerance, type Tolerance, usually } from "./result.ts";
import { type Sample, spreadOf } from "./sample.ts";
import { failed, keptOf, type Verdict } from "./verdict.ts";

function share(verdicts: readonly Verdict[], which: keyof Verdict): Count {
  return counted(verdicts.filter((each) => each[which]).length, verdicts.length);
}

/** What takes long to read is read of no more builds than about this many. */
const DEAR_BUILDS = 250;

/** Builds that are tried again with what matters most held twice as closely. */
const JIG_BUILDS = 2000;
/** How many times as closely. */
const TIGHTER = 2;

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
    carriers: carriersOf(own.length > 0 ? own : [sample], { count, classes: notes.classes }, held),
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
