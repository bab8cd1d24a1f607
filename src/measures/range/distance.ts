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

/**
 * Distance of a segment (start and span in a buffer) from a ring about the unit axis a through c, three numbers each at
 * `middle` and `axis` of another buffer; mm, negative inside. The place along the axis is linear and the square of the
 * radius quadratic in the place along the segment. Some places are looked at, and each stretch between two of them that
 * could hold a nearer one is closed in on: no place is nearer than its neighbour's distance less the way between them. Where
 * nothing on the segment can be nearer than `enough`, some distance above that is good enough.
 */
export function segmentToRing(
  segment: Float64Array,
  i: number,
  ring: Ring,
  buffer: Float64Array,
  middle: number,
  axis: number,
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
  const r0 = px * px + py * py + pz * pz - z0 * z0;
  const r1 = 2 * (px * ux + py * uy + pz * uz - z0 * z1);
  const r2 = ux * ux + uy * uy + uz * uz - z1 * z1;
  const at = (t: number) => pointToRing(ring, Math.sqrt(Math.max(r0 + t * (r1 + t * r2), 0)), z0 + t * z1);

  const reach = Math.sqrt(ux * ux + uy * uy + uz * uz);
  const middlemost = at(0.5);
  if (middlemost - 0.5 * reach >= enough) return middlemost;
  let least = at(0);
  for (let k = 1; k <= PLACES; k++) least = Math.min(least, at(k / PLACES));
  const stretch = reach / PLACES;
  if (least - 0.5 * stretch >= enough) return least;
  let before = at(0);
  for (let k = 1; k <= PLACES; k++) {
    const here = at(k / PLACES);
    const goal = Math.min(least, enough);
    if (0.5 * (before + here - stretch) < goal)
      least = Math.min(least, nearest(at, (k - 1) / PLACES, k / PLACES, reach, goal));
    before = here;
  }
  return least;
}

/**
 * The least of a distance between two places, closed in on by the golden section: one valley is taken for granted. Given up
 * as soon as nothing in what is left of the segment, all of which is `reach` long, can be nearer than `goal`.
 */
function nearest(at: (t: number) => number, from: number, to: number, reach: number, goal: number): number {
  let [low, high] = [from, to];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = at(left);
  let atRight = at(right);
  for (let round = 0; round < ROUNDS; round++) {
    if (Math.min(atLeft, atRight) - (high - low) * reach >= goal) break;
    if (atLeft < atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - GOLDEN * (high - low);
      atLeft = at(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + GOLDEN * (high - low);
      atRight = at(right);
    }
  }
  return Math.min(atLeft, atRight);
}
