import type { Tape } from "./readings.ts";

/** A place in a corner's own frame, mm. */
export interface At {
  readonly ahead: number;
  readonly out: number;
  readonly up: number;
}

/** The ids of what the tape did not give, without a side. */
export type Assumed =
  | "inclination"
  | "caster"
  | "camber"
  | "toe"
  | "turns"
  | "arms"
  | "pivots-ahead"
  | "travel"
  | "ratio";

/** A front end as the readings make it, mm and rad; both sides alike. */
export interface Layout {
  readonly lower: At;
  readonly upper: At;
  readonly lowerPivot: { readonly out: number; readonly up: number };
  readonly upperPivot: { readonly out: number; readonly up: number };
  readonly tab: At;
  readonly hub: At;
  readonly tyreWidth: number;
  readonly camber: number;
  readonly toe: number;
  readonly rack: {
    readonly ahead: number;
    readonly up: number;
    readonly eyeToEye: number;
    readonly offset: number;
    readonly travel: number;
    readonly straightAhead: number;
    /** 0 where the turns are not known. */
    readonly perTurn: number;
  };
  readonly bump: number;
  readonly droop: number;
  readonly assumed: ReadonlySet<Assumed>;
}

const degree = Math.PI / 180;

/** What is assumed of a car that has no more than page 1. */
export const assumptions = { inclination: 9 * degree, caster: 7 * degree, camber: 0, toe: 0 } as const;

/** Joints stand so far below and above the hub, as a share of its height; an arm reaches in to this share of its joint's distance. */
const jointShare = 0.35;
const armShare = 0.35;
/** Wheel travel that stands in the file until page 2, as a share of the hub's height. */
const travelShare = 0.25;
/** Half of the spread of an arm's pivots, mm: arms parallel to the centreline turn the same whatever it is. */
const spread = 125;

export { spread as pivotSpread };

/**
 * The front end that a tape's readings describe. The tab is placed from the king-pin line at its own height, never from
 * the centreline: an assumed inclination then leaves it where it works. Without page 2 the line leans as assumed, goes
 * through the place that was measured at the tab's height, and seen from the side through the hub; arms are level and
 * their axes parallel to the centreline.
 */
export function layoutOf({ numbers }: Tape): Layout {
  const assumed = new Set<Assumed>();
  const read = (key: string) => numbers.get(key) ?? 0;
  const or = (key: Assumed, value: number) => {
    const given = numbers.get(key);
    if (given === undefined) assumed.add(key);
    return given ?? value;
  };
  const hubHeight = read("hub-height");
  const tabUp = read("tab-height");
  const caster = or("caster", assumptions.caster);
  const lineAhead = (up: number) => -Math.tan(caster) * (up - hubHeight);
  const joints = jointsOf(numbers, or);
  const lineOut = (up: number) =>
    joints.lower.out +
    ((up - joints.lower.up) * (joints.upper.out - joints.lower.out)) / (joints.upper.up - joints.lower.up);
  const tab: At = {
    ahead: lineAhead(tabUp) - read("tab-back"),
    out: lineOut(tabUp) - read("tab-in"),
    up: tabUp,
  };
  const pivots = ["lower-pivot-out", "lower-pivot-height", "upper-pivot-out", "upper-pivot-height"];
  if (!joints.measured || !pivots.every((key) => numbers.has(key))) assumed.add("arms");
  else assumed.add("pivots-ahead");
  const pivot = (arm: "lower" | "upper") => ({
    out: numbers.get(`${arm}-pivot-out`) ?? joints[arm].out * armShare,
    up: numbers.get(`${arm}-pivot-height`) ?? joints[arm].up,
  });
  const travel = travelOf(numbers);
  if (assumed.has("arms") || travel.bump === null || travel.droop === null) assumed.add("travel");
  else if (travel.byRatio) assumed.add("ratio");
  const tyreWidth = read("tyre-width");
  const stroke = read("stroke");
  const turns = or("turns", 0);
  return {
    lower: { ahead: lineAhead(joints.lower.up), ...joints.lower },
    upper: { ahead: lineAhead(joints.upper.up), ...joints.upper },
    lowerPivot: pivot("lower"),
    upperPivot: pivot("upper"),
    tab,
    hub: { ahead: 0, out: (read("over-tyres") - tyreWidth) / 2, up: hubHeight },
    tyreWidth,
    camber: or("camber", assumptions.camber),
    toe: or("toe", assumptions.toe),
    rack: {
      ahead: tab.ahead - read("eye-behind"),
      up: read("eye-height"),
      eyeToEye: read("left-eye") + read("right-eye"),
      offset: (read("left-eye") - read("right-eye")) / 2,
      travel: stroke / 2,
      straightAhead: stroke / 2 - read("left-stop"),
      perTurn: turns > 0 ? stroke / turns : 0,
    },
    bump: travel.bump ?? hubHeight * travelShare,
    droop: travel.droop ?? hubHeight * travelShare,
    assumed,
  };
}

/**
 * Wheel travel as it was read; else from the shock's lengths over its taped ratio, shock travel for 1 of wheel travel, as
 * if that were the same over the whole travel. Null where neither was read.
 */
function travelOf(numbers: Tape["numbers"]) {
  const [now, ratio] = [numbers.get("shock-now"), numbers.get("shock-ratio")];
  const by = (end: "shock-closed" | "shock-open") => {
    const length = numbers.get(end);
    return now === undefined || ratio === undefined || length === undefined ? null : Math.abs(now - length) / ratio;
  };
  const [bump, droop] = [numbers.get("bump"), numbers.get("droop")];
  return {
    bump: bump ?? by("shock-closed"),
    droop: droop ?? by("shock-open"),
    byRatio: bump === undefined || droop === undefined,
  };
}

interface Joints {
  readonly lower: { readonly out: number; readonly up: number };
  readonly upper: { readonly out: number; readonly up: number };
  readonly measured: boolean;
}

/** Both joints: as page 2 has them, or on a line of the assumed inclination through the measured place at the tab's height. */
function jointsOf(numbers: Tape["numbers"], or: (key: "inclination", value: number) => number): Joints {
  const at = (joint: "lower" | "upper") => {
    const [out, up] = [numbers.get(`${joint}-joint-out`), numbers.get(`${joint}-joint-height`)];
    return out === undefined || up === undefined ? null : { out, up };
  };
  const [lower, upper] = [at("lower"), at("upper")];
  if (lower !== null && upper !== null) return { lower, upper, measured: true };
  const inclination = or("inclination", assumptions.inclination);
  const hubHeight = numbers.get("hub-height") ?? 0;
  const tabUp = numbers.get("tab-height") ?? 0;
  const half = (numbers.get("king-pins-apart") ?? 0) / 2;
  const on = (up: number) => ({ out: half - Math.tan(inclination) * (up - tabUp), up });
  return {
    lower: on(hubHeight * (1 - jointShare)),
    upper: on(hubHeight * (1 + jointShare)),
    measured: false,
  };
}

/** Both rods as the other readings make them, eye to eye, mm: from each hole to its eye where the rack stands straight. */
export function rodsOf({ tab, rack }: Layout): { readonly left: number; readonly right: number } {
  const half = rack.eyeToEye / 2;
  const rod = (eye: number) => Math.hypot(tab.ahead - rack.ahead, tab.out - eye, tab.up - rack.up);
  return {
    left: rod(half + rack.offset + rack.straightAhead),
    right: rod(half - rack.offset - rack.straightAhead),
  };
}
