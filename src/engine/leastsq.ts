/** One observation of a linear model: `coefficients · x = value`, with the standard deviation of `value`. */
export interface Row {
  readonly coefficients: ArrayLike<number>;
  readonly value: number;
  readonly sd: number;
}

export interface Solution {
  /** The fitted parameters. */
  readonly x: ArrayLike<number>;
  /** Their covariance, for the given standard deviations (not rescaled by the residuals). */
  readonly covariance: readonly ArrayLike<number>[];
  /** Weighted sum of squared residuals. */
  readonly chi2: number;
}

/** A column this short, compared with its own scale, carries no information. */
const SINGULAR = 1e-13;

/** As `Equations`, for rows that are solved once. */
export function leastSquares(rows: readonly Row[]): Solution | undefined {
  const equations = new Equations(rows[0]?.coefficients.length ?? 0, rows.length);
  for (const { coefficients, value, sd } of rows) equations.add(coefficients, value, sd);
  return equations.solve() ? equations.solution() : undefined;
}

/**
 * Weighted linear least squares by Householder reflections on columns scaled to unit length, which keeps the
 * digits that normal equations lose (any textbook of numerical linear algebra). A fit solves much the same rows several
 * times, and a decision makes many fits: making room for them anew each time took as long as solving them.
 */
export class Equations {
  /** Column by column, each with room for `most` rows; the observed values last. */
  private readonly a: Float64Array;
  private readonly scale: Float64Array;
  private readonly inverse: Float64Array;
  private readonly found: Float64Array;
  private rows = 0;

  /** `unknowns`: how many parameters; `most`: how many rows it has room for. */
  constructor(
    private readonly unknowns: number,
    private readonly most: number,
  ) {
    this.a = new Float64Array((unknowns + 1) * most);
    this.scale = new Float64Array(unknowns);
    this.inverse = new Float64Array(unknowns * unknowns);
    this.found = new Float64Array(unknowns);
  }

  clear(): void {
    this.rows = 0;
  }

  add(coefficients: ArrayLike<number>, value: number, sd: number): void {
    const { a, unknowns, most } = this;
    const i = this.rows++;
    for (let j = 0; j < unknowns; j++) a[j * most + i] = (coefficients[j] as number) / sd;
    a[unknowns * most + i] = value / sd;
  }

  /** Solves the rows, which are used up by it. False if they do not determine the parameters. */
  solve(): boolean {
    const { a, scale, inverse, found, unknowns: n, most, rows } = this;
    if (n === 0 || rows < n) return false;
    for (let j = 0; j < n; j++) {
      const [from, to] = [j * most, j * most + rows];
      const length = norm(a, from, to) || 1;
      scale[j] = length;
      for (let i = from; i < to; i++) a[i] = (a[i] as number) / length;
    }
    if (!triangulate(a, rows, n, most)) return false;

    invertTriangle(a, n, most, inverse);
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += (inverse[i * n + k] as number) * (a[n * most + k] as number);
      found[i] = sum / (scale[i] as number);
    }
    return true;
  }

  /** The parameters as last solved; the next time they are written over. */
  get x(): ArrayLike<number> {
    return this.found;
  }

  /** Weighted sum of squared residuals, as last solved. */
  get chi2(): number {
    const { a, unknowns: n, most, rows } = this;
    return norm(a, n * most + n, n * most + rows) ** 2;
  }

  /** As last solved, to keep. */
  solution(): Solution {
    return { x: this.found.slice(), covariance: covarianceOf(this.inverse, this.scale), chi2: this.chi2 };
  }
}

/** From the inverse of the triangle, and the lengths that its columns had. */
function covarianceOf(inverse: Float64Array, scale: Float64Array): Float64Array[] {
  const n = scale.length;
  const covariance = Array.from({ length: n }, () => new Float64Array(n));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += (inverse[i * n + k] as number) * (inverse[j * n + k] as number);
      sum /= (scale[i] as number) * (scale[j] as number);
      (covariance[i] as Float64Array)[j] = sum;
      (covariance[j] as Float64Array)[i] = sum;
    }
  }
  return covariance;
}

/** Reflects each column onto its axis, and the columns after it; false if nothing is left of one. */
function triangulate(a: Float64Array, rows: number, n: number, most: number): boolean {
  for (let k = 0; k < n; k++) {
    const [from, to] = [k * most + k, k * most + rows];
    const length = norm(a, from, to);
    if (length < SINGULAR) return false;
    const head = a[from] as number;
    const pivot = head > 0 ? -length : length;
    a[from] = head - pivot;
    const square = -pivot * (head - pivot);
    for (let j = k + 1; j <= n; j++) {
      const shift = (j - k) * most;
      let dot = 0;
      for (let i = from; i < to; i++) dot += (a[i] as number) * (a[i + shift] as number);
      const factor = dot / square;
      for (let i = from; i < to; i++) a[i + shift] = (a[i + shift] as number) - factor * (a[i] as number);
    }
    a[from] = pivot;
  }
  return true;
}

/** Inverts the upper triangle left in the first `n` columns into `inverse`, row after row. */
function invertTriangle(a: Float64Array, n: number, most: number, inverse: Float64Array): void {
  for (let j = 0; j < n; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= (a[k * most + i] as number) * (inverse[k * n + j] as number);
      inverse[i * n + j] = sum / (a[i * most + i] as number);
    }
  }
}

/** Euclidean length of a stretch. */
function norm(a: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += (a[i] as number) ** 2;
  return Math.sqrt(sum);
}
