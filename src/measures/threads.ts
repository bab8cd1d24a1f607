import { Side } from "../kinematics/slots.ts";
import type { Wheel } from "../vehicle/car.ts";
import { type LimitName, limitOf } from "../vehicle/sections/limits.ts";
import type { RodThread, RodThreads } from "../vehicle/sections/threads.ts";
import { sideAt } from "./points.ts";
import type { Study } from "./study.ts";
import { leverArm } from "./tieRod.ts";

/** One end of a tie rod's tube; lengths mm. */
export interface EndFit {
  readonly end: "outer" | "inner";
  readonly thread: RodThread;
  /** Length of thread that is screwed in, and the same in diameters. */
  readonly engagement: number;
  readonly diameters: number;
  /** Thread left bare beside the jam nut; negative where there is no room for the nut. */
  readonly jamNutRoom: number;
}

/** How one tie rod's threads come out; lengths mm, angles rad. */
export interface RodFit {
  readonly ends: readonly [EndFit, EndFit];
  /** Length of the tube: as cut, or to cut for ends that stand in the middle of their adjustment. */
  readonly tube: number;
  readonly isCut: boolean;
  /** How much longer and shorter the rod can be made before an end runs out. */
  readonly longer: number;
  readonly shorter: number;
  /** True where a turn of the tube changes the length: one end has a left-hand thread. */
  readonly turnbuckle: boolean;
  /** What one turn of the tube, or else half a turn of the outer end taken off its bolt, changes: the length, and this wheel's toe. */
  readonly step: number;
  readonly toePerStep: number | null;
}

/** The length that one turn of a tube adds to a rod, mm: with a left-hand thread at one end both pitches, else their difference. */
export function perTurn(a: Pick<RodThread, "size" | "hand">, b: Pick<RodThread, "size" | "hand">): number {
  return a.hand === b.hand ? Math.abs(a.size.pitch - b.size.pitch) : a.size.pitch + b.size.pitch;
}

/**
 * How far a steering arm turns, rad, as its tie rod gets longer by `change`, mm, square to an arm of `lever`, mm:
 * asin(change / lever), the rod taken as long. Null where the change is more than the lever.
 */
export function turnOfArm(change: number, lever: number): number | null {
  return Math.abs(change) > lever ? null : Math.asin(change / lever);
}

/**
 * How much a wheel steers for a turn about its steering axis, at travel 0: with the spin axis a and the unit steering axis
 * k, a′ = k × a and the heading's rate is (a_x′ a_y − a_x a_y′)/(a_x² + a_y²). 1 for an upright king pin.
 */
function steerPerTurn(poses: Float64Array, at: number): number {
  const [ax, ay, az] = [poses[at + Side.Spin], poses[at + Side.Spin + 1], poses[at + Side.Spin + 2]];
  const [kx, ky, kz] = [poses[at + Side.Axis], poses[at + Side.Axis + 1], poses[at + Side.Axis + 2]];
  const x = ky * az - kz * ay;
  const y = kz * ax - kx * az;
  return Math.abs((x * ay - ax * y) / (ax * ax + ay * ay));
}

/** How deep an end may be screwed in, mm: at least so many diameters, at most until thread, hole or jam nut ends it. */
function range(thread: RodThread, diameters: number): { readonly least: number; readonly most: number } {
  const nut = thread["jam-nut"] ?? thread.size.jamNut;
  const most = Math.min(thread.thread - nut, thread.depth ?? Number.POSITIVE_INFINITY);
  return { least: diameters * thread.size.diameter, most };
}

/**
 * How a tie rod of a given length, eye to eye, comes out: length = tube + Σ (shoulder + reach − engagement) over both ends.
 * A tube that is not cut is worked out for ends in the middle of their adjustment; one that is cut shares what is left among
 * the ends by their adjustment. `diameters` is the least engagement. mm.
 */
export function rodFit(threads: RodThreads, length: number, diameters: number) {
  const ends = [threads.outer, threads.inner] as const;
  const ranges = ends.map((end) => range(end, diameters));
  // An end that its nut or hole stops before it holds enough has no adjustment to share.
  const spans = ranges.map((each) => Math.max(each.most - each.least, 0));
  const whole = ends.reduce((sum, end) => sum + end.shoulder + end.reach, 0);
  const least = ranges.reduce((sum, each) => sum + each.least, 0);
  const span = (spans[0] ?? 0) + (spans[1] ?? 0);
  const more = threads.cut === null ? span / 2 : whole + threads.cut - length - least;
  const engaged = ranges.map((each, i) => each.least + more * (span > 0 ? (spans[i] ?? 0) / span : 0.5));
  const [outer = 0, inner = 0] = engaged;
  const tube = threads.cut ?? length - whole + outer + inner;
  const turnbuckle = threads.outer.hand !== threads.inner.hand;
  const left = (i: number, deep: number) => {
    const { least: low, most } = ranges[i] ?? { least: 0, most: 0 };
    return { out: deep - low, in: most - deep };
  };
  const [a, b] = [left(0, outer), left(1, inner)];
  // A turned tube moves both ends at once, each by its own pitch: the first to run out ends it.
  const together = (x: number, y: number) =>
    Math.min(x / threads.outer.size.pitch, y / threads.inner.size.pitch) *
    (threads.outer.size.pitch + threads.inner.size.pitch);
  return {
    engaged: [outer, inner] as const,
    tube,
    longer: turnbuckle ? together(a.out, b.out) : a.out + b.out,
    shorter: turnbuckle ? together(a.in, b.in) : a.in + b.in,
    turnbuckle,
    step: turnbuckle ? perTurn(threads.outer, threads.inner) : threads.outer.size.pitch / 2,
  };
}

/** How a wheel's tie rod comes out; null where the file says nothing of its threads. */
export function threadsOf(study: Study, wheel: Wheel): RodFit | null {
  const threads = study.car.sections.threads?.[wheel] ?? null;
  if (threads === null) return null;
  const name: LimitName = "engagement";
  const fit = rodFit(threads, study.rodLengths[wheel], limitOf(study.car.sections.limits, name).broken);
  const poses = study.ridePose(study.zero ?? study.straightAhead);
  const at = sideAt(wheel);
  const arm = turnOfArm(fit.step, leverArm(poses, at));
  const endOf = (end: "outer" | "inner", engagement: number): EndFit => {
    const thread = threads[end];
    const nut = thread["jam-nut"] ?? thread.size.jamNut;
    return {
      end,
      thread,
      engagement,
      diameters: engagement / thread.size.diameter,
      jamNutRoom: thread.thread - engagement - nut,
    };
  };
  return {
    ends: [endOf("outer", fit.engaged[0]), endOf("inner", fit.engaged[1])],
    tube: fit.tube,
    isCut: threads.cut !== null,
    longer: fit.longer,
    shorter: fit.shorter,
    turnbuckle: fit.turnbuckle,
    step: fit.step,
    toePerStep: arm === null ? null : arm * steerPerTurn(poses, at),
  };
}
