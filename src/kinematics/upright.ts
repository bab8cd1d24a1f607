import type { Corner as DrawnCorner, Point } from "./drawn.ts";
import type { Joints, ReadyCorner, Refusal } from "./front.ts";
import { cross, dot, length, minus, NOTHING, put, times } from "./math.ts";
import { Corner, Upright, Work } from "./slots.ts";

/** An eye nearer to the steering axis than this share of the tie-rod outer's own distance stands on it. */
const ON_AXIS = 1e-9;

/**
 * Any upright, turned about its steering axis until its tie rod fits.
 *
 * P the lower joint, k the unit steering axis, I the tie rod's inner eye, T its outer: T stands at τ along the axis and
 * at ρ from it, at |T − I| = ℓ. With D = I − P, d = D·k and r = D − d k (the eye, square to the axis):
 *     T = P + τ k + R,   R = μ r + ν (k × r),
 *     μ = ((τ − d)² + ρ² + |r|² − ℓ²) / (2|r|²),   ν = b √(ρ²/|r|² − μ²),   b = ±1 as drawn.
 * Everything fixed to the upright then has constant components along k, R and Q = k × R.
 * The moment arm of the rod's force about the axis is Q·(T − I)/ℓ = ν|r|²/ℓ: it is nought at the dead point.
 * Circle meets sphere; elementary geometry.
 */
export function turnUpright({ constants: c, places, work: w }: ReadyCorner): void {
  const lx = w[Work.Lower];
  const ly = w[Work.Lower + 1];
  const lz = w[Work.Lower + 2];
  const kx = w[Work.Axis];
  const ky = w[Work.Axis + 1];
  const kz = w[Work.Axis + 2];
  const dx = w[Work.Eye] - lx;
  const dy = w[Work.Eye + 1] - ly;
  const dz = w[Work.Eye + 2] - lz;

  const d = dx * kx + dy * ky + dz * kz;
  const radius = places[Upright.TieRodRadius];
  let rx = dx - d * kx;
  let ry = dy - d * ky;
  let rz = dz - d * kz;
  let r2 = rx * rx + ry * ry + rz * rz;
  if (!(r2 > ON_AXIS * ON_AXIS * radius * radius)) {
    // With the eye on the axis every way round is as near: take the one toward the front.
    rx = ON_AXIS * radius * (1 - kx * kx);
    ry = ON_AXIS * radius * (-kx * ky);
    rz = ON_AXIS * radius * (-kx * kz);
    r2 = rx * rx + ry * ry + rz * rz;
  }
  const sx = ky * rz - kz * ry;
  const sy = kz * rx - kx * rz;
  const sz = kx * ry - ky * rx;

  const along = places[Upright.TieRodAlong];
  const rod = c[Corner.RodLength];
  const over = 1 / r2;
  const rise2 = (along - d) * (along - d);
  let mu = 0.5 * over * (rise2 + radius * radius + r2 - rod * rod);
  const nu2 = radius * radius * over - mu * mu;
  let nu = 0;
  let gap = 0;
  if (nu2 > 0) {
    nu = c[Corner.RodBranch] * Math.sqrt(nu2);
  } else {
    // The nearest (μ > 0) or farthest the tab can be from the eye.
    const near = radius / Math.sqrt(r2);
    const short = Math.sqrt(r2) - (mu > 0 ? radius : -radius);
    mu = mu > 0 ? near : -near;
    gap = rod - Math.sqrt(rise2 + short * short);
  }
  const Rz = mu * rz + nu * sz;
  const Qz = mu * sz - nu * rz;
  w[Work.Radius] = mu * rx + nu * sx;
  w[Work.Radius + 1] = mu * ry + nu * sy;
  w[Work.Radius + 2] = Rz;
  w[Work.Across] = mu * sx - nu * rx;
  w[Work.Across + 1] = mu * sy - nu * ry;
  w[Work.Across + 2] = Qz;
  w[Work.TieRodGap] = gap;
  w[Work.LeverRod] = nu * r2;
  w[Work.Height] = lz + (places[Upright.Wheel] * kz + places[Upright.Wheel + 1] * Rz + places[Upright.Wheel + 2] * Qz);
}

/**
 * The rates of an upright that was turned, its axis's rates already there: it turns at ω = lean + s k, and
 * (T − I)·(P′ + ω × (T − P)) = 0 gives s. Where the axis turns in the upright, about a vector n square to k that is
 * fixed in both, lean has that turning added. Rigid-body kinematics.
 */
