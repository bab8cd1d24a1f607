import type { Study } from "../../measures/study.ts";
import { inch } from "../../vehicle/units/length.ts";
import { placeWithin, startingPlace } from "../bench.ts";
import type { Model, Place } from "../model.ts";
import { type Act, turn } from "../turn.ts";
import { nextSides } from "./adjust.ts";

/** How far one key moves the rack or a wheel, mm: a quarter of an inch, or five millimetres. */
function stride(model: Model): number {
  return model.display.unit === "in" ? inch / 4 : 5;
}

/** How far one key turns the steering: as far as it moves a wheel, or five degrees of the column. */
function inputStride(model: Model, { inputKind }: Study): number {
  return inputKind === "rack" ? stride(model) : (5 * Math.PI) / 180;
}

/** +1 where turning the steering wheel left moves the input to the left. Where the file does not say, the car turns left. */
function inputWay(study: Study): number {
  const moves = study.car.form.wheelLeftMoves;
  if (moves !== null) return moves === "left" ? 1 : -1;
  return study.inputLeftTurns === "right" ? -1 : 1;
}

function to(model: Model, change: (study: Study, place: Place) => Partial<Place>) {
  const { bench, place } = model;
  if ("refused" in bench.study) return turn(model);
  const moved = { ...place, ...change(bench.study, place) };
  return turn({ ...model, place: placeWithin(bench, moved), notice: null });
}

/** Beyond any end of travel, mm or rad: brought back to the end. */
const beyond = 1e6;

function steer(ways: number): Act {
  return (model) =>
    to(model, (study, { input }) => ({ input: landed(input, ways * inputWay(study), inputStride(model, study)) }));
}

function fullSteer(ways: number): Act {
  return (model) => to(model, (study) => ({ input: ways * inputWay(study) * beyond }));
}

/** One stride on, to the next whole stride from the middle. */
function landed(at: number, ways: number, by: number): number {
  return (ways > 0 ? Math.floor(at / by + 1 + 1e-6) : Math.ceil(at / by - 1 - 1e-6)) * by;
}

function travel(change: (at: number, by: number) => number): Act {
  return (model) =>
    to(model, (_, place) => ({
      ...(model.moving === "right" ? {} : { left: change(place.left, stride(model)) }),
      ...(model.moving === "left" ? {} : { right: change(place.right, stride(model)) }),
    }));
}

export const placeActs = {
  wheelLeft: steer(1),
  wheelRight: steer(-1),
  fullLeft: fullSteer(1),
  fullRight: fullSteer(-1),
  up: travel((at, by) => landed(at, 1, by)),
  down: travel((at, by) => landed(at, -1, by)),
  fullBump: travel(() => beyond),
  fullDroop: travel(() => -beyond),
  rideHeight: (model) => turn({ ...model, place: startingPlace(model.bench), notice: null }),
  moving: (model) => turn({ ...model, moving: nextSides(model.moving) }),
} satisfies Record<string, Act>;
