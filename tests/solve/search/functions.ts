import type { Box, Cost, Spot } from "../../../src/solve/search/problem.ts";

/** A function with a known least value, and where it is taken. */
export interface Known {
  readonly name: string;
  readonly box: Box;
  readonly cost: Cost;
  readonly least: number;
  readonly at: readonly number[];
}

export function boxOf(from: readonly number[], to: readonly number[]): Box {
  return { low: Float64Array.from(from), high: Float64Array.from(to) };
}

function cube(many: number, half: number): Box {
  return boxOf(Array(many).fill(-half), Array(many).fill(half));
}

const sum = (x: Float64Array, of: (value: number, i: number) => number) =>
  x.reduce((total, value, i) => total + of(value, i), 0);

/**
 * Published test functions, quoted from memory: De Jong, An analysis of the behavior of a class of genetic adaptive systems
 * (1975), functions 1, 2 and 5's kin; Rastrigin, Griewank and Ackley as in Törn and Zilinskas, Global Optimization (1989).
 */
export const known: readonly Known[] = [
  {
    name: "sphere, 4 variables",
    box: cube(4, 5.12),
    cost: (x) => sum(x, (v) => v * v),
    least: 0,
    at: [0, 0, 0, 0],
  },
  {
    name: "Rosenbrock's valley",
    box: cube(2, 2.048),
    cost: ([x, y]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2,
    least: 0,
    at: [1, 1],
  },
  {
    name: "Rastrigin's waves",
    box: cube(2, 5.12),
    cost: (x) => 20 + sum(x, (v) => v * v - 10 * Math.cos(2 * Math.PI * v)),
    least: 0,
    at: [0, 0],
  },
  {
    name: "Ackley's well, 3 variables",
    box: cube(3, 32),
    cost: (x) =>
      20 +
      Math.E -
      20 * Math.exp(-0.2 * Math.sqrt(sum(x, (v) => v * v) / 3)) -
      Math.exp(sum(x, (v) => Math.cos(2 * Math.PI * v)) / 3),
    least: 0,
    at: [0, 0, 0],
  },
  {
    name: "the six-hump camel back",
    box: boxOf([-3, -2], [0.5, 2]),
    // Its two least places mirror each other: the box holds one of them.
    cost: ([x, y]) => (4 - 2.1 * x * x + x ** 4 / 3) * x * x + x * y + (4 * y * y - 4) * y * y,
    least: -1.0316285,
    at: [-0.0898, 0.7126],
  },
  {
    name: "a ridge, the largest of several slopes, at the box's side",
    box: boxOf([0, 0], [4, 4]),
    // Derived: |x - 1| and |y - 9|: y goes to the side, 4.
    cost: ([x, y]) => Math.max(Math.abs(x - 1) * 3, Math.abs(y - 9)),
    least: 5,
    at: [Number.NaN, 4],
  },
];

/** Runs a search to its end; counts the costs, and that none is asked for outside of the box. */
export function ran(run: Generator<Spot, Spot, void>): { readonly spot: Spot; readonly told: number } {
  let told = 0;
  let next = run.next();
  for (; !next.done; next = run.next()) told++;
  return { spot: next.value, told };
}
