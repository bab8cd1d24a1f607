import { circleAbout, putCircle, putCircleRate } from "../circle.ts";
import type { DoubleArmPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { dot, length, minus, NOTHING } from "../math.ts";
import { Work } from "../slots.ts";

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
  OverUpright = 20,
  Branch = 21,
}

/** What the rates take over from the place, from Work.Linkage on. */
const enum Found {
  Cos = 0,
  Sin = 1,
  UpperCos = 2,
  UpperSin = 3,
  Root = 4,
  OverSpan = 5,
}

/** Writes a corner's arms into its constants. Gives the lower and upper joint as drawn, or a refusal. */
export function compileDoubleArm(
  points: DoubleArmPoints,
  wheel: Refusal["wheel"],
  own: Float64Array,
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

  putCircle(own, Arm.LowerCenter, lower);
  putCircle(own, Arm.UpperCenter, upper);
  own[Arm.UpperRadius2] = dot(upper.u, upper.u);
  own[Arm.Upright] = upright;
  own[Arm.OverUpright] = 1 / upright;
  own[Arm.Branch] = b > 0 ? 1 : -1;
  return { lower: points.lowerJoint, upper: points.upperJoint };
}

/** See Carry. */
export const carryDoubleArm: Carry = { place, rates, axisTurnsInUpright: false };

function place(own: Float64Array, t: number, w: Float64Array): void {
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;
  const lx = own[Arm.LowerCenter] + (own[Arm.LowerU] * cos + own[Arm.LowerV] * sin);
  const ly = own[Arm.LowerCenter + 1] + (own[Arm.LowerU + 1] * cos + own[Arm.LowerV + 1] * sin);
  const lz = own[Arm.LowerCenter + 2] + (own[Arm.LowerU + 2] * cos + own[Arm.LowerV + 2] * sin);

  const cx = own[Arm.UpperCenter];
  const cy = own[Arm.UpperCenter + 1];
  const cz = own[Arm.UpperCenter + 2];
  const px = own[Arm.UpperU];
  const py = own[Arm.UpperU + 1];
  const pz = own[Arm.UpperU + 2];
  const qx = own[Arm.UpperV];
  const qy = own[Arm.UpperV + 1];
  const qz = own[Arm.UpperV + 2];
  const ex = lx - cx;
  const ey = ly - cy;
  const ez = lz - cz;
  const a = px * ex + py * ey + pz * ez;
  const b = qx * ex + qy * ey + qz * ez;
  const upright = own[Arm.Upright];
  const reach2 = own[Arm.UpperRadius2] + (ex * ex + ey * ey + ez * ez);
  const h = a * a + b * b;
  let d = 0.5 * (reach2 - upright * upright);
  const q2 = h - d * d;
  let q = 0;
  let gap = 0;
  let overSpan = own[Arm.OverUpright];
  if (q2 > 0) {
    q = own[Arm.Branch] * Math.sqrt(q2);
  } else {
    // The nearest (d > 0) or farthest the upper joint can be: the upright is taken to be as long as that.
    const root = Math.sqrt(h);
    d = d > 0 ? root : -root;
    const span = Math.sqrt(Math.max(reach2 - 2 * d, 0));
    overSpan = 1 / span;
    gap = upright - span;
  }
  const overH = 1 / h;
  const cosU = (a * d - b * q) * overH;
  const sinU = (b * d + a * q) * overH;
  const upX = cx + (px * cosU + qx * sinU);
  const upY = cy + (py * cosU + qy * sinU);
  const upZ = cz + (pz * cosU + qz * sinU);

  w[Work.Lower] = lx;
  w[Work.Lower + 1] = ly;
  w[Work.Lower + 2] = lz;
  w[Work.Upper] = upX;
  w[Work.Upper + 1] = upY;
  w[Work.Upper + 2] = upZ;
  w[Work.Axis] = (upX - lx) * overSpan;
  w[Work.Axis + 1] = (upY - ly) * overSpan;
  w[Work.Axis + 2] = (upZ - lz) * overSpan;
  w[Work.UprightGap] = gap;
  w[Work.Linkage + Found.Cos] = cos;
  w[Work.Linkage + Found.Sin] = sin;
  w[Work.Linkage + Found.UpperCos] = cosU;
  w[Work.Linkage + Found.UpperSin] = sinU;
  w[Work.Linkage + Found.Root] = q;
  w[Work.Linkage + Found.OverSpan] = overSpan;
}

function rates(own: Float64Array, w: Float64Array): void {
  putCircleRate(own, Arm.LowerCenter, w[Work.Linkage + Found.Cos], w[Work.Linkage + Found.Sin], w, Work.LowerRate);
  const lx = w[Work.LowerRate];
  const ly = w[Work.LowerRate + 1];
  const lz = w[Work.LowerRate + 2];
  const kx = w[Work.Axis];
  const ky = w[Work.Axis + 1];
  const kz = w[Work.Axis + 2];
  const q = w[Work.Linkage + Found.Root];
  const overSpan = w[Work.Linkage + Found.OverSpan];
  // Lean = k × k′: the least angular velocity that turns the axis as it turns; k′ = (φ′ S − L′)/p.
  putCircleRate(own, Arm.UpperCenter, w[Work.Linkage + Found.UpperCos], w[Work.Linkage + Found.UpperSin], w, Work.Lean);
  const rate = q === 0 ? 0 : (kx * lx + ky * ly + kz * lz) / (overSpan * q);
  const dx = (w[Work.Lean] * rate - lx) * overSpan;
  const dy = (w[Work.Lean + 1] * rate - ly) * overSpan;
  const dz = (w[Work.Lean + 2] * rate - lz) * overSpan;
  w[Work.Lean] = ky * dz - kz * dy;
  w[Work.Lean + 1] = kz * dx - kx * dz;
  w[Work.Lean + 2] = kx * dy - ky * dx;
}
