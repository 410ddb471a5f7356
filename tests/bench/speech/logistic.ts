/** The weights of a logistic curve, by Newton's method with a little shrinkage. */
export function fitted(rows: readonly { x: readonly number[]; right: boolean }[]): number[] {
  const size = rows[0]?.x.length ?? 0;
  let weights = new Array<number>(size).fill(0);
  for (let step = 0; step < 40; step++) {
    const gradient = weights.map((w) => -0.05 * w);
    const curvature = weights.map((_, i) => weights.map((__, j) => (i === j ? 0.05 : 0)));
    for (const { x, right } of rows) {
      const p = 1 / (1 + Math.exp(-x.reduce((sum, value, i) => sum + value * (weights[i] as number), 0)));
      for (let i = 0; i < size; i++) {
        gradient[i] = (gradient[i] as number) + ((right ? 1 : 0) - p) * (x[i] as number);
        const row = curvature[i] as number[];
        for (let j = 0; j < size; j++)
          row[j] = (row[j] as number) + p * (1 - p) * (x[i] as number) * (x[j] as number);
      }
    }
    const change = solve(curvature, gradient);
    weights = weights.map((w, i) => w + (change[i] as number));
  }
  return weights;
}

/** Gauss elimination; the matrix is positive definite. */
function solve(matrix: number[][], right: number[]): number[] {
  const a = matrix.map((row, i) => [...row, right[i] as number]);
  a.forEach((row, i) => {
    const pivot = row[i] as number;
    for (let j = 0; j <= a.length; j++) row[j] = (row[j] as number) / pivot;
    for (const other of a) {
      if (other === row) continue;
      const factor = other[i] as number;
      for (let j = 0; j <= a.length; j++) other[j] = (other[j] as number) - factor * (row[j] as number);
    }
  });
  return a.map((row) => row[a.length] as number);
}
