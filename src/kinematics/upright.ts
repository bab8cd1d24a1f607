import type { Corner as DrawnCorner, Point } from "./drawn.ts";
import type { Joints, Refusal } from "./front.ts";
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
 * Rates: the upright turns at ω = lean + s k, and (T − I)·(P′ + ω × (T − P)) = 0 gives s. Where the axis turns in the
 * upright, about a vector n square to k that is fixed in both, lean has that turning added.
 * Circle meets sphere, and rigid-body kinematics; elementary geometry.
 *
 * @param places where the upright's places about its axis stand (Upright slots): constants, or scratch
 */
export function turnUpright(
  c: Float64Array,
  corner: number,
  places: Float64Array,
  place: number,
  w: Float64Array,
  at: number,
): void {
  const lx = w[at + Work.Lower];
  const ly = w[at + Work.Lower + 1];
  const lz = w[at + Work.Lower + 2];
  const kx = w[at + Work.Axis];
  const ky = w[at + Work.Axis + 1];
  const kz = w[at + Work.Axis + 2];
  const dx = w[at + Work.Eye] - lx;
  const dy = w[at + Work.Eye + 1] - ly;
  const dz = w[at + Work.Eye + 2] - lz;

  const d = dx * kx + dy * ky + dz * kz;
  const radius = places[place + Upright.TieRodRadius];
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

  const along = places[place + Upright.TieRodAlong];
  const rod = c[corner + Corner.RodLength];
  const over = 1 / r2;
  const rise2 = (along - d) * (along - d);
  let mu = 0.5 * over * (rise2 + radius * radius + r2 - rod * rod);
  const nu2 = radius * radius * over - mu * mu;
  let nu = 0;
  let gap = 0;
  if (nu2 > 0) {
    nu = c[corner + Corner.RodBranch] * Math.sqrt(nu2);
  } else {
    // The nearest (μ > 0) or farthest the tab can be from the eye.
    const near = radius / Math.sqrt(r2);
    const short = Math.sqrt(r2) - (mu > 0 ? radius : -radius);
    mu = mu > 0 ? near : -near;
    gap = rod - Math.sqrt(rise2 + short * short);
  }
  const Rx = mu * rx + nu * sx;
  const Ry = mu * ry + nu * sy;
  const Rz = mu * rz + nu * sz;
  const Qx = mu * sx - nu * rx;
  const Qy = mu * sy - nu * ry;
  const Qz = mu * sz - nu * rz;

  const vx = w[at + Work.LowerRate];
  const vy = w[at + Work.LowerRate + 1];
  const vz = w[at + Work.LowerRate + 2];
  let nx = w[at + Work.Lean];
  let ny = w[at + Work.Lean + 1];
  let nz = w[at + Work.Lean + 2];
  const bend = places[place + Upright.Bend];
  if (bend !== 0) {
    const ar = bend * places[place + Upright.Across];
    const aq = bend * places[place + Upright.Across + 1];
    nx += ar * Rx + aq * Qx;
    ny += ar * Ry + aq * Qy;
    nz += ar * Rz + aq * Qz;
  }
  const tx = along * kx + Rx;
  const ty = along * ky + Ry;
  const tz = along * kz + Rz;
  const pull =
    (vx + (ny * tz - nz * ty)) * (tx - dx) +
    (vy + (nz * tx - nx * tz)) * (ty - dy) +
    (vz + (nx * ty - ny * tx)) * (tz - dz);
  const lever = nu * r2;
  const s = lever === 0 ? 0 : -pull / lever;
  const ox = nx + s * kx;
  const oy = ny + s * ky;

  const wk = places[place + Upright.Wheel];
  const wr = places[place + Upright.Wheel + 1];
  const wq = places[place + Upright.Wheel + 2];
  const wx = wk * kx + wr * Rx + wq * Qx;
  const wy = wk * ky + wr * Ry + wq * Qy;

  w[at + Work.Radius] = Rx;
  w[at + Work.Radius + 1] = Ry;
  w[at + Work.Radius + 2] = Rz;
  w[at + Work.Across] = Qx;
  w[at + Work.Across + 1] = Qy;
  w[at + Work.Across + 2] = Qz;
  w[at + Work.Turn] = ox;
  w[at + Work.Turn + 1] = oy;
  w[at + Work.Turn + 2] = nz + s * kz;
  w[at + Work.TieRodGap] = gap;
  w[at + Work.Lever] = lever / rod;
  w[at + Work.Height] = lz + (wk * kz + wr * Rz + wq * Qz);
  w[at + Work.HeightRate] = vz + (ox * wy - oy * wx);
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
  corner: number,
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

  const place = corner + Corner.Upright;
  constants[place + Upright.TieRodAlong] = along;
  constants[place + Upright.TieRodRadius] = Math.sqrt(rho2);
  put(constants, place + Upright.Wheel, inFrame(minus(drawn.wheelCenter, lower), k, radius, across, rho2));
  put(constants, place + Upright.Spin, inFrame(drawnSpin(drawn), k, radius, across, rho2));
  constants[corner + Corner.RodLength] = rod;
  constants[corner + Corner.RodBranch] = lever > 0 ? 1 : -1;
  constants[corner + Corner.Height] = drawn.wheelCenter.z;
  return null;
}

/** The spin axis as drawn, outboard, in the corner's frame. */
export function drawnSpin(drawn: DrawnCorner): Point {
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
