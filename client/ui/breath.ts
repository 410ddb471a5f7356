/** Lets the browser draw and answer before the work goes on: a long piece of it leaves a slow phone dead under the thumb. */
export const breath = (): Promise<void> =>
  (globalThis as { scheduler?: { yield?: () => Promise<void> } }).scheduler?.yield?.() ??
  new Promise((resolve) => setTimeout(resolve));

/** One after the other, each in a piece of its own. */
export async function inPieces(works: readonly (() => unknown)[]): Promise<void> {
  for (const work of works) {
    await work();
    await breath();
  }
}
