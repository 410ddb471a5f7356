/** One observation of a linear model: `coefficients · x = value`, with the standard deviation of `value`. */
export interface Row {
  readonly coefficients: readonly number[];
  readonly value: number;
  readonly sd: number;
}

export interface Solution {
  /** The fitted parameters. */
  readonly x: readonly number[];
  /** Their covariance, for the given standard deviations (not rescaled by the residuals). */
  readonly covariance: readonly (readonly number[])[];
  /** Weighted sum of squared residuals. */
  readonly chi2: number;
}

/** A column this short against its own scale carries no information. */
const SINGULAR = 1e-13;

/**
 * Weighted linear least squares by Householder reflections on columns scaled to unit length, which keeps
 * the digits that normal equations lose (any textbook of numerical linear algebra). Returns undefined where
 * the rows do not determine the parameters.
 */
export function leastSquares(rows: readonly Row[]): Solution | undefined {
  const n = rows[0]?.coefficients.length ?? 0;
  if (n === 0 || rows.length < n) return undefined;
  // One column a parameter, and the observed values as the last.
  const columns = Array.from({ length: n + 1 }, () => new Float64Array(rows.length));
  rows.forEach(({ coefficients, value, sd }, i) => {
    for (let j = 0; j < n; j++) (columns[j] as Float64Array)[i] = (coefficients[j] as number) / sd;
    (columns[n] as Float64Array)[i] = value / sd;
  });
  const scale = columns.slice(0, n).map((column) => {
    const length = norm(column, 0) || 1;
    for (let i = 0; i < column.length; i++) column[i] = (column[i] as number) / length;
    return length;
  });
  const diagonal = triangulate(columns, n);
  if (!diagonal) return undefined;

  const r = (i: number, j: number) => (i === j ? (diagonal[i] as number) : at(columns, j, i));
  const x = backSubstitute(n, r, (i) => at(columns, n, i));
  const inverse = scale.map((_, j) => backSubstitute(n, r, (i) => (i === j ? 1 : 0)));
  const covariance = scale.map((si, i) =>
    scale.map((sj, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += at(inverse, k, i) * at(inverse, k, j);
      return sum / (si * sj);
    }),
  );
  const residual = norm(columns[n] as Float64Array, n);
  return { x: x.map((value, j) => value / (scale[j] as number)), covariance, chi2: residual * residual };
}

/** Reflects each column in turn onto its axis, the others with it; gives the triangle's diagonal. */
function triangulate(columns: readonly Float64Array[], n: number): Float64Array | undefined {
  const diagonal = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const column = columns[k] as Float64Array;
    const length = norm(column, k);
    if (length < SINGULAR) return undefined;
    const head = column[k] as number;
    const pivot = head > 0 ? -length : length;
    diagonal[k] = pivot;
    // The reflector is left in the column, from its k-th place on.
    column[k] = head - pivot;
    const square = -pivot * (head - pivot);
    for (let j = k + 1; j < columns.length; j++) {
      const other = columns[j] as Float64Array;
      let dot = 0;
      for (let i = k; i < column.length; i++) dot += (column[i] as number) * (other[i] as number);
      const factor = dot / square;
      for (let i = k; i < column.length; i++)
        other[i] = (other[i] as number) - factor * (column[i] as number);
    }
  }
  return diagonal;
}

const at = (columns: readonly ArrayLike<number>[], j: number, i: number): number =>
  (columns[j] as ArrayLike<number>)[i] as number;

/** Euclidean length from place `from` on. */
function norm(column: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < column.length; i++) sum += (column[i] as number) ** 2;
  return Math.sqrt(sum);
}

function backSubstitute(
  n: number,
  r: (i: number, j: number) => number,
  right: (i: number) => number,
): number[] {
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = right(i);
    for (let j = i + 1; j < n; j++) sum -= r(i, j) * (x[j] as number);
    x[i] = sum / r(i, i);
  }
  return x;
}
