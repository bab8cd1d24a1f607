import { CircleSlot, circleAbout, putCircle } from "../circle.ts";
import type { Point, Relay } from "../drawn.ts";
import type { InnerEyes, Refusal } from "../front.ts";
import { cross, dot, length, minus, NOTHING, put, times } from "../math.ts";
import { Work } from "../slots.ts";

/**
 * A pitman arm, turned by the steering box, and an idler arm carry the centre link, and it carries both inner eyes.
 *
 *     pitman  P(δ) = C + u cos δ + v sin δ            δ = column × turn
 *     idler   J(φ) = Cₓ + uₓ cos φ + vₓ sin φ,        |J − P| = s, the centre link, fixes φ (circle meets sphere)
 *     eye     P + f (J − P) + g (n × (J − P)) + h n   n the pitman's axis
 * With the two axes parallel, J − P keeps its share along n and only turns about n, so f, g and h are constant; what is
 * known to be constant is put in for what was worked out, since eyes may stand much farther off than the link is long. With
 * axes that are not, a link on ball joints may roll about its own line: then only eyes on that line have a place
 * (g = h = 0), and others are refused. All in the vehicle's frame. Elementary geometry.
 */
const enum Gear {
  Pitman = 0,
  Idler = 9,
  Axis = 18,
  Turn = 21,
  Link = 22,
  Branch = 23,
  IdlerRadius2 = 24,
  /** f, g and h of each eye. */
  LeftEye = 25,
  RightEye = 28,
  /** The link's shares square to n and along it; both nought where the axes are not parallel. */
  Flat = 31,
  Rise = 32,
}

/** Share of the link's length that an eye may stand off its line while it still counts as on it. */
const ON_LINE = 1e-6;
/**
 * Sine of the angle between the link and the pitman's axis below which eyes off its line have no place: J − P then says
 * too little of which way the link has turned. At this, 1e-16 of a metre is still less than 1e-9 mm of an eye.
 */
const ALONG = 0.02;
/** Sine of the angle between two axes that still count as parallel. */
const PARALLEL = 1e-12;

/** Writes the mechanism's constants, or says why it is none. */
export function compileRelay(relay: Relay, own: Float64Array): Refusal | null {
  const refuse = (refused: Refusal["refused"]): Refusal => ({ refused, wheel: null });
  const pitman = circleAbout(relay.pitmanPivot, relay.pitmanAxis, relay.pitmanJoint);
  if (pitman === "no-axis") return refuse("pitman-has-no-axis");
  if (pitman === "on-axis") return refuse("pitman-joint-on-its-axis");
  const idler = circleAbout(relay.idlerPivot, relay.idlerAxis, relay.idlerJoint);
  if (idler === "no-axis") return refuse("idler-has-no-axis");
  if (idler === "on-axis") return refuse("idler-joint-on-its-axis");

  const n = times(relay.pitmanAxis, 1 / length(relay.pitmanAxis));
  const link = minus(relay.idlerJoint, relay.pitmanJoint);
  const span = length(link);
  const branch = -dot(idler.v, minus(relay.pitmanJoint, idler.center));
  const side = cross(n, link);
  const flat2 = dot(side, side);
  // A link of no length is in line too: its pitman's joint is the idler's, and u is square to v.
  if (!(Math.abs(branch) > NOTHING * dot(idler.u, idler.u))) return refuse("centre-link-in-line");

  const parallel = length(cross(n, relay.idlerAxis)) <= PARALLEL * length(relay.idlerAxis);
  if (parallel && !(flat2 > ALONG * ALONG * span * span)) return refuse("centre-link-along-shaft");
  const eyes: Point[] = [];
  for (const eye of [relay.leftEye, relay.rightEye]) {
    const arm = minus(eye, relay.pitmanJoint);
    const along = parallel ? dot(minus(arm, times(n, dot(arm, n))), link) / flat2 : dot(arm, link) / (span * span);
    const off = minus(arm, times(link, along));
    if (!parallel && length(off) > ON_LINE * span) return refuse("centre-link-twists");
    eyes.push(parallel ? { x: along, y: dot(arm, side) / flat2, z: dot(off, n) } : { x: along, y: 0, z: 0 });
  }

  putCircle(own, Gear.Pitman, pitman);
  putCircle(own, Gear.Idler, idler);
  put(own, Gear.Axis, n);
  own[Gear.Turn] = relay.turn;
  own[Gear.Link] = span;
  own[Gear.Branch] = branch > 0 ? 1 : -1;
  own[Gear.IdlerRadius2] = dot(idler.u, idler.u);
  put(own, Gear.LeftEye, eyes[0]);
  put(own, Gear.RightEye, eyes[1]);
  own[Gear.Flat] = parallel ? Math.sqrt(flat2) : 0;
  own[Gear.Rise] = parallel ? dot(link, n) : 0;
  return null;
}

