import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, length, minus, plus, times } from "../../kinematics/math.ts";
import type { Carry } from "./redraw.ts";

/** One thing that holds the upright: nothing when it holds, else by how much it does not, mm. */
export type Hold = (carry: Carry) => number;

/** Six numbers: a shift, mm, and a turn, rad about each axis. */
type Move = readonly number[];

/** Shift by the first three, after a turn by the other three about a place (Rodrigues' formula). */
function carryOf(move: Move, about: Point, before: Carry): Carry {
  const [tx = 0, ty = 0, tz = 0, wx = 0, wy = 0, wz = 0] = move;
  const w = { x: wx, y: wy, z: wz };
  const angle = length(w);
  const k = angle === 0 ? w : times(w, 1 / angle);
  const turned = (d: Point) =>
    plus(
      plus(times(d, Math.cos(angle)), times(cross(k, d), Math.sin(angle))),
      times(k, dot(k, d) * (1 - Math.cos(angle))),
    );
  return {
    place: (p) => plus(plus(turned(minus(before.place(p), about)), about), { x: tx, y: ty, z: tz }),
    turn: (d) => turned(before.turn(d)),
  };
}

/** The x of A x = b by elimination with the largest pivots; null where A is singular. A row of `rows` is one of A and of b. */
function eliminated(rows: readonly (readonly number[])[]): readonly number[] | null {
  const a = rows.map((row) => [...row]);
  const n = a.length;
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let row = column + 1; row < n; row++) if (Math.abs(a[row][column]) > Math.abs(a[best][column])) best = row;
    [a[column], a[best]] = [a[best], a[column]];
    const pivot = a[column][column];
    if (!(Math.abs(pivot) > 1e-9)) return null;
    for (let row = 0; row < n; row++) {
      if (row === column) continue;
      const share = a[row][column] / pivot;
      for (let at = column; at <= n; at++) a[row][at] -= share * a[column][at];
    }
  }
  return a.map((row, i) => row[n] / row[i]);
}

/** Steps for slopes, mm and rad: central differences of smooth distances are good to their square. */
const steps: Move = [1e-3, 1e-3, 1e-3, 1e-5, 1e-5, 1e-5];
const rounds = 30;
const closes = 1e-9;

/**
 * Where an upright stands once six things hold it anew, from where it stood: Newton's method on its six freedoms, about its
 * wheel centre. Null where they cannot all hold near there. `before` is where it is from its drawing.
 */
export function refitted(before: Carry, wheelCenter: Point, holds: readonly Hold[]): Carry | null {
  const about = before.place(wheelCenter);
  let move: Move = [0, 0, 0, 0, 0, 0];
  for (let round = 0; round < rounds; round++) {
    const at = (other: Move) => holds.map((hold) => hold(carryOf(other, about, before)));
    const off = at(move);
    if (off.every((each) => Math.abs(each) < closes)) return carryOf(move, about, before);
    const slopes = steps.map((step, i) => {
      const nudged = (by: number) => at(move.map((each, j) => (i === j ? each + by : each)));
      const [up, down] = [nudged(step), nudged(-step)];
      return up.map((each, row) => (each - down[row]) / (2 * step));
    });
    const by = eliminated(off.map((each, row) => [...slopes.map((column) => column[row]), -each]));
    if (by === null) return null;
    move = move.map((each, i) => each + by[i]);
  }
  return null;
}
