/** One observation of a linear model: `coefficients · x = value`, with the standard deviation of `value`. */
export interface Row {
  readonly coefficients: readonly number[];
  readonly value: number;
  readonly sd: number;
}

export interface Solution {
  /** The fitted parameters. */
  readonly x: readonly number[];
  /** Their covariance, for the given standard deviations (not rescaled by the residuals). Worked out each time it is asked for. */
  readonly covariance: readonly (readonly number[])[];
  /** Weighted sum of squared residuals. */
  readonly chi2: number;
}

/** A column this short, compared with its own scale, carries no information. */
const SINGULAR = 1e-13;

/**
 * Weighted linear least squares by Householder reflections on columns scaled to unit length, which keeps the
 * digits that normal equations lose (any textbook of numerical linear algebra). Returns undefined if the rows
 * do not determine the parameters.
 */
export function leastSquares(rows: readonly Row[]): Solution | undefined {
  const m = rows.length;
  const n = rows[0]?.coefficients.length ?? 0;
  if (n === 0 || m < n) return undefined;
  // Column by column, with the observed values last.
  const a = new Float64Array((n + 1) * m);
  for (let i = 0; i < m; i++) {
    const { coefficients, value, sd } = rows[i] as Row;
    for (let j = 0; j < n; j++) a[j * m + i] = (coefficients[j] as number) / sd;
    a[n * m + i] = value / sd;
  }
  const scale = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const length = norm(a, j * m, j * m + m) || 1;
    scale[j] = length;
    for (let i = j * m; i < j * m + m; i++) a[i] = (a[i] as number) / length;
  }
  if (!triangulate(a, m, n)) return undefined;

  const inverse = inverseOfTriangle(a, m, n);
  const x = new Array<number>(n).fill(0);
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let k = i; k < n; k++) sum += (inverse[i * n + k] as number) * (a[n * m + k] as number);
    x[i] = sum / (scale[i] as number);
  }
  return {
    x,
    chi2: norm(a, n * m + n, (n + 1) * m) ** 2,
    // Most solutions are only a step to the next one, and nobody asks how sure they are.
    get covariance() {
      return covarianceOf(inverse, scale);
    },
  };
}

/** From the inverse of the triangle, and the lengths that its columns had. */
function covarianceOf(inverse: Float64Array, scale: Float64Array): number[][] {
  const n = scale.length;
  const covariance = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += (inverse[i * n + k] as number) * (inverse[j * n + k] as number);
      sum /= (scale[i] as number) * (scale[j] as number);
      (covariance[i] as number[])[j] = sum;
      (covariance[j] as number[])[i] = sum;
    }
  }
  return covariance;
}

/** Reflects each column onto its axis, and the columns after it; false if nothing is left of one. */
function triangulate(a: Float64Array, m: number, n: number): boolean {
  for (let k = 0; k < n; k++) {
    const [from, to] = [k * m + k, (k + 1) * m];
    const length = norm(a, from, to);
    if (length < SINGULAR) return false;
    const head = a[from] as number;
    const pivot = head > 0 ? -length : length;
    a[from] = head - pivot;
    const square = -pivot * (head - pivot);
    for (let j = k + 1; j <= n; j++) {
      const shift = (j - k) * m;
      let dot = 0;
      for (let i = from; i < to; i++) dot += (a[i] as number) * (a[i + shift] as number);
      const factor = dot / square;
      for (let i = from; i < to; i++) a[i + shift] = (a[i + shift] as number) - factor * (a[i] as number);
    }
    a[from] = pivot;
  }
  return true;
}

/** Inverse of the upper triangle left in the first `n` columns, row after row. */
function inverseOfTriangle(a: Float64Array, m: number, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= (a[k * m + i] as number) * (inverse[k * n + j] as number);
      inverse[i * n + j] = sum / (a[i * m + i] as number);
    }
  }
  return inverse;
}

/** Euclidean length of a stretch. */
function norm(a: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += (a[i] as number) ** 2;
  return Math.sqrt(sum);
}
