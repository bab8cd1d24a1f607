import type { Refusal } from "../kinematics/front.ts";

/** What is wrong with a drawing that is no mechanism; the words go on from "the left" or, for the steering, "the". */
const WORDS: Readonly<Record<Refusal["refused"], string>> = {
  "lower-arm-has-no-axis": "lower arm's front and rear pivots are at one place, so it has no axis to turn about",
  "upper-arm-has-no-axis": "upper arm's front and rear pivots are at one place, so it has no axis to turn about",
  "lower-joint-on-its-axis": "lower joint lies on its arm's axis, so it cannot move",
  "upper-joint-on-its-axis": "upper joint lies on its arm's axis, so it cannot move",
  "joints-coincide": "lower and upper joints are at one place, so there is no steering axis",
  "tie-rod-on-steering-axis": "tie rod's outer end lies on the steering axis, so the rod cannot turn the wheel",
  "tie-rod-has-no-length": "tie rod's two ends are at one place, so the rod has no length",
  "drawn-on-dead-point": "tie rod is drawn on its dead point: it points at the steering axis and cannot turn the wheel",
  "arms-in-line": "upper arm is drawn in line with the upright, so which way they fold cannot be told",
  "wheel-does-not-rise": "wheel does not go up or down as its arm turns, so it has no travel",
  "beam-has-no-axis": "beam's front and rear pivots are at one place, so it has no axis to turn about",
  "king-pin-on-beam-axis": "king pin lies on the beam's axis, so it cannot move",
  "strut-has-no-axis": "strut's two places are one, so it has no direction to slide along",
  "top-mount-on-lower-joint": "strut's top mount is at the lower joint, so there is no steering axis",
  "eye-on-column-axis": "tie rod's inner end lies on the steering column's axis, so the plate cannot move it",
  "pitman-has-no-axis": "pitman arm has no axis to turn about",
  "pitman-joint-on-its-axis": "pitman arm's joint lies on its axis, so it cannot move",
  "idler-has-no-axis": "idler arm has no axis to turn about",
  "idler-joint-on-its-axis": "idler arm's joint lies on its axis, so it cannot move",
  "centre-link-in-line": "centre link is drawn in line with the idler arm, so which way they fold cannot be told",
  "centre-link-twists": "centre link twists as it moves: make the pitman arm's and the idler arm's axes parallel",
};

/** A refusal to a builder, in one sentence. */
export function refusalWords({ refused, wheel }: Refusal): string {
  return `The front end cannot work as drawn: the ${wheel === null ? "" : `${wheel} `}${WORDS[refused]}.`;
}
