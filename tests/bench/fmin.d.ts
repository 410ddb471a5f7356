declare module 'fmin' {
  export function nelderMead(
    loss: (x: number[]) => number,
    start: number[],
    parameters?: { maxIterations?: number; nonZeroDelta?: number; minErrorDelta?: number },
  ): { x: number[]; fx: number };
}
