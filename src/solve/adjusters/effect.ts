import { Side } from "../../kinematics/slots.ts";
import { camber } from "../../measures/camber.ts";
import { caster } from "../../measures/caster.ts";
import { sideAt } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import { toe } from "../../measures/toe.ts";
import { acrossTyre } from "../../measures/worstToe.ts";
import type { Wheel } from "../../vehicle/car.ts";

/**
 * How a wheel is set, at ride height: camber and caster, rad; toe across the tyre as a tape shows it, mm; and how much more
 * of it there is at full bump and at full droop. Signed as in measures; null where it cannot be told.
 */
export interface Settings {
  readonly camber: number | null;
  readonly caster: number | null;
  readonly toe: number | null;
  readonly toeInBump: number | null;
  readonly toeInDroop: number | null;
}

export const settingKeys = ["camber", "caster", "toe", "toeInBump", "toeInDroop"] as const;

/** How a wheel is set with the steering held at a place; bump and droop as the wheel goes so far, mm, from ride height. */
export function settingsAt(study: Study, wheel: Wheel, input: number): Settings {
  const at = sideAt(wheel);
  const { bump, droop } = study.wheelTravel;
  const poseAt = (travel: number) => {
    const pose = study.pose(input, travel, travel);
    return pose[at + Side.Blame] === 0 ? pose : null;
  };
  const across = (pose: Float64Array | null) => (pose === null ? null : acrossTyre(toe(pose, at), study.tireRadius));
  const ride = poseAt(0);
  const still = across(ride);
  const more = (travel: number) => {
    const there = study.suspended ? across(poseAt(travel)) : null;
    return there === null || still === null ? null : there - still;
  };
  return {
    camber: ride === null ? null : camber(ride, at),
    caster: ride === null ? null : caster(ride, at),
    toe: still,
    toeInBump: more(bump),
    toeInDroop: more(-droop),
  };
}

/** What has changed between two settings. */
export function changeOf(before: Settings, after: Settings): Settings {
  const less = (key: keyof Settings) => {
    const [from, to] = [before[key], after[key]];
    return from === null || to === null ? null : to - from;
  };
  return {
    camber: less("camber"),
    caster: less("caster"),
    toe: less("toe"),
    toeInBump: less("toeInBump"),
    toeInDroop: less("toeInDroop"),
  };
}
