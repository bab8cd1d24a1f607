/**
 * Distance between two straight segments, p + s·u and q + t·v with s and t in 0 … 1, six numbers each way in a buffer: start
 * and span. The two lines' nearest places are brought back onto the segments one after the other, as in Ericson,
 * Real-Time Collision Detection, 5.1.9 (form quoted from memory). In the buffers' unit.
 */
export function segmentToSegment(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const ux = a[i + 3];
  const uy = a[i + 4];
  const uz = a[i + 5];
  const vx = b[j + 3];
  const vy = b[j + 4];
  const vz = b[j + 5];
  const wx = a[i] - b[j];
  const wy = a[i + 1] - b[j + 1];
  const wz = a[i + 2] - b[j + 2];
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const determinant = uu * vv - uv * uv;
  let s = determinant > 1e-12 * uu * vv ? clamped((uv * vw - vv * uw) / determinant) : 0;
  let t = vv > 0 ? (uv * s + vw) / vv : 0;
  if (t < 0 || t > 1 || vv === 0) {
    t = clamped(t);
    s = uu > 0 ? clamped((uv * t - uw) / uu) : 0;
  }
  const x = wx + s * ux - t * vx;
  const y = wy + s * uy - t * vy;
  const z = wz + s * uz - t * vz;
  return Math.sqrt(x * x + y * y + z * z);
}

function clamped(value: number): number {
  return Math.min(Math.max(value, 0), 1);
}

/**
 * A ring about an axis, by its half section: a box from `inner` to `outer` in radius and `half` to each side along the
 * axis, its edges rounded to `round`. A wall of no thickness has inner and outer alike. mm.
 */
export interface Ring {
  readonly inner: number;
  readonly outer: number;
  readonly half: number;
  readonly round: number;
}

/** Distance of a place from a ring, mm, negative inside: `radius` from the axis and `along` it from the ring's middle. */
export function pointToRing(ring: Ring, radius: number, along: number): number {
  const r = Math.abs(radius - 0.5 * (ring.inner + ring.outer)) - (0.5 * (ring.outer - ring.inner) - ring.round);
  const z = Math.abs(along) - (ring.half - ring.round);
  const outside = r > 0 ? (z > 0 ? Math.sqrt(r * r + z * z) : r) : z > 0 ? z : Math.max(r, z);
  return outside - ring.round;
}

/** Places along the segment that are looked at first, and halvings (by the golden section) of the way between two of them. */
const PLACES = 12;
const ROUNDS = 28;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** What is worked with along a line past a ring; numbers that are handed on in a buffer are not made anew each time. */
const enum Line {
  /** The square of the radius is R0 + t (R1 + t R2), the place along the axis Z0 + t Z1. */
  R0,
  R1,
  R2,
  Z0,
  Z1,
  T,
  Distance,
  /** How long the segment is, and the distance above which none is of use. */
  Reach,
  Goal,
  Count,
}

/** The room that segmentToRing works in: one for all that is measured one after the other. */
export function lineRoom(): Float64Array {
  return new Float64Array(Line.Count);
}

/** Writes the distance from the ring at T. */
function measure(line: Float64Array, ring: Ring): void {
  const t = line[Line.T];
  const square = line[Line.R0] + t * (line[Line.R1] + t * line[Line.R2]);
  line[Line.Distance] = pointToRing(ring, Math.sqrt(Math.max(square, 0)), line[Line.Z0] + t * line[Line.Z1]);
}

/**
 * Distance of a segment (start and span in a buffer) from a ring about the unit axis a through c, three numbers each at
 * `middle` and `axis` of another buffer; mm, negative inside. The place along the axis is linear and the square of the
 * radius quadratic in the place along the segment. Some places are looked at, and each stretch between two of them that
 * could hold a nearer one is closed in on: no place is nearer than its neighbour's distance less the way between them. Where
 * nothing on the segment can be nearer than `enough`, some distance above that is good enough. `line` from lineRoom.
 */
export function segmentToRing(
  segment: Float64Array,
  i: number,
  ring: Ring,
  buffer: Float64Array,
  middle: number,
  axis: number,
  line: Float64Array,
  enough = Number.POSITIVE_INFINITY,
): number {
  const ax = buffer[axis];
  const ay = buffer[axis + 1];
  const az = buffer[axis + 2];
  const px = segment[i] - buffer[middle];
  const py = segment[i + 1] - buffer[middle + 1];
  const pz = segment[i + 2] - buffer[middle + 2];
  const ux = segment[i + 3];
  const uy = segment[i + 4];
  const uz = segment[i + 5];
  const z0 = px * ax + py * ay + pz * az;
  const z1 = ux * ax + uy * ay + uz * az;
  line[Line.R0] = px * px + py * py + pz * pz - z0 * z0;
  line[Line.R1] = 2 * (px * ux + py * uy + pz * uz - z0 * z1);
  line[Line.R2] = ux * ux + uy * uy + uz * uz - z1 * z1;
  line[Line.Z0] = z0;
  line[Line.Z1] = z1;

  const reach = Math.sqrt(ux * ux + uy * uy + uz * uz);
  line[Line.Reach] = reach;
  line[Line.T] = 0.5;
  measure(line, ring);
  if (line[Line.Distance] - 0.5 * reach >= enough) return line[Line.Distance];
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= PLACES; k++) {
    line[Line.T] = k / PLACES;
    measure(line, ring);
    least = Math.min(least, line[Line.Distance]);
  }
  const stretch = reach / PLACES;
  if (least - 0.5 * stretch >= enough) return least;
  let before = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= PLACES; k++) {
    line[Line.T] = k / PLACES;
    measure(line, ring);
    const here = line[Line.Distance];
    line[Line.Goal] = Math.min(least, enough);
    if (0.5 * (before + here - stretch) < line[Line.Goal]) {
      closeIn(line, ring, k - 1);
      least = Math.min(least, line[Line.Distance]);
    }
    before = here;
  }
  return least;
}

/**
 * Writes the least distance in one stretch of a segment, closed in on by the golden section: one valley is taken for
 * granted. Given up as soon as nothing in what is left of it can be nearer than the goal.
 */
function closeIn(line: Float64Array, ring: Ring, stretch: number): void {
  const reach = line[Line.Reach];
  const goal = line[Line.Goal];
  let low = stretch / PLACES;
  let high = (stretch + 1) / PLACES;
  let kept = low + (1 - GOLDEN) * (high - low);
  line[Line.T] = kept;
  measure(line, ring);
  let least = line[Line.Distance];
  for (let round = 0; round < ROUNDS && least - (high - low) * reach < goal; round++) {
    const t = low + high - kept;
    line[Line.T] = t;
    measure(line, ring);
    const there = line[Line.Distance];
    if (there < least) {
      if (t < kept) high = kept;
      else low = kept;
      kept = t;
      least = there;
    } else if (t < kept) low = t;
    else high = t;
  }
  line[Line.Distance] = least;
}
