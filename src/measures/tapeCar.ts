import type { Car, LengthUnit } from "../vehicle/car.ts";
import type { Layout } from "../vehicle/from-tape/layout.ts";
import { readings, type Tape } from "../vehicle/from-tape/readings.ts";
import { carFromTape } from "../vehicle/from-tape/text.ts";
import { impossible } from "../vehicle/from-tape/together.ts";
import { readCar } from "../vehicle/read.ts";
import { formatRatio } from "../vehicle/units/format.ts";
import { inch } from "../vehicle/units/length.ts";
import { bodiesOf } from "./range/bodies.ts";
import { shockAt } from "./shock.ts";
import { standsOf, travelsOf } from "./shockTravel.ts";
import { type Study, studyOf } from "./study.ts";

/** A car that was begun from a tape. */
export interface TapeCar {
  readonly text: string;
  readonly car: Car;
  readonly study: Study;
  readonly layout: Layout;
  /** The readings, with the wheel travel that the shock's lengths come to where it was not read. */
  readonly tape: Tape;
  /** What the shock's lengths come to, and what the car cannot do though the one on the stands can: sentences. */
  readonly found: { readonly travelByShock: boolean; readonly doubts: readonly string[] };
}

/** Why readings make no car, in a sentence. */
export interface NoTapeCar {
  readonly complaint: string;
}

/** The car that readings describe. Wheel travel that was not read comes from the shock, where its place and both its lengths were. */
export function carOfTape(read: Tape): TapeCar | NoTapeCar {
  const [clash] = impossible(read);
  if (clash !== undefined) return { complaint: `These readings make no car. ${clash.words}.` };
  const first = madeOf(read);
  if ("complaint" in first) return first;
  const travel = travelByShock(first);
  if (travel === null) return first;
  if ("complaint" in travel) return travel;
  const made = madeOf({ ...read, numbers: new Map([...travel, ...read.numbers]) });
  if ("complaint" in made) return made;
  const doubts = [...made.found.doubts, ...ratioDoubts(made)];
  return { ...made, found: { travelByShock: true, doubts } };
}

/** Two readings of an inch of wheel and of the shock beside it, each 1/16 in off: less is the tape's own doubt. */
const ratioDoubt = 1 / 8;

/** Where a shock's taped ratio is another one than the place where it was read to stand gives it, which is taken. */
function ratioDoubts({ car, study, tape }: TapeCar): readonly string[] {
  const [shock, taped] = [car.sections.shock?.left ?? null, tape.numbers.get("shock-ratio")];
  if (shock === null || taped === undefined) return [];
  const stands = standsOf(study, "left", shockAt(bodiesOf(study, "left"), shock))(study.zero ?? 0, 0);
  if (stands === null || Math.abs(stands.ratio - taped) <= ratioDoubt) return [];
  return [
    `${nameOf("shock-ratio")} was taped ${formatRatio(taped)}, and where the shock stands makes it ${formatRatio(stands.ratio)}: the place is taken. Measure again where both its ends are, or how far it closes for an inch of the wheel.`,
  ];
}

function madeOf(tape: Tape): TapeCar | NoTapeCar {
  const { text, layout } = carFromTape(tape);
  const car = readCar(text);
  if ("complaints" in car) {
    const [first] = car.complaints;
    return { complaint: `These readings make no car: ${first?.part ?? ""}: ${first?.message ?? ""}.` };
  }
  const study = studyOf(car);
  if ("refused" in study) return { complaint: `These readings make no car. ${study.refused}` };
  return { text, car, study, layout, tape, found: { travelByShock: false, doubts: doubtsOf(study) } };
}

const wheels = ["left", "right"] as const;

const nameOf = (key: string) => `"${readings.find((each) => each.key === key)?.name ?? key}"`;

/** The car on the stands turns both ways and steers the right way: one that does not was read wrong. */
function doubtsOf(study: Study): readonly string[] {
  const { left, right } = study.locks;
  const stuck = [left, right].filter((lock) => lock?.inner === null || lock === null).length > 0;
  const eyes = ["left-eye", "right-eye", "tab-in", "stroke", "left-stop"].map(nameOf).join(", ");
  return [
    ...(stuck
      ? [
          `The car of these readings cannot reach both ends of its rack, as the one on the stands does: measure again ${eyes}.`,
        ]
      : []),
    ...(study.steersBackwards === true
      ? [
          `The car of these readings turns right when the steering wheel turns left: look again at ${nameOf("rack-goes")} and ${nameOf("tab-back")}.`,
        ]
      : []),
  ];
}

/**
 * Bump and droop, mm, at which the shock of a car has the lengths that were read, through the car's own linkage; null
 * where the tape says no more of the shock than that, or no less than the travel itself.
 */
function travelByShock({ car, study, layout, tape }: TapeCar): ReadonlyMap<string, number> | NoTapeCar | null {
  const shock = car.sections.shock?.left ?? null;
  const [closed, open] = [tape.numbers.get("shock-closed"), tape.numbers.get("shock-open")];
  const isRead = tape.numbers.has("bump") && tape.numbers.has("droop");
  if (shock === null || closed === undefined || open === undefined || isRead || layout.assumed.has("arms")) return null;
  const travels = wheels.map((wheel) => {
    const stands = standsOf(study, wheel, shockAt(bodiesOf(study, wheel), shock));
    return travelsOf(study, { ...shock, "free-length": open, stroke: open - closed }, stands);
  });
  const bump = least(travels.map(({ bottoms }) => bottoms));
  const droop = least(travels.map(({ topsOut }) => (topsOut === null ? null : -topsOut)));
  if (bump === null || droop === null || bump < 0 || droop < 0)
    return {
      complaint: `These readings make no car. Where the shock stands, the wheel cannot go as far as its length ${nameOf(bump === null || bump < 0 ? "shock-closed" : "shock-open")}: measure again where both its ends are, or leave them out and read bump and droop.`,
    };
  return new Map([
    ["bump", lessThan(bump, car.form.units)],
    ["droop", lessThan(droop, car.form.units)],
  ]);
}

function least(travels: readonly (number | null)[]): number | null {
  const known = travels.filter((travel) => travel !== null);
  return known.length < travels.length ? null : Math.min(...known);
}

/** A length in whole hundredths of an inch, or tenths of a millimetre: no more than a shock has. */
function lessThan(mm: number, units: LengthUnit): number {
  const step = units === "in" ? inch / 100 : 0.1;
  return Math.floor(mm / step) * step;
}
