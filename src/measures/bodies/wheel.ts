import { readSide } from "../../kinematics/face.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Place } from "../points.ts";
import type { Stick } from "./stick.ts";

/** Straight pieces that a wheel's round is drawn with. */
const PIECES = 24;

/** How far its round goes along the wheel's heading and upward, as an angle's cosine and sine, for each piece. */
const ROUND = Array.from({ length: PIECES + 1 }, (_, index) => {
  const angle = (2 * Math.PI * index) / PIECES;
  return [Math.cos(angle), Math.sin(angle)] as const;
});

/** A wheel's two edges and the treads between them, from the spin axis of a solved pose; one edge where it has no width. */
export function wheelSticks(pose: Float64Array, wheel: Wheel, radius: number, width: number): readonly Stick[] {
  const side = readSide(pose, 0, wheel);
  if (!side.closes) return [];
  const { spin: a, wheelCenter: c } = side;
  const level = Math.sqrt(a.x * a.x + a.y * a.y);
  // The heading, a × z, and what stands square to both: up, but for the camber.
  const ahead = [a.y / level, -a.x / level, 0] as const;
  const up = [ahead[1] * a.z, -ahead[0] * a.z, level] as const;
  const at = (cos: number, sin: number, out: number): Place => [
    c.x + radius * (cos * ahead[0] + sin * up[0]) + out * a.x,
    c.y + radius * (cos * ahead[1] + sin * up[1]) + out * a.y,
    c.z + radius * (cos * ahead[2] + sin * up[2]) + out * a.z,
  ];
  const edge = (out: number): Stick => ({ wheel, part: "wheel", places: ROUND.map(([cos, sin]) => at(cos, sin, out)) });
  const half = width / 2;
  if (half === 0) return [edge(0)];
  const treads = [0, 1, 2, 3].map((quarter): Stick => {
    const [cos = 0, sin = 0] = ROUND[(quarter * PIECES) / 4] ?? [];
    return { wheel, part: "wheel", places: [at(cos, sin, -half), at(cos, sin, half)] };
  });
  return [edge(-half), edge(half), ...treads];
}
