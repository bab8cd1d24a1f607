import { type Study, studyOf } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import { readCar } from "../../vehicle/read.ts";
import { carFromSurvey } from "../../vehicle/survey/text.ts";
import type { Surveyed } from "./survey.ts";

/** A car of a survey, and the ids of the quantities that were assumed in it. */
export interface CarOfSurvey {
  readonly text: string;
  readonly car: Car;
  readonly study: Study;
  readonly assumed: readonly string[];
}

/** Why a survey makes no car, in a sentence, with the text that is none. */
export interface NoCarOfSurvey {
  readonly complaint: string;
  readonly text: string;
}

/** Whether a point's coordinate was measured: settled by readings of its own. */
export function knownIn({ points }: Pick<Surveyed, "points">): (point: number, axis: number) => boolean {
  const byPoint = new Map(points.map((each) => [each.point, each]));
  return (point, axis) => {
    const found = byPoint.get(point);
    return found !== undefined && !found.mirrored && typeof found.deviations[axis] === "number";
  };
}

/** The car that a survey's points and what else its sheet says make. `heads` are comments for the top of its file. */
export function carOfSurvey(surveyed: Surveyed, heads: readonly string[]): CarOfSurvey | NoCarOfSurvey {
  const { survey, places } = surveyed;
  const { text, assumed } = carFromSurvey(survey, places, knownIn(surveyed), heads);
  const car = readCar(text);
  if ("complaints" in car) {
    const [first] = car.complaints;
    return { complaint: `These points make no car. ${first?.part ?? ""}: ${first?.message ?? ""}.`, text };
  }
  const study = studyOf(car);
  if ("refused" in study) return { complaint: `These points make no car. ${study.refused}`, text };
  return { text, car, study, assumed };
}
