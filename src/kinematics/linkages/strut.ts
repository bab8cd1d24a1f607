import { CircleSlot, circleAbout, putCircle } from "../circle.ts";
import type { Corner as DrawnCorner, Point, StrutPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { cross, dot, length, minus, NOTHING, put, times } from "../math.ts";
import { Corner, Upright, Work } from "../slots.ts";
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
  constants: Float64Array,
  corner: number,
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
  const out = offset > NOTHING * size ? times(foot, 1 / offset) : squareTo(up);
  const across = cross(up, out);
  const place = (a: Point): Point => ({ x: dot(a, up), y: dot(a, out), z: dot(a, across) });

  const own = corner + Corner.Linkage;
  putCircle(constants, own + Leg.Lower, lower);
  put(constants, own + Leg.Top, points.top);
  constants[own + Leg.Offset] = offset > NOTHING * size ? offset : 0;
  put(constants, own + Leg.TieRod, place(minus(drawn.tieRodOuter, points.lowerJoint)));
  put(constants, own + Leg.Wheel, place(minus(drawn.wheelCenter, points.lowerJoint)));
  put(constants, own + Leg.Spin, place(drawnSpin(drawn)));
  return { lower: points.lowerJoint, upper: points.top };
}

/** Any unit vector square to a unit vector that is not crosswise; struts never are. */
function squareTo(a: Point): Point {
  const b = cross({ x: 0, y: 1, z: 0 }, a);
  const span = length(b);
  return span > NOTHING ? times(b, 1 / span) : { x: 1, y: 0, z: 0 };
}

/** The steering axis at t = tan(θ/2), with its rates per rad of θ, and the upright's places about it. See Carry. */
export const carryStrut: Carry = (c, corner, t, w, at) => {
  const own = corner + Corner.Linkage;
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;
  const ux = c[own + CircleSlot.U];
  const uy = c[own + CircleSlot.U + 1];
  const uz = c[own + CircleSlot.U + 2];
  const vx = c[own + CircleSlot.V];
  const vy = c[own + CircleSlot.V + 1];
  const vz = c[own + CircleSlot.V + 2];
  const lx = c[own] + (ux * cos + vx * sin);
  const ly = c[own + 1] + (uy * cos + vy * sin);
  const lz = c[own + 2] + (uz * cos + vz * sin);
  const lxRate = vx * cos - ux * sin;
  const lyRate = vy * cos - uy * sin;
  const lzRate = vz * cos - uz * sin;

  const sx = c[own + Leg.Top];
  const sy = c[own + Leg.Top + 1];
  const sz = c[own + Leg.Top + 2];
  const span2 = (sx - lx) * (sx - lx) + (sy - ly) * (sy - ly) + (sz - lz) * (sz - lz);
  const offset = c[own + Leg.Offset];
  const slide2 = span2 - offset * offset;
  const closes = slide2 > 0;
  const slide = closes ? Math.sqrt(slide2) : 0;
  // Nearer than the strut's own offset the lower joint cannot be: the strut is taken to stand that much nearer.
  const span = closes ? Math.sqrt(span2) : offset;
  const over = 1 / span;
  const k = 1 / Math.sqrt(span2);
  const kx = (sx - lx) * k;
  const ky = (sy - ly) * k;
  const kz = (sz - lz) * k;
  const closing = kx * lxRate + ky * lyRate + kz * lzRate;

  w[at + Work.Lower] = lx;
  w[at + Work.Lower + 1] = ly;
  w[at + Work.Lower + 2] = lz;
  w[at + Work.Upper] = sx;
  w[at + Work.Upper + 1] = sy;
  w[at + Work.Upper + 2] = sz;
  w[at + Work.Axis] = kx;
  w[at + Work.Axis + 1] = ky;
  w[at + Work.Axis + 2] = kz;
  w[at + Work.LowerRate] = lxRate;
  w[at + Work.LowerRate + 1] = lyRate;
  w[at + Work.LowerRate + 2] = lzRate;
  // k′ = −(L′ − (k·L′) k)/D, so Lean = k × k′ = L′ × k / D.
  w[at + Work.Lean] = (lyRate * kz - lzRate * ky) * k;
  w[at + Work.Lean + 1] = (lzRate * kx - lxRate * kz) * k;
  w[at + Work.Lean + 2] = (lxRate * ky - lyRate * kx) * k;
  w[at + Work.UprightGap] = closes ? 0 : offset - Math.sqrt(span2);

  const cosB = slide * over;
  const sinB = offset * over;
  const rod = own + Leg.TieRod;
  const tm = c[rod + 1] * cosB - c[rod] * sinB;
  const tn = c[rod + 2];
  const rho2 = tm * tm + tn * tn;
  const perRho2 = 1 / rho2;
  const place = at + Work.Upright;
  w[place + Upright.TieRodAlong] = c[rod] * cosB + c[rod + 1] * sinB;
  w[place + Upright.TieRodRadius] = Math.sqrt(rho2);
  for (let i = 0; i < 2; i++) {
    const from = own + (i === 0 ? Leg.Wheel : Leg.Spin);
    const to = place + (i === 0 ? Upright.Wheel : Upright.Spin);
    const m = c[from + 1] * cosB - c[from] * sinB;
    const n = c[from + 2];
    w[to] = c[from] * cosB + c[from + 1] * sinB;
    w[to + 1] = (m * tm + n * tn) * perRho2;
    w[to + 2] = (n * tm - m * tn) * perRho2;
  }
  // β′ = p (S − L)·L′ / (λ D²), and the upright turns at −β′ about n = (tn R + tm Q)/ρ².
  w[place + Upright.Bend] = slide > 0 ? (-sinB * closing) / slide : 0;
  w[place + Upright.Across] = tn * perRho2;
  w[place + Upright.Across + 1] = tm * perRho2;
};
