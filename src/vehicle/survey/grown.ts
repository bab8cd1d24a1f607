import { pointsOf, type SurveyForm } from "./points.ts";
import type { Kind } from "./readings.ts";

/** What the short list of readings says already of a survey's, as it is written there. */
export interface Grown {
  readonly title?: string;
  /** By kind, then by the points' names as a sheet names them. */
  readonly readings: Readonly<Partial<Record<Kind, Readonly<Record<string, string>>>>>;
  /** By the path in the car file, with full stops. */
  readonly car: Readonly<Record<string, string>>;
}

const bySide = ["left", "right"] as const;

/** A corner's points by the short list's keys, which are read of one side and hold for both. */
const heights: Readonly<Record<string, string>> = {
  "hub-height": "wheel.center",
  "tab-height": "tie-rod.outer",
  "eye-height": "eye",
  "lower-joint-height": "lower-arm.joint",
  "upper-joint-height": "upper-arm.joint",
};
const outs: Readonly<Record<string, string>> = {
  "lower-joint-out": "lower-arm.joint",
  "upper-joint-out": "upper-arm.joint",
};
const cars: Readonly<Record<string, string>> = {
  wheelbase: "wheelbase",
  "hub-height": "tire.radius",
  "tyre-width": "tire.width",
  bump: "wheel-travel.bump",
  droop: "wheel-travel.droop",
};

/**
 * The readings of a short list as readings of a survey of that front end: those that are of points, and what the car file
 * needs beside them. What is read from king-pin lines, and pivots that stand for two, has no place in a survey and is left out.
 */
export function grownFrom(answers: Readonly<Record<string, string>>, form: SurveyForm): Grown {
  const names = new Set(pointsOf(form).map(({ name }) => name));
  const both = (from: Readonly<Record<string, string>>) =>
    Object.entries(from).flatMap(([key, point]) => bySide.map((side) => [`${side} ${point}`, answers[key]] as const));
  const eyes = bySide.map((side) => [`${side} eye`, answers[`${side}-eye`]] as const);
  const ahead = bySide.map((side) => [`${side} tie-rod.outer from ${side} eye`, answers["eye-behind"]] as const);
  const known = (read: readonly (readonly [string, string | undefined])[]) =>
    Object.fromEntries(
      read.flatMap(([name, text]) =>
        text !== undefined && name.split(" from ").every((each) => names.has(each)) ? [[name, text]] : [],
      ),
    );
  return {
    ...(answers.title === undefined ? {} : { title: answers.title }),
    readings: { height: known(both(heights)), out: known([...both(outs), ...eyes]), ahead: known(ahead) },
    car: Object.fromEntries(
      Object.entries(cars).flatMap(([key, path]) => {
        const { [key]: text } = answers;
        return text === undefined ? [] : [[path, text]];
      }),
    ),
  };
}
