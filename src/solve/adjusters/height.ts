import { blameOf } from "../../measures/blame.ts";
import { sideAt } from "../../measures/points.ts";
import { bodiesOf } from "../../measures/range/bodies.ts";
import { placeMoved, turned } from "../../measures/range/motion.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Change, changed } from "../../vehicle/edits/change.ts";
import { shiftLengths } from "../../vehicle/edits/shift.ts";
import type { Values } from "../../vehicle/edits/values.ts";
import { shortest } from "../../vehicle/edits/written.ts";
import { quantitiesOf, quantityOf } from "../../vehicle/quantities.ts";
import { inch } from "../../vehicle/units/length.ts";
import { type Rebuilt, rebuiltText } from "./rebuilt.ts";
import { redrawn } from "./redraw.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** To this much a shock's foot is written, mm: a hundredth of what a tape shows. */
const footTolerance = 0.01;

/** A change of the car's height: its numbers, and its text with all that stands on the frame moved too. */
export interface Raised extends Rebuilt {
  readonly text: () => string;
}

/** The heights of all that the file says, so much more. */
function allUp({ car }: Study, by: number): Values {
  const ups = quantitiesOf(car.form).filter(({ path }) => path.at(-1) === "up");
  return Object.fromEntries(ups.map(({ id, index }) => [id, car.numbers[index] + by]));
}

/** Optional sections that have heights of things on the frame: all of a shock but its foot, the frame's tubes, the shaft. */
const onFrame: (path: readonly string[]) => boolean = (path) =>
  path.at(-1) === "up" &&
  (path[0] === "tubes" || path[0] === "steering-shaft" || (path[0] === "shock" && path.includes("top")));

/**
 * Another tyre, its loaded radius so much larger, mm: the whole car stands higher by as much, body and arms alike, and
 * no link moves against another. The ground goes down, which in the file's heights is everything up.
 */
export function tyreChanged(study: Study, by: number): Raised {
  const { car } = study;
  const radius = quantityOf("tire.radius");
  const change: Rebuilt = {
    values: { ...allUp(study, by), "tire.radius": car.numbers[radius.index] + by },
    rods: "as they are",
  };
  const all = (path: readonly string[]) => onFrame(path) || (path.at(-1) === "up" && path[0] === "shock");
  return { ...change, text: () => shiftLengths({ ...car, text: rebuiltText(car, change) }, by, all) };
}

/** Why a car cannot stand so much higher, mm, on its springs; null where it can. */
export function whyNotRaised(study: Study, by: number): string | null {
  const { droop, bump } = study.wheelTravel;
  if (by > droop) return "there is less droop than that";
  if (-by > bump) return "there is less bump than that";
  return blameOf(study.pose(study.straightAhead, -by, -by), 0) === null
    ? null
    : "the front end does not go together there";
}

/**
 * The body so much higher, mm, on the same tyres, front and rear alike: the arms hang down further, and the wheels stay on
 * the ground. Bump grows by it and droop shrinks. whyNotRaised has to be asked before.
 */
export function bodyRaised(study: Study, by: number): Raised {
  const { car, wheelTravel } = study;
  const pose = study.pose(study.straightAhead, -by, -by);
  const corners = wheels.map((wheel) => {
    const motion = bodiesOf(study, wheel).move("upright")(pose, sideAt(wheel)).slice();
    return redrawn(study, wheel, {
      place: (p) => {
        const moved = placeMoved(motion, p);
        return { ...moved, z: moved.z + by };
      },
      turn: (d) => turned(motion, d),
    });
  });
  const change: Rebuilt = {
    values: Object.assign({}, allUp(study, by), ...corners, {
      "wheel-travel.bump": wheelTravel.bump + by,
      "wheel-travel.droop": wheelTravel.droop - by,
    }),
    rods: "as they are",
  };
  return {
    ...change,
    text: () => {
      const raised = shiftLengths({ ...car, text: rebuiltText(car, change) }, by, onFrame);
      return changed(raised, shockFeet(study, pose, by));
    },
  };
}

/** Where the shocks' feet are once what carries them has moved: both sides are written, since they may have gone apart. */
function shockFeet(study: Study, pose: Float64Array, by: number): readonly Change[] {
  const { sections, form } = study.car;
  const size = form.units === "in" ? inch : 1;
  return wheels.flatMap((wheel): readonly Change[] => {
    const shock = sections.shock?.[wheel] ?? null;
    if (shock === null) return [];
    const { ahead, out, up } = shock.foot;
    const foot = placeMoved(bodiesOf(study, wheel).move(shock.on)(pose, sideAt(wheel)), { x: ahead, y: out, z: up });
    const written = { ahead: foot.x, out: foot.y, up: foot.z + by };
    return Object.entries(written).map(([key, value]) => ({
      path: ["shock", wheel, "foot", key],
      text: shortest(value / size, footTolerance / size),
    }));
  });
}
