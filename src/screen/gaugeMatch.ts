import type { MatchShown } from "../solve/match/shown.ts";
import { fileText, gaugeLines, readingsToMatch } from "./gauges.ts";
import type { GaugesOnBench, Model } from "./model.ts";
import type { View } from "./views/view.ts";
import { lateJob } from "./views/work.ts";

/** What a match is made of: the readings and the car. */
export function matchKey(model: Pick<Model, "bench">, { answers }: GaugesOnBench): string {
  const { car } = model.bench;
  return `match\0${fileText(car, answers, gaugeLines(model, answers))}\0${car.text}`;
}

/** What the match to the readings as they stand came to; null while that is not known. */
export function matchedHere(model: Model): MatchShown | null {
  const { gauges } = model;
  return gauges?.matched?.key === undefined || gauges.matched.key !== matchKey(model, gauges)
    ? null
    : gauges.matched.shown;
}

/** The match as long work, while its page is seen and it is not known. */
export function matchWork(model: Model): ReturnType<NonNullable<View["work"]>> {
  const { gauges } = model;
  const { study } = model.bench;
  if (gauges === null || "refused" in study || matchedHere(model) !== null) return null;
  const readings = readingsToMatch(model, gauges.answers);
  if ("complaint" in readings) return null;
  return {
    key: matchKey(model, gauges),
    job: () =>
      lateJob(async () => {
        const { shownJob } = await import("../solve/match/shown.ts");
        return shownJob(study, readings);
      }),
  };
}

/** The model with a match that has come to its end. */
export function withMatched(model: Model): Model {
  const { gauges, work } = model;
  if (gauges === null || work?.state !== "done" || work.key !== matchKey(model, gauges)) return model;
  const shown = work.result as MatchShown | null;
  return shown === null ? model : { ...model, gauges: { ...gauges, matched: { key: work.key, shown } } };
}
