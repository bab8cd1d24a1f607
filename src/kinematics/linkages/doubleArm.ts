import { circleAbout, putCircle } from "../circle.ts";
import type { DoubleArmPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { dot, length, minus, NOTHING } from "../math.ts";
import { Corner, Work } from "../slots.ts";

/**
 * Two arms, each turning about a fixed axis, carry the two joints of the upright.
 *
 *         upper axis ====o-------o U          L(θ) = C + u cos θ + v sin θ      lower joint, θ = 0 as drawn
 *                                \            U(φ) = Cₓ + uₓ cos φ + vₓ sin φ   upper joint
 *                                 \ upright   |U − L| = p                       fixes φ
 *     lower axis ====o-------------o L
 *
 * Circle meets sphere: with E = L − Cₓ,  A = uₓ·E,  B = vₓ·E,  D = (|uₓ|² + |E|² − p²)/2, the condition is
 * A cos φ + B sin φ = D, so with H = A² + B², q = b √(H − D²), b = ±1 the branch that the drawn pose stands on:
 * cos φ = (A D − B q)/H,  sin φ = (B D + A q)/H.
 * Rates per θ: (U − L)·(U′ − L′) = 0, U′ = φ′ S, S = −uₓ sin φ + vₓ cos φ, and (U − L)·S = A sin φ − B cos φ = q.
 * Elementary geometry; no source needed beyond it.
 */
const enum Arm {
  LowerCenter = 0,
  LowerU = 3,
  LowerV = 6,
  UpperCenter = 9,
  UpperU = 12,
  UpperV = 15,
  UpperRadius2 = 18,
  Upright = 19,
  Branch = 20,
}

/** Writes a corner's arms into its constants. Gives the lower and upper joint as drawn, or a refusal. */
export function compileDoubleArm(
  points: DoubleArmPoints,
  wheel: Refusal["wheel"],
  constants: Float64Array,
  corner: number,
): Joints | Refusal {
  const lower = circleAbout(points.lowerRear, minus(points.lowerFront, points.lowerRear), points.lowerJoint);
  if (lower === "no-axis") return { refused: "lower-arm-has-no-axis", wheel };
  if (lower === "on-axis") return { refused: "lower-joint-on-its-axis", wheel };
  const upper = circleAbout(points.upperRear, minus(points.upperFront, points.upperRear), points.upperJoint);
  if (upper === "no-axis") return { refused: "upper-arm-has-no-axis", wheel };
  if (upper === "on-axis") return { refused: "upper-joint-on-its-axis", wheel };
  const upright = length(minus(points.upperJoint, points.lowerJoint));
  const b = -dot(upper.v, minus(points.lowerJoint, upper.center));
  if (!(Math.abs(b) > NOTHING * dot(upper.u, upper.u))) return { refused: "arms-in-line", wheel };

  const own = corner + Corner.Linkage;
  putCircle(constants, own + Arm.LowerCenter, lower);
  putCircle(constants, own + Arm.UpperCenter, upper);
  constants[own + Arm.UpperRadius2] = dot(upper.u, upper.u);
  constants[own + Arm.Upright] = upright;
  constants[own + Arm.Branch] = b > 0 ? 1 : -1;
  return { lower: points.lowerJoint, upper: points.upperJoint };
}

/** The steering axis at t = tan(θ/2), with its rates per rad of θ. See Carry. */
export const carryDoubleArm: Carry = (c, corner, t, w, at) => {
  const own = corner + Corner.Linkage;
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;

  const ux = c[own + Arm.LowerU];
  const uy = c[own + Arm.LowerU + 1];
  const uz = c[own + Arm.LowerU + 2];
  const vx = c[own + Arm.LowerV];
  const vy = c[own + Arm.LowerV + 1];
  const vz = c[own + Arm.LowerV + 2];
  const lx = c[own + Arm.LowerCenter] + (ux * cos + vx * sin);
  const ly = c[own + Arm.LowerCenter + 1] + (uy * cos + vy * sin);
  const lz = c[own + Arm.LowerCenter + 2] + (uz * cos + vz * sin);
  const lxRate = vx * cos - ux * sin;
  const lyRate = vy * cos - uy * sin;
  const lzRate = vz * cos - uz * sin;

  const cx = c[own + Arm.UpperCenter];
  const cy = c[own + Arm.UpperCenter + 1];
  const cz = c[own + Arm.UpperCenter + 2];
  const px = c[own + Arm.UpperU];
  const py = c[own + Arm.UpperU + 1];
  const pz = c[own + Arm.UpperU + 2];
  const qx = c[own + Arm.UpperV];
  const qy = c[own + Arm.UpperV + 1];
  const qz = c[own + Arm.UpperV + 2];
  const ex = lx - cx;
  const ey = ly - cy;
  const ez = lz - cz;
  const a = px * ex + py * ey + pz * ez;
  const b = qx * ex + qy * ey + qz * ez;
  const upright = c[own + Arm.Upright];
  const reach2 = c[own + Arm.UpperRadius2] + (ex * ex + ey * ey + ez * ez);
  const h = a * a + b * b;
  let d = 0.5 * (reach2 - upright * upright);
  const q2 = h - d * d;
  let q = 0;
  let gap = 0;
  let span = upright;
  if (q2 > 0) {
    q = c[own + Arm.Branch] * Math.sqrt(q2);
  } else {
    // The nearest (d > 0) or farthest the upper joint can be: the upright is taken to be as long as that.
    const root = Math.sqrt(h);
    d = d > 0 ? root : -root;
    span = Math.sqrt(Math.max(reach2 - 2 * d, 0));
    gap = upright - span;
  }
  const overH = 1 / h;
  const cosU = (a * d - b * q) * overH;
  const sinU = (b * d + a * q) * overH;
  const upX = cx + (px * cosU + qx * sinU);
  const upY = cy + (py * cosU + qy * sinU);
  const upZ = cz + (pz * cosU + qz * sinU);

  const overSpan = 1 / span;
  const kx = (upX - lx) * overSpan;
  const ky = (upY - ly) * overSpan;
  const kz = (upZ - lz) * overSpan;

  const rate = q === 0 ? 0 : (span * (kx * lxRate + ky * lyRate + kz * lzRate)) / q;
  const dx = ((qx * cosU - px * sinU) * rate - lxRate) * overSpan;
  const dy = ((qy * cosU - py * sinU) * rate - lyRate) * overSpan;
  const dz = ((qz * cosU - pz * sinU) * rate - lzRate) * overSpan;

  w[at + Work.Lower] = lx;
  w[at + Work.Lower + 1] = ly;
  w[at + Work.Lower + 2] = lz;
  w[at + Work.Upper] = upX;
  w[at + Work.Upper + 1] = upY;
  w[at + Work.Upper + 2] = upZ;
  w[at + Work.Axis] = kx;
  w[at + Work.Axis + 1] = ky;
  w[at + Work.Axis + 2] = kz;
  w[at + Work.LowerRate] = lxRate;
  w[at + Work.LowerRate + 1] = lyRate;
  w[at + Work.LowerRate + 2] = lzRate;
  // Lean = k × k′: the least angular velocity that turns the axis as it turns.
  w[at + Work.Lean] = ky * dz - kz * dy;
  w[at + Work.Lean + 1] = kz * dx - kx * dz;
  w[at + Work.Lean + 2] = kx * dy - ky * dx;
  w[at + Work.UprightGap] = gap;
};