/** Both inner eyes at a column angle, rad, positive as the steering wheel is turned left. See InnerEyes. */
export const relayEyes: InnerEyes = (own, input, left, right) => {
  const cos = Math.cos(input * own[Gear.Turn]);
  const sin = Math.sin(input * own[Gear.Turn]);
  const px = own[Gear.Pitman] + (own[Gear.Pitman + CircleSlot.U] * cos + own[Gear.Pitman + CircleSlot.V] * sin);
  const py =
    own[Gear.Pitman + 1] + (own[Gear.Pitman + CircleSlot.U + 1] * cos + own[Gear.Pitman + CircleSlot.V + 1] * sin);
  const pz =
    own[Gear.Pitman + 2] + (own[Gear.Pitman + CircleSlot.U + 2] * cos + own[Gear.Pitman + CircleSlot.V + 2] * sin);

  const ux = own[Gear.Idler + CircleSlot.U];
  const uy = own[Gear.Idler + CircleSlot.U + 1];
  const uz = own[Gear.Idler + CircleSlot.U + 2];
  const vx = own[Gear.Idler + CircleSlot.V];
  const vy = own[Gear.Idler + CircleSlot.V + 1];
  const vz = own[Gear.Idler + CircleSlot.V + 2];
  const ex = px - own[Gear.Idler];
  const ey = py - own[Gear.Idler + 1];
  const ez = pz - own[Gear.Idler + 2];
  const a = ux * ex + uy * ey + uz * ez;
  const b = vx * ex + vy * ey + vz * ez;
  const reach2 = own[Gear.IdlerRadius2] + (ex * ex + ey * ey + ez * ez);
  const link = own[Gear.Link];
  const h = a * a + b * b;
  let d = 0.5 * (reach2 - link * link);
  const q2 = h - d * d;
  let q = 0;
  let gap = 0;
  if (q2 > 0) {
    q = own[Gear.Branch] * Math.sqrt(q2);
  } else {
    // The nearest (d > 0) or farthest the idler's joint can be.
    d = d > 0 ? Math.sqrt(h) : -Math.sqrt(h);
    gap = link - Math.sqrt(Math.max(reach2 - 2 * d, 0));
  }
  const cosJ = (a * d - b * q) / h;
  const sinJ = (b * d + a * q) / h;
  let lx = ux * cosJ + vx * sinJ - ex;
  let ly = uy * cosJ + vy * sinJ - ey;
  let lz = uz * cosJ + vz * sinJ - ez;

  const nx = own[Gear.Axis];
  const ny = own[Gear.Axis + 1];
  const nz = own[Gear.Axis + 2];
  const flat = own[Gear.Flat];
  if (flat > 0) {
    const found = lx * nx + ly * ny + lz * nz;
    const fx = lx - found * nx;
    const fy = ly - found * ny;
    const fz = lz - found * nz;
    const exact = flat / Math.sqrt(fx * fx + fy * fy + fz * fz);
    const rise = own[Gear.Rise];
    lx = fx * exact + rise * nx;
    ly = fy * exact + rise * ny;
    lz = fz * exact + rise * nz;
  }
  for (let side = 0; side < 2; side++) {
    const eye = side === 0 ? Gear.LeftEye : Gear.RightEye;
    const f = own[eye];
    const g = own[eye + 1];
    const up = own[eye + 2];
    const w = side === 0 ? left : right;
    const y = py + (f * ly + g * (nz * lx - nx * lz) + up * ny);
    w[Work.Eye] = px + (f * lx + g * (ny * lz - nz * ly) + up * nx);
    w[Work.Eye + 1] = side === 0 ? y : -y;
    w[Work.Eye + 2] = pz + (f * lz + g * (nx * ly - ny * lx) + up * nz);
    w[Work.CentreLinkGap] = gap;
  }
};
