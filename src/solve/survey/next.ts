import { readingName, type SurveyReading } from "../../vehicle/survey/readings.ts";
import type { Survey } from "../../vehicle/survey/survey.ts";
import type { Confidence } from "../least-squares/confidence.ts";
import { type Next, nextReading } from "../least-squares/nextReading.ts";
import { dot } from "../least-squares/row.ts";
import { computed } from "./computed.ts";
import { outwardOf } from "./equations.ts";
import type { Surveyed } from "./survey.ts";
import type { Unknowns } from "./unknowns.ts";

/** A reading that is worth taking, and what it does. */
export interface NextReading {
  readonly kind: SurveyReading["kind"];
  readonly points: readonly number[];
  readonly name: string;
  /** True where it settles what nothing did; else it makes what is known a little better known. */
  readonly settles: boolean;
  /**
   * One standard deviation of all coordinates together (root mean square) before and after it, mm; null where it settles
   * something new.
   */
  readonly spread: { readonly before: number; readonly after: number } | null;
}

type Candidate = Pick<SurveyReading, "kind" | "points">;

/** Every reading that could be taken of the points that there are: a tape between two, and each one's place by itself. */
function candidatesOf({ survey, unknowns }: Surveyed): readonly Candidate[] {
  const key = ({ kind, points }: Candidate) => `${kind} ${[...points].sort((a, b) => a - b)}`;
  const taken = new Set(survey.readings.map(key));
  const { points } = unknowns;
  const single = points.flatMap((point) =>
    (["height", "out", "ahead"] as const).map((kind) => ({ kind, points: [point] })),
  );
  const double = points.flatMap((one, i) =>
    points.slice(i + 1).map((other) => ({ kind: "distance" as const, points: [one, other] })),
  );
  return [...single, ...double].filter((each) => !taken.has(key(each)));
}

/** The derivatives of a reading's misfit by the unknowns. */
function rowOf(survey: Survey, unknowns: Unknowns, places: Float64Array, candidate: Candidate): Float64Array {
  const partials = new Float64Array(9);
  computed(candidate, outwardOf(survey, candidate.points[0]), places, partials);
  const row = new Float64Array(unknowns.count);
  candidate.points.forEach((point, of) => {
    for (let axis = 0; axis < 3; axis++) {
      const unknown = unknowns.at[3 * point + axis];
      if (unknown >= 0)
        row[unknown] += (unknowns.sign[3 * point + axis] * partials[3 * of + axis]) / (survey.tolerance / 2);
    }
  });
  return row;
}

/**
 * The readings that settle most, the best first: as many as it takes to settle what nothing does (at most `most`), or, where
 * all is settled, the one that makes the points best known.
 */
export function nextReadings(surveyed: Surveyed, most = 6): readonly NextReading[] {
  const { survey, unknowns, places } = surveyed;
  const candidates = candidatesOf(surveyed);
  const rows = candidates.map((each) => rowOf(survey, unknowns, places, each));
  const found: NextReading[] = [];
  let confidence = surveyed.confidence;
  while (found.length < most) {
    const next = nextReading(confidence, rows);
    if (next === null || (found.length > 0 && next.gives !== "a new direction")) break;
    found.push(said(surveyed, candidates[next.candidate], next));
    if (next.gives !== "a new direction") break;
    confidence = settledAlong(confidence, rows[next.candidate]);
  }
  return found;
}

function said({ survey, confidence }: Surveyed, { kind, points }: Candidate, next: Next): NextReading {
  const name = readingName(
    kind,
    points.map((point) => survey.points[point].name),
  );
  const many = confidence.deviations.length;
  const spread =
    next.gives === "a new direction"
      ? null
      : { before: Math.sqrt(next.before / many), after: Math.sqrt(next.after / many) };
  return { kind, points, name, settles: next.gives === "a new direction", spread };
}

/** What is left loose once a reading with that row is taken: the loose moves without what of them it sees. */
function settledAlong(confidence: Confidence, row: Float64Array): Confidence {
  const seen = confidence.loose.map((move) => dot(row, move));
  const size = Math.hypot(...seen);
  const along = new Float64Array(row.length);
  confidence.loose.forEach((move, k) => {
    for (let j = 0; j < along.length; j++) along[j] += (seen[k] / size) * move[j];
  });
  const loose: Float64Array[] = [];
  for (const move of confidence.loose) {
    const left = [along, ...loose].reduce((rest, each) => {
      const share = dot(rest, each);
      return rest.map((value, j) => value - share * each[j]);
    }, move);
    const length = Math.hypot(...left);
    // As many moves are left as there were, less one: what is left of the last is rounding.
    if (length > 1e-6 && loose.length < confidence.loose.length - 1) loose.push(left.map((value) => value / length));
  }
  return { ...confidence, loose };
}
