import type { Form } from "../car.ts";
import type { MechanismName } from "../mechanisms.ts";
import { type At, numberIn, pointIn } from "./place.ts";

/** Where the tie rods' inner joints stand as the car is drawn, side to the driver's left, and how far they go each way. */
export interface Eyes {
  readonly left: At;
  readonly right: At;
  /** mm to each side, sideways. */
  readonly travel: number;
}

/** Steering turned further than this moves the eyes round rather than across. */
const mostSwing = Math.PI / 3;

/** Both eyes of a section that gives them as points, `moved` mm along a rack of that tilt. */
function pointEyes(numbers: Float64Array, section: string, moved = 0, tilt = 0): Pick<Eyes, "left" | "right"> {
  const left = pointIn(numbers, `left.${section}.eye`);
  const right = pointIn(numbers, `right.${section}.eye`);
  const across = moved * Math.cos(tilt);
  const up = moved * Math.sin(tilt);
  return {
    left: { ...left, side: left.side + across, up: left.up + up },
    right: { ...right, side: across - right.side, up: right.up + up },
  };
}

function rackTravel(numbers: Float64Array): number {
  return (numberIn(numbers, "left.rack.travel") + numberIn(numbers, "right.rack.travel")) / 2;
}

function columnTravel(numbers: Float64Array, section: string): number {
  return (numberIn(numbers, `left.${section}.travel`) + numberIn(numbers, `right.${section}.travel`)) / 2;
}

function endEyes(numbers: Float64Array, moved: number): Eyes {
  const tilt = numberIn(numbers, "rack.tilt");
  const half = numberIn(numbers, "rack.eye-to-eye") / 2;
  const at = (along: number): At => ({
    ahead: numberIn(numbers, "rack.ahead"),
    side: numberIn(numbers, "rack.offset") + along * Math.cos(tilt),
    up: numberIn(numbers, "rack.up") + along * Math.sin(tilt),
  });
  return { left: at(half + moved), right: at(moved - half), travel: rackTravel(numbers) };
}

function plateEyes(numbers: Float64Array): Eyes {
  const eyes = pointEyes(numbers, "steering-plate");
  const rake = numberIn(numbers, "steering-plate.rake");
  const ahead = (eyes.left.ahead + eyes.right.ahead) / 2 - numberIn(numbers, "steering-plate.ahead");
  const up = (eyes.left.up + eyes.right.up) / 2 - numberIn(numbers, "steering-plate.up");
  const arm = Math.abs(ahead * Math.sin(rake) + up * Math.cos(rake));
  return { ...eyes, travel: arm * Math.sin(Math.min(columnTravel(numbers, "steering-plate"), mostSwing)) };
}

function relayEyes(numbers: Float64Array): Eyes {
  const joint = (part: string, key: string) => numberIn(numbers, `relay.pitman.${part}.${key}`);
  const arm = Math.hypot(
    joint("joint", "ahead") - joint("pivot", "ahead"),
    joint("joint", "offset") - joint("pivot", "offset"),
  );
  const swing = columnTravel(numbers, "relay") / numberIn(numbers, "relay.ratio");
  return { ...pointEyes(numbers, "relay"), travel: arm * Math.sin(Math.min(swing, mostSwing)) };
}

/**
 * Both eyes of a car. A column's are as the file has them, at column 0; a rack's as the car is drawn, or with
 * `atMidTravel` as the file has them.
 */
export function eyesOf(numbers: Float64Array, { mechanism }: Pick<Form, "mechanism">, atMidTravel: boolean): Eyes {
  const moved = atMidTravel ? 0 : numberIn(numbers, "rack.straight-ahead");
  const read: { readonly [Name in MechanismName]: () => Eyes } = {
    rack: () => endEyes(numbers, moved),
    "centre-rack": () => ({
      ...pointEyes(numbers, "rack", moved, numberIn(numbers, "rack.tilt")),
      travel: rackTravel(numbers),
    }),
    "steering-plate": () => plateEyes(numbers),
    relay: () => relayEyes(numbers),
  };
  return read[mechanism]();
}
