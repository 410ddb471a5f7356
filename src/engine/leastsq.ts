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

/**
 * Weighted linear least squares by Householder reflections on columns scaled to unit length, which keeps
 * the digits that normal equations lose (any textbook of numerical linear algebra). Returns undefined where
 * the rows do not determine the parameters.
 */
export function leastSquares(rows: readonly Row[]): Solution | undefined {
  const n = rows[0]?.coefficients.length ?? 0;
  const m = rows.length;
  if (n === 0 || m < n) return undefined;
  // Column-major: one Float64Array a parameter, and one for the observed values.
  const columns = Array.from({ length: n }, (_, j) =>
    Float64Array.from(rows, (row) => (row.coefficients[j] ?? 0) / row.sd),
  );
  const observed = Float64Array.from(rows, (row) => row.value / row.sd);
  const scale = columns.map((column) => norm(column, 0) || 1);
  columns.forEach((column, j) => {
    for (let i = 0; i < m; i++) column[i] = at(column, i) / (scale[j] ?? 1);
  });

  const diagonal = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const column = columns[k] as Float64Array;
    const length = norm(column, k);
    if (length < 1e-13) return undefined;
    const pivot = at(column, k) > 0 ? -length : length;
    diagonal[k] = pivot;
    // The reflector is left in the column, from its k-th place on.
    column[k] = at(column, k) - pivot;
    const square = -pivot * at(column, k);
    for (const other of [...columns.slice(k + 1), observed]) {
      let dot = 0;
      for (let i = k; i < m; i++) dot += at(column, i) * at(other, i);
      const factor = dot / square;
      for (let i = k; i < m; i++) other[i] = at(other, i) - factor * at(column, i);
    }
  }

  const r = (i: number, j: number) => (i === j ? at(diagonal, i) : at(columns[j] as Float64Array, i));
  const x = backSubstitute(n, r, (i) => at(observed, i));
  const inverse = Array.from({ length: n }, (_, j) => backSubstitute(n, r, (i) => (i === j ? 1 : 0)));
  const covariance = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += (inverse[k]?.[i] ?? 0) * (inverse[k]?.[j] ?? 0);
      return sum / ((scale[i] ?? 1) * (scale[j] ?? 1));
    }),
  );
  const residual = norm(observed, n);
  return { x: x.map((value, j) => value / (scale[j] ?? 1)), covariance, chi2: residual * residual };
}

const at = (array: Float64Array, i: number): number => array[i] as number;

/** Euclidean length from place `from` on. */
function norm(array: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < array.length; i++) sum += at(array, i) ** 2;
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
    for (let j = i + 1; j < n; j++) sum -= r(i, j) * (x[j] ?? 0);
    x[i] = sum / r(i, i);
  }
  return x;
}
