import { blameWords } from "../measures/blame.ts";
import type { Study } from "../measures/study.ts";
import { stopsWords } from "../output/lockWords.ts";
import {
  ackermannOf,
  bothEndsOneWay,
  bounce,
  inputOffMiddle,
  type Length,
  leastRodAngle,
  lockSaid,
  noTravelWords,
  outOfReach,
  rodLength,
  steersBackwards,
  travelPlace,
  unequalLocks,
  wildToe,
  worstToeAndCure,
} from "../output/words.ts";
import type { Wheel } from "../vehicle/car.ts";
import { adjustables, valueNow } from "./adjust.ts";
import { isStarting } from "./frontEnd.ts";
import { here, inputHere, inputName } from "./here.ts";
import { bareValue, cutSayer, sayer, unitWords } from "./lengths.ts";
import type { Model } from "./model.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/**
 * All that the bench shows as sentences for a screen reader, one a line, each whole in itself. Of what can be adjusted,
 * these lines.
 */
export function sentences(model: Model, lines = adjustables(model.bench.car)): readonly string[] {
  const { car, study } = model.bench;
  const length = sayer(model.display);
  const adjusted = lines.flatMap((line) => {
    const values = line.quantities.map((each) => bareValue(valueNow(model.bench, each), each, model.display));
    const [first = "-", second] = values;
    const guess = isStarting(car, line) ? ", a starting value" : "";
    const alike = second === undefined || second === first;
    return alike
      ? [`${line.label}: ${first}${guess}`]
      : wheels.map((wheel, index) => `${line.label}, ${wheel}: ${values[index]}${guess}`);
  });
  return [
    `Lengths are shown in ${unitWords(model.display)}`,
    ...adjusted,
    ...("refused" in study
      ? [study.refused.replace(/\.$/, "")]
      : [...numbers(study, length, cutSayer(model.display)), ...place(study, model, length)]),
  ].map((sentence) => `${sentence}.`);
}

function numbers(study: Study, length: Length, cut: ReturnType<typeof cutSayer>): readonly string[] {
  const { locks, worst } = study;
  const said = [
    steersBackwards(study),
    wildToe(study, " (c fits them)"),
    worst.blame === null ? null : `Warning: ${outOfReach(study, worst.blame, length)}`,
    ...wheels.map((wheel) => {
      const row = locks[wheel];
      if (row === null || row.blame !== null) return `${sideName(wheel)} lock: not known`;
      const words = [lockSaid(study, row, wheel), row.turn === wheel ? ackermannOf(row) : null];
      return `${sideName(wheel)} lock: ${words.filter((each) => each !== null).join("; Ackermann ")}`;
    }),
    capital(unequalLocks(locks)),
    capital(stopsWords(study)),
    capital(inputOffMiddle(study, length)),
    study.suspended ? null : capital(noTravelWords(study)),
    ...(study.suspended ? wheels : []).map((wheel) => {
      const toe = worst.toe[wheel];
      const words =
        toe === null
          ? "its bump steer is not known"
          : worstToeAndCure(toe, study.car.form.rods[wheel], study.innerEnds[wheel], length);
      return `${sideName(wheel)} wheel ${words}`;
    }),
    worst.bounce === null ? null : capital(bounce(worst.bounce, length)),
    study.suspended ? capital(bothEndsOneWay(study)) : null,
    ...wheels.map((wheel) => {
      const least = worst.rodAngle[wheel];
      return `${sideName(wheel)} rod to arm: ${least === null ? "not known" : leastRodAngle(study, least, length)}`;
    }),
    ...wheels.map((wheel) => `${sideName(wheel)} rod: ${rodLength(study, wheel, (mm) => cut(mm)[1])}`),
  ];
  return said.filter((each) => each !== null);
}

function place(study: Study, { place: at }: Model, length: Length): readonly string[] {
  const readings = here(study, at);
  const where = `${inputName(study)} ${inputHere(study, at.input, length)}; left wheel ${travelPlace(at.left, length)}, right wheel ${travelPlace(at.right, length)}`;
  if ("wheel" in readings) return [where, `This place is out of reach: the ${blameWords(readings, length)}`];
  return [where, ...readings.map(({ name, said }) => `${name} here: left ${said.left}, right ${said.right}`)];
}

function sideName(wheel: Wheel): string {
  return wheel === "left" ? "Left" : "Right";
}

function capital<Text extends string | null>(text: Text): Text | string {
  return text === null ? text : text.charAt(0).toUpperCase() + text.slice(1);
}
