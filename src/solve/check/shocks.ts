import { Side } from "../../kinematics/slots.ts";
import { sideAt } from "../../measures/points.ts";
import { bodiesOf } from "../../measures/range/bodies.ts";
import type { RangePlace } from "../../measures/range/watched.ts";
import { type ShockIn, shockAt, wheelRate } from "../../measures/shock.ts";
import { type Study, studyOf } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import type { Shock } from "../../vehicle/sections/shock.ts";
import { type CheckItem, type Fact, ofSides, stateOf, upperSide } from "./item.ts";

/** A shock at full bump, ride height and full droop, wheels straight; null where its wheel does not close. */
function placesOf(study: Study, wheel: Wheel, shock: ShockIn) {
  const at = sideAt(wheel);
  const input = study.zero ?? study.straightAhead;
  const place = (travel: number) => {
    const poses = study.pose(input, travel, travel);
    return poses[at + Side.Blame] === 0 ? shock(poses, at) : null;
  };
  return { bump: place(study.wheelTravel.bump), ride: place(0), droop: place(-study.wheelTravel.droop), place, input };
}

/** Halvings of the travel in search of where a shock has a length: they leave less than a thousandth of a millimetre. */
const HALVINGS = 30;

/** How far a shock's end is looked for from ride height, mm: wheels go no further; and how far apart, so that no place is missed. */
const FAR = 600;
const STEP = 10;

/**
 * The wheel travel nearest to ride height, up (1) or down (−1), at which a shock has a length, mm, beyond the file's travel
 * too; null where the linkage stops before. What is past the length at ride height already is looked for the other way.
 */
function travelAt(lengthAt: (travel: number) => number | null, length: number, way: 1 | -1): number | null {
  const over = (travel: number) => {
    const here = lengthAt(travel);
    return here === null ? null : here > length;
  };
  const first = over(0);
  // A shock gets shorter in bump: one that is longer than the length has to go up, and else down, to have it.
  const toward = first === (way === 1) ? way : -way;
  for (let near = 0; near < FAR; near += STEP) {
    const there = over(toward * (near + STEP));
    if (there === null) return null;
    if (there === first) continue;
    let [low, high] = [near, near + STEP];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (over(toward * middle) === first) low = middle;
      else high = middle;
    }
    return (toward * (low + high)) / 2;
  }
  return null;
}

/** The wheel travels at which a shock bottoms and tops out, and all that lies between them, mm. */
function travelsOf(shock: Shock, at: ReturnType<typeof placesOf>) {
  const { "free-length": free, stroke } = shock;
  const lengthAt = (travel: number) => at.place(travel)?.length ?? null;
  const bottoms = free === null || stroke === null ? null : travelAt(lengthAt, free - stroke, 1);
  const topsOut = free === null ? null : travelAt(lengthAt, free, -1);
  return { bottoms, topsOut, whole: bottoms === null || topsOut === null ? null : bottoms - topsOut };
}

function ratioFacts(shock: Shock, at: ReturnType<typeof placesOf>): readonly Fact[] {
  const rate = shock["spring-rate"];
  const of = (id: string, where: string, place: { readonly ratio: number } | null): readonly Fact[] => [
    {
      id: `motionRatio${id}`,
      label: `shock travel per wheel travel, ${where}`,
      kind: "ratio",
      value: place?.ratio ?? null,
    },
    ...(rate === null || place === null
      ? []
      : [
          {
            id: `wheelRate${id}`,
            label: `wheel rate, ${where}`,
            kind: "rate",
            value: wheelRate(rate, place.ratio),
          } as const,
        ]),
  ];
  return [
    ...of("", "ride height", at.ride),
    ...of("Bump", "full bump", at.bump),
    ...of("Droop", "full droop", at.droop),
    { id: "length", label: "shock's length at ride height", kind: "length", value: at.ride?.length ?? null },
  ];
}