export function turnRates({ places, work: w }: ReadyCorner): void {
  const kx = w[Work.Axis];
  const ky = w[Work.Axis + 1];
  const kz = w[Work.Axis + 2];
  const Rx = w[Work.Radius];
  const Ry = w[Work.Radius + 1];
  const Rz = w[Work.Radius + 2];
  const Qx = w[Work.Across];
  const Qy = w[Work.Across + 1];
  const vz = w[Work.LowerRate + 2];
  let nx = w[Work.Lean];
  let ny = w[Work.Lean + 1];
  let nz = w[Work.Lean + 2];
  const bend = places[Upright.Bend];
  if (bend !== 0) {
    const ar = bend * places[Upright.Across];
    const aq = bend * places[Upright.Across + 1];
    nx += ar * Rx + aq * Qx;
    ny += ar * Ry + aq * Qy;
    nz += ar * Rz + aq * w[Work.Across + 2];
  }
  const along = places[Upright.TieRodAlong];
  const tx = along * kx + Rx;
  const ty = along * ky + Ry;
  const tz = along * kz + Rz;
  const pull =
    (w[Work.LowerRate] + (ny * tz - nz * ty)) * (w[Work.Lower] + tx - w[Work.Eye]) +
    (w[Work.LowerRate + 1] + (nz * tx - nx * tz)) * (w[Work.Lower + 1] + ty - w[Work.Eye + 1]) +
    (vz + (nx * ty - ny * tx)) * (w[Work.Lower + 2] + tz - w[Work.Eye + 2]);
  const lever = w[Work.LeverRod];
  const s = lever === 0 ? 0 : -pull / lever;
  const ox = nx + s * kx;
  const oy = ny + s * ky;
  const wk = places[Upright.Wheel];
  const wr = places[Upright.Wheel + 1];
  const wq = places[Upright.Wheel + 2];
  w[Work.Turn] = ox;
  w[Work.Turn + 1] = oy;
  w[Work.Turn + 2] = nz + s * kz;
  w[Work.HeightRate] = vz + (ox * (wk * ky + wr * Ry + wq * Qy) - oy * (wk * kx + wr * Rx + wq * Qx));
}

/**
 * Writes the upright of one corner into its constants from its drawn pose: the tie rod's place about the steering axis,
 * its length and branch, the wheel centre and the spin axis in the upright's own frame.
 *
 * @param eye the tie rod's inner eye as drawn, in the corner's frame, mm
 */
export function compileUpright(
  drawn: DrawnCorner,
  { lower, upper }: Joints,
  eye: Point,
  wheel: Refusal["wheel"],
  constants: Float64Array,
): Refusal | null {
  const size = length(minus(drawn.wheelCenter, eye));
  const upright = minus(upper, lower);
  const span = length(upright);
  if (!(span > NOTHING * size)) return { refused: "joints-coincide", wheel };
  const k = times(upright, 1 / span);
  const tab = minus(drawn.tieRodOuter, lower);
  const along = dot(tab, k);
  const radius = minus(tab, times(k, along));
  const rho2 = dot(radius, radius);
  if (!(rho2 > NOTHING * NOTHING * size * size)) return { refused: "tie-rod-on-steering-axis", wheel };
  const drawnRod = minus(drawn.tieRodOuter, eye);
  const rod = drawn.tieRodLength ?? length(drawnRod);
  if (!(rod > NOTHING * size)) return { refused: "tie-rod-has-no-length", wheel };
  const across = cross(k, radius);
  const lever = dot(across, drawnRod);
  if (!(Math.abs(lever) > NOTHING * rod * Math.sqrt(rho2))) return { refused: "drawn-on-dead-point", wheel };

  constants[Corner.Upright + Upright.TieRodAlong] = along;
  constants[Corner.Upright + Upright.TieRodRadius] = Math.sqrt(rho2);
  put(constants, Corner.Upright + Upright.Wheel, inFrame(minus(drawn.wheelCenter, lower), k, radius, across, rho2));
  put(constants, Corner.Upright + Upright.Spin, inFrame(drawnSpin(drawn), k, radius, across, rho2));
  constants[Corner.RodLength] = rod;
  constants[Corner.RodBranch] = lever > 0 ? 1 : -1;
  constants[Corner.Height] = drawn.wheelCenter.z;
  return null;
}

/** The spin axis as drawn, outboard, in the corner's frame. */
export function drawnSpin(drawn: Pick<DrawnCorner, "camber" | "toe">): Point {
  return {
    x: Math.cos(drawn.camber) * Math.sin(drawn.toe),
    y: Math.cos(drawn.camber) * Math.cos(drawn.toe),
    z: -Math.sin(drawn.camber),
  };
}

/** Components along k, R and Q = k × R, where |R|² = |Q|² = rho2. */
function inFrame(a: Point, k: Point, radius: Point, across: Point, rho2: number): Point {
  return { x: dot(a, k), y: dot(a, radius) / rho2, z: dot(a, across) / rho2 };
}
