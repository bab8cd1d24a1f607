import { bodiesOf, type CornerBodies } from "../../measures/range/bodies.ts";
import type { RangePlace, Watched } from "../../measures/range/watched.ts";
import { shockAt, wheelRate } from "../../measures/shock.ts";
import { type ShockStands, standsOf, travelsOf } from "../../measures/shockTravel.ts";
import { type Study, studyOf } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import type { Shock } from "../../vehicle/sections/shock.ts";
import { type CheckItem, type Fact, limited, ofSides, upperSide } from "./item.ts";
import type { Worst } from "./sweep.ts";

/** A shock of one corner, and what is watched of it over the whole range: how short it gets, and how long. */
export interface ShockOfCorner {
  readonly wheel: Wheel;
  readonly shock: Shock;
  readonly stands: ShockStands;
  readonly watched: readonly [shortest: Watched, longest: Watched];
}

/** The shock of one corner; none where the file has none there. */
export function shocksAt(study: Study, bodies: CornerBodies): readonly ShockOfCorner[] {
  const { wheel } = bodies;
  const shock = study.car.sections.shock?.[wheel] ?? null;
  if (shock === null || !study.suspended) return [];
  const inPlace = shockAt(bodies, shock);
  const length: Watched["read"] = (poses, at) => inPlace(poses, at).length;
  const longest: Watched["read"] = (poses, at) => -inPlace(poses, at).length;
  return [
    {
      wheel,
      shock,
      stands: standsOf(study, wheel, inPlace),
      watched: [
        { wheel, read: length },
        { wheel, read: longest },
      ],
    },
  ];
}

/** Half the wheel travel, mm, over which the motion ratio's change is taken: its error goes with the square. */
const NEAR = 0.5;

/**
 * Wheel rate at a travel, wheels straight, N/mm. The spring's force is its rate times what the shock is shorter than its free
 * length: a spring without preload. Null where the file does not say the rate or the free length, where the wheel does not
 * close, and where the shock has topped out or bottomed, so that no spring is at work.
 */
function rateAt({ shock, stands }: Pick<ShockOfCorner, "shock" | "stands">, input: number, travel: number) {
  const { "spring-rate": rate, "free-length": free, stroke } = shock;
  const place = stands(input, travel);
  const [below, above] = [stands(input, travel - NEAR), stands(input, travel + NEAR)];
  if (rate === null || free === null || place === null || below === null || above === null) return null;
  const squeeze = free - place.length;
  if (squeeze < 0 || (stroke !== null && squeeze > stroke)) return null;
  const force = rate * squeeze;
  return wheelRate(rate, place.ratio, force, (above.ratio - below.ratio) / (2 * NEAR));
}

function ratioFacts(study: Study, corner: ShockOfCorner): readonly Fact[] {
  const input = study.zero ?? study.straightAhead;
  const { bump, droop } = study.wheelTravel;
  const of = (id: string, where: string, travel: number): readonly Fact[] => [
    {
      id: `motionRatio${id}`,
      label: `shock travel per wheel travel, ${where}`,
      kind: "ratio",
      value: corner.stands(input, travel)?.ratio ?? null,
    },
    ...(corner.shock["spring-rate"] === null
      ? []
      : [
          {
            id: `wheelRate${id}`,
            label: `wheel rate, ${where}`,
            kind: "rate",
            value: rateAt(corner, input, travel),
          } as const,
        ]),
  ];
  return [
    ...of("", "ride height", 0),
    ...of("Bump", "full bump", bump),
    ...of("Droop", "full droop", -droop),
    {
      id: "length",
      label: "shock's length at ride height",
      kind: "length",
      value: corner.stands(input, 0)?.length ?? null,
    },
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
  const stands = standsOf(donor, wheel, shockAt(bodiesOf(donor, wheel), shock));
  const input = donor.zero ?? donor.straightAhead;
  const ride = stands(input, 0);
  if (ride === null) return [];
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
      value: rateAt({ shock, stands }, input, 0),
    },
    {
      id: "donorTravel",
      label: "wheel travel of the whole stroke",
      kind: "length",
      value: travelsOf(donor, shock, stands).whole,
    },
  ];
}

const cautions = [
  "Motion ratio here is shock travel over wheel travel; some shops quote it the other way round.",
  "Wheel rate is of a spring that is slack at the shock's free length: preload adds to it where the ratio rises.",
  "Spring and travel only: whether mounts and arms carry the load is not checked.",
];

function cautionsOf({ car }: Study, shock: Shock): readonly string[] {
  if (car.form.linkage !== "strut" || (shock["arms-widened"] ?? 0) === 0) return cautions;
  return [
    ...cautions,
    "What longer arms did is not worked out beside a strut: the strut's own lean and length change with them.",
  ];
}

function endItem(
  study: Study,
  { wheel, shock }: ShockOfCorner,
  id: "bump" | "droop",
  left: number | null,
  where: RangePlace | null,
  facts: readonly Fact[],
): CheckItem {
  return limited(study, "shock-stroke", left, {
    id: `shock.${id}.${wheel}`,
    part: "shocks",
    label: `${upperSide(wheel)} shock, least stroke left in ${id}`,
    wheel,
    where,
    facts,
    cautions: id === "bump" ? cautionsOf(study, shock) : [],
  });
}

function itemsOf(study: Study, corner: ShockOfCorner, shortest: Worst, longest: Worst): readonly CheckItem[] {
  const { wheel, shock, stands } = corner;
  const { "free-length": free, stroke } = shock;
  const { bottoms, topsOut, whole } = travelsOf(study, shock, stands);
  const inBump = shortest === null || free === null || stroke === null ? null : shortest.value - (free - stroke);
  // What is watched is the length's negative.
  const inDroop = longest === null || free === null ? null : free + longest.value;
  return [
    endItem(study, corner, "bump", inBump, shortest, [
      ...ratioFacts(study, corner),
      { id: "bottomsAt", label: "bottoms at", kind: "travel", value: bottoms },
      { id: "wheelTravel", label: "wheel travel of the whole stroke", kind: "length", value: whole },
      ...widenedFacts(study, wheel, shock),
    ]),
    endItem(study, corner, "droop", inDroop, longest, [
      { id: "topsOutAt", label: "tops out at", kind: "travel", value: topsOut },
    ]),
  ];
}

/** Where the shocks bottom and top out, and what they do to the wheel; `worst` is of all that is watched of them, in order. */
export function shockItems(
  study: Study,
  corners: readonly ShockOfCorner[],
  worst: readonly Worst[],
): readonly CheckItem[] {
  if (!study.suspended) return [];
  return ofSides(
    "shocks",
    "Shocks",
    "shock",
    (wheel) => {
      const i = corners.findIndex((corner) => corner.wheel === wheel);
      return i < 0 ? null : { corner: corners[i], at: 2 * i };
    },
    (_, { corner, at }) => itemsOf(study, corner, worst[at], worst[at + 1]),
  );
}