/** The same car with the arms of one corner as long as the donor's: joints, tab and wheel moved inboard, rods cut to fit. */
function asTheDonor({ car }: Study, wheel: Wheel, by: number): Study | null {
  if (car.form.linkage === "strut") return null;
  const ends =
    car.form.linkage === "pivoting-beam"
      ? ["king-pin.lower", "king-pin.upper"]
      : ["lower-arm.joint", "upper-arm.joint"];
  const numbers = Float64Array.from(car.numbers);
  for (const path of [...ends, "tie-rod.outer", "wheel.center"]) numbers[indexOf(`${wheel}.${path}.out`)] -= by;
  const study = studyOf({ ...car, numbers, form: { ...car.form, rods: { left: "fit", right: "fit" } } });
  return "refused" in study ? null : study;
}

/** What the donor's arms gave: its motion ratio, wheel rate, and wheel travel from the same stroke. */
function widenedFacts(study: Study, wheel: Wheel, shock: Shock): readonly Fact[] {
  const by = shock["arms-widened"];
  const donor = by === null || by === 0 ? null : asTheDonor(study, wheel, by);
  if (donor === null) return [];
  const at = placesOf(donor, wheel, shockAt(bodiesOf(donor, wheel), shock));
  const { ride } = at;
  if (ride === null) return [];
  const rate = shock["spring-rate"];
  return [
    {
      id: "donorMotionRatio",
      label: "before the arms were widened: shock travel per wheel travel, ride height",
      kind: "ratio",
      value: ride.ratio,
    },
    {
      id: "donorWheelRate",
      label: "wheel rate",
      kind: "rate",
      value: rate === null ? null : wheelRate(rate, ride.ratio),
    },
    { id: "donorTravel", label: "wheel travel of the whole stroke", kind: "length", value: travelsOf(shock, at).whole },
  ];
}

const cautions = [
  "Motion ratio here is shock travel over wheel travel; some shops quote it the other way round.",
  "Spring and travel only: whether mounts and arms carry the load is not checked.",
];

function endItem(
  wheel: Wheel,
  id: "bump" | "droop",
  label: string,
  value: number | null,
  facts: readonly Fact[],
  where: RangePlace,
): CheckItem {
  const limit = { close: 0, broken: 0, bad: "under", from: "the parts" } as const;
  return {
    id: `shock.${id}.${wheel}`,
    part: "shocks",
    label: `${upperSide(wheel)} shock, ${label}`,
    state: stateOf(value, limit),
    kind: "length",
    value,
    limit,
    wheel,
    where,
    facts,
    cautions: id === "bump" ? cautions : [],
  };
}

function itemsAt(study: Study, wheel: Wheel, shock: Shock): readonly CheckItem[] {
  const at = placesOf(study, wheel, shockAt(bodiesOf(study, wheel), shock));
  const [free, stroke] = [shock["free-length"], shock.stroke];
  const closed = free === null || stroke === null ? null : free - stroke;
  const left = (length: number | null, end: number | null) => (length === null || end === null ? null : length - end);
  const over = (a: number | null) => (a === null ? null : 0 - a);
  const { bottoms, topsOut, whole } = travelsOf(shock, at);
  return [
    endItem(
      wheel,
      "bump",
      "stroke left at full bump",
      left(at.bump?.length ?? null, closed),
      [
        ...ratioFacts(shock, at),
        { id: "bottomsAt", label: "bottoms at", kind: "travel", value: bottoms },
        { id: "wheelTravel", label: "wheel travel of the whole stroke", kind: "length", value: whole },
        ...widenedFacts(study, wheel, shock),
      ],
      { input: at.input, travel: study.wheelTravel.bump },
    ),
    endItem(
      wheel,
      "droop",
      "stroke left at full droop",
      over(left(at.droop?.length ?? null, free)),
      [{ id: "topsOutAt", label: "tops out at", kind: "travel", value: topsOut }],
      { input: at.input, travel: -study.wheelTravel.droop },
    ),
  ];
}

/** Where the shocks bottom and top out, and what they do to the wheel. */
export function shockItems(study: Study): readonly CheckItem[] {
  const { shock } = study.car.sections;
  if (!study.suspended) return [];
  return ofSides(
    "shocks",
    "Shocks",
    "shock",
    (wheel) => shock?.[wheel] ?? null,
    (wheel, own) => itemsAt(study, wheel, own),
  );
}
