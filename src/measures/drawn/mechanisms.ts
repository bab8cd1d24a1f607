import type { Mechanism, Point } from "../../kinematics/drawn.ts";
import type { Form } from "../../vehicle/car.ts";
import type { MechanismName } from "../../vehicle/mechanisms.ts";
import { numberAt, offsetPointAt, pointAt } from "./places.ts";

type Draw = (numbers: Float64Array, form: Pick<Form, "pitmanTurns">) => Mechanism;

/** Tie rods on the rack's ends. */
const rack: Draw = (() => {
  const ahead = numberAt("rack.ahead");
  const up = numberAt("rack.up");
  const eyeToEye = numberAt("rack.eye-to-eye");
  const offset = numberAt("rack.offset");
  const tilt = numberAt("rack.tilt");
  const straightAhead = numberAt("rack.straight-ahead");
  return (numbers) => ({
    kind: "rack",
    ahead: ahead(numbers),
    up: up(numbers),
    eyeToEye: eyeToEye(numbers),
    offset: offset(numbers),
    tilt: tilt(numbers),
    straightAhead: straightAhead(numbers),
  });
})();

/** Both tie rods' inner eyes, where the mechanism's section of the file gives them as points. */
function eyesOf(section: string) {
  const left = pointAt(`left.${section}.eye`);
  const right = pointAt(`right.${section}.eye`);
  return (numbers: Float64Array) => ({ leftEye: left(numbers), rightEye: right(numbers) });
}

/** Tie rods on a bar at the rack's middle. */
const centreRack: Draw = (() => {
  const eyes = eyesOf("rack");
  const tilt = numberAt("rack.tilt");
  const straightAhead = numberAt("rack.straight-ahead");
  return (numbers) => ({
    kind: "centre-rack",
    ...eyes(numbers),
    tilt: tilt(numbers),
    straightAhead: straightAhead(numbers),
  });
})();

/** A plate on the column. */
const steeringPlate: Draw = (() => {
  const foot = offsetPointAt("steering-plate");
  const rake = numberAt("steering-plate.rake");
  const eyes = eyesOf("steering-plate");
  const straightAhead = numberAt("steering-plate.straight-ahead");
  return (numbers) => ({
    kind: "steering-plate",
    foot: foot(numbers),
    rake: rake(numbers),
    ...eyes(numbers),
    straightAhead: straightAhead(numbers),
  });
})();

/**
 * The shaft that an arm of the relay turns on, pointing up, so that turning left seen from above is positive about it.
 * Its leans are as seen from the side, top rearward positive, and from the front, top to the driver's left positive:
 * their tangents are how far it goes back and left for its rise.
 */
function shaftAt(arm: string): (numbers: Float64Array) => Point {
  const back = numberAt(`relay.${arm}.lean-back`);
  const left = numberAt(`relay.${arm}.lean-left`);
  return (numbers) => ({ x: -Math.tan(back(numbers)), y: Math.tan(left(numbers)), z: 1 });
}

/** Pitman arm, idler arm and the centre link between them. */
const relay: Draw = (() => {
  const [pitmanPivot, pitmanAxis, pitmanJoint] = armAt("pitman");
  const [idlerPivot, idlerAxis, idlerJoint] = armAt("idler");
  const eyes = eyesOf("relay");
  const ratio = numberAt("relay.ratio");
  const straightAhead = numberAt("relay.straight-ahead");
  return (numbers, form) => {
    const { leftEye, rightEye } = eyes(numbers);
    return {
      kind: "relay",
      pitmanPivot: pitmanPivot(numbers),
      pitmanAxis: pitmanAxis(numbers),
      pitmanJoint: pitmanJoint(numbers),
      idlerPivot: idlerPivot(numbers),
      idlerAxis: idlerAxis(numbers),
      idlerJoint: idlerJoint(numbers),
      leftEye,
      rightEye: { ...rightEye, y: -rightEye.y },
      turn: (form.pitmanTurns === "against" ? -1 : 1) / ratio(numbers),
      straightAhead: straightAhead(numbers),
    };
  };
})();

function armAt(arm: string) {
  return [offsetPointAt(`relay.${arm}.pivot`), shaftAt(arm), offsetPointAt(`relay.${arm}.joint`)] as const;
}

/** Every mechanism that a car file can describe: a new one is one entry here. */
const DRAW: { readonly [Name in MechanismName]: Draw } = {
  rack,
  "centre-rack": centreRack,
  "steering-plate": steeringPlate,
  relay,
};

/** A car's steering mechanism as the kernel takes it, from its numbers. */
export function mechanismOf(form: Pick<Form, "mechanism" | "pitmanTurns">, numbers: Float64Array): Mechanism {
  return DRAW[form.mechanism](numbers, form);
}
