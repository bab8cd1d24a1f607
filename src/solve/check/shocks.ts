import { Side } from "../../kinematics/slots.ts";
import { sideAt } from "../../measures/points.ts";
import { bodiesOf } from "../../measures/range/bodies.ts";
import { type ShockIn, shockAt, wheelRate } from "../../measures/shock.ts";
import { type Study, studyOf } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import type { Shock } from "../../vehicle/sections/shock.ts";
import { type CheckItem, type Fact, notGiven, stateOf } from "./item.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** A shock at full bump, ride height and full droop, wheels straight; null where its wheel does not close. */
function placesOf(study: Study, wheel: Wheel, shock: ShockIn) {
  const at = sideAt(wheel);
  const input = study.zero ?? study.straightAhead;
  const place = (travel: number) => {
    const poses = study.pose(input, travel, travel);
    return poses[at + Side.Blame] === 0 ? shock(poses, at) : null;
  };
  return { bump: place(study.wheelTravel.bump), ride: place(0), droop: place(-study.wheelTravel.droop), place };
}

/** Halvings of the travel in search of where a shock has a length: they leave less than a thousandth of a millimetre. */
const HALVINGS = 30;

/** The wheel travel at which a shock has a length, mm; null where it has it nowhere between droop and bump. */
function travelAt(study: Study, lengthAt: (travel: number) => number | null, length: number): number | null {
  let [low, high] = [-study.wheelTravel.droop, study.wheelTravel.bump];
  const over = (travel: number) => {
    const here = lengthAt(travel);
    return here === null ? null : here > length;
  };
  const first = over(low);
  if (first === null || over(high) === null || first === over(high)) return null;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (over(middle) === first) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
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
  const { ride } = placesOf(donor, wheel, shockAt(bodiesOf(donor, wheel), shock));
  if (ride === null) return [];
  const { "spring-rate": rate, stroke } = shock;
  const facts: readonly (Fact | null)[] = [
    { id: "donorMotionRatio", label: "before the arms were widened: that ratio", kind: "ratio", value: ride.ratio },
    rate === null
      ? null
      : { id: "donorWheelRate", label: "wheel rate", kind: "rate", value: wheelRate(rate, ride.ratio) },
    stroke === null
      ? null
      : {
          id: "donorTravel",
          label: "wheel travel of the whole stroke, about",
          kind: "length",
          value: stroke / ride.ratio,
        },
  ];
  return facts.filter((fact) => fact !== null);
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
  travel: number,
): CheckItem {
  const limit = { close: 0, broken: 0, bad: "under", from: "the parts" } as const;
  return {
    id: `shock.${id}.${wheel}`,
    part: "shocks",
    label: `${wheel === "left" ? "Left" : "Right"} shock, ${label}`,
    state: stateOf(value, limit),
    kind: "length",
    value,
    limit,
    wheel,
    where: { input: 0, travel },
    facts,
    cautions: id === "bump" ? cautions : [],
  };
}

function itemsAt(study: Study, wheel: Wheel, shock: Shock): readonly CheckItem[] {
  const at = placesOf(study, wheel, shockAt(bodiesOf(study, wheel), shock));
  const [free, stroke] = [shock["free-length"], shock.stroke];
  const closed = free === null || stroke === null ? null : free - stroke;
  const lengthAt = (travel: number) => at.place(travel)?.length ?? null;
  const left = (length: number | null, end: number | null) => (length === null || end === null ? null : length - end);
  const over = (a: number | null) => (a === null ? null : 0 - a);
  const travelFact = (id: string, label: string, length: number | null): Fact => ({
    id,
    label,
    kind: "length",
    value: length === null ? null : travelAt(study, lengthAt, length),
  });
  return [
    endItem(
      wheel,
      "bump",
      "stroke left at full bump",
      left(at.bump?.length ?? null, closed),
      [
        ...ratioFacts(shock, at),
        travelFact("bottomsAt", "bottoms at a wheel travel of", closed),
        ...widenedFacts(study, wheel, shock),
      ],
      study.wheelTravel.bump,
    ),
    endItem(
      wheel,
      "droop",
      "stroke left at full droop",
      over(left(at.droop?.length ?? null, free)),
      [travelFact("topsOutAt", "tops out at a wheel travel of", free)],
      -study.wheelTravel.droop,
    ),
  ];
}

/** Where the shocks bottom and top out, and what they do to the wheel. */
export function shockItems(study: Study): readonly CheckItem[] {
  const { shock } = study.car.sections;
  if (!study.suspended) return [];
  const given = wheels.flatMap((wheel) => {
    const own = shock?.[wheel] ?? null;
    return own === null ? [] : [itemsAt(study, wheel, own)];
  });
  return given.length === 0 ? [notGiven("shocks", "Shocks", ["shock"])] : given.flat();
}
