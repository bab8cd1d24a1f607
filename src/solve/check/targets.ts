import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type TargetName, targetNames, targetOf } from "../../vehicle/sections/targets.ts";
import { type CheckItem, stateOf } from "./item.ts";

/** A value that a target judges: its size, where its sign does not matter. */
interface Judged {
  readonly label: string;
  readonly kind: CheckItem["kind"];
  readonly wheel: Wheel | null;
  readonly value: number | null;
  readonly where: CheckItem["where"];
}

const wheels = ["left", "right"] as const;

const size = (value: number | null | undefined) => (value === null || value === undefined ? null : Math.abs(value));

function ackermannAtLocks(study: Study): readonly Judged[] {
  return wheels.map((wheel) => ({
    label: `Ackermann at full ${wheel} lock`,
    kind: "percent",
    wheel: null,
    value: study.locks[wheel]?.ackermann ?? null,
    where: null,
  }));
}

const judged: Readonly<Record<TargetName, (study: Study) => readonly Judged[]>> = {
  "lock-difference": ({ locks }) => [
    {
      label: "Inner locks' difference",
      kind: "angle",
      wheel: null,
      value: size(locks.difference.inner),
      where: null,
    },
  ],
  "ackermann-least": ackermannAtLocks,
  "ackermann-most": ackermannAtLocks,
  "toe-change": (study) =>
    wheels.map((wheel) => {
      const worst = study.worst.toe[wheel];
      return {
        label: `${wheel === "left" ? "Left" : "Right"} wheel, worst toe across the tyre`,
        kind: "length",
        wheel,
        value: size(worst?.acrossTyre),
        where: worst === null ? null : { input: study.zero ?? study.straightAhead, travel: worst.travel },
      };
    }),
  "bounce-steer": (study) => {
    const worst = study.worst.bounce;
    return [
      {
        label: "Worst bounce steer",
        kind: "angle",
        wheel: null,
        value: size(worst?.bounceSteer),
        where: worst === null ? null : { input: study.zero ?? study.straightAhead, travel: worst.travel },
      },
    ];
  },
};

/** The targets that the file itself sets; those of common practice only colour the screen's gauges. */
export function targetItems(study: Study): readonly CheckItem[] {
  const { targets } = study.car.sections;
  return targetNames.flatMap((name) => {
    const { warn, bad, wrong, from } = targetOf(targets, name);
    if (from !== "file") return [];
    const limit = { close: warn, broken: bad, bad: wrong, from };
    return judged[name](study).map(
      (each): CheckItem => ({
        ...each,
        id: `targets.${name}.${each.label.split(" ")[0]?.toLowerCase()}`,
        part: "targets",
        state: stateOf(each.value, limit),
        limit,
        sides: null,
        facts: [],
        cautions: [],
      }),
    );
  });
}
