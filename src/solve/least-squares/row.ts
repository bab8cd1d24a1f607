import type { Confidence } from "./confidence.ts";

/** What a row of derivatives says of a move: the sum of their products. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

/** The row of a covariance, or what it makes of a row of derivatives: Q a. */
export function through({ covariance }: Pick<Confidence, "covariance">, row: Float64Array): Float64Array {
  const many = row.length;
  return Float64Array.from(row, (_, j) => dot(covariance.subarray(j * many, (j + 1) * many), row));
}

/** The variance of what has these derivatives by the unknowns: aᵀ Q a, the law of propagation. */
export function varianceAlong(confidence: Pick<Confidence, "covariance">, row: Float64Array): number {
  return dot(row, through(confidence, row));
}
