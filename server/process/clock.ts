/** The job's time: for the times of entries, and for when an instruction expires. */
export interface Clock {
  /** Milliseconds since 1970-01-01 UTC. */
  now(): number;
  /** Runs `action` once, after `ms` of this clock's time. Call the returned function to cancel it. */
  after(ms: number, action: () => void): () => void;
}

/** Above this, `setTimeout` fires at once. */
const LONGEST_TIMER_MS = 2 ** 31 - 1;

export const systemClock: Clock = {
  now: () => Date.now(),
  after(ms, action) {
    const timer = setTimeout(action, Math.min(ms, LONGEST_TIMER_MS));
    return () => clearTimeout(timer);
  },
};
