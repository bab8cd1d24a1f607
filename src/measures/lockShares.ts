import { compile } from "../kinematics/compile.ts";
import type { Drawn } from "../kinematics/drawn.ts";
import { blameOf } from "./blame.ts";
import { type Case, offsetOf, onItsMiddle, tabsOf, withLikeStops, withLikeTabs, withoutOffset } from "./evened.ts";
import { drawnOf, settingOf } from "./front.ts";
import { type Locks, locksOf } from "./locks.ts";
import { type Part, shapley } from "./shapley.ts";
import type { Pair } from "./span.ts";
import { frontEndOf } from "./standing.ts";
import { noStops } from "./stops.ts";
import type { Study } from "./study.ts";

/** Why left and right lock can differ. "rest" is all else that is unlike: arms, uprights, tilt, toe, camber. */
export type LockCause = "rack off its middle" | "offset" | "unequal tabs" | "unequal stops" | "unequal rods" | "rest";

/** What of a difference of locks is a cause's; null where it cannot be told. Angles rad, lengths mm. */
export interface LockShare {
  readonly cause: LockCause;
  /** How large the cause itself is, mm (or rad of column, where that steers); null for the rest; 0 for stops in degrees. */
  readonly size: number | null;
  readonly inner: number | null;
  readonly outer: number | null;
  readonly turnRadius: number | null;
}

export interface LockShares {
  /** Left lock less right lock, as Locks has it: what the shares add up to. */
  readonly difference: Locks["difference"];
  /** Causes that this car has, the largest for the inner wheels first, and the rest last. */
  readonly shares: readonly LockShare[];
}

/** A rod shorter or longer than its fit by less than this, mm, is cut right. */
const RIGHT = 1e-9;

/** Lengths that hold the drawn toe at straight ahead, mm; null where the drawing cannot stand. */
function fitted({ drawn, setting }: Case): Pair<number> | null {
  const { left, right } = drawn;
  const front = compile({
    ...drawn,
    left: { ...left, tieRodLength: null },
    right: { ...right, tieRodLength: null },
  });
  return "refused" in front ? null : frontEndOf(front, { ...setting, stops: noStops }).rodLengths;
}

/** How much longer each rod is than its fit, mm; 0 for a rod that is cut to fit. */
function errorsOf(from: Case): Pair<number> | null {
  const fit = fitted(from);
  if (fit === null) return null;
  const error = (wheel: "left" | "right") => (from.drawn[wheel].tieRodLength ?? fit[wheel]) - fit[wheel];
  return { left: error("left"), right: error("right") };
}

/** The same drawing with rods that are so much longer than its own fit. */
function withErrors(from: Case, errors: Pair<number>): Case | null {
  if (Math.abs(errors.left) < RIGHT && Math.abs(errors.right) < RIGHT) {
    const uncut = (wheel: "left" | "right") => ({ ...from.drawn[wheel], tieRodLength: null });
    return { ...from, drawn: { ...from.drawn, left: uncut("left"), right: uncut("right") } };
  }
  const fit = fitted(from);
  if (fit === null) return null;
  const drawn: Drawn = {
    ...from.drawn,
    left: { ...from.drawn.left, tieRodLength: fit.left + errors.left },
    right: { ...from.drawn.right, tieRodLength: fit.right + errors.right },
  };
  return { ...from, drawn };
}

function differenceOf({ drawn, setting }: Case): Locks["difference"] | null {
  const front = compile(drawn);
  if ("refused" in front) return null;
  const end = frontEndOf(front, setting);
  return blameOf(end.ridePose(0), 0) === null ? locksOf(end).difference : null;
}

const NOTHING: Locks["difference"] = { inner: null, outer: null, turnRadius: null };

interface Cause {
  readonly name: Exclude<LockCause, "rest" | "unequal rods">;
  readonly remove: (from: Case) => Case;
}

const CAUSES: readonly Cause[] = [
  { name: "rack off its middle", remove: onItsMiddle },
  { name: "offset", remove: withoutOffset },
  { name: "unequal tabs", remove: withLikeTabs },
  { name: "unequal stops", remove: withLikeStops },
];

/** Tabs that are as near to alike as rounding lets them be, mm. */
const ALIKE = 1e-6;

/** Whether taking a cause out of a front end changes it at all. */
function isThere({ name, remove }: Cause, from: Case): boolean {
  if (name === "unequal tabs") return tabsApart(from) > ALIKE;
  return JSON.stringify(remove(from)) !== JSON.stringify(from);
}

/** How far one tab is from where the other one is, seen in a mirror, mm. */
function tabsApart({ drawn }: Case): number {
  const { left, right } = tabsOf(drawn);
  return Math.hypot(left.x - right.x, left.y - right.y, left.z - right.z);
}

function sizesOf(from: Case, errors: Pair<number>): Record<LockCause, number | null> {
  const { drawn, setting } = from;
  return {
    "rack off its middle": drawn.mechanism.straightAhead,
    offset: offsetOf(drawn.mechanism),
    "unequal tabs": tabsApart(from),
    "unequal stops":
      setting.inputTravel.left - setting.stops.collar.left - setting.inputTravel.right + setting.stops.collar.right,
    "unequal rods": errors.left - errors.right,
    rest: null,
  };
}

/**
 * Why a car's locks differ: the difference split into shares that add up to it.
 *
 * Each cause can be taken out of the front end by itself: the rack on its middle with the wheels straight; the inner eyes
 * alike about the centreline; both tabs at their mean place; both stops alike; rods both as far from their fit as they
 * are in the mean. What one of them makes depends on which of the others are still there, so that a cause's share is the
 * mean of what its going changes over all orders in which the causes can go (Shapley, "A value for n-person games",
 * 1953). These shares add up exactly, treat causes alike, and give nothing to a cause that changes nothing. What is
 * left when all are gone is the rest. Rods that are cut stay so far from their fit while other causes go.
 */
export function lockSharesOf({ car }: Pick<Study, "car">): LockShares {
  return sharesOf({ drawn: drawnOf(car), setting: settingOf(car) });
}

/** The same of a front end that stands. */
export function sharesOf(from: Case): LockShares {
  const difference = differenceOf(from) ?? NOTHING;
  const errors = errorsOf(from);
  if (errors === null) return { difference, shares: [{ cause: "rest", size: null, ...difference }] };
  const meanError = (errors.left + errors.right) / 2;
  const causes = CAUSES.filter((cause) => isThere(cause, from));
  const unequal = Math.abs(errors.left - errors.right) >= RIGHT;
  const names: LockCause[] = [...causes.map(({ name }) => name), ...(unequal ? (["unequal rods"] as const) : [])];
  const evaluate = (gone: readonly boolean[]) => {
    if (!gone.includes(true)) return difference;
    const shape = causes.reduce((so, { remove }, i) => (gone[i] ? remove(so) : so), from);
    const even = unequal && gone[causes.length] === true;
    const cut = withErrors(shape, even ? { left: meanError, right: meanError } : errors);
    return cut === null ? null : differenceOf(cut);
  };
  const made = shapley(names.length, evaluate, ["inner", "outer", "turnRadius"] as const);
  const sizes = sizesOf(from, errors);
  const shares = names.map((cause, i): LockShare => ({ cause, size: sizes[cause], ...part(made.shares[i]) }));
  shares.sort((a, b) => Math.abs(b.inner ?? 0) - Math.abs(a.inner ?? 0));
  return { difference, shares: [...shares, { cause: "rest", size: null, ...part(made.rest) }] };
}

function part(made: Part<"inner" | "outer" | "turnRadius"> | undefined) {
  return made ?? NOTHING;
}
