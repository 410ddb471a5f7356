declare module 'fmin/src/nelderMead.js' {
  export function nelderMead(
    loss: (x: number[]) => number,
    start: number[],
    parameters?: { maxIterations?: number; nonZeroDelta?: number; minErrorDelta?: number },
  ): { x: number[]; fx: number };
}
