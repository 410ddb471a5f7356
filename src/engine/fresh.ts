/** An older reading is taken again before it is accepted. Milliseconds. */
export const FRESH_MS = 5 * 60_000;
