import type { Study } from "../../measures/study.ts";
import { type EndFit, type RodFit, threadsOf } from "../../measures/threads.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type CheckItem, type Fact, limited, ofSides, upperSide } from "./item.ts";

function factsOf(fit: RodFit): readonly Fact[] {
  const length = (id: string, label: string, value: number): Fact => ({ id, label, kind: "length", value });
  const [outer, inner] = fit.ends;
  const per = fit.turnbuckle ? "one turn of the tube" : "half a turn of the outer end";
  return [
    length("tube", fit.isCut ? "tube as cut" : "cut the tube to", fit.tube),
    length("outerEngagement", "screwed in, outer end", outer.engagement),
    length("innerEngagement", "inner end", inner.engagement),
    fit.longer < 0
      ? length("tooLong", "too long for its threads by", -fit.longer)
      : length("longer", "can be made longer by", fit.longer),
    fit.shorter < 0
      ? length("tooShort", "too short for its threads by", -fit.shorter)
      : length("shorter", "shorter by", fit.shorter),
    { id: "step", label: `${per} changes the rod by`, kind: "fine length", value: fit.step },
    { id: "toePerStep", label: "and this wheel's toe by", kind: "angle", value: fit.toePerStep },
  ];
}

function cautionsOf(fit: RodFit): readonly string[] {
  const donor = fit.ends.some(({ thread }) => thread.fitting === "donor");
  return [
    ...(donor
      ? ["Never weld, heat or bend the donor's forged inner rod: it would break without a sign. Thread only."]
      : []),
    ...(fit.turnbuckle
      ? []
      : [
          "Both ends have threads of the same hand: turning the tube changes nothing; take one end off its bolt, half a turn at a time.",
        ]),
    "A jam nut at every end, tight; a witness hole or a mark shows that enough thread is in.",
  ];
}

function engagementItem(study: Study, wheel: Wheel, fit: RodFit): CheckItem {
  const worse = fit.ends.reduce((a, b) => (b.diameters < a.diameters ? b : a));
  return limited(study, "engagement", worse.diameters, {
    id: `thread.engagement.${wheel}`,
    part: "threads",
    label: `${upperSide(wheel)} tie rod, thread engaged, ${worse.end} end (${worse.thread.size.name})`,
    wheel,
    where: null,
    facts: factsOf(fit),
    cautions: cautionsOf(fit),
  });
}

function adjustmentItem(study: Study, wheel: Wheel, fit: RodFit): CheckItem {
  const [way, value] = fit.longer < fit.shorter ? ["longer", fit.longer] : ["shorter", fit.shorter];
  return limited(study, "adjustment", value, {
    id: `thread.adjustment.${wheel}`,
    part: "threads",
    label: `${upperSide(wheel)} tie rod, adjustment left, ${way}`,
    wheel,
    where: null,
    facts: [],
    cautions: [],
  });
}

/** Whether a jam nut fits on the bare thread. */
function jamNutItem(wheel: Wheel, fit: RodFit): CheckItem {
  const worse = fit.ends.reduce<EndFit>((a, b) => (b.jamNutRoom < a.jamNutRoom ? b : a), fit.ends[0]);
  return {
    id: `thread.jam-nut.${wheel}`,
    part: "threads",
    label: `${upperSide(wheel)} tie rod, bare thread beside the jam nut, ${worse.end} end`,
    sides: null,
    // What is screwed in as far as the nut lets it has none left: to rounding that is room enough.
    state: worse.jamNutRoom < -1e-6 ? "broken" : "pass",
    kind: "length",
    value: worse.jamNutRoom,
    limit: { close: 0, broken: 0, bad: "under", from: "the parts" },
    wheel,
    where: null,
    facts: [],
    cautions: [],
  };
}

/** Threads of both tie rods. */
export function threadItems(study: Study): readonly CheckItem[] {
  return ofSides(
    "threads",
    "Threads of the tie rods",
    "threads",
    (wheel) => threadsOf(study, wheel),
    (wheel, fit) => [engagementItem(study, wheel, fit), adjustmentItem(study, wheel, fit), jamNutItem(wheel, fit)],
  );
}
