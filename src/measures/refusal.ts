import type { Refusal } from "../kinematics/front.ts";

/**
 * What is wrong with a drawing that is no mechanism, and the part of the file that draws it; the words go on from "the
 * left" or, for the steering, "the".
 */
const WORDS: Readonly<Record<Refusal["refused"], { readonly part: string; readonly words: string }>> = {
  "lower-arm-has-no-axis": {
    part: "lower-arm",
    words: "lower arm's front and rear pivots are at one place, so it has no axis to turn about",
  },
  "upper-arm-has-no-axis": {
    part: "upper-arm",
    words: "upper arm's front and rear pivots are at one place, so it has no axis to turn about",
  },
  "lower-joint-on-its-axis": { part: "lower-arm", words: "lower joint lies on its arm's axis, so it cannot move" },
  "upper-joint-on-its-axis": { part: "upper-arm", words: "upper joint lies on its arm's axis, so it cannot move" },
  "joints-coincide": {
    part: "upper-arm",
    words: "lower and upper joints are at one place, so there is no steering axis",
  },
  "tie-rod-on-steering-axis": {
    part: "tie-rod",
    words: "tie rod's outer end lies on the steering axis, so the rod cannot turn the wheel",
  },
  "tie-rod-has-no-length": { part: "tie-rod", words: "tie rod's two ends are at one place, so the rod has no length" },
  "drawn-on-dead-point": {
    part: "tie-rod",
    words: "tie rod is drawn on its dead point: it points at the steering axis and cannot turn the wheel",
  },
  "arms-in-line": {
    part: "upper-arm",
    words: "upper arm is drawn in line with the upright, so which way they fold cannot be told",
  },
  "wheel-does-not-rise": { part: "wheel", words: "wheel does not go up or down as its arm turns, so it has no travel" },
  "beam-has-no-axis": {
    part: "beam",
    words: "beam's front and rear pivots are at one place, so it has no axis to turn about",
  },
  "king-pin-on-beam-axis": { part: "king-pin", words: "king pin lies on the beam's axis, so it cannot move" },
  "strut-has-no-axis": { part: "strut", words: "strut's two places are one, so it has no direction to slide along" },
  "top-mount-on-lower-joint": {
    part: "strut",
    words: "strut's top mount is at the lower joint, so there is no steering axis",
  },
  "eye-on-column-axis": {
    part: "steering-plate",
    words: "tie rod's inner end lies on the steering column's axis, so the plate cannot move it",
  },
  "pitman-has-no-axis": { part: "relay", words: "pitman arm has no axis to turn about" },
  "pitman-joint-on-its-axis": { part: "relay", words: "pitman arm's joint lies on its axis, so it cannot move" },
  "idler-has-no-axis": { part: "relay", words: "idler arm has no axis to turn about" },
  "idler-joint-on-its-axis": { part: "relay", words: "idler arm's joint lies on its axis, so it cannot move" },
  "centre-link-in-line": {
    part: "relay",
    words: "centre link is drawn in line with the idler arm, so which way they fold cannot be told",
  },
  "centre-link-along-shaft": {
    part: "relay",
    words: "centre link is drawn along the pitman arm's shaft, so it cannot carry the tie rods' ends: draw it across",
  },
  "centre-link-twists": {
    part: "relay",
    words: "centre link twists as it moves: make the pitman arm's and the idler arm's axes parallel",
  },
};

/** A refusal to a builder, in one sentence. */
export function refusalWords({ refused, wheel }: Refusal): string {
  return `The front end cannot work as drawn: the ${wheel === null ? "" : `${wheel} `}${WORDS[refused].words}.`;
}

/** Where the car file draws what is refused, as a path from its root. */
export function refusalPart({ refused, wheel }: Refusal): readonly string[] {
  const { part } = WORDS[refused];
  return wheel === null || part === "steering-plate" ? ["steering", part] : ["front", wheel, part];
}
