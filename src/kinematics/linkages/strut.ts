import { circleAbout, putCircle, putCircleRate } from "../circle.ts";
import type { Corner as DrawnCorner, Point, StrutPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { cross, dot, length, minus, NOTHING, put, times } from "../math.ts";
import { Upright, Work } from "../slots.ts";
import { drawnSpin } from "../upright.ts";

/**
 * A lower arm carries the upright's lower joint L; a strut fixed to the upright slides through its top mount S, which is
 * fixed to the body. The steering axis is the line from L to S.
 *
 *        S o  top mount              L(θ) = C + u cos θ + v sin θ
 *          |\                        d: unit vector along the strut, m: square to it, from L to the strut's line, at p
 *       λ d| \ k                     S − L = p m + λ d,   λ = √(|S − L|² − p²)
 *          |  \                      n = d × m is square to the plane of both
 *          +---o L                   k = (p m + λ d)/D,   m′ = (λ m − p d)/D,   D = |S − L|
 *           p m
 * d, m and n are fixed in the upright, so its places turn about n against (k, m′, n) as λ changes: a place with
 * components (a, b, c) along (d, m, n) has (a λ + b p)/D along k, (b λ − a p)/D along m′ and c along n. The angle of k
 * from d is β = atan(p/λ), β′ = −p λ′/D², λ′ = −(S − L)·L′/λ, and the upright turns at −β′ about n beside what its
 * axis does. Elementary geometry.
 */
const enum Leg {
  Lower = 0,
  LowerU = 3,
  LowerV = 6,
  Top = 9,
  Offset = 12,
  TieRod = 13,
  Wheel = 16,
  Spin = 19,
}

/** Writes a corner's arm and strut into its constants. Gives the lower joint and the top mount, or a refusal. */
export function compileStrut(
  points: StrutPoints,
  wheel: Refusal["wheel"],
  own: Float64Array,
  drawn: DrawnCorner,
): Joints | Refusal {
  const lower = circleAbout(points.lowerRear, minus(points.lowerFront, points.lowerRear), points.lowerJoint);
  if (lower === "no-axis") return { refused: "lower-arm-has-no-axis", wheel };
  if (lower === "on-axis") return { refused: "lower-joint-on-its-axis", wheel };
  const axis = minus(points.top, points.lowerJoint);
  const size = length(axis);
  const line = minus(points.top, points.bottom);
  if (!(length(line) > NOTHING * size)) return { refused: "strut-has-no-axis", wheel };
  if (!(size > NOTHING * length(minus(points.lowerJoint, points.lowerRear))))
    return { refused: "top-mount-on-lower-joint", wheel };
  const up = times(line, (dot(line, axis) < 0 ? -1 : 1) / length(line));
  const foot = minus(axis, times(up, dot(axis, up)));
  const offset = length(foot);
  // Made square to the strut once more: a foot of a hair is what is left of two long vectors, mostly rounding.
  const out = offset > NOTHING * size ? unit(minus(foot, times(up, dot(foot, up)))) : squareTo(up);
  const across = cross(up, out);
  const place = (a: Point): Point => ({ x: dot(a, up), y: dot(a, out), z: dot(a, across) });

  putCircle(own, Leg.Lower, lower);
  put(own, Leg.Top, points.top);
  own[Leg.Offset] = offset > NOTHING * size ? offset : 0;
  put(own, Leg.TieRod, place(minus(drawn.tieRodOuter, points.lowerJoint)));
  put(own, Leg.Wheel, place(minus(drawn.wheelCenter, points.lowerJoint)));
  put(own, Leg.Spin, place(drawnSpin(drawn)));
  return { lower: points.lowerJoint, upper: points.top };
}

function unit(a: Point): Point {
  return times(a, 1 / length(a));
}

/** Any unit vector square to a unit vector that is not crosswise; struts never are. */
function squareTo(a: Point): Point {
  const b = cross({ x: 0, y: 1, z: 0 }, a);
  const span = length(b);
  return span > NOTHING ? times(b, 1 / span) : { x: 1, y: 0, z: 0 };
}

/** What the rates take over from the place, from Work.Linkage on. */
const enum Found {
  Cos = 0,
  Sin = 1,
  /** λ, and 1/D. */
  Slide = 2,
  OverSpan = 3,
  /** p/D, the sine of the angle of k from d. */
  Sine = 4,
}

/** See Carry. */
export const carryStrut: Carry = { place, rates, axisTurnsInUpright: true };

function place(own: Float64Array, t: number, w: Float64Array): void {
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;
  const lx = own[Leg.Lower] + (own[Leg.LowerU] * cos + own[Leg.LowerV] * sin);
  const ly = own[Leg.Lower + 1] + (own[Leg.LowerU + 1] * cos + own[Leg.LowerV + 1] * sin);
  const lz = own[Leg.Lower + 2] + (own[Leg.LowerU + 2] * cos + own[Leg.LowerV + 2] * sin);

  const dx = own[Leg.Top] - lx;
  const dy = own[Leg.Top + 1] - ly;
  const dz = own[Leg.Top + 2] - lz;
  const span2 = dx * dx + dy * dy + dz * dz;
  const offset = own[Leg.Offset];
  const slide2 = span2 - offset * offset;
  const closes = slide2 > 0;
  const slide = closes ? Math.sqrt(slide2) : 0;
  const span = Math.sqrt(span2);
  const overSpan = 1 / span;
  // Nearer than the strut's own offset the lower joint cannot be: the strut is taken to stand that much nearer.
  const over = closes ? overSpan : 1 / offset;
  const cosB = slide * over;
  const sinB = offset * over;

  w[Work.Lower] = lx;
  w[Work.Lower + 1] = ly;
  w[Work.Lower + 2] = lz;
  w[Work.Upper] = own[Leg.Top];
  w[Work.Upper + 1] = own[Leg.Top + 1];
  w[Work.Upper + 2] = own[Leg.Top + 2];
  w[Work.Axis] = dx * overSpan;
  w[Work.Axis + 1] = dy * overSpan;
  w[Work.Axis + 2] = dz * overSpan;
  w[Work.UprightGap] = closes ? 0 : offset - span;
  w[Work.Linkage + Found.Cos] = cos;
  w[Work.Linkage + Found.Sin] = sin;
  w[Work.Linkage + Found.Slide] = slide;
  w[Work.Linkage + Found.OverSpan] = overSpan;
  w[Work.Linkage + Found.Sine] = sinB;

  const tm = own[Leg.TieRod + 1] * cosB - own[Leg.TieRod] * sinB;
  const tn = own[Leg.TieRod + 2];
  const rho2 = tm * tm + tn * tn;
  const perRho2 = 1 / rho2;
  w[Work.Upright + Upright.TieRodAlong] = own[Leg.TieRod] * cosB + own[Leg.TieRod + 1] * sinB;
  w[Work.Upright + Upright.TieRodRadius] = Math.sqrt(rho2);
  for (let i = 0; i < 2; i++) {
    const from = i === 0 ? Leg.Wheel : Leg.Spin;
    const to = Work.Upright + (i === 0 ? Upright.Wheel : Upright.Spin);
    const m = own[from + 1] * cosB - own[from] * sinB;
    const n = own[from + 2];
    w[to] = own[from] * cosB + own[from + 1] * sinB;
    w[to + 1] = (m * tm + n * tn) * perRho2;
    w[to + 2] = (n * tm - m * tn) * perRho2;
  }
  // n = (tn R + tm Q)/ρ².
  w[Work.Upright + Upright.Across] = tn * perRho2;
  w[Work.Upright + Upright.Across + 1] = tm * perRho2;
}

function rates(own: Float64Array, w: Float64Array): void {
  putCircleRate(own, Leg.Lower, w[Work.Linkage + Found.Cos], w[Work.Linkage + Found.Sin], w, Work.LowerRate);
  const lx = w[Work.LowerRate];
  const ly = w[Work.LowerRate + 1];
  const lz = w[Work.LowerRate + 2];
  const kx = w[Work.Axis];
  const ky = w[Work.Axis + 1];
  const kz = w[Work.Axis + 2];
  const overSpan = w[Work.Linkage + Found.OverSpan];
  // k′ = −(L′ − (k·L′) k)/D, so Lean = k × k′ = L′ × k / D.
  w[Work.Lean] = (ly * kz - lz * ky) * overSpan;
  w[Work.Lean + 1] = (lz * kx - lx * kz) * overSpan;
  w[Work.Lean + 2] = (lx * ky - ly * kx) * overSpan;
  // β′ = p (S − L)·L′ / (λ D²), and the upright turns at −β′ about n.
  const closing = kx * lx + ky * ly + kz * lz;
  const slide = w[Work.Linkage + Found.Slide];
  w[Work.Upright + Upright.Bend] = slide > 0 ? (-w[Work.Linkage + Found.Sine] * closing) / slide : 0;
}
